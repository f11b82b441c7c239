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

// tallOf returns how tall the drawing of a piece is in a cell of a width.
func tallOf(p geometry.Piece, wide, most Length) Length {
	w, h := p.Size()
	return min(most, cellWords+h*(wide-besides)/w)
}

// drawings returns the drawings of the pieces, two beside each other a block.
func (d *doc) drawings() []document.Block {
	wide := (d.column().Width() - 5) / 2
	if len(d.plan.Pieces) == 1 {
		wide = d.column().Width()
	}
	rows := slices.Collect(slices.Chunk(d.plan.Pieces, 2))
	tall := func(row []geometry.Piece, most Length) (tall Length) {
		for _, p := range row {
			tall = max(tall, tallOf(p, wide, most))
		}
		return tall
	}
	pages := func(most Length) int {
		n, left := 1, d.column().Height()
		for _, row := range rows {
			if left < tall(row, most) {
				n, left = n+1, d.column().Height()
			}
			left -= tall(row, most) + blockGap
		}
		return n
	}
	most := cellTall
	for low := cellTall; low >= cellLow; low-- {
		if pages(low) < pages(most) {
			most = low
		}
	}
	var blocks []document.Block
	for i, row := range rows {
		tall := tall(row, most)
		k := document.Block{Above: blockGap, Draw: func(box geometry.Box) Length {
			for n, p := range row {
				x := box.Min.X + Length(n)*(wide+5)
				d.pieceCell(p, geometry.Bx(x, box.Min.Y, x+wide, box.Min.Y+tall))
			}
			return box.Min.Y + tall
		}}
		if i == 0 {
			k.Bookmark, k.Fresh = "The pieces", true
		}
		blocks = append(blocks, k)
	}
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
		width = d.size(p) // a piece so low has both below it
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
	const long = 12
	x := at.Max.X + 2
	if p.Grain == geometry.GrainHeight {
		y := at.Min.Y + min(long, at.Height())/2
		shape.Thin.Twin(d, geometry.Pt(x, y-long/2), geometry.Pt(x, y+long/2))
		d.Text(render.Text{At: geometry.Pt(x+1.2+typeset.Ascent(render.SmallSize), y), String: p.Material.Direction(), Size: render.SmallSize, Align: render.Middle, Turned: true, Color: render.Black})
		return
	}
	// Along the width: below, at the right end of the line that has the size.
	y := at.Max.Y + 1.6 + 1 + typeset.Ascent(render.NoteSize)*0.6
	if room := at.Width() / 2; room < 22 {
		shape.Thin.Twin(d, geometry.Pt(x, at.Center().Y), geometry.Pt(x+4.6, at.Center().Y))
		return
	}
	shape.Thin.Twin(d, geometry.Pt(at.Max.X-long, y), geometry.Pt(at.Max.X, y))
	d.Text(render.Text{At: geometry.Pt(at.Max.X+1, y+typeset.Ascent(render.SmallSize)/2), String: p.Material.Direction(), Size: render.SmallSize, Color: render.Black})
}
