package templates

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/layout"
	"forel/render/pattern"
	"forel/render/typeset"
)

// foot draws the bottom of a page: rulers to check the print by, what is on
// the page and where it belongs.
func (b *booklet) foot(p paper.Page) {
	b.Begin(render.Legend)
	defer b.End()
	lying := p.Width > p.Height
	box := b.Setup.Printable(lying)
	high, above := b.Setup.Foot(lying)
	box.Min.Y = box.Max.Y - high + 1.5
	b.rule(box.Min, geometry.Pt(box.Max.X, box.Min.Y))

	// The words stand right of the rulers or above them, the little map at the
	// right end.
	rulersWide, mapWide := geometry.Length(114), geometry.Length(16)
	words := box.Max.Y
	if above {
		rulersWide, words = 0, box.Min.Y+paper.FootWords
		b.rulers(box.Min.Add(geometry.Pt(0, paper.FootWords)))
	} else {
		b.rulers(box.Min)
	}
	right := box.Max.X
	if t, tile, ok := b.onlyTile(p); ok {
		b.littleMap(t, tile, geometry.Bx(box.Max.X-mapWide+3, box.Min.Y+1.5, box.Max.X, words-0.5))
		right -= mapWide
	}
	x, room := box.Min.X+rulersWide, right-box.Min.X-rulersWide
	y := box.Min.Y
	type line struct {
		text string
		size render.Points
		bold bool
	}
	// All that is on the page is named: smaller, on more lines, where it is much.
	names := b.contents(p)
	size, pageSize, most := render.BodySize, render.NoteSize, 1
	if len(broken(names, size, room)) > most {
		size, pageSize, most = render.SmallSize, render.SmallSize, 3
		if !b.Setup.Measured.True() {
			most = 2
		}
	}
	var lines []line
	rows := broken(names, size, room)
	for i, text := range rows[:min(most, len(rows))] {
		if i == most-1 {
			text = strings.Join(rows[i:], " ")
		}
		lines = append(lines, line{text, size, true})
	}
	lines = append(lines, line{fmt.Sprintf("page %d of %d", b.page, b.total()) + titled(b.plan.Title), pageSize, false})
	if !b.Setup.Measured.True() {
		lines = append(lines, line{b.Setup.Measured.String(), render.SmallSize, false})
	}
	for _, l := range lines {
		y += typeset.LineHeight(l.size)
		text := typeset.Fit(l.text, l.size, l.bold, room)
		b.Text(render.Text{At: geometry.Pt(x, y), String: text, Size: l.size, Bold: l.bold, Color: render.Black})
	}
}

// onlyTile gives the tile of a page that shows parts of one pattern, once.
func (b *booklet) onlyTile(p paper.Page) (paper.Tiling, paper.Tile, bool) {
	t := b.layout.Patterns[p.Parts[0].Pattern]
	return t, t.Tiles[p.Parts[0].Tile], len(p.Parts) == 1 && !t.Whole()
}

// broken sets a list in lines no longer than a width, broken between its items.
func broken(items []string, size render.Points, width geometry.Length) (lines []string) {
	for i, item := range items {
		if i < len(items)-1 {
			item += ","
		}
		if last := len(lines) - 1; last >= 0 && typeset.Width(lines[last]+" "+item, size, true) <= width {
			lines[last] += " " + item
		} else {
			lines = append(lines, item)
		}
	}
	return lines
}

// contents names what is on a page.
func (b *booklet) contents(p paper.Page) (names []string) {
	if t, tile, ok := b.onlyTile(p); ok {
		return []string{pattern.Name(t.Piece) + ", " + address(t, tile)}
	}
	for _, part := range p.Parts {
		t := b.layout.Patterns[part.Pattern]
		name := pattern.Name(t.Piece)
		if !t.Whole() {
			name += fmt.Sprintf(" (%d, %d)", t.Tiles[part.Tile].Row, t.Tiles[part.Tile].Col)
		}
		names = append(names, name)
	}
	return names
}

// printable gives what of a page may be drawn on, above the line that states a
// correction where there is one.
func (b *booklet) printable(width, height geometry.Length) geometry.Box {
	box := b.Setup.Printable(width > height)
	if !b.Setup.Measured.True() {
		box.Max.Y -= typeset.LineHeight(render.SmallSize)
	}
	return box
}

// corrected states at the bottom of a page how its scale was corrected.
func (b *booklet) corrected(width, height geometry.Length) {
	if b.Setup.Measured.True() {
		return
	}
	box := b.Setup.Printable(width > height)
	b.Begin(render.Legend)
	b.Text(render.Text{At: geometry.Pt(box.Min.X, box.Max.Y-typeset.Descent(render.SmallSize)),
		String: b.Setup.Measured.String(), Size: render.SmallSize, Color: render.Black})
	b.End()
}

func titled(title string) string {
	if title == "" {
		return ""
	}
	return " – " + title
}

// rulers draws the scale check: 100 mm with its marks upward, 4 in with its
// marks downward, to be measured on the print.
func (b *booklet) rulers(at geometry.Point) {
	stroke := render.Stroke{Width: 0.25, Color: render.Black}
	for _, r := range []struct {
		down, length, step geometry.Length
		whole              int             // a longer mark every so many
		up                 geometry.Length // 1 or -1
		name               string
		nameDown           geometry.Length
	}{
		{5.5, 100, 5, 2, 1, "100 mm", -1},
		{6.9, 4 * geometry.Inch, geometry.Inch / 4, 4, -1, "4 in", 1 + typeset.Ascent(render.SmallSize)},
	} {
		from := at.Add(geometry.Pt(0, r.down))
		b.Stroke(geometry.Line(from, from.Add(geometry.Pt(r.length, 0))), stroke)
		for i := 0; ; i++ {
			x := r.step * geometry.Length(i)
			if x > r.length+1e-6 {
				break
			}
			mark := geometry.Length(1.3)
			switch {
			case i == 0 || x.Near(r.length):
				mark = 4
			case i%r.whole == 0:
				mark = 2.4
			}
			b.Stroke(geometry.Line(from.Add(geometry.Pt(x, 0)), from.Add(geometry.Pt(x, -r.up*mark))), stroke)
		}
		b.Text(render.Text{At: from.Add(geometry.Pt(r.length+0.8, r.nameDown)), String: r.name, Size: render.SmallSize, Color: render.Black})
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
		if tile.Row == here.Row && tile.Col == here.Col {
			b.Fill(geometry.Rectangle(box.Grow(-cell/6)), render.Black)
		}
		b.Stroke(geometry.Rectangle(box), stroke)
	}
}

// rule draws a thin line that parts one thing from another.
func (b *booklet) rule(from, to geometry.Point) {
	layout.Rule(b, from, to)
}
