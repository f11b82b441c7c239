package slipcase

import (
	"fmt"
	"math"
	"slices"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/space"
	"forel/geometry/stage"
)

// show adds to a proof all that is told and drawn of it.
func (r *Report) show(pieces []geometry.Piece, j Job) {
	bare, goes := "no board is left bare", "the book goes in"
	if j.Covering == SidesOnly {
		bare = "board is bare only where it is meant to be"
	} else {
		r.Means = "the gap that is left is no broader than the covering beside it is thick, which closes it"
	}
	if j.Dividers() > 0 {
		goes = "the books go in"
	}
	r.Shows = bare + ", no flap reaches too far or runs into another, and " + goes
	r.Stuff, r.From = "covering", "from the board up"
	if j.Lining.Thickness > 0 {
		r.Layers = "The lining is not counted."
	}
	r.Tightest = "The mouth is the tightest place: covering is turned in there."
	if j.liningAfter() > 0 {
		r.Remarks = append(r.Remarks, "the case is shown before its linings are pasted in, which will lie over what is turned in; piles leave them out, the clearances do not")
	}
	if j.Dividers() > 0 {
		r.Remarks = append(r.Remarks, "the dividers are alike, so the faces of one are listed and drawn flat; the clearance in thickness is that of the tightest compartment")
	}
	if _, ok := geometry.Find(pieces, notchStripName); ok {
		r.Remarks = append(r.Remarks, "the edge of the thumb hole in a divider is covered by the notch strip, which is held against it and not drawn")
	}
	stuffs := map[geometry.Material]stage.Stuff{geometry.Cloth: stage.Cloth, geometry.Paper: stage.Paper}
	for _, p := range pieces {
		if s, ok := stuffs[p.Material]; ok {
			r.Sheets = append(r.Sheets, plan.Sheet{Name: p.Name, Stuff: s})
		}
	}
	r.Solids = r.solids()
	r.View = r.view()
	r.Notes = r.notes()
	r.Spreads = slices.Clone(spreads)
	if len(r.Dividers) > 0 {
		r.Spreads = append(r.Spreads, dividerSpread)
	}
	c, deep := r.Carcass, r.turnedInDeep()
	r.Closeup = &plan.Closeup{
		Title: "Corner of the mouth", Where: "left and tail", Note: "this corner",
		At: space.Vec{Z: c.Depth}, Up: space.Vec{Y: 1.7 * deep, Z: c.Depth - deep}, Along: space.Vec{X: c.Width, Z: c.Depth},
	}
}

// solids returns the boards as they stand.
func (r *Report) solids() []plan.Solid {
	c := r.Carcass
	s, w, h, d := c.Lined, c.Width, c.Height, c.Depth
	side := func(name string, x Length) plan.Solid {
		return plan.Solid{Name: name, Stuff: stage.Board, Frame: space.Frame{O: space.Vec{X: x}, U: toMouth, V: toHead}, Outline: c.Side, Thick: s}
	}
	out := []plan.Solid{
		side("left side", 0),
		side("right side", w-s),
		plan.Box("spine wall", stage.Board, space.Vec{X: s}, space.Vec{X: w - s, Y: h, Z: s}),
		plan.Box("head wall", stage.Board, space.Vec{X: s, Y: h - s, Z: s}, space.Vec{X: w - s, Y: h, Z: d}),
		plan.Box("tail wall", stage.Board, space.Vec{X: s, Z: s}, space.Vec{X: w - s, Y: s, Z: d}),
	}
	for i, v := range r.Dividers {
		out = append(out, plan.Solid{Name: fmt.Sprintf("divider %d", i+1), Stuff: stage.Board, Frame: space.Frame{O: v.Min, U: toMouth, V: toHead},
			Outline: v.Side, Thick: v.Max.X - v.Min.X})
	}
	return out
}

// Angles of the view into the mouth, in degrees. Where the mouth is narrow the
// viewer stands more nearly before it, to see into it.
const (
	mostYaw  = 32.0
	leastYaw = 12.0
	pitch    = 22.0
)

// view returns that of a case: as far to the right as still shows all that is
// turned in on the left side, within limits.
func (r *Report) view() stage.View {
	yaw, deep := mostYaw, Length(0)
	for _, f := range r.Faces {
		if f.Face == LeftInside {
			for _, l := range f.Layers {
				deep = max(deep, f.Extent.Max.X-l.Shape.Bounds().Min.X)
			}
		}
	}
	if deep > 0 {
		between := r.Carcass.Width - 2*r.Carcass.Lined
		yaw = max(leastYaw, min(mostYaw, math.Atan(float64(between/deep)/1.1)*180/math.Pi))
	}
	return stage.View{Toward: toMouth, Up: toHead, Yaw: yaw, Pitch: pitch}
}

