package laidflat

import (
	"forel/geometry"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// Turned is how far the covering is turned in, in degrees: over the edge of the board up to
// 90, onto its inside up to 180.
type Turned struct{ HeadAndTail, Ends float64 }

// Sheet is the covering on its boards, to be shown at any stage.
type Sheet struct {
	draft.Hung
	names Names
}

// Hung returns the covering of the boards, under the name of an object. It must be one that
// was folded over them before.
func (b Boards) Hung(covering geometry.Piece, object string) Sheet {
	sheet, _ := b.Body().Hang(covering, 0)
	s := Sheet{Hung: draft.Hung{Sheet: sheet, Piece: covering, Object: object}, names: b.Names}
	s.Late, s.Hinge = s.atEnd, s.hinge
	return s
}

// atEnd tells whether a leaf is turned in at an end.
func (s Sheet) atEnd(leaf int) bool {
	for ; s.Leaves[leaf].On >= 0; leaf = s.Leaves[leaf].On {
		if f := s.Leaves[leaf].Face; f == s.names.Left || f == s.names.Right {
			return true
		}
	}
	return false
}

func (s Sheet) angle(t Turned) draft.Angle {
	return func(leaf int) float64 {
		if s.atEnd(leaf) {
			return t.Ends
		}
		return t.HeadAndTail
	}
}

// hinge returns the angle of one hinge of what is turned in, first those over the edge.
func (s Sheet) hinge(leaf int, total float64) float64 {
	if s.Leaves[leaf].Face == s.names.Inside { // it hangs on what lies on the edge
		return max(0, total-90)
	}
	return min(90, total)
}

// Turned returns the covering at a stage.
func (s Sheet) Turned(t Turned, fresh bool) []stage.Face { return s.Faces(s.angle(t), 1, !fresh) }

// Swung returns the arrows of what is turned in over some edges, from a stage to another.
func (s Sheet) Swung(from, to Turned, edges ...geometry.Face) []stage.Arrow {
	var counts []func(int) bool
	for _, edge := range edges {
		counts = append(counts, func(leaf int) bool {
			l := s.Leaves[leaf]
			return l.Face == s.names.Inside && s.Leaves[l.On].Face == edge
		})
	}
	return s.Swings(s.angle(from), s.angle(to), counts...)
}

// Slabs returns the bare boards, moved up from where they lie on the covering, and a note
// at each.
func (b Boards) Slabs(up Length) (faces []stage.Face, notes []stage.Note) {
	for i, p := range b.All {
		faces = append(faces, draft.Slab(p.Name, b.From[i], 0, up, p.Wide, b.High, b.Thick, stage.Board)...)
		notes = append(notes, stage.Note{Name: stage.Words(p.Name), At: stage.Vec{X: b.From[i] + p.Wide/2, Y: b.High * 0.5, Z: up + b.Thick}})
	}
	return faces, notes
}
