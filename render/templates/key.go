package templates

import (
	"fmt"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/pattern"
	"forel/render/typeset"
)

// The cells of the key: one a piece, so many across.
const (
	keyAcross                  = 4
	keyTall    geometry.Length = 56
	keyHeading geometry.Length = 14
	keyGutter  geometry.Length = 5
)

// keyRows gives how many rows of cells one page holds.
func (b *booklet) keyRows() int {
	room := b.printable(b.Setup.Size(false)).Height() - keyHeading
	return max(1, int((room+keyGutter)/(keyTall+keyGutter)))
}

// keyPages gives how many pages the key takes.
func (b *booklet) keyPages() int {
	perPage := b.keyRows() * keyAcross
	return (len(b.layout.Patterns) + perPage - 1) / perPage
}

// key draws every piece small with the sheets it is printed on.
func (b *booklet) key() {
	perPage := b.keyRows() * keyAcross
	for start := 0; start < len(b.layout.Patterns); start += perPage {
		box := b.newPage(b.Setup.Sheet.Width, b.Setup.Sheet.Height)
		if start == 0 {
			b.Bookmark("Key to the pages")
		}
		b.Begin(render.Legend)
		b.paragraph(box, box.Min.Y, "Key to the pages: each piece with the pages it is printed on (not to scale with each other)", render.HeadSize, true)
		wide := (box.Width() - keyGutter*(keyAcross-1)) / keyAcross
		for i, t := range b.layout.Patterns[start:min(start+perPage, len(b.layout.Patterns))] {
			x := box.Min.X + geometry.Length(i%keyAcross)*(wide+keyGutter)
			y := box.Min.Y + keyHeading + geometry.Length(i/keyAcross)*(keyTall+keyGutter)
			b.keyCell(t, geometry.Bx(x, y, x+wide, y+keyTall))
		}
		b.End()
	}
}

// keyCell draws one piece as it lies on its pages, with the joins and the page
// number of each tile.
func (b *booklet) keyCell(t paper.Tiling, cell geometry.Box) {
	b.rule(cell.Min, geometry.Pt(cell.Max.X, cell.Min.Y))
	y := cell.Min.Y + typeset.LineHeight(render.BodySize)
	b.Text(render.Text{At: geometry.Pt(cell.Min.X, y), String: pattern.Name(t.Piece), Size: render.BodySize, Bold: true, Color: render.Black})
	word := "page "
	if len(t.Tiles) > 1 {
		word = "pages "
	}
	y += typeset.LineHeight(render.NoteSize)
	b.Text(render.Text{At: geometry.Pt(cell.Min.X, y), String: typeset.Fit(word+b.pagesText(t), render.NoteSize, false, cell.Width()), Size: render.NoteSize, Color: render.Black})

	room := geometry.Bx(cell.Min.X, y+2.5, cell.Max.X, cell.Max.Y)
	whole := t.Tiles[0].Core
	for _, tile := range t.Tiles {
		whole.Min = geometry.Pt(min(whole.Min.X, tile.Core.Min.X), min(whole.Min.Y, tile.Core.Min.Y))
		whole.Max = geometry.Pt(max(whole.Max.X, tile.Core.Max.X), max(whole.Max.Y, tile.Core.Max.Y))
	}
	scale := min(room.Width()/whole.Width(), room.Height()/whole.Height()).MM()
	// place takes the pattern's coordinates to the cell.
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
		b.Stroke(place(geometry.Rectangle(tile.Core)), render.Stroke{Width: 0.15, Dash: []geometry.Length{1.5, 1}, Color: render.Grey})
	}
	for _, p := range t.Piece.Cuts() {
		b.Stroke(place(p), thin(b.Theme[render.Cutting], 0.3))
	}
	for _, p := range t.Piece.Folds {
		b.Stroke(place(p), thin(b.Theme[render.Creasing], 0.12))
	}
	piece := place(geometry.Rectangle(t.Piece.Outline.Bounds())).Bounds()
	for _, tile := range t.Tiles {
		number := render.Text{String: fmt.Sprint(b.pageOf(tile)), Size: render.BodySize, Bold: true, Align: render.Middle, Color: render.Black}
		number.At = place(geometry.Line(tile.Core.Center())).Vertices[0].Add(geometry.Pt(0, typeset.Ascent(number.Size)/2))
		switch narrow := 2 * typeset.Width(number.String, number.Size, true); {
		case piece.Height() < narrow && piece.Width() > piece.Height(): // below a low piece
			number.At.Y = piece.Max.Y + 1 + typeset.Ascent(number.Size)
			if number.At.Y > cell.Max.Y { // or above one at the foot of its cell
				number.At.Y = piece.Min.Y - 1
			}
		case piece.Width() < narrow: // beside a narrow one
			number.At.X, number.Align = piece.Max.X+1.5, render.Start
			if number.At.X+narrow/2 > cell.Max.X { // on the side that has room
				number.At.X, number.Align = piece.Min.X-1.5, render.End
			}
		default:
			half := typeset.Width(number.String, number.Size, true)/2 + 0.5
			number.At.X = min(max(number.At.X, cell.Min.X+half), cell.Max.X-half)
			b.Fill(geometry.Rectangle(typeset.Box(number).Grow(0.5)), render.Color{R: 255, G: 255, B: 255})
		}
		b.Text(number)
	}
}
