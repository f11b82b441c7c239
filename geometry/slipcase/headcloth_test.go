package slipcase_test

import (
	"errors"
	"fmt"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/slipcase"
)

// slit is one slit of head or tail cloth, seen from the mouth edge: x from the
// cloth's middle outward, so that both slits of a cloth measure the same, and
// y from the mouth edge into the turn-in.
type slit struct{ x0, y0, x1, y1 float64 }

// at gives the slit line's distance from the cloth's middle at a height.
func (s slit) at(y float64) float64 { return s.x0 + (s.x1-s.x0)*(y-s.y0)/(s.y1-s.y0) }

// lean gives how much the slit slants toward the middle per length.
func (s slit) lean() float64 { return (s.x0 - s.x1) / (s.y1 - s.y0) }

// slits measures the two slits of an end cloth, left then right.
func slits(q truth, p geometry.Piece) (out [2]slit, err error) {
	wide, _ := p.Size()
	if len(p.Slits) != 2 {
		return out, fmt.Errorf("%d slits", len(p.Slits))
	}
	seen := 0
	for _, path := range p.Slits {
		from, to, ok := ends(path)
		if !ok {
			return out, errors.New("a slit is not one straight line")
		}
		if from.Y > to.Y {
			from, to = to, from
		}
		to = continued(from, to, p.Outline)
		middle, mouth := wide.MM()/2, q.Wo-q.g
		side, away := 0, -1.0
		if from.X.MM() > middle {
			side, away = 1, 1
		}
		out[side] = slit{(from.X.MM() - middle) * away, from.Y.MM() - mouth, (to.X.MM() - middle) * away, to.Y.MM() - mouth}
		seen |= 1 << side
	}
	if seen != 3 {
		return out, errors.New("both slits are on one side")
	}
	return out, nil
}

// continued gives where the edge of the middle tab ends: at the end of the slit,
// or further on in its line, where past it a notch parts the tabs.
func continued(from, to geometry.Point, outline geometry.Path) geometry.Point {
	long := from.Distance(to)
	for _, v := range outline.Vertices {
		if v.Distance(from) > long && v.ToLine(from, to.Add(to.Sub(from).Mul(1000))) < 1e-9 {
			if onBorder(to, v.Point, outline) {
				to = v.Point
			}
		}
	}
	return to
}