// turnedInDeep returns how deep the deepest turn-in reaches from the mouth, or
// three boards where that is more.
func (r *Report) turnedInDeep() Length {
	deep := 3 * r.Carcass.Lined
	for _, f := range r.Faces {
		if f.Inside && f.Board != onDividers {
			for _, l := range f.Layers {
				switch b := l.Shape.Bounds(); toMouth {
				case f.Frame.U:
					deep = max(deep, f.Extent.Max.X-b.Min.X)
				case f.Frame.V:
					deep = max(deep, f.Extent.Max.Y-b.Min.Y)
				}
			}
		}
	}
	return deep
}

// notes names the walls of the case and what stands in it.
func (r *Report) notes() []stage.Note {
	c := r.Carcass
	note := func(at space.Vec, name, more string, args ...any) stage.Note {
		return stage.Note{Name: stage.Words(name), More: stage.Words(fmt.Sprintf(more, args...)), At: at}
	}
	out := []stage.Note{
		{Name: stage.Words("head"), Spot: string(HeadOutside)},
		{Name: stage.Words("right side"), Spot: string(RightOutside)},
		note(space.Vec{X: c.Width, Y: c.Height * 0.45}, "spine", "behind, round this edge"),
		note(space.Vec{X: c.Lined / 2, Y: c.Height * 0.85, Z: c.Depth}, "left side", "its edge at the mouth"),
		note(space.Vec{X: c.Width * 0.6, Y: c.Lined / 2, Z: c.Depth}, "tail", "its edge at the mouth"),
	}
	mouth := c.Width / 2
	lower := min(0.1, 0.5/Length(max(1, len(r.Dividers)-1))) // each than the one before it
	for i, d := range r.Dividers {
		at := space.Vec{X: (d.Min.X + d.Max.X) / 2, Y: c.Height * (0.6 - lower*Length(i)), Z: d.Max.Z}
		out = append(out, note(at, "divider", "between volumes %d and %d", i+1, i+2))
		if i == 0 { // the compartment before it
			mouth = (c.Lined + d.Min.X) / 2
		}
	}
	out = append(out, note(space.Vec{X: mouth, Y: c.Height * 0.74, Z: c.Depth}, "mouth", "the open side"))
	if c.hole() {
		in := "both sides"
		if len(r.Dividers) > 0 && len(r.Dividers[0].Side) > 4 {
			in = "sides and dividers"
		}
		out = append(out, note(space.Vec{X: c.Width, Y: c.Height / 2, Z: c.Depth - c.holeDepth()*0.4}, "thumb hole", "in %s", in))
	}
	return out
}

// holeDepth returns how far a thumb hole reaches in from the mouth.
func (c Carcass) holeDepth() Length {
	var deep Length
	for _, p := range c.Side {
		if !p.Y.Near(0) && !p.Y.Near(c.Height) {
			deep = max(deep, c.Depth-p.X)
		}
	}
	return deep
}

// row is faces beside each other, each with its part of the width.
func row(parts []Length, faces ...geometry.Face) []plan.Cell {
	out := make([]plan.Cell, len(faces))
	for i, f := range faces {
		out[i] = plan.Cell{Face: f, Part: parts[i]}
	}
	return out
}

var (
	half   = []Length{1. / 2, 1. / 2}
	third  = []Length{1. / 3, 1. / 3, 1. / 3}
	narrow = []Length{0.22, 0.22, 0.28, 0.28}
)

// spreads are the pages of faces.
var spreads = []plan.Spread{
	{Bookmark: "Outside", Head: "The outside, each face as you see it when you look at it", Rows: [][]plan.Cell{
		row(half, LeftOutside, RightOutside),
		row(third, SpineOutside, HeadOutside, TailOutside),
	}},
	{Bookmark: "Inside", Head: "The inside, each face as you see it when you look at it", Rows: [][]plan.Cell{
		row(half, LeftInside, RightInside),
		row(third, SpineInside, HeadInside, TailInside),
	}},
	{Bookmark: "Mouth", Head: "The edges of the boards round the mouth, seen from in front", Rows: [][]plan.Cell{
		row(narrow, LeftMouth, RightMouth, HeadMouth, TailMouth),
	}},
}

// dividerSpread is the page of the dividers, where there are any.
var dividerSpread = plan.Spread{Bookmark: "Dividers", Head: "A divider, each face as you see it when you look at it; all are alike", Rows: [][]plan.Cell{
	row([]Length{0.4, 0.4, 0.2}, DividerLeft, DividerRight, DividerMouth),
}}
