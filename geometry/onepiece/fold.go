package onepiece

import (
	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
	"forel/geometry/space"
)

// Ways a folded blank can fail beside those of foldup.
const (
	Torn foldup.Kind = "torn" // held by two folds that pull it two ways
	Shut foldup.Kind = "shut" // something across the mouth
)

// slab is a part as it stands in the folded case: a shape in a plane square to
// an axis, with the thickness of the card.
type slab struct {
	part   int
	name   string // with the face it is for
	short  string // without
	axis   int
	sign   Length // which way along the axis its inside looks
	inside Length // where its inside lies on the axis
	lo, hi Length // from where to where it reaches on the axis
	shape  polygon.Shape
}

// across returns the two axes of a slab's shape.
func across(axis int) [2]int { return [3][2]int{{1, 2}, {0, 2}, {0, 1}}[axis] }

// reach returns from where to where a slab reaches on any axis.
func (s slab) reach(axis int) (lo, hi Length) {
	b := s.shape.Bounds()
	switch axis {
	case s.axis:
		return s.lo, s.hi
	case across(s.axis)[0]:
		return b.Min.X, b.Max.X
	}
	return b.Min.Y, b.Max.Y
}

// stand folds every fold by a right angle, inside in.
func stand(p geometry.Piece, sheet fold.Sheet, card Card) ([]slab, []foldup.Fault) {
	var slabs []slab
	var faults []foldup.Fault
	fault := func(kind foldup.Kind, what string) {
		faults = append(faults, foldup.Fault{Kind: kind, Piece: p.Name, What: what})
	}
	leaves := sheet.Folded()
	for i, l := range leaves {
		name, short := named(p, l.Outline)
		if i != sheet.First && l.On < 0 {
			fault(foldup.Misfit, "the "+name+" hangs on nothing")
			continue
		}
		for _, j := range l.Joins {
			if o := leaves[j.To]; j.To > i && !near(fold.Turned(l.Frame, j, 90), o.Frame) {
				other, _ := named(p, o.Outline)
				fault(Torn, "two folds pull the "+name+" and the "+other+" two ways: a slit or a wedge between flaps is missing or too short")
			}
		}
		axis, sign, ok := axisOf(l.Normal())
		if !ok {
			fault(foldup.Misfit, "the "+name+" does not stand square: a fold is askew")
			continue
		}
		// Of the card's thickness, Card.Bend lies to the inside of its plane.
		in := axes(l.O)[axis] + sign*card.bend()
		out := in - sign*card.Thickness
		two := across(axis)
		points := make([]geometry.Point, len(l.Outline))
		for i, q := range l.Outline {
			v := axes(l.At(q))
			points[i] = geometry.Pt(v[two[0]], v[two[1]])
		}
		slabs = append(slabs, slab{
			part: i, name: name, short: short, axis: axis, sign: sign,
			inside: in, lo: min(in, out), hi: max(in, out),
			shape: polygon.Of(points),
		})
	}
	return slabs, faults
}

// axes returns a place by the numbers of the axes: from left to right, from tail to
// head, from spine to mouth.
func axes(v space.Vec) [3]Length { return [3]Length{v.X, v.Y, v.Z} }

// near tells whether two planes lie alike.
func near(f, g space.Frame) bool {
	return max(f.O.Sub(g.O).Size(), f.U.Sub(g.U).Size(), f.V.Sub(g.V).Size()) < sliver
}

// axisOf returns the axis that a unit vector runs along, and whether forward or
// backward; ok is false where it runs along none.
func axisOf(v space.Vec) (axis int, sign Length, ok bool) {
	for i, l := range axes(v) {
		if l.Abs() > 1-1e-9 {
			return i, l.Round(1), true
		}
	}
	return 0, 0, false
}
