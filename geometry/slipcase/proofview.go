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
	r.Solids = append(r.Carcass.solids(), r.Dividers...)
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
		o := d.Frame.O
		at := space.Vec{X: o.X + d.Thick/2, Y: c.Height * (0.6 - lower*Length(i)), Z: o.Z + geometry.Around(d.Outline...).Width()}
		out = append(out, note(at, "divider", "between volumes %d and %d", i+1, i+2))
		if i == 0 { // the compartment before it
			mouth = (c.Lined + o.X) / 2
		}
	}
	out = append(out, note(space.Vec{X: mouth, Y: c.Height * 0.74, Z: c.Depth}, "mouth", "the open side"))
	if c.hole() {
		in := "both sides"
		if len(r.Dividers) > 0 && len(r.Dividers[0].Outline) > 4 {
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

// spreads are the pages of faces.
var spreads = []plan.Spread{
	{Bookmark: "Outside", Head: "The outside, each face as you see it when you look at it", Rows: [][]plan.Cell{
		plan.Row(LeftOutside, RightOutside),
		plan.Row(SpineOutside, HeadOutside, TailOutside),
	}},
	{Bookmark: "Inside", Head: "The inside, each face as you see it when you look at it", Rows: [][]plan.Cell{
		plan.Row(LeftInside, RightInside),
		plan.Row(SpineInside, HeadInside, TailInside),
	}},
	{Bookmark: "Mouth", Head: "The edges of the boards round the mouth, seen from in front", Rows: [][]plan.Cell{
		{{Face: LeftMouth, Part: 0.22}, {Face: RightMouth, Part: 0.22}, {Face: HeadMouth, Part: 0.28}, {Face: TailMouth, Part: 0.28}},
	}},
}

// dividerSpread is the page of the dividers, where there are any.
var dividerSpread = plan.Spread{Bookmark: "Dividers", Head: "A divider, each face as you see it when you look at it; all are alike", Rows: [][]plan.Cell{
	{{Face: DividerLeft, Part: 0.4}, {Face: DividerRight, Part: 0.4}, {Face: DividerMouth, Part: 0.2}},
}}
