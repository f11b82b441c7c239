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
	keyLow     geometry.Length = 42 // where that spares a page
	keyHeading geometry.Length = 14
	keyGutter  geometry.Length = 5
)

// grid is how the cells of the key stand: so many beside and below each other on a page.
type grid struct {
	across, rows int
	tall         geometry.Length
}

func (g grid) pages(cells int) int { return (cells + g.across*g.rows - 1) / (g.across * g.rows) }

// keyGrid returns how so many cells stand: lower ones where that spares a page.
func keyGrid(room geometry.Box, cells int) grid {
	across := min(keyAcross, max(1, int((room.Width()+keyGutter)/(keyWide+keyGutter))))
	high := room.Height() - keyHeading + keyGutter
	of := func(tall geometry.Length) grid { return grid{across, max(1, int(high/(tall+keyGutter))), tall} }
	g, low := of(keyTall), of(keyLow)
	if fewer := low.pages(cells); fewer < g.pages(cells) {
		for g.pages(cells) > fewer {
			g.rows++
		}
		g.tall = high/geometry.Length(g.rows) - keyGutter
	}
	return g
}

// keyPages returns how many pages the key takes.
func (d *doc) keyPages(o Options) int {
	n := len(d.layout.Tilings)
	return keyGrid((&document.Document{Options: o, TrueSize: true}).Room(false), n).pages(n)
}

// key draws every piece small with the sheets it is printed on.
func (d *doc) key() {
	g := keyGrid(d.Room(false), len(d.layout.Tilings))
	first := true
	for part := range slices.Chunk(d.layout.Tilings, g.across*g.rows) {
		box := d.NewPage(false, "")
		if first {
			d.Bookmark("Key to the pages")
			first = false
		}
		d.keyCells(box, part, g)
	}
}

// keyCells draws the key to some templates from the top of a box.
func (d *doc) keyCells(box geometry.Box, tilings []paper.Tiling, g grid) {
	document.Paragraph(d, box, box.Min.Y, "Key to the pages: each piece with the pages it is printed on (not to scale with each other)", render.HeadSize, true)
	wide := (box.Width() - keyGutter*geometry.Length(g.across-1)) / geometry.Length(g.across)
	for i, t := range tilings {
		x := box.Min.X + geometry.Length(i%g.across)*(wide+keyGutter)
		y := box.Min.Y + keyHeading + geometry.Length(i/g.across)*(g.tall+keyGutter)
		d.keyCell(t, geometry.Bx(x, y, x+wide, y+g.tall))
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
