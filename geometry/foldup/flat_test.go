package foldup_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/space"
)

// Two boards that lie side by side, covered below in one piece with all four edges
// turned in, and lined on top: a body without walls, as nothing else here is. The
// boards are 60 and 40 wide, 100 high and 2 thick, 6 apart; the covering is turned
// in by 15, its corners are mitred as a case maker's are: one board off, square to
// the cut. The lining stays back by 3 and goes into the joint and out again.
const (
	leftWide, jointWide, rightWide = foldup.Length(60), foldup.Length(6), foldup.Length(40)
	allWide, boardsHigh, thickness = leftWide + jointWide + rightWide, foldup.Length(100), foldup.Length(2)
	turnedIn, liningBack           = foldup.Length(15), foldup.Length(3)
)

// flatBody gives the boards as a body.
func flatBody() foldup.Body {
	x, y, z := space.Vec{X: 1}, space.Vec{Y: 1}, space.Vec{Z: 1}
	b := foldup.Body{Corners: map[geometry.Corner]space.Vec{
		"left tail, below": {}, "left head, below": {Y: boardsHigh},
		"left tail, on top": {Z: thickness}, "left head, on top": {Y: boardsHigh, Z: thickness},
	}}
	plane := 0
	face := func(name string, f space.Frame, n space.Vec, extent geometry.Box, covered bool) {
		s := foldup.Surface{Face: geometry.Face(name), Frame: f, Normal: n, Extent: extent, Plane: plane, Together: "the boards"}
		if covered {
			s.Cover = s.Outline()
		}
		b.Surfaces = append(b.Surfaces, s)
	}
	// Along X: the left board, the joint, the right board.
	along := func(what string, f space.Frame, n space.Vec, lo, hi foldup.Length, joint bool) {
		plane++
		face(what+" of the left board", f, n, geometry.Bx(0, lo, leftWide, hi), true)
		face(what+" of the joint", f, n, geometry.Bx(leftWide, lo, leftWide+jointWide, hi), joint)
		face(what+" of the right board", f, n, geometry.Bx(leftWide+jointWide, lo, allWide, hi), true)
	}
	along("outside", space.Frame{U: x, V: y}, z.Mul(-1), 0, boardsHigh, true)
	along("inside", space.Frame{O: space.Vec{Z: thickness}, U: x, V: y}, z, 0, boardsHigh, false)
	along("head edge", space.Frame{O: space.Vec{Y: boardsHigh}, U: x, V: z}, y, 0, thickness, false)
	along("tail edge", space.Frame{U: x, V: z}, y.Mul(-1), 0, thickness, false)
	upright := func(what string, at foldup.Length, n space.Vec, covered bool) {
		plane++
		face(what, space.Frame{O: space.Vec{X: at}, U: y, V: z}, n, geometry.Bx(0, 0, boardsHigh, thickness), covered)
	}
	upright("left end", 0, x.Mul(-1), true)
	upright("right end", allWide, x, true)
	upright("left side of the joint", leftWide, x, false)
	upright("right side of the joint", leftWide+jointWide, x.Mul(-1), false)
	plane++
	face("floor of the joint", space.Frame{U: x, V: y}, z, geometry.Bx(leftWide, 0, leftWide+jointWide, boardsHigh), false)
	return b
}

// flatCovering gives the covering, its back up; off is how far its mitres keep from
// the corners of the boards, last tells whether the ends are turned in after head
// and tail.
func flatCovering(off foldup.Length, last int) geometry.Piece {
	const e, w, h, b = turnedIn, allWide, boardsHigh, thickness
	pt, c := geometry.Pt, off
	p := geometry.Piece{
		Name: "covering", Material: geometry.Cloth, Count: 1,
		Outline: geometry.Polygon(pt(e-c, -e), pt(w-e+c, -e), pt(w+e, e-c), pt(w+e, h-e+c), pt(w-e+c, h+e), pt(e-c, h+e), pt(-e, h-e+c), pt(-e, e-c)),
		Seats: []geometry.Seat{{Face: "outside of the left board", At: [2]geometry.Anchor{
			{At: pt(0, 0), On: "left tail, below"}, {At: pt(0, h), On: "left head, below"},
		}}},
		Regions: []geometry.Region{
			{Room: geometry.Bx(-e, e, -b, h-e), Turn: last}, {Room: geometry.Bx(w+b, e, w+e, h-e), Turn: last},
		},
	}
	for _, y := range []foldup.Length{0, -b, h, h + b} {
		p.Folds = append(p.Folds, geometry.Line(pt(0, y), pt(w, y)))
	}
	for _, x := range []foldup.Length{0, -b, w, w + b} {
		p.Folds = append(p.Folds, geometry.Line(pt(x, 0), pt(x, h)))
	}
	if off > 0 {
		for _, q := range [][4]foldup.Length{{0, 0, -c, -c}, {w, 0, c, -c}, {0, h, -c, c}, {w, h, c, c}} {
			p.Creases = append(p.Creases,
				geometry.Crease{Path: geometry.Line(pt(q[0], q[1]), pt(q[0]+q[2], q[1])), Kind: geometry.Give},
				geometry.Crease{Path: geometry.Line(pt(q[0], q[1]), pt(q[0], q[1]+q[3])), Kind: geometry.Give})
		}
	}
	return p
}

