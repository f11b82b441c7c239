package slipcase_test

import (
	"errors"
	"fmt"
	"math"

	"forel/geometry"
	"forel/geometry/slipcase"
)

// end is one end of the spine cloth, measured in the outline. Lengths past
// the board's edge run away from the board.
type end struct {
	flapLeft, flapRight float64 // length of the side flaps
	flap                float64 // length of the spine flap
	apexLeft, apexRight float64 // from the corner to the apex, on the fold
	tip                 float64 // width of the spine flap where it ends
	tipLeft, tipRight   float64 // width of the side flaps where they end
}

// spineEnds measures head and tail of a spine cloth. The corners of the board
// are where the design puts them: m from the long edges, Ho apart.
func spineEnds(j slipcase.Job, p geometry.Piece) (ends [2]end, err error) {
	q := truthOf(j)
	_, high := p.Size()
	lo := (high.MM() - q.Ho) / 2
	hi := lo + q.Ho
	for n, past := range [2]func(y float64) float64{
		func(y float64) float64 { return y - hi }, // head
		func(y float64) float64 { return lo - y }, // tail
	} {
		if ends[n], err = measureEnd(p.Outline.Flatten(0.001), q.m, q.m+q.To, past); err != nil {
			return ends, err
		}
	}
	return ends, nil
}

func measureEnd(points []geometry.Point, left, right float64, past func(y float64) float64) (end, error) {
	var e end
	apexes := 0
	for _, v := range points {
		x, d := v.X.MM(), past(v.Y.MM())
		if d <= 0 {
			continue
		}
		switch {
		case same(x, left):
			e.apexLeft, apexes = d, apexes+1
		case same(x, right):
			e.apexRight, apexes = d, apexes+1
		case x < left:
			e.flapLeft = max(e.flapLeft, d)
		case x > right:
			e.flapRight = max(e.flapRight, d)
		default:
			e.flap = max(e.flap, d)
		}
	}
	if apexes != 2 || e.apexLeft == 0 || e.apexRight == 0 {
		return e, fmt.Errorf("%d corners of the outline on the two folds past the board, not one each", apexes)
	}
	// A side flap that ends at the apex has its last corner on the fold.
	e.tipLeft = tipWidth(points, past, e.flapLeft, math.Inf(-1), left+eps)
	e.tipRight = tipWidth(points, past, e.flapRight, right-eps, math.Inf(1))
	e.tip = tipWidth(points, past, e.flap, left+eps, right-eps)
	return e, nil
}

// tipWidth gives the width of the edge at a flap's end.
func tipWidth(points []geometry.Point, past func(y float64) float64, length, from, to float64) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range points {
		if x := v.X.MM(); x >= from && x <= to && same(past(v.Y.MM()), length) {
			lo, hi = min(lo, x), max(hi, x)
		}
	}
	return hi - lo
}

// checkFlaps: no flap is longer than the face it lands on, and the two side
// flaps of one end, which fold toward each other over head or tail wall, never
// overlap.
func checkFlaps(j slipcase.Job, ps pieces) error {
	q := truthOf(j)
	ends, err := spineEnds(j, ps["spine cloth"])
	if err != nil {
		return err
	}
	for _, e := range ends {
		switch {
		case e.flapLeft+e.flapRight > q.To:
			return fmt.Errorf("side flaps of %v and %v meet on a wall of %v", e.flapLeft, e.flapRight, q.To)
		case !same(e.flapLeft, e.flapRight):
			return fmt.Errorf("side flaps of %v and %v", e.flapLeft, e.flapRight)
		case !same(e.flapLeft, min(q.e, (q.To-1)/2)):
			// Documented: trimmed to half the thickness less half a millimetre, no more.
			return fmt.Errorf("side flap of %v for a turn-in of %v on a wall of %v", e.flapLeft, q.e, q.To)
		case e.flap > q.Wo+eps:
			return fmt.Errorf("spine flap of %v on a wall %v deep", e.flap, q.Wo)
		case e.flapLeft > e.flap+eps:
			return fmt.Errorf("side flap of %v past a spine flap of %v", e.flapLeft, e.flap)
		}
	}
	return nil
}

// checkMargins: what lies flat on a face is no larger than the face either.
func checkMargins(j slipcase.Job, ps pieces) error {
	q := truthOf(j)
	spine, _ := ps["spine cloth"].Size()
	head, _ := ps["head cloth"].Size()
	paper, _ := ps["side paper"].Size()
	switch {
	case (spine.MM()-q.To)/2 > q.Wo+eps:
		return fmt.Errorf("spine cloth %v wide reaches past a side of %v", spine, q.Wo)
	case (head.MM()-q.To)/2 > q.Ho+eps:
		return fmt.Errorf("head cloth %v wide reaches past a side of %v", head, q.Ho)
	case paper.MM()-(q.Wo-q.i)-q.s > q.cavW+eps:
		return fmt.Errorf("side paper %v wide runs into the spine wall", paper)
	}
	return nil
}

