package templates

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/document"
	"forel/render/labelled"
	"forel/render/typeset"
)

// foot draws the bottom of a page: rulers to check the print by, what is on
// the page and where it belongs.
func (d *doc) foot(p paper.Page) {
	d.Begin(render.Legend)
	defer d.End()
	lying := p.Width > p.Height
	box := d.Setup.Printable(lying)
	high, above := d.Setup.Foot(lying)
	box.Min.Y = box.Max.Y - high + 1.5
	document.Rule(d, box.Min, geometry.Pt(box.Max.X, box.Min.Y))

	// The words stand right of the rulers or above them, the little map at the
	// right end.
	rulersWide, mapWide := geometry.Length(114), geometry.Length(16)
	words := box.Max.Y
	if above {
		rulersWide, words = 0, box.Min.Y+paper.FootWords
		document.Rulers(d, box.Min.Add(geometry.Pt(0, paper.FootWords)))
	} else {
		document.Rulers(d, box.Min)
	}
	right := box.Max.X
	if t, tile, ok := d.onlyTile(p); ok {
		d.littleMap(t, tile, geometry.Bx(box.Max.X-mapWide+3, box.Min.Y+1.5, box.Max.X, words-0.5))
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
	names := d.contents(p, false)
	if len(names) == 1 && typeset.Width(names[0], render.BodySize, true) > room {
		names = d.contents(p, true)
	}
	size, pageSize, most := render.BodySize, render.NoteSize, 1
	if len(broken(names, size, room)) > most {
		size, pageSize, most = render.SmallSize, render.SmallSize, 3
		if !d.Setup.Measured.True() {
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
	lines = append(lines, line{d.PageText(d.page, d.total()), pageSize, false})
	if !d.Setup.Measured.True() {
		lines = append(lines, line{d.Setup.Measured.String(), render.SmallSize, false})
	}
	for _, l := range lines {
		y += typeset.LineHeight(l.size)
		text := typeset.Fit(l.text, l.size, l.bold, room)
		document.Write(d, geometry.Pt(x, y), text, l.size, l.bold)
	}
}

// onlyTile returns the tile of a page that shows parts of one template, once.
func (d *doc) onlyTile(p paper.Page) (paper.Tiling, paper.Tile, bool) {
	if len(p.Parts) != 1 {
		return paper.Tiling{}, paper.Tile{}, false
	}
	t := d.layout.Tilings[p.Parts[0].Tiling]
	return t, t.Tiles[p.Parts[0].Tile], !t.Whole()
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

// contents names what is on a page; briefly, a part is named by its row and column in
// brackets.
func (d *doc) contents(p paper.Page, briefly bool) (names []string) {
	if t, tile, ok := d.onlyTile(p); ok && !briefly {
		return []string{labelled.Name(t.Piece) + ", " + address(t, tile)}
	}
	for _, part := range p.Parts {
		t := d.layout.Tilings[part.Tiling]
		name := labelled.Name(t.Piece)
		if !t.Whole() {
			name += fmt.Sprintf(" (%d, %d)", t.Tiles[part.Tile].Row, t.Tiles[part.Tile].Col)
		}
		names = append(names, name)
	}
	return names
}

// littleMap draws the grid of sheets with this one filled.
func (d *doc) littleMap(t paper.Tiling, here paper.Tile, in geometry.Box) {
	cell := min(in.Width()/geometry.Length(t.Cols), in.Height()/geometry.Length(t.Rows), 9)
	stroke := render.Stroke{Width: 0.2, Color: render.Black}
	left, top := in.Max.X-cell*geometry.Length(t.Cols), in.Min.Y
	for _, tile := range t.Tiles {
		x, y := left+cell*geometry.Length(tile.Col-1), top+cell*geometry.Length(tile.Row-1)
		box := geometry.Bx(x, y, x+cell, y+cell)
		if tile.Row == here.Row && tile.Col == here.Col {
			d.Fill(geometry.Rectangle(box.Grow(-cell/6)), render.Black)
		}
		d.Stroke(geometry.Rectangle(box), stroke)
	}
}
