package handout

import (
	"slices"

	"forel/geometry"
	"forel/render"
	"forel/render/document"
	"forel/render/labelled"
	"forel/render/shape"
	"forel/render/typeset"
)

// Heights of the drawing of a piece with its head: at most, at most where that spares a
// page, and of its words.
const (
	cellTall  Length = 82
	cellLow   Length = 62
	cellWords Length = 19
)

// drawings returns the drawings of the pieces, two beside each other a block, lower where that
// spares a page.
func (d *doc) drawings() []document.Block {
	pages := func(most Length) int {
		return len(d.Try(nil, d.drawingsOf(most, func(geometry.Piece, geometry.Box) {})...))
	}
	best, least := cellTall, pages(cellTall)
	for most := cellTall - 2; most >= cellLow; most -= 2 {
		if n := pages(most); n < least {
			best, least = most, n
		}
	}
	return d.drawingsOf(best, d.pieceCell)
}

// drawingsOf returns the drawings of the pieces, at most so tall, each drawn into its cell.
func (d *doc) drawingsOf(most Length, draw func(p geometry.Piece, cell geometry.Box)) []document.Block {
	var blocks []document.Block
	for row := range slices.Chunk(d.plan.Pieces, 2) {
		blocks = append(blocks, document.Block{Above: blockGap, Draw: func(box geometry.Box) Length {
			wide := box.Width()
			if len(d.plan.Pieces) > 1 {
				wide = (wide - gutter) / 2
			}
			box.Max.Y = box.Min.Y
			for _, p := range row {
				w, h := p.Size()
				box.Max.Y = max(box.Max.Y, box.Min.Y+min(most, cellWords+h*(wide-besides)/w))
			}
			for n, p := range row {
				x := box.Min.X + Length(n)*(wide+gutter)
				draw(p, geometry.Bx(x, box.Min.Y, x+wide, box.Max.Y))
			}
			return box.Max.Y
		}})
	}
	blocks[0].Bookmark, blocks[0].Fresh = "The pieces", true
	return blocks
}

// What stands beside the drawing of a piece: its height on the left, the grain on
// the right.
const (
	besideLeft  Length = 5.9
	besideRight Length = 8
	besides            = besideLeft + besideRight
)

// pieceCell draws a piece as large as there is room, with its size, its grain and
// the names of its parts.
func (d *doc) pieceCell(p geometry.Piece, cell geometry.Box) {
	document.Rule(d, cell.Min, geometry.Pt(cell.Max.X, cell.Min.Y))
	y := cell.Min.Y + typeset.LineHeight(render.BodySize)
	document.Write(d, geometry.Pt(cell.Min.X, y), typeset.Fit(labelled.Name(p), render.BodySize, true, cell.Width()), render.BodySize, true)
	y += typeset.LineHeight(render.NoteSize)
	document.Write(d, geometry.Pt(cell.Min.X, y), typeset.Fit(p.Material.Words()+"; "+p.FaceUp, render.NoteSize, false, cell.Width()), render.NoteSize, false)

	room := geometry.Bx(cell.Min.X+besideLeft, y+3, cell.Max.X-besideRight, cell.Max.Y-besideLeft)
	bounds := p.Outline.Bounds()
	scale := min(room.Width()/bounds.Width(), room.Height()/bounds.Height()).MM()
	w, h := bounds.Width()*Length(scale), bounds.Height()*Length(scale)
	at := geometry.Bx(room.Center().X-w/2, room.Min.Y, room.Center().X+w/2, room.Min.Y+h)
	place := func(path geometry.Path) geometry.Path {
		path = path.Move(geometry.Point{}.Sub(bounds.Min)).Scale(scale)
		return path.FlipY(h).Move(at.Min)
	}
	for _, path := range p.Rulings() {
		d.Stroke(place(path), render.Stroke{Width: 0.15, Dash: []Length{2.4, 0.7, 0.5, 0.7}, Color: render.Black})
	}
	for _, path := range p.Folds {
		d.Stroke(place(path), render.Stroke{Width: 0.2, Dash: []Length{1.6, 0.8}, Color: render.Black})
	}
	for _, path := range p.Cuts() {
		d.Stroke(place(path), render.Stroke{Width: 0.4, Color: render.Black})
	}
	d.dimensions(p, at)
	d.grainArrow(p, at)
	d.partNames(p, at, place)
}

// dimensions sets a piece's width below it and its height on its left.
func (d *doc) dimensions(p geometry.Piece, at geometry.Box) {
	w, h := p.Size()
	y, x := at.Max.Y+1.6, at.Min.X-1.6
	d.dimension(geometry.Pt(at.Min.X, y), geometry.Pt(at.Max.X, y), geometry.Pt(0, 0.8))
	width := d.Round.Pretty(w)
	if height := d.Round.Pretty(h); typeset.Width(height, render.NoteSize, false) < at.Height() {
		d.dimension(geometry.Pt(x, at.Min.Y), geometry.Pt(x, at.Max.Y), geometry.Pt(0.8, 0))
		d.Text(render.Text{At: geometry.Pt(x-1-typeset.Descent(render.NoteSize), at.Center().Y), String: height, Size: render.NoteSize, Align: render.Middle, Turned: true, Color: render.Black})
	} else {
		width = d.Round.PrettySize(p.Size()) // a piece so low has both below it
	}
	d.Text(render.Text{At: geometry.Pt(at.Center().X, y+1+typeset.Ascent(render.NoteSize)), String: width, Size: render.NoteSize, Align: render.Middle, Color: render.Black})
}

// dimension draws the line of a dimension, with a stop at either end, so far to both sides.
func (d *doc) dimension(from, to, stop geometry.Point) {
	thin := render.Stroke{Width: 0.15, Color: render.Black}
	d.Stroke(geometry.Line(from, to), thin)
	for _, e := range []geometry.Point{from, to} {
		d.Stroke(geometry.Line(e.Sub(stop), e.Add(stop)), thin)
	}
}

// grainArrow sets an arrow along the grain, or the flutes, beside a piece.
func (d *doc) grainArrow(p geometry.Piece, at geometry.Box) {
	const arm = 4
	word := p.Material.Direction()
	long := shape.GrainLong(word, arm)
	switch x := at.Max.X + 4; {
	case p.Grain == geometry.GrainHeight:
		shape.Grain(d, geometry.Pt(x, at.Min.Y+max(long, min(at.Height(), 2*long))/2), true, word, arm)
	case at.Width()/2 < 22:
		shape.Thin.Twin(d, geometry.Pt(at.Max.X+2, at.Center().Y), geometry.Pt(at.Max.X+6.6, at.Center().Y))
	default: // below, at the right end of the line that has the size
		shape.Grain(d, geometry.Pt(at.Max.X-long/2+arm, at.Max.Y+4.2), false, word, arm)
	}
}
