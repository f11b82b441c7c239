package fold

import (
	"slices"

	"forel/geometry"
	"forel/geometry/space"
)

// Sheet is a piece with its parts hung on each other: it can be shown flat, folded
// up, and every stage between.
type Sheet struct {
	Leaves []Leaf
	First  int         // the part that is laid first
	root   space.Frame // of it
	order  []int       // of the parts, each after the one it hangs on
}

// Leaf is a part of a sheet.
type Leaf struct {
	Part
	On     int           // the part it hangs on; -1: it is laid first, or hangs on nothing
	Folded bool          // the hinge is a fold, not what a corner does by itself
	Face   geometry.Face // in whose plane it ends, for the user of the sheet to note
	hinge  Join          // from On
}

// Posed is a leaf as it lies in space: At takes a point of the piece there.
type Posed struct {
	Leaf
	space.Frame
	Turned float64 // degrees about its hinge
}

// Hinge returns the two ends of the fold the part hangs on, in the piece's
// coordinates.
func (l Leaf) Hinge() (from, to geometry.Point) { return l.hinge.From, l.hinge.At }

// Holds tells whether a point of the piece lies in the leaf.
func (l Leaf) Holds(q geometry.Point) bool { return q.In(l.Outline) }

// Hang hangs the parts of a piece on the one that counts most, whose plane lies in
// space as root says; ok is false where none counts, and the first is taken. Each
// part hangs on its longest hinge to what is hung before it. Webs hang on nothing,
// tabs of a hole on the chord of their edge.
func Hang(p geometry.Piece, root space.Frame, count func(Part) float64) (s Sheet, ok bool) {
	parts := Split(p)
	s = Sheet{root: root, Leaves: make([]Leaf, len(parts))}
	most := 0.0
	for i, part := range parts {
		s.Leaves[i] = Leaf{Part: part, On: -1}
		if n := count(part); n > most {
			s.First, most = i, n
		}
	}
	s.order = append(s.order, s.First)
	hang := func(on int, j Join) {
		l := &s.Leaves[j.To]
		l.On, l.hinge, l.Folded = on, j, j.Kind == Fold || j.Kind == Away
		s.order = append(s.order, j.To)
	}
	for on, j, ok := s.longest(); ok; on, j, ok = s.longest() {
		hang(on, j)
	}
	for i, l := range s.Leaves {
		if on, j, _, ok := l.Chord(); ok && l.Tab && s.hung(on) {
			j.To = i
			hang(on, j)
		}
	}
	return s, most > 0
}

// longest returns the longest hinge from a part that is hung to one that isn't.
func (s Sheet) longest() (on int, best Join, ok bool) {
	var long Length
	for i, l := range s.Leaves {
		if !s.hung(i) {
			continue
		}
		for _, j := range l.Joins {
			if s.hung(j.To) || j.Kind == Give || j.Kind == Round {
				continue
			}
			if n := l.hinges(j); !ok || n > long+1e-9 {
				on, best, long, ok = i, j, n, true
			}
		}
	}
	return on, best, ok
}

func (s Sheet) hung(i int) bool { return i == s.First || s.Leaves[i].On >= 0 }

// hinges returns the length of all that two parts share of one kind.
func (p Part) hinges(j Join) Length {
	var l Length
	for _, o := range p.Joins {
		if o.To == j.To && o.Kind == j.Kind {
			l += o.Length()
		}
	}
	return l
}

// Chord returns what a tab of a hole hangs on: the straight line between the ends of
// its edge, as a fold from that part to the tab, and how far the edge leaves it. ok is
// false where the edge is none, or in several pieces.
func (p Part) Chord() (on int, j Join, off Length, ok bool) {
	var starts, ends int
	for _, e := range p.Joins {
		if e.Kind != Round {
			continue
		}
		touches := func(at func(Join) geometry.Point, q geometry.Point) bool {
			return slices.ContainsFunc(p.Joins, func(o Join) bool { return o.Kind == Round && at(o).Near(q) })
		}
		on = e.To
		// The part that it hangs on lies left of the join, the tab itself right.
		if !touches(func(o Join) geometry.Point { return o.At }, e.From) {
			j.At, starts = e.From, starts+1
		}
		if !touches(func(o Join) geometry.Point { return o.From }, e.At) {
			j.From, ends = e.At, ends+1
		}
	}
	if starts != 1 || ends != 1 {
		return on, j, 0, false
	}
	for _, e := range p.Joins {
		if e.Kind == Round {
			off = max(off, e.From.ToLine(j.From, j.At))
		}
	}
	j.Kind = Fold
	return on, j, off, true
}

// Pose turns every leaf, by number, about its hinge by the degrees that angle returns:
// from 0, flat, to 90, folded. Leaves that hang on nothing lie in the plane of the
// first.
func (s Sheet) Pose(angle func(leaf int) float64) []Posed {
	out := make([]Posed, len(s.Leaves))
	for i, l := range s.Leaves {
		out[i] = Posed{Leaf: l, Frame: s.root}
	}
	for _, i := range s.order[1:] {
		l := s.Leaves[i]
		out[i].Turned = angle(i)
		out[i].Frame = Turned(out[l.On].Frame, l.hinge, out[i].Turned)
	}
	return out
}

// Folded returns every leaf where it ends.
func (s Sheet) Folded() []Posed { return s.Pose(func(int) float64 { return 90 }) }
