// Package laidflat has what boards share that lie side by side, inside up and head away, a
// joint between each two, in one piece that covers them and is turned in on every side: the
// case of a box, and a chemise. X runs from left to right, Y from tail to head, Z up from
// the outside. It knows no kind of case.
package laidflat

import (
	"fmt"
	"math"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/space"
	"forel/geometry/stage"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Names are what a kind of case calls the boards and their faces.
type Names struct {
	Whole                                    string // of all boards: "the case"
	LeftEnd, RightEnd                        string // "front fore-edge"
	Outside, Inside, Head, Tail, Left, Right geometry.Face
	TailLeft, TailRight                      geometry.Corner // of the outside
}

// Board is one of the boards.
type Board struct {
	Name string
	Wide Length
}

// Boards are the boards as they lie.
type Boards struct {
	Names
	All          []Board  // from left to right
	From         []Length // where each begins
	Joint, Thick Length
	High, Across Length
	At           space.Vec // where the lower left corner of the outside lies
	Plane        int       // the number of the first plane
}

// Row returns boards side by side.
func (n Names) Row(joint, thick, high Length, all ...Board) Boards {
	b := Boards{Names: n, All: all, Joint: joint, Thick: thick, High: high, Across: Length(len(all)-1) * joint}
	from := Length(0)
	for _, p := range all {
		b.From = append(b.From, from)
		from += p.Wide + joint
		b.Across += p.Wide
	}
	return b
}

// Planes is how many planes the faces of the boards lie in.
const Planes = 6

// Lay lays boards side by side, each as wide as its piece, and tells what does not meet.
func (n Names) Lay(joint, thick Length, pieces ...geometry.Piece) (b Boards, faults []foldup.Fault) {
	var all []Board
	var high Length
	misfit := func(p geometry.Piece, what string, args ...any) {
		faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: p.Name, What: fmt.Sprintf(what, args...)})
	}
	for i, p := range pieces {
		w, h := p.Size()
		if i == 0 {
			high = h
		}
		if (h - high).Abs() > foldup.Sliver {
			misfit(p, "%.3f mm high where the others are %.3f mm", h.MM(), high.MM())
		}
		if full := float64(w * h); math.Abs(p.Outline.SignedArea()-full) > 1e-6*full {
			misfit(p, "not a rectangle")
		}
		all = append(all, Board{p.Name, w})
	}
	return n.Row(joint, thick, high, all...), faults
}

// Body returns the faces that are to be covered: the inside, the outside, the edges at head
// and tail, those at the ends. Joints are part of a face's plane, since the covering and
// what is turned in go on over them; there is no board in them to cover.
func (b Boards) Body() foldup.Body {
	x, y, z := space.Vec{X: 1}, space.Vec{Y: 1}, space.Vec{Z: 1}
	at := func(x, y, z Length) space.Vec { return b.At.Add(space.Vec{X: x, Y: y, Z: z}) }
	whole, edge, end := geometry.Bx(0, 0, b.Across, b.High), geometry.Bx(0, 0, b.Across, b.Thick), geometry.Bx(0, 0, b.High, b.Thick)
	body := foldup.Body{Corners: map[geometry.Corner]space.Vec{b.TailLeft: at(0, 0, 0), b.TailRight: at(b.Across, 0, 0)}}
	add := func(face geometry.Face, board string, o, u, v space.Vec, extent geometry.Box, cover polygon.Shape, beyond foldup.Beyond) {
		n := len(body.Surfaces)
		body.Surfaces = append(body.Surfaces, foldup.Surface{Face: face, Board: board, Frame: space.Frame{O: o, U: u, V: v}, Normal: u.Cross(v), Extent: extent,
			Cover: cover, Plane: b.Plane + n, Edge: n > 1, Beyond: beyond, Ground: foldup.BareBoard})
	}
	level := func(left, right string) foldup.Beyond {
		return foldup.Beyond{Left: left, Right: right, Top: "head", Bottom: "tail"}
	}
	upright := func(left, right string) foldup.Beyond {
		return foldup.Beyond{Left: left, Right: right, Top: "inside", Bottom: "outside"}
	}
	boards := func(high Length) polygon.Shape { // without joints
		var all []polygon.Shape
		for n, p := range b.All {
			all = append(all, polygon.Box(geometry.Bx(b.From[n], 0, b.From[n]+p.Wide, high)))
		}
		return foldup.United(all)
	}
	add(b.Inside, b.Whole, at(0, 0, b.Thick), x, y, whole, boards(b.High), level(b.LeftEnd, b.RightEnd))
	add(b.Outside, b.Whole, at(b.Across, 0, 0), x.Mul(-1), y, whole, polygon.Box(whole), level(b.RightEnd, b.LeftEnd))
	add(b.Head, b.Whole, at(b.Across, b.High, 0), x.Mul(-1), z, edge, polygon.Box(edge), upright(b.RightEnd, b.LeftEnd))
	add(b.Tail, b.Whole, at(0, 0, 0), x, z, edge, polygon.Box(edge), upright(b.LeftEnd, b.RightEnd))
	add(b.Left, b.All[0].Name, at(0, b.High, 0), y.Mul(-1), z, end, polygon.Box(end), upright("head", "tail"))
	add(b.Right, b.All[len(b.All)-1].Name, at(b.Across, 0, 0), y, z, end, polygon.Box(end), upright("tail", "head"))
	return body
}

// Solids returns the boards for the picture of a proof.
func (b Boards) Solids() (out []plan.Solid) {
	for i, p := range b.All {
		low := b.At.Add(space.Vec{X: b.From[i]})
		out = append(out, plan.Box(p.Name, stage.Board, low, low.Add(space.Vec{X: p.Wide, Y: b.High, Z: b.Thick})))
	}
	return out
}
