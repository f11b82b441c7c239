package onepiece

import (
	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
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
	name   string
	axis   int
	sign   Length // which way along the axis its inside looks
	inside Length // where its inside lies on the axis
	lo, hi Length // from where to where it reaches on the axis
	shape  geom.Geometry
}

// across gives the two axes of a slab's shape.
func across(axis int) [2]int { return [3][2]int{{1, 2}, {0, 2}, {0, 1}}[axis] }

// reach gives from where to where a slab reaches on any axis.
func (s slab) reach(axis int) (lo, hi Length) {
	b := polygon.Bounds(s.shape)
	switch axis {
	case s.axis:
		return s.lo, s.hi
	case across(s.axis)[0]:
		return b.Min.X, b.Max.X
	}
	return b.Min.Y, b.Max.Y
}

// fold folds every fold by a right angle, inside in, beginning at the part with
// the most folds, which is the spine.
func fold(piece string, ps []part, card Card) ([]slab, []foldup.Fault) {
	first := 0
	for i, p := range ps {
		if len(p.joins) > len(ps[first].joins) {
			first = i
		}
	}
	frames := make([]*frame, len(ps))
	frames[first] = &frame{u: vec{1, 0, 0}, v: vec{0, 1, 0}}
	for queue := []int{first}; len(queue) > 0; queue = queue[1:] {
		for _, j := range ps[queue[0]].joins {
			if frames[j.to] == nil {
				f := frames[queue[0]].hinged(j.on, j.along, j.out)
				frames[j.to] = &f
				queue = append(queue, j.to)
			}
		}
	}
	var slabs []slab
	var faults []foldup.Fault
	fault := func(kind foldup.Kind, what string) {
		faults = append(faults, foldup.Fault{Kind: kind, Piece: piece, What: what})
	}
	for i, p := range ps {
		if frames[i] == nil {
			fault(foldup.Misfit, "the "+p.name+" hangs on nothing")
			continue
		}
		f := *frames[i]
		for _, j := range p.joins {
			g := frames[j.to]
			if h := f.hinged(j.on, j.along, j.out); j.to > i && (!h.o.near(g.o) || !h.u.near(g.u) || !h.v.near(g.v)) {
				fault(Torn, "two folds pull the "+p.name+" and the "+ps[j.to].name+" two ways: a slit or a wedge between flaps is missing or too short")
			}
		}
		axis, sign, ok := f.normal().axis()
		if !ok {
			fault(foldup.Misfit, "the "+p.name+" does not stand square: a fold is askew")
			continue
		}
		slabs = append(slabs, stand(i, p, f, axis, sign, card))
	}
	return slabs, faults
}

// stand gives a part as it stands. Of the card's thickness, Card.Bend lies to
// the inside of its plane.
func stand(i int, p part, f frame, axis int, sign Length, card Card) slab {
	plane := f.o[axis]
	in := plane + sign*card.bend()
	out := in - sign*card.Thickness
	points := polygon.Points(p.shape.ExteriorRing().Coordinates())
	points = points[:len(points)-1] // the last repeats the first
	two := across(axis)
	for i, q := range points {
		v := f.at(q)
		points[i] = geometry.Pt(v[two[0]], v[two[1]])
	}
	return slab{
		part: i, name: p.name, axis: axis, sign: sign,
		inside: in, lo: min(in, out), hi: max(in, out),
		shape: polygon.Of(points),
	}
}
