package templates

import (
	"fmt"

	"forel/geometry"
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
	return (len(b.pieces) + perPage - 1) / perPage
}

// key draws every piece small with the sheets it is printed on.
func (b *booklet) key() {
	perPage := b.keyRows() * keyAcross
	for start := 0; start < len(b.pieces); start += perPage {
		box := b.newPage(b.Setup.Sheet.Width, b.Setup.Sheet.Height)
		if start == 0 {
			b.Bookmark("Key to the pages")
		}
		b.Begin(render.Legend)
		b.paragraph(box, box.Min.Y, "Key to the pages: each piece with the pages it is printed on (not to scale with each other)", render.HeadSize, true)
		wide := (box.Width() - keyGutter*(keyAcross-1)) / keyAcross
		for i, s := range b.pieces[start:min(start+perPage, len(b.pieces))] {
			x := box.Min.X + geometry.Length(i%keyAcross)*(wide+keyGutter)
			y := box.Min.Y + keyHeading + geometry.Length(i/keyAcross)*(keyTall+keyGutter)
			b.keyCell(s, geometry.Bx(x, y, x+wide, y+keyTall))
		}
		b.End()
	}
}

// keyCell draws one piece with its grid of sheets, page numbers in the middle
// of each.
func (b *booklet) keyCell(s sheets, cell geometry.Box) {
	b.rule(cell.Min, geometry.Pt(cell.Max.X, cell.Min.Y))
	y := cell.Min.Y + typeset.LineHeight(render.BodySize)
	b.Text(render.Text{At: geometry.Pt(cell.Min.X, y), String: pattern.Name(s.piece), Size: render.BodySize, Bold: true, Color: render.Black})
	word := "page "
	if len(s.tiling.Tiles) > 1 {
		word = "pages "
	}
	y += typeset.LineHeight(render.NoteSize)
	b.Text(render.Text{At: geometry.Pt(cell.Min.X, y), String: word + s.pagesText(), Size: render.NoteSize, Color: render.Black})

	room := geometry.Bx(cell.Min.X, y+2.5, cell.Max.X, cell.Max.Y)
	tiles := s.tiling.Tiles
	whole := tiles[0].Window
	for _, t := range tiles {
		whole.Min = geometry.Pt(min(whole.Min.X, t.Window.Min.X), min(whole.Min.Y, t.Window.Min.Y))
		whole.Max = geometry.Pt(max(whole.Max.X, t.Window.Max.X), max(whole.Max.Y, t.Window.Max.Y))
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
	for _, t := range tiles {
		b.Stroke(place(geometry.Rectangle(t.Core)), render.Stroke{Width: 0.15, Dash: []geometry.Length{1.5, 1}, Color: render.Grey})
	}
	for _, p := range s.piece.Cuts() {
		b.Stroke(place(p), thin(b.Theme[render.Cutting], 0.3))
	}
	for _, p := range s.piece.Folds {
		b.Stroke(place(p), thin(b.Theme[render.Creasing], 0.12))
	}
	for _, t := range tiles {
		number := render.Text{String: fmt.Sprint(s.page(t.Row, t.Col)), Size: render.BodySize, Bold: true, Align: render.Middle, Color: render.Black}
		piece := place(geometry.Rectangle(s.piece.Outline.Bounds())).Bounds()
		number.At = place(geometry.Line(t.Core.Center())).Vertices[0].Add(geometry.Pt(0, typeset.Ascent(number.Size)/2))
		switch narrow := 2 * typeset.Width(number.String, number.Size, true); {
		case piece.Height() < narrow && piece.Width() > piece.Height(): // below a low piece
			number.At.Y = piece.Max.Y + 1 + typeset.Ascent(number.Size)
		case piece.Width() < narrow: // beside a narrow one
			number.At.X, number.Align = piece.Max.X+1.5, render.Start
		default:
			b.Fill(geometry.Rectangle(typeset.Box(number).Grow(0.5)), render.Color{R: 255, G: 255, B: 255})
		}
		b.Text(number)
	}
}
