// Package foldup folds flat pieces onto a body of boards, in numbers, and looks
// at what comes of it: board left bare, flaps that reach too far or run into
// something, and how many layers lie where. It knows the pieces only by their
// outlines, cuts, folds and seats, not by the formulas that made them, and the
// body only as a list of faces: a kind of case says which there are and what of
// them is to be covered.
package foldup

import (
	"forel/geometry"
	"forel/geometry/polygon"
	"forel/geometry/space"
	"forel/geometry/stage"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Surface is a flat face of a body. Its own coordinates are those of Frame.
type Surface struct {
	Face   geometry.Face // its name
	Board  string        // what it is a face of: "head wall"
	Frame  space.Frame
	Normal space.Vec    // out of the board
	Extent geometry.Box // in the face's own coordinates
	// Shape is the outline, in the face's own coordinates; empty: the whole of
	// Extent.
	Shape polygon.Shape
	Cover polygon.Shape // what of it covering must lie on; may be empty
	// Inside: past its edges stands a wall. Edge: it is no more than the thickness
	// of a board.
	Inside, Edge bool
	// Plane: faces that lie in one plane share its number, their Frame and their
	// Normal. Together names them all where there are several: "the edges of the
	// boards at the mouth".
	Plane    int
	Together string
	// Open is the way along the face to the open side of a case, from where
	// covering is turned in on it; zero for none.
	Open   space.Vec
	Beyond Beyond
	Ground Ground
}

// Beyond names what lies beyond each edge of a face for one who looks straight at
// it with the top of the body up, or, where it lies level, with their feet nearest
// to the bottom edge.
type Beyond struct{ Left, Right, Top, Bottom string }

// Ground is what a face shows where no covering lies.
type Ground struct {
	Name  string // "lining"
	Stuff stage.Stuff
	State string // for a column of a table: "lined"; empty for none
}

// BareBoard is the ground of board without a lining.
var BareBoard = Ground{Name: "bare board", Stuff: stage.Board}

// Inner is an inner corner: at one end of a face stands a wall, square to it.
// What lies on the face must end clear of what lies on the wall.
type Inner struct {
	Face, Wall geometry.Face
	// Over: a part of a piece on the face may lie over parts of the same piece on
	// the wall that hang on no more folds.
	Over bool
}

// Body is what pieces are folded onto.
type Body struct {
	Surfaces []Surface
	Corners  map[geometry.Corner]space.Vec // the places that seats name
	Inner    []Inner
	// Stiff: the pieces are stiff and take room. A part lies in from the face it lands
	// on, as deep as its folds put it, and no two may be in one place. Bend is how far
	// behind the inner side of a part the layer lies that folding leaves as long as it is.
	Stiff bool
	Bend  Length
	// Edge is how thick the board is that the tabs of a hole are turned round.
	// HoleChord is how far the straight end of a tab may leave the edge of the
	// hole, HoleGap how far two tabs may part over the thickness of the board.
	Edge, HoleChord, HoleGap Length
}

// Outline returns the outline of a surface in its own coordinates.
func (s Surface) Outline() polygon.Shape {
	if len(s.Shape) == 0 {
		return polygon.Box(s.Extent)
	}
	return s.Shape
}

// Find returns the surface with a name by its number, -1 where there is none.
func (b Body) Find(face geometry.Face) int {
	for i, s := range b.Surfaces {
		if s.Face == face {
			return i
		}
	}
	return -1
}

// first tells whether a surface is the first of its plane.
func (b Body) first(i int) bool {
	for _, s := range b.Surfaces[:i] {
		if s.Plane == b.Surfaces[i].Plane {
			return false
		}
	}
	return true
}

// plane returns the surfaces of a plane.
func (b Body) plane(n int) []Surface {
	var out []Surface
	for _, s := range b.Surfaces {
		if s.Plane == n {
			out = append(out, s)
		}
	}
	return out
}