// flatLining gives the lining, its back up, so that what lies at the left is drawn
// at the right. into is how far it goes into the joint, short what it lacks at the
// right end.
func flatLining(into, short foldup.Length) geometry.Piece {
	wide, high := allWide-2*liningBack+2*thickness, boardsHigh-2*liningBack
	left := wide + liningBack // where the left end of the boards is
	p := geometry.Piece{
		Name: "lining", Material: geometry.Lining, Count: 1,
		Outline: geometry.Rectangle(geometry.Bx(short, 0, wide, high)),
		Seats: []geometry.Seat{{Face: "inside of the left board", At: [2]geometry.Anchor{
			{At: geometry.Pt(left, -liningBack), On: "left tail, on top"}, {At: geometry.Pt(left, boardsHigh-liningBack), On: "left head, on top"},
		}}},
	}
	x := left - leftWide
	crease := func(kind geometry.CreaseKind) {
		p.Creases = append(p.Creases, geometry.Crease{Path: geometry.Line(geometry.Pt(x, 0), geometry.Pt(x, high)), Kind: kind})
	}
	crease(geometry.Toward)
	x -= into
	crease(geometry.Away)
	x -= jointWide
	crease(geometry.Away)
	x -= into
	crease(geometry.Toward)
	return p
}

// Boards side by side are folded up like a case that stands: nothing is wrong as
// designed, and what is spoilt is found.
func TestBoardsSideBySide(t *testing.T) {
	off := thickness * math.Sqrt2
	prove := func(pieces ...geometry.Piece) []foldup.Fault {
		v, faults := flatBody().Cover(pieces, func(p geometry.Piece) foldup.Length {
			return map[geometry.Material]foldup.Length{geometry.Cloth: 0.35, geometry.Lining: 0.15}[p.Material]
		})
		_, found := v.Look(pieces)
		return append(faults, found...)
	}
	lining := flatLining(thickness, 0)
	assert.Empty(t, prove(flatCovering(off, 1), lining))

	for _, spoilt := range []struct {
		name   string
		pieces []geometry.Piece
		kind   foldup.Kind
		piece  string
		face   geometry.Face
	}{
		{"flaps folded at the same time that lie on each other", []geometry.Piece{flatCovering(off, 0), lining}, foldup.Collision, "covering", "inside of the left board"},
		{"a mitre cut to the corner", []geometry.Piece{flatCovering(0, 1), lining}, foldup.Bare, "covering", ""},
		{"no lining", []geometry.Piece{flatCovering(off, 1)}, foldup.Bare, "", "inside of the right board"},
		{"a lining that does not reach the turn-in", []geometry.Piece{flatCovering(off, 1), flatLining(thickness, 12)}, foldup.Bare, "", "inside of the right board"},
		{"a lining that does not reach the floor of the joint", []geometry.Piece{flatCovering(off, 1), flatLining(thickness/2, 0)}, foldup.Overhang, "lining", ""},
	} {
		faults := prove(spoilt.pieces...)
		assert.True(t, slices.ContainsFunc(faults, func(f foldup.Fault) bool {
			return f.Kind == spoilt.kind && f.Piece == spoilt.piece && f.Face == spoilt.face
		}), fmt.Sprint(spoilt.name, ": ", faults))
	}
}

// The lining lies where its way takes it: on both boards, on the floor and on both
// sides of the joint, each as wide as that is.
func TestLiningGoesIntoAJoint(t *testing.T) {
	b := flatBody()
	patches, faults := b.Seated(flatLining(thickness, 0), 0, 0.15)
	assert.Empty(t, faults)
	area := map[int]float64{}
	for _, p := range patches {
		assert.False(t, p.Tucked)
		area[p.Plane] += p.Shape.Size()
	}
	high := (boardsHigh - 2*liningBack).MM()
	for face, wide := range map[geometry.Face]foldup.Length{
		"inside of the left board": leftWide + rightWide - 2*liningBack, "floor of the joint": jointWide,
		"left side of the joint": thickness, "right side of the joint": thickness,
	} {
		assert.InDelta(t, wide.MM()*high, area[b.Surfaces[b.Find(face)].Plane], 1e-3, face)
	}
}
