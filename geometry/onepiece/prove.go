package onepiece

import (
	"cmp"
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/polygon"
)

// Report is the proof of a blank: what is wrong with the case it folds to, what
// that measures, and which parts lie in each wall. Its faces are the walls from
// outside: every part where it lies on the outer face of a wall, the number of its
// layer from the inside, from 0, as its order.
type Report struct {
	plan.Proof
	Cavity  plan.Size
	Outside plan.Size
	Walls   []Wall
}

// Wall is one wall of the folded case. Layers go from the inside out; those of
// one layer lie side by side.
type Wall struct {
	Face   geometry.Face // its outside
	Layers [][]string
}

// Prove folds a blank up and looks at the case that comes of it. It knows the
// blank by its outline, slits and folds alone, not by the rules that made it;
// the regions give parts their names. Each part is taken as a stiff slab of the
// card's thickness, which turns about its folds in the plane that Card.Bend
// gives. It finds
//
//   - a cavity that is not what is wanted;
//   - a wall with a gap wider than the relief;
//   - two parts in one place; parts that a fold joins may share what a fold squeezes;
//   - a flap past the outside of the case, or out of the mouth; something across it;
//   - layers of a wall with a space between, where paste does not hold;
//   - parts that hang on nothing, or on two folds that pull them two ways.
//
// With no thickness there are no layers, and only folds and gaps are looked at.
func Prove(p geometry.Piece, card Card, want plan.Size, relief Length) Report {
	v := proof{piece: p.Name, card: card, relief: relief}
	sheet, faults := split(p)
	v.faults = faults
	if len(faults) == 0 {
		v.slabs, v.faults = stand(p, sheet, card)
		if len(v.faults) == 0 && v.stands() {
			v.measure(want)
			v.gaps()
			v.overhang()
			v.apart()
			v.collisions(sheet)
		}
	}
	return v.report()
}

// proof is a blank being proved.
type proof struct {
	piece           string
	card            Card
	relief          Length
	slabs           []slab
	lo, hi          [3]Length // corners of the cavity
	outLo, outHi    [3]Length // corners of the case
	cavity, outside plan.Size
	faults          []foldup.Fault
}

func (v *proof) fault(kind foldup.Kind, face geometry.Face, what string) {
	v.faults = append(v.faults, foldup.Fault{Kind: kind, Piece: v.piece, Face: face, What: what})
}

// standingWall is a wall of a case: the axis it is square to, which way along that its
// inside looks, its name, and what lies beyond its edges for one who sees its outside.
type standingWall struct {
	face   geometry.Face
	axis   int
	sign   Length
	name   string
	beyond foldup.Beyond
}

// The walls of a case.
var walls = []standingWall{
	{LeftOutside, 0, 1, "left side", foldup.Beyond{Left: "spine", Right: "mouth", Top: "head", Bottom: "tail"}},
	{RightOutside, 0, -1, "right side", foldup.Beyond{Left: "mouth", Right: "spine", Top: "head", Bottom: "tail"}},
	{SpineOutside, 2, 1, "spine wall", foldup.Beyond{Left: "right side", Right: "left side", Top: "head", Bottom: "tail"}},
	{HeadOutside, 1, -1, "head wall", foldup.Beyond{Left: "left side", Right: "right side", Top: "spine", Bottom: "mouth"}},
	{TailOutside, 1, 1, "tail wall", foldup.Beyond{Left: "left side", Right: "right side", Top: "mouth", Bottom: "spine"}},
}

// wall returns the slabs of a wall from the inside out.
func (v *proof) wall(axis int, sign Length) []slab {
	var out []slab
	for _, s := range v.slabs {
		if s.axis == axis && s.sign == sign {
			out = append(out, s)
		}
	}
	slices.SortStableFunc(out, func(a, b slab) int { return cmp.Compare(-sign*a.inside, -sign*b.inside) })
	return out
}

// stands finds whether there are all five walls and no sixth, and where the
// cavity and the case end.
func (v *proof) stands() bool {
	for _, s := range v.slabs {
		if s.axis == 2 && s.sign < 0 {
			v.fault(Shut, "", "the "+s.name+" lies across the mouth")
			return false
		}
	}
	for _, w := range walls {
		ss := v.wall(w.axis, w.sign)
		if len(ss) == 0 {
			v.fault(foldup.Bare, w.face, "there is no such wall")
			return false
		}
		in, out := ss[0], ss[len(ss)-1]
		if w.sign > 0 {
			v.lo[w.axis], v.outLo[w.axis] = in.inside, out.lo
		} else {
			v.hi[w.axis], v.outHi[w.axis] = in.inside, out.hi
		}
	}
	// The shallower side ends the cavity at the mouth.
	_, left := v.wall(0, 1)[0].reach(2)
	_, right := v.wall(0, -1)[0].reach(2)
	v.hi[2] = min(left, right)
	v.outHi[2] = v.hi[2]
	in, out := between(v.lo, v.hi), between(v.outLo, v.outHi)
	v.cavity = plan.Size{Thickness: in[0], Height: in[1], Width: in[2]}
	v.outside = plan.Size{Thickness: out[0], Height: out[1], Width: out[2]}
	return true
}

// between returns how far two corners are apart along each axis.
func between(lo, hi [3]Length) [3]Length {
	return [3]Length{hi[0] - lo[0], hi[1] - lo[1], hi[2] - lo[2]}
}

