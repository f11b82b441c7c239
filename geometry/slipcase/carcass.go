package slipcase

import (
	"fmt"
	"math"
	"slices"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/geometry/walled"
)

// Carcass is the boards as they stand glued together. X runs from left to right,
// Y from tail to head, Z from spine to mouth, from the outer corner at left, tail
// and spine.
type Carcass struct {
	Width, Height, Depth Length // outside: X, Y, Z
	Lined                Length // thickness of a board with its lining
	// Side is the outline of a side, spine at X = 0, tail at Y = 0: the same
	// for both, since a side is alike from head and tail.
	Side []geometry.Point
}

// carcassBoards are the boards that the carcass is built of.
var carcassBoards = []string{"side", "spine wall", "head wall", "tail wall"}

// Build puts the boards together and tells what does not meet. lined is the
// thickness of a board with its lining.
func Build(pieces []geometry.Piece, lined Length) (Carcass, []foldup.Fault) {
	size := map[string][2]Length{}
	var faults []foldup.Fault
	misfit := func(piece, what string) {
		faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: piece, What: what})
	}
	var outline []geometry.Point
	for _, p := range pieces {
		if p.Material == geometry.Board {
			w, h := p.Size()
			size[p.Name] = [2]Length{w, h}
			if full := float64(w * h); p.Name != "side" && p.Name != "divider" && math.Abs(p.Outline.SignedArea()-full) > 1e-6*full {
				misfit(p.Name, "not a rectangle")
			}
			if p.Name == "side" {
				outline = p.Outline.Flatten(0.01)
			}
		}
	}
	for _, name := range carcassBoards {
		if _, ok := size[name]; !ok {
			misfit(name, "missing")
		}
	}
	if len(faults) > 0 {
		return Carcass{}, faults
	}
	side, spine := size["side"], size["spine wall"]
	same := func(piece, what string, a, b Length) {
		if !a.Near(b) {
			misfit(piece, fmt.Sprintf("%s: %.3f mm where %.3f mm meets", what, a.MM(), b.MM()))
		}
	}
	same("spine wall", "height against the sides", spine[1], side[1])
	for _, name := range []string{"head wall", "tail wall"} {
		same(name, "thickness of the cavity against the spine wall", size[name][1], spine[0])
		same(name, "depth with the spine wall against the sides", size[name][0]+lined, side[0])
	}
	return Carcass{Width: spine[0] + 2*lined, Height: side[1], Depth: side[0], Lined: lined, Side: outline}, faults
}

// solids returns the boards as they stand, each by its inner face.
func (c Carcass) solids() []plan.Solid {
	s := c.Lined
	board := func(name string, o, u, v space.Vec, outline []geometry.Point) plan.Solid {
		return plan.Solid{Name: name, Stuff: stage.Board, Frame: space.Frame{O: o, U: u, V: v}, Outline: outline, Thick: s}
	}
	wall := func(wide, high Length) []geometry.Point {
		return geometry.Rectangle(geometry.Bx(0, 0, wide, high)).Flatten(1)
	}
	var leftSide []geometry.Point // seen from the right, lying down
	for _, p := range slices.Backward(c.Side) {
		leftSide = append(leftSide, geometry.Pt(p.Y, p.X))
	}
	across, deep := c.Width-2*s, c.Depth-s
	return []plan.Solid{
		board("left side", space.Vec{X: s}, toHead, toMouth, leftSide),
		board("right side", space.Vec{X: c.Width - s}, toMouth, toHead, c.Side),
		board("spine wall", space.Vec{X: s, Z: s}, toRight, toHead, wall(across, c.Height)),
		board("head wall", space.Vec{X: s, Y: c.Height - s, Z: s}, toRight, toMouth, wall(across, deep)),
		board("tail wall", space.Vec{X: s, Y: s, Z: s}, toMouth, toRight, wall(deep, across)),
	}
}

// Hang hangs the parts of a piece on the carcass at one of its seats, by number;
// ok is false where the piece does not fit there.
func (c Carcass) Hang(p geometry.Piece, seat int) (s fold.Sheet, ok bool) {
	return c.Body(Job{}).Hang(p, seat)
}

// at returns where an outer corner of the carcass is, and where the corner of the
// space between the boards that is nearest to it.
func (c Carcass) at(p place) (outer, within space.Vec) {
	l := c.Lined
	within = space.Vec{X: l, Y: l, Z: l}
	if p.right {
		outer.X, within.X = c.Width, c.Width-l
	}
	if p.head {
		outer.Y, within.Y = c.Height, c.Height-l
	}
	if p.mouth {
		outer.Z, within.Z = c.Depth, c.Depth
	}
	return outer, within
}