// endCloths runs a check on head and on tail cloth.
func endCloths(ps pieces, check func(geometry.Piece) error) error {
	for _, name := range []string{"head cloth", "tail cloth"} {
		if err := check(ps[name]); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	return nil
}

// checkSlits: a slit starts one lined board in from the outer face of the case,
// beyond the mouth edge but still on the board's edge; slants toward the middle;
// and ends at the cloth's end. The two mirror each other, never meet, and leave
// half of the middle tab at its tip, or three quarters of what it may be
// inside. As documented, a slit starts further in only where it would otherwise
// have to lean by more than 20 degrees, or so much that those three quarters are
// reached within a millimetre.
func checkSlits(j slipcase.Job, ps pieces) error {
	q := truthOf(j)
	return endCloths(ps, func(p geometry.Piece) error {
		both, err := slits(q, p)
		if err != nil {
			return err
		}
		l, r := both[0], both[1]
		if !same(l.x0, r.x0) || !same(l.x1, r.x1) || !same(l.y0, r.y0) || !same(l.y1, r.y1) {
			return fmt.Errorf("slits %v and %v do not mirror each other", l, r)
		}
		if l.y0 < 0.1 || l.y0 >= q.s {
			return fmt.Errorf("slit starts %v from the mouth edge of a board of %v", l.y0, q.s)
		}
		root, tip := 2*l.x0, 2*l.x1
		inside := q.cavT - 2*q.k
		steep := min(tan(20), inside/8)
		further := (q.cavT - root) / 2
		switch {
		case further < -eps:
			return fmt.Errorf("slit starts %v short of one lined board from the corner", -further)
		case further > eps && !same(l.lean(), steep):
			return fmt.Errorf("slit starts %v further in while it leans by only %v", further, l.lean())
		// Documented: from 1°, less where a thin cloth could not close the gap
		// beside the slit over the edge of the board, to 20°.
		case l.lean() < min(tan(1), 1.9*q.k/(q.s-l.y0))-eps || l.lean() > tan(20)+eps:
			return fmt.Errorf("slit leans by %v", l.lean())
		case tip < min(root/2, inside*3/4)-eps || tip <= 0:
			return fmt.Errorf("middle tab of %v ends %v wide", root, tip)
		case crosses(lineOf(p.Slits[0]), lineOf(p.Slits[1])):
			return errors.New("slits cross")
		}
		return checkTip(p)
	})
}

// checkTip: the ends of the slits are on the border of the cloth, and so is
// the end of the middle tab between them; their starts are not.
func checkTip(p geometry.Piece) error {
	var tip [2]geometry.Point
	for n, path := range p.Slits {
		from, to, _ := ends(path)
		if from.Y > to.Y {
			from, to = to, from
		}
		tip[n] = continued(from, to, p.Outline)
		near := geometry.Box{Min: from, Max: from}.Grow(0.01)
		if !within(judgedBox(near), p.Outline) {
			return fmt.Errorf("slit starts at the border: %v", from)
		}
	}
	if !onBorder(tip[0], tip[1], p.Outline) {
		return fmt.Errorf("middle tab is not free at its end, %v to %v", tip[0], tip[1])
	}
	return nil
}

func lineOf(p geometry.Path) geom.LineString {
	from, to, _ := ends(p)
	return judgedLine(from, to)
}

// checkMiddleTab: where it is inside, from the far edge of the board on, the
// middle tab is no wider than the cavity less two cloths; it gets inside at
// all; and in a thin case the slant gives way before the length.
func checkMiddleTab(j slipcase.Job, ps pieces) error {
	q := truthOf(j)
	most := q.cavT - 2*q.k
	return endCloths(ps, func(p geometry.Piece) error {
		both, err := slits(q, p)
		if err != nil {
			return err
		}
		l := both[0]
		if l.y1 <= q.s {
			return fmt.Errorf("middle tab of %v does not get round a board of %v", l.y1, q.s)
		}
		for n := range 11 {
			y := q.s + (l.y1-q.s)*float64(n)/10
			if between := 2 * l.at(y); between > most+eps {
				return fmt.Errorf("middle tab is %v wide at %v, inside a cavity of %v", between, y, q.cavT)
			}
		}
		if shortened := q.mouthTurnIn - l.y1; shortened > eps {
			needed := same(2*l.at(q.s), most)
			least := min(l.x0/2, most*3/8)
			if !(needed || l.lean() <= tan(1)+eps) || !same(l.x1, least) {
				return fmt.Errorf("middle tab is %v shorter while its slits still lean by %v", shortened, l.lean())
			}
		}
		if l.y1-q.s > q.cavW+eps {
			return fmt.Errorf("middle tab runs %v into a cavity %v deep", l.y1-q.s, q.cavW)
		}
		return nil
	})
}

// checkSideTabs: they end where the cloth ends, as wide as reaches into the corner
// at least, and land on the inside of a side: no deeper than it is, and no further
// along the mouth than from one wall to the other. Over the edge of the board they
// are as wide as the side. Inside they end in the corners: past them, they would lie
// under the middle tab where the book has the least room.
func checkSideTabs(j slipcase.Job, ps pieces) error {
	q := truthOf(j)
	return endCloths(ps, func(p geometry.Piece) error {
		wide, high := p.Size()
		m, s, edge := j.Cloth.Overlap, slipcase.Length(q.s), slipcase.Length(q.Wo-q.g+q.s)
		for _, tab := range []geometry.Box{
			geometry.Bx(0, 0, m, edge), geometry.Bx(0, 0, m-s, high),
			geometry.Bx(wide-m, 0, wide, edge), geometry.Bx(wide-m+s, 0, wide, high),
		} {
			if !within(judgedBox(tab), p.Outline) {
				return fmt.Errorf("side tab at %v is cut into", tab.Min.X)
			}
		}
		for i := range 20 { // how wide a side tab is inside
			y := edge + (high-edge)*slipcase.Length(float64(i)+0.5)/20
			if past := sideTab(p, y) - (m - s).MM(); past > eps {
				return fmt.Errorf("side tabs reach %v past the corner", past)
			}
		}
		if in := high.MM() - (q.Wo - q.g) - q.s; in > q.cavW+eps || in <= 0 {
			return fmt.Errorf("side tabs run %v into a cavity %v deep", in, q.cavW)
		}
		if along := (wide.MM()-q.To)/2 - q.s; along > q.cavH+eps {
			return fmt.Errorf("side tabs are %v wide in a cavity %v high", along, q.cavH)
		}
		return nil
	})
}

// sideTab measures how wide the left side tab is at a height: from the left end
// of the cloth to its outline, or to the slit.
func sideTab(p geometry.Piece, y slipcase.Length) float64 {
	wide, _ := p.Size()
	reach := wide.MM()
	edges := p.Slits[:1:1]
	for _, s := range p.Outline.Segments() {
		edges = append(edges, geometry.Line(s.From, s.To))
	}
	for _, e := range edges {
		a, b := e.Vertices[0].Point, e.Vertices[1].Point
		if (a.Y > y) == (b.Y > y) {
			continue
		}
		if x := (a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y)).MM(); x > eps {
			reach = min(reach, x)
		}
	}
	return reach
}

// checkEndFolds: the folds are the carcass' edges, To apart in the middle of the
// cloth, and the two edges of the board at the mouth.
func checkEndFolds(j slipcase.Job, ps pieces) error {
	q := truthOf(j)
	return endCloths(ps, func(p geometry.Piece) error {
		mouth, found := q.Wo-q.g, map[string]bool{}
		const inner = 3 // along the edge: the middle tab and both side tabs
		for _, f := range p.Folds {
			from, to, _ := ends(f)
			switch {
			case from.X == to.X && same(from.X.MM(), q.m) && same(from.Distance(to).MM(), mouth):
				found["left"] = true
			case from.X == to.X && same(from.X.MM(), q.m+q.To) && same(from.Distance(to).MM(), mouth):
				found["right"] = true
			case from.Y == to.Y && same(from.Y.MM(), mouth):
				found["mouth edge"] = true
			case from.Y == to.Y && same(from.Y.MM(), mouth+q.s):
				found["inner edge"] = true
			default:
				return fmt.Errorf("a fold from %v to %v", from, to)
			}
		}
		if len(p.Folds) != 3+inner || len(found) != 4 {
			return fmt.Errorf("folds %v", found)
		}
		return nil
	})
}