// measure compares the cavity with what is wanted.
func (v *proof) measure(want plan.Size) {
	compare := func(what string, is, want Length) {
		switch {
		case is < want-sliver:
			v.fault(foldup.Tight, "", fmt.Sprintf("%s of the cavity: %.2f mm is %.3f mm too little", what, is.MM(), (want-is).MM()))
		case is > want+sliver:
			v.fault(foldup.Misfit, "", fmt.Sprintf("%s of the cavity: %.2f mm is %.3f mm too much", what, is.MM(), (is-want).MM()))
		}
	}
	compare("height", v.cavity.Height, want.Height)
	compare("width", v.cavity.Width, want.Width)
	compare("thickness", v.cavity.Thickness, want.Thickness)
}

// gaps finds where one can look through a wall.
func (v *proof) gaps() {
	for _, w := range walls {
		two := across(w.axis)
		opening := geometry.Bx(v.lo[two[0]], v.lo[two[1]], v.hi[two[0]], v.hi[two[1]]).Grow(-sliver)
		if opening.Empty() {
			continue // a fault already
		}
		left := polygon.Of(rectangle(opening))
		for _, s := range v.wall(w.axis, w.sign) {
			left = foldup.Without(left, s.shape)
		}
		for _, g := range left {
			if b := breadth(g); b > v.relief+sliver {
				v.faults = append(v.faults, foldup.Fault{Kind: foldup.Bare, Piece: v.piece, Face: w.face, At: g.Bounds(),
					What: fmt.Sprintf("a gap of %.1f mm², about %.2f mm wide", g.Size(), b.MM())})
			}
		}
	}
}

// overhang finds what reaches past the outside of the case.
func (v *proof) overhang() {
	past := [3][2]string{{"the left side", "the right side"}, {"the tail", "the head"}, {"the spine", "the mouth"}}
	for _, s := range v.slabs {
		for axis := range 3 {
			lo, hi := s.reach(axis)
			if d := v.outLo[axis] - lo; d > sliver {
				v.fault(foldup.Overhang, "", fmt.Sprintf("the %s reaches %.2f mm past %s", s.name, d.MM(), past[axis][0]))
			}
			if d := hi - v.outHi[axis]; d > sliver {
				v.fault(foldup.Overhang, "", fmt.Sprintf("the %s reaches %.2f mm past %s", s.name, d.MM(), past[axis][1]))
			}
		}
	}
}

// apart finds flaps that do not touch the layer under them.
func (v *proof) apart() {
	for _, w := range walls {
		ss := v.wall(w.axis, w.sign)
		for _, s := range ss {
			under := -1 // the outermost of those further in
			for k, o := range ss {
				if (s.inside-o.inside)*w.sign < -sliver {
					under = k
				}
			}
			if under < 0 {
				continue
			}
			if gap := (s.inside - ss[under].inside).Abs() - v.card.Thickness; gap > sliver {
				v.fault(foldup.Misfit, w.face, fmt.Sprintf("the %s lies %.3f mm off the layer under it", s.name, gap.MM()))
			}
		}
	}
}

// collisions finds parts that are in one place.
func (v *proof) collisions(sheet fold.Sheet) {
	for i, a := range v.slabs {
		for _, b := range v.slabs[i+1:] {
			joined := slices.ContainsFunc(sheet.Leaves[a.part].Joins, func(j fold.Join) bool { return j.To == b.part })
			if !joined && v.share(a, b) {
				v.fault(foldup.Collision, "", "the "+a.name+" and the "+b.name+" are in one place")
			}
		}
	}
}

// share tells whether two slabs have room in common.
func (v *proof) share(a, b slab) bool {
	for axis := range 3 {
		alo, ahi := a.reach(axis)
		blo, bhi := b.reach(axis)
		if min(ahi, bhi)-max(alo, blo) < sliver {
			return false
		}
	}
	if a.axis == b.axis {
		return foldup.Solid(foldup.Meet(a.shape, b.shape), sliver)
	}
	// Square to each other: what of each lies within the thickness of the other,
	// seen along the axis that is left.
	third := 3 - a.axis - b.axis
	for _, p := range v.within(a, b, third) {
		for _, q := range v.within(b, a, third) {
			if min(p[1], q[1])-max(p[0], q[0]) > sliver {
				return true
			}
		}
	}
	return false
}

// within returns what of a lies within the thickness of b, as stretches of an axis
// square to both.
func (v *proof) within(a, b slab, third int) [][2]Length {
	box := a.shape.Bounds().Grow(1)
	byX := across(a.axis)[0] == b.axis
	if byX {
		box.Min.X, box.Max.X = b.lo+sliver/2, b.hi-sliver/2
	} else {
		box.Min.Y, box.Max.Y = b.lo+sliver/2, b.hi-sliver/2
	}
	if box.Empty() {
		return nil
	}
	var out [][2]Length
	for _, p := range foldup.Meet(a.shape, polygon.Of(rectangle(box))) {
		e := p.Bounds()
		if across(a.axis)[0] == third {
			out = append(out, [2]Length{e.Min.X, e.Max.X})
		} else {
			out = append(out, [2]Length{e.Min.Y, e.Max.Y})
		}
	}
	return out
}
