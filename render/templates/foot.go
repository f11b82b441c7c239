package templates

import (
	"fmt"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/layout"
	"forel/render/pattern"
	"forel/render/typeset"
)

// foot draws the bottom of a sheet: rulers to check the print by, what is on
// the sheet and where it belongs.
func (b *booklet) foot(s sheets, tile paper.Tile) {
	b.Begin(render.Legend)
	defer b.End()
	m := b.Setup.Margin
	width, height := s.tiling.Width, s.tiling.Height
	box := geometry.Bx(m, height-m-paper.Foot+1.5, width-m, height-m)
	b.rule(box.Min, geometry.Pt(box.Max.X, box.Min.Y))
	b.rulers(geometry.Pt(box.Min.X, box.Min.Y+1.5))

	// The words stand right of the rulers, the little map at the right end.
	const rulersWide, mapWide = 113, 20
	right := box.Max.X
	if len(s.tiling.Tiles) > 1 {
		b.littleMap(s.tiling, tile, geometry.Bx(box.Max.X-mapWide+3, box.Min.Y+2.5, box.Max.X, box.Max.Y-0.5))
		right -= mapWide
	}
	x, room := box.Min.X+rulersWide, right-box.Min.X-rulersWide
	where := "whole on this page"
	if len(s.tiling.Tiles) > 1 {
		where = fmt.Sprintf("row %d of %d, column %d of %d", tile.Row, s.tiling.Rows, tile.Col, s.tiling.Cols)
	}
	y := box.Min.Y + 0.6
	for _, l := range []struct {
		text string
		size render.Points
		bold bool
	}{
		{pattern.Name(s.piece), render.HeadSize, true},
		{pattern.Cut(s.piece), render.NoteSize, false},
		{s.piece.FaceUp, render.NoteSize, false},
		{where, render.NoteSize, false},
		{fmt.Sprintf("page %d of %d", b.page, b.total) + titled(b.plan.Title), render.NoteSize, false},
	} {
		y += typeset.LineHeight(l.size)
		text := typeset.Fit(l.text, l.size, l.bold, room)
		b.Text(render.Text{At: geometry.Pt(x, y), String: text, Size: l.size, Bold: l.bold, Color: render.Black})
	}
}

func titled(title string) string {
	if title == "" {
		return ""
	}
	return " – " + title
}

// rulers draws the scale check: 100 mm and 4 in, to be measured on the print.
func (b *booklet) rulers(at geometry.Point) {
	for _, r := range []struct {
		down, length, step geometry.Length
		whole              int // a longer tick every so many
		name               string
	}{
		{4.4, 100, 5, 2, "100 mm"},
		{13.6, 4 * geometry.Inch, geometry.Inch / 4, 4, "4 in"},
	} {
		from := at.Add(geometry.Pt(0, r.down))
		stroke := render.Stroke{Width: 0.25, Color: render.Black}
		b.Stroke(geometry.Line(from, from.Add(geometry.Pt(r.length, 0))), stroke)
		for i := 0; ; i++ {
			x := r.step * geometry.Length(i)
			if x > r.length+1e-6 {
				break
			}
			tick := geometry.Length(1.4)
			switch {
			case i == 0 || x.Near(r.length):
				tick = 4
			case i%r.whole == 0:
				tick = 2.4
			}
			b.Stroke(geometry.Line(from.Add(geometry.Pt(x, 0)), from.Add(geometry.Pt(x, -tick))), stroke)
		}
		b.Text(render.Text{At: from.Add(geometry.Pt(0, typeset.LineHeight(render.SmallSize)+0.2)),
			String: "this line is " + r.name + " long on a true print", Size: render.SmallSize, Color: render.Black})
	}
}

// littleMap draws the grid of sheets with this one filled.
func (b *booklet) littleMap(t paper.Tiling, here paper.Tile, in geometry.Box) {
	cell := min(in.Width()/geometry.Length(t.Cols), in.Height()/geometry.Length(t.Rows), 9)
	stroke := render.Stroke{Width: 0.2, Color: render.Black}
	left, top := in.Max.X-cell*geometry.Length(t.Cols), in.Min.Y
	for _, tile := range t.Tiles {
		x, y := left+cell*geometry.Length(tile.Col-1), top+cell*geometry.Length(tile.Row-1)
		box := geometry.Bx(x, y, x+cell, y+cell)
		if tile == here {
			b.Fill(geometry.Rectangle(box.Grow(-cell/6)), render.Black)
		}
		b.Stroke(geometry.Rectangle(box), stroke)
	}
}

// rule draws a thin line that parts one thing from another.
func (b *booklet) rule(from, to geometry.Point) {
	layout.Rule(b, from, to)
}