// Body returns the faces of the carcass that are to be covered or lined.
func (c Carcass) Body(j Job) foldup.Body {
	b := foldup.Body{
		Surfaces: c.surfaces(j), Corners: map[geometry.Corner]space.Vec{},
		Edge: c.Lined, HoleChord: holeChord, HoleGap: j.holeGap(),
	}
	for _, p := range places() {
		b.Corners[p.corner()], b.Corners[p.within()] = c.at(p)
	}
	for _, side := range []geometry.Face{LeftInside, RightInside} {
		for _, end := range []geometry.Face{HeadInside, TailInside} {
			b.Inner = append(b.Inner, foldup.Inner{Face: side, Wall: end, Over: true}, foldup.Inner{Face: end, Wall: side})
		}
	}
	return b
}

func (c Carcass) surfaces(j Job) (out []foldup.Surface) {
	s, w, h, d := c.Lined, c.Width, c.Height, c.Depth
	outside := func(f foldup.Surface) {
		f.Ground, f.Cover = foldup.BareBoard, j.toCover(f)
		out = append(out, f)
	}
	edge := func(name geometry.Face, board string, box geometry.Box, beyond foldup.Beyond) foldup.Surface {
		return foldup.Surface{Face: name, Board: board, Frame: space.Frame{O: space.Vec{Z: d}, U: toRight, V: toHead}, Normal: toMouth, Extent: box,
			Beyond: beyond, Edge: true, Together: "the edges of the boards at the mouth"}
	}
	for _, f := range walled.Outside(space.Vec{}, space.Vec{X: w, Y: h, Z: d}) {
		outside(c.cut(f))
	}
	outside(c.cutAtMouth(edge(LeftMouth, "left side", geometry.Bx(0, 0, s, h), foldup.Beyond{Left: "outside", Right: "inside", Top: "head", Bottom: "tail"})))
	outside(c.cutAtMouth(edge(RightMouth, "right side", geometry.Bx(w-s, 0, w, h), foldup.Beyond{Left: "inside", Right: "outside", Top: "head", Bottom: "tail"})))
	outside(edge(HeadMouth, "head wall", geometry.Bx(s, h-s, w-s, h), foldup.Beyond{Left: "left side", Right: "right side", Top: "outside", Bottom: "inside"}))
	outside(edge(TailMouth, "tail wall", geometry.Bx(s, 0, w-s, s), foldup.Beyond{Left: "left side", Right: "right side", Top: "inside", Bottom: "outside"}))
	for _, f := range walled.Inside(space.Vec{X: s, Y: s, Z: s}, space.Vec{X: w - s, Y: h - s, Z: d}) {
		f.Ground = j.ground()
		if f.Frame.U == toMouth || f.Frame.V == toMouth {
			f.Open = toMouth
		}
		out = append(out, c.cut(f))
	}
	for i := range out {
		if out[i].Plane = i; out[i].Edge {
			out[i].Plane = len(out) // all in one
		}
	}
	return out
}

// hole tells whether the sides have a thumb hole.
func (c Carcass) hole() bool { return len(c.Side) > 4 }

// cut gives a face of a side its outline, which may have a thumb hole.
func (c Carcass) cut(f foldup.Surface) foldup.Surface {
	if c.hole() && f.Frame.U == toMouth {
		f.Shape = foldup.Meet(polygon.Box(f.Extent), polygon.Of(c.Side))
	}
	return f
}

// cutAtMouth gives the edge of a side at the mouth its outline, which a thumb hole
// parts.
func (c Carcass) cutAtMouth(f foldup.Surface) foldup.Surface {
	if !c.hole() {
		return f
	}
	var left []polygon.Shape
	for i, a := range c.Side {
		b := c.Side[(i+1)%len(c.Side)]
		if a.X.Near(c.Depth) && b.X.Near(c.Depth) {
			left = append(left, polygon.Box(geometry.Bx(f.Extent.Min.X, min(a.Y, b.Y), f.Extent.Max.X, max(a.Y, b.Y))))
		}
	}
	f.Shape = foldup.United(left)
	return f
}

// toCover returns what of an outside face is to be covered.
func (j Job) toCover(s foldup.Surface) polygon.Shape {
	if j.Covering != SidesOnly {
		return s.Outline()
	}
	inner, border := s.Extent, j.SidePaper.Inset
	inner.Min.Y, inner.Max.Y = inner.Min.Y+border, inner.Max.Y-border
	switch s.Face {
	case LeftOutside, RightOutside:
		inner.Min.X += border // at the spine
	case LeftMouth, RightMouth:
	default:
		return nil
	}
	return foldup.Meet(s.Outline(), polygon.Box(inner))
}