// checkWedges: a wedge's apex lies on the fold, a beyond the corner (less only
// where the side flap ends sooner); it opens toward the end; cloth is left
// between corner and apex; no wedge eats half of a flap. In a thin case the
// angle gives way first, then the length.
func checkWedges(j slipcase.Job, ps pieces) error {
	q, p := truthOf(j), ps["spine cloth"]
	ends, err := spineEnds(j, p)
	if err != nil {
		return err
	}
	for _, e := range ends {
		apex := e.apexLeft
		switch {
		case !same(apex, e.apexRight):
			return fmt.Errorf("apexes %v and %v from the corners", apex, e.apexRight)
		case apex <= eps:
			return errors.New("no cloth left between corner and apex")
		case !same(apex, min(q.a, e.flapLeft)):
			return fmt.Errorf("apex %v from the corner, not %v", apex, q.a)
		case e.tip < q.To/2-eps || e.tip > q.To-eps:
			return fmt.Errorf("spine flap of %v ends %v wide", q.To, e.tip)
		case e.tipLeft < q.m/2-eps || e.tipRight < q.m/2-eps:
			return fmt.Errorf("side flaps of %v end %v and %v wide", q.m, e.tipLeft, e.tipRight)
		}
		lean := (q.To - e.tip) / 2 / (e.flap - apex)
		if lean > tan(15)+eps || lean < tan(1)-eps { // documented
			return fmt.Errorf("wedge leans by %v", lean)
		}
		if shortened := q.e - e.flap; shortened > eps && (lean > tan(1)+eps || !same(e.tip, q.To/2)) {
			return fmt.Errorf("spine flap is %v shorter while its wedge still leans by %v to %v of %v", shortened, lean, e.tip, q.To)
		}
	}
	return checkWebs(q, p, ends)
}

// checkWebs asks the judge: cloth on both sides of the fold up to the apex,
// none on the fold past it.
func checkWebs(q truth, p geometry.Piece, ends [2]end) error {
	_, high := p.Size()
	lo := (high.MM() - q.Ho) / 2
	at := func(x, y float64) geometry.Point { return geometry.Pt(slipcase.Length(x), slipcase.Length(y)) }
	const hair = 1e-3
	for n, e := range ends {
		corner, away := lo+q.Ho, 1.0
		if n == 1 {
			corner, away = lo, -1
		}
		for _, x := range []float64{q.m, q.m + q.To} {
			a, b := corner, corner+away*(e.apexLeft-eps)
			web := geometry.Box{Min: at(x-hair, min(a, b)), Max: at(x+hair, max(a, b))}
			if !within(judgedBox(web), p.Outline) {
				return fmt.Errorf("no web at the corner %v, %v", x, corner)
			}
			wedge := judgedLine(at(x, corner+away*(e.apexLeft+hair)), at(x, corner+away*(e.flap+hair)))
			if touches(wedge, p.Outline) {
				return fmt.Errorf("cloth on the fold past the apex at the corner %v, %v", x, corner)
			}
		}
	}
	return nil
}

// checkSpineFolds: the folds are the carcass' four edges: m from the long
// edges, Ho apart; the vertical ones reach from apex to apex.
func checkSpineFolds(j slipcase.Job, ps pieces) error {
	q, p := truthOf(j), ps["spine cloth"]
	wide, high := p.Size()
	lo := (high.MM() - q.Ho) / 2
	want := map[string]int{}
	for _, f := range p.Folds {
		from, to, _ := ends(f)
		switch {
		case from.X == to.X && same(from.X.MM(), q.m):
			want["left"]++
		case from.X == to.X && same(from.X.MM(), q.m+q.To):
			want["right"]++
		case from.Y == to.Y && same(from.Y.MM(), lo) && same(from.Distance(to).MM(), wide.MM()):
			want["tail"]++
		case from.Y == to.Y && same(from.Y.MM(), lo+q.Ho) && same(from.Distance(to).MM(), wide.MM()):
			want["head"]++
		default:
			return fmt.Errorf("a fold from %v to %v", from, to)
		}
	}
	if len(p.Folds) != 4 || len(want) != 4 {
		return fmt.Errorf("folds %v", want)
	}
	return nil
}
