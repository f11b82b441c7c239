package templates

import (
	"fmt"
	"slices"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/document"
	"forel/render/labelled"
	"forel/render/typeset"
)

// The cells of the key: one a piece, so many across.
const (
	keyWide    geometry.Length = 35 // at least
	keyAcross                  = 4  // at most
	keyTall    geometry.Length = 56
	keyHeading geometry.Length = 14
	keyGutter  geometry.Length = 5
)

// keyGrid returns how many cells stand beside and below each other on a page.
func keyGrid(room geometry.Box) (across, rows int) {
	across = min(keyAcross, max(1, int((room.Width()+keyGutter)/(keyWide+keyGutter))))
	return across, max(1, int((room.Height()-keyHeading+keyGutter)/(keyTall+keyGutter)))
}

// keyPages returns how many pages the key takes.
func (d *doc) keyPages(o Options) int {
	across, rows := keyGrid((&document.Document{Options: o, TrueSize: true}).Room(false))
	return (len(d.layout.Tilings) + across*rows - 1) / (across * rows)
}

// key draws every piece small with the sheets it is printed on.
func (d *doc) key() {
	across, rows := keyGrid(d.Room(false))
	perPage := across * rows
	for start := 0; start < len(d.layout.Tilings); start += perPage {
		box := d.NewPage(false, "")
		if start == 0 {
			d.Bookmark("Key to the pages")
		}
		d.keyCells(box, d.layout.Tilings[start:min(start+perPage, len(d.layout.Tilings))])
	}
}

// keyCells draws the key to some templates from the top of a box, as many across as it
// takes.
func (d *doc) keyCells(box geometry.Box, tilings []paper.Tiling) {
	across, _ := keyGrid(box)
	document.Paragraph(d, box, box.Min.Y, "Key to the pages: each piece with the pages it is printed on (not to scale with each other)", render.HeadSize, true)
	wide := (box.Width() - keyGutter*geometry.Length(across-1)) / geometry.Length(across)
	for i, t := range tilings {
		x := box.Min.X + geometry.Length(i%across)*(wide+keyGutter)
		y := box.Min.Y + keyHeading + geometry.Length(i/across)*(keyTall+keyGutter)
		d.keyCell(t, geometry.Bx(x, y, x+wide, y+keyTall))
	}
}

// keyCell draws one piece as it lies on its pages, with the joins and the page
// number of each tile.
func (d *doc) keyCell(t paper.Tiling, cell geometry.Box) {
	document.Rule(d, cell.Min, geometry.Pt(cell.Max.X, cell.Min.Y))
	y := cell.Min.Y + typeset.LineHeight(render.BodySize)
	document.Write(d, geometry.Pt(cell.Min.X, y), labelled.Name(t.Piece), render.BodySize, true)
	word := "page "
	if len(t.Tiles) > 1 {
		word = "pages "
	}
	y += typeset.LineHeight(render.NoteSize)
	document.Write(d, geometry.Pt(cell.Min.X, y), typeset.Fit(word+d.pagesText(t), render.NoteSize, false, cell.Width()), render.NoteSize, false)

	room := geometry.Bx(cell.Min.X, y+2.5, cell.Max.X, cell.Max.Y)
	whole := t.Tiles[0].Core
	for _, tile := range t.Tiles {
		whole = geometry.Around(whole.Min, whole.Max, tile.Core.Min, tile.Core.Max)
	}
	scale := min(room.Width()/whole.Width(), room.Height()/whole.Height()).MM()
	// place takes the template's coordinates to the cell.
	place := func(p geometry.Path) geometry.Path {
		p = p.Move(geometry.Pt(-whole.Center().X, -whole.Center().Y)).Scale(scale)
		return p.FlipY(0).Move(room.Center())
	}
	thin := func(s render.Stroke, width geometry.Length) render.Stroke {
		s.Width, s.Dash = width, nil
		return s
	}
	for _, tile := range t.Tiles {
		if t.Whole() {
			break
		}
		d.Stroke(place(geometry.Rectangle(tile.Core)), render.Stroke{Width: 0.15, Dash: []geometry.Length{1.5, 1}, Color: render.Grey})
	}
	for _, p := range t.Piece.Cuts() {
		d.Stroke(place(p), thin(d.Theme[render.Cutting], 0.3))
	}
	for _, p := range t.Piece.Folds {
		d.Stroke(place(p), thin(d.Theme[render.Creasing], 0.12))
	}
	d.keyNumbers(t, geometry.Bx(cell.Min.X, y+typeset.Descent(render.NoteSize)+0.3, cell.Max.X, cell.Max.Y), place)
}

// keyNumbers sets the page number of each tile: on it, or where the piece is
// narrow beside it, within the cell and clear of the numbers set before, smaller
// if need be. One that finds no room is left out: the line above the drawing has
// them all.
func (d *doc) keyNumbers(t paper.Tiling, cell geometry.Box, place func(geometry.Path) geometry.Path) {
	piece := place(geometry.Rectangle(t.Piece.Outline.Bounds())).Bounds()
	var set []geometry.Box
	number := func(tile paper.Tile, size render.Points) bool {
		middle := place(geometry.Line(tile.Core.Center())).Vertices[0].Point
		text := render.Text{String: fmt.Sprint(d.pageOf(tile)), Size: size, Bold: true, Align: render.Middle, Color: render.Black}
		half, tall := typeset.Width(text.String, size, true)/2, typeset.Ascent(size)
		x := min(max(middle.X, cell.Min.X+half+0.5), cell.Max.X-half-0.5)
		y := min(max(middle.Y+tall/2, cell.Min.Y+tall), cell.Max.Y-typeset.Descent(size))
		on := []geometry.Point{{X: x, Y: y}}
		var level, upright []geometry.Point // below or above, right or left
		for row := range 3 {
			off := geometry.Length(row) * typeset.LineHeight(size)
			level = append(level, geometry.Pt(x, piece.Max.Y+1+tall+off), geometry.Pt(x, piece.Min.Y-1-off))
		}
		for col := range 3 {
			off := 1.5 + half + geometry.Length(col)*(2*half+1.5)
			upright = append(upright, geometry.Pt(piece.Max.X+off, y), geometry.Pt(piece.Min.X-off, y))
		}
		places := slices.Concat(on, level, upright)
		switch narrow := 4 * half; {
		case piece.Height() < narrow && piece.Width() > piece.Height():
			places = slices.Concat(level, upright, on)
		case piece.Width() < narrow:
			places = slices.Concat(upright, level, on)
		}
		for _, at := range places {
			text.At = at
			box := typeset.Box(text)
			if !cell.Contains(box) || slices.ContainsFunc(set, box.Grow(0.3).Overlaps) {
				continue
			}
			if box.Overlaps(piece) {
				d.Fill(geometry.Rectangle(box.Grow(0.5).Intersect(cell)), render.White)
			}
			d.Text(text)
			set = append(set, box)
			return true
		}
		return false
	}
	for _, tile := range t.Tiles {
		for _, size := range []render.Points{render.BodySize, render.NoteSize, render.SmallSize} {
			if number(tile, size) {
				break
			}
		}
	}
}
