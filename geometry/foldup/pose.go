package foldup

import (
	"math"

	"forel/geometry"
	"forel/geometry/space"
)

// Sheet is a piece of covering, or a blank, with its parts hung on each other:
// it can be shown flat, folded up, and every stage between.
type Sheet struct {
	Leaves []Leaf
	root   space.Frame // of the part that is laid first
	order  []int       // of the parts, each after the one it hangs on
}

// Leaf is a part of a piece between its cuts, folds and creases.
type Leaf struct {
	Outline []geometry.Point // counterclockwise, in the piece's coordinates
	On      int              // the part it hangs on; -1: it is laid first, or hangs on nothing
	Face    geometry.Face    // in whose plane it ends when all is folded; empty: in none
	Tab     bool             // a tab of a hole
	Folded  bool             // the hinge is a fold, not what a corner does by itself
	Web     bool             // a bit left over a corner, which is pinched; it hangs on nothing
	hinge   join             // from On
}

// Posed is a part as it lies in the case: At takes a point of the piece there.
type Posed struct {
	Leaf
	Turned float64 // degrees about its hinge
	frame  space.Frame
}

// At gives where a point of the piece lies.
func (p Posed) At(q geometry.Point) space.Vec { return p.frame.At(q) }

// Hinge gives the two ends of the fold the part hangs on, in the piece's
// coordinates.
func (p Leaf) Hinge() (from, to geometry.Point) { return p.hinge.from, p.hinge.at }

// Holds tells whether a point of the piece lies in the leaf.
func (p Leaf) Holds(q geometry.Point) bool { return holds(p.Outline, q) }

// Hang hangs the parts of a piece on the body at one of its seats, by number;
// ok is false where the piece does not fit there.
func (b Body) Hang(p geometry.Piece, seat int) (s Sheet, ok bool) {
	if seat >= len(p.Seats) {
		return Sheet{}, false
	}
	root, ok := b.Place(p.Seats[seat])
	if !ok {
		return Sheet{}, false
	}
	home := b.Surfaces[b.Find(p.Seats[seat].Face)]
	return b.hang(p, root, func(r region) float64 {
		return area(Meet(shape(project(root, r.outline, home)), home.Outline()))
	}), true
}

// Lay hangs the parts of a piece on the one that holds a point. Its plane lies
// with the piece's origin at o, its X along u and its Y along v, unit steps
// square to each other.
func Lay(p geometry.Piece, on geometry.Point, o, u, v space.Vec) Sheet {
	return Body{}.hang(p, space.Frame{O: o, U: u, V: v}, func(r region) float64 {
		if holds(r.outline, on) {
			return 1
		}
		return 0
	})
}

// hang hangs the parts of a piece on the one that counts most.
func (b Body) hang(p geometry.Piece, root space.Frame, count func(region) float64) Sheet {
	regions := split(p)
	s := Sheet{root: root, Leaves: make([]Leaf, len(regions))}
	first, most := 0, 0.0
	for i, r := range regions {
		s.Leaves[i] = Leaf{Outline: r.outline, On: -1, Web: r.pinched(), Tab: r.tab()}
		if n := count(r); n > most {
			first, most = i, n
		}
	}
	s.order = append(s.order, first)
	for _, l := range hung(regions, first) {
		s.Leaves[l.join.to].On, s.Leaves[l.join.to].hinge = l.from, l.join
		s.Leaves[l.join.to].Folded = l.join.kind == fold
		s.order = append(s.order, l.join.to)
	}
	for i, r := range regions {
		if s.Leaves[i].Tab && s.Leaves[i].On < 0 {
			if from, j, ok := chord(r, i); ok {
				s.Leaves[i].On, s.Leaves[i].hinge = from, j
				s.Leaves[i].Folded = true
				s.order = append(s.order, i)
			}
		}
	}
	for i, q := range s.Pose(func(int) float64 { return 90 }) {
		if on := b.landing(q.frame); on >= 0 && !s.Leaves[i].Web && !s.Leaves[i].Tab {
			s.Leaves[i].Face = b.Surfaces[on].Face
		}
	}
	return s
}

// Pose turns every leaf, by number, about its hinge by the degrees that angle gives:
// from 0, flat, to 90, folded; a pleat, which lies flat on itself, by twice as
// much. Leaves that hang on nothing lie in the plane of the first.
func (s Sheet) Pose(angle func(leaf int) float64) []Posed {
	out := make([]Posed, len(s.Leaves))
	for i, p := range s.Leaves {
		out[i] = Posed{Leaf: p, frame: s.root}
	}
	for _, i := range s.order[1:] {
		p := s.Leaves[i]
		out[i].Turned = angle(i)
		out[i].frame = turned(out[p.On].frame, p.hinge, out[i].Turned*math.Pi/180)
	}
	return out
}

// chord gives what a tab of a hole hangs on: the straight line between the ends
// of its part of the fold.
func chord(r region, self int) (from int, j join, ok bool) {
	var ends []geometry.Point
	for _, o := range r.joins {
		if o.kind != round {
			continue
		}
		from, ok = o.to, true
		for _, q := range []geometry.Point{o.from, o.at} {
			met := false
			for i, e := range ends {
				if e.Near(q) {
					ends, met = append(ends[:i], ends[i+1:]...), true
					break
				}
			}
			if !met {
				ends = append(ends, q)
			}
		}
	}
	if !ok || len(ends) != 2 {
		return 0, join{}, false
	}
	// The part that it hangs on lies left of the hinge.
	a, b := ends[0], ends[1]
	c := geometry.Polygon(r.outline...).Bounds().Center()
	if d := b.Sub(a); d.X*(c.Y-a.Y)-d.Y*(c.X-a.X) > 0 {
		a, b = b, a
	}
	return from, join{to: self, from: a, at: b, kind: fold}, true
}

// holds tells whether a point lies within an outline.
func holds(outline []geometry.Point, p geometry.Point) bool {
	in := false
	for i, q := range outline {
		r := outline[(i+1)%len(outline)]
		if (q.Y > p.Y) != (r.Y > p.Y) && p.X < q.X+(p.Y-q.Y)/(r.Y-q.Y)*(r.X-q.X) {
			in = !in
		}
	}
	return in
}
