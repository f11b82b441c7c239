package handout

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/render"
	"forel/render/layout"
	"forel/render/pattern"
	"forel/render/typeset"
)

// Places in a row of the list of pieces, from its left; size and grain from its
// right.
const (
	atCut     Length = 0
	atChecked Length = 9
	atName    Length = 24
	atCount   Length = 62
	atOf      Length = 65
	sizeEnds  Length = 20
	grainAt   Length = 17
	pieceTall Length = 8.3
	tick      Length = 3.6
)

// pieceRows gives the list of pieces, a row a block, the head with the first.
func (b *book) pieceRows(r sheetRules) []block {
	var blocks []block
	for i, p := range b.plan.Pieces {
		rule := r.sizes[p.Name]
		lines := b.ruleLines(rule)
		tall := pieceTall + Length(max(0, len(lines)-1))*typeset.LineHeight(render.SmallSize)
		k := block{
			tight:  i > 0,
			height: func(Length) Length { return tall },
			draw: func(box geometry.Box, _ Length) {
				b.pieceRow(p, lines, geometry.Bx(box.Min.X, box.Min.Y, box.Max.X, box.Min.Y+tall))
			},
		}
		const head Length = 9
		if i > 0 {
			k.headTall, k.head = head, b.pieceHead
		} else {
			row := k.draw
			k.height = func(Length) Length { return tall + head }
			k.draw = func(box geometry.Box, f Length) {
				b.pieceHead(geometry.Bx(box.Min.X, box.Min.Y, box.Max.X, box.Min.Y+head))
				box.Min.Y += head
				row(box, f)
			}
		}
		blocks = append(blocks, k)
	}
	if note := b.pieceNote(); note != "" {
		blocks = append(blocks, block{
			tight: true,
			height: func(Length) Length {
				return 1 + layout.ParagraphHeight(note, render.NoteSize, false, b.column().Width())
			},
			draw: func(box geometry.Box, _ Length) {
				layout.Paragraph(b, box, box.Min.Y+0.5, note, render.NoteSize, false)
			},
		})
	}
	return blocks
}

// pieceNote says how sizes are meant.
func (b *book) pieceNote() string {
	note := "Width runs from spine to mouth; on spine pieces, and on head and tail pieces of the covering, from side to side."
	if b.card != nil {
		note = "Width runs across both sides and the spine."
	}
	if b.blank {
		return note + " Usual sizes are common practice, no source. A thin case may need shorter flaps and tabs than these rules give: fold a paper one first."
	}
	return note + " Sizes are rounded " + b.Round.String() + "; the patterns are exact."
}

func (b *book) pieceHead(box geometry.Box) {
	y := box.Max.Y - 2.2
	for _, h := range []struct {
		x    Length
		word string
		end  bool
	}{
		{atCut, "cut", false}, {atChecked, "checked", false}, {atName, "piece", false}, {atCount, "count", true}, {atOf, "of", false},
		{box.Width() - sizeEnds, "width × height", true}, {box.Width() - grainAt, "grain along", false},
	} {
		t := render.Text{At: geometry.Pt(box.Min.X+h.x, y), String: h.word, Size: render.NoteSize, Bold: true, Color: render.Black}
		if h.end {
			t.Align = render.End
		}
		b.Text(t)
	}
	layout.Rule(b, geometry.Pt(box.Min.X, box.Max.Y), box.Max)
}

func (b *book) pieceRow(p geometry.Piece, lines []string, box geometry.Box) {
	base := box.Min.Y + 4
	for _, x := range []Length{atCut, atChecked} {
		b.Stroke(geometry.Rectangle(geometry.Bx(box.Min.X+x, base-tick+0.4, box.Min.X+x+tick, base+0.4)), render.Stroke{Width: 0.25, Color: render.Black})
	}
	layout.Write(b, geometry.Pt(box.Min.X+atName, base), p.Name, render.BodySize, true)
	b.Text(render.Text{At: geometry.Pt(box.Min.X+atCount, base), String: fmt.Sprint(p.Count), Size: render.BodySize, Align: render.End, Color: render.Black})
	layout.Write(b, geometry.Pt(box.Min.X+atOf, base), material(p.Material), render.BodySize, false)
	end := box.Max.X - sizeEnds
	if b.blank {
		b.Text(render.Text{At: geometry.Pt(end-18.5, base), String: "×", Size: render.BodySize, Align: render.Middle, Color: render.Black})
		for _, x := range []Length{end - 36, end - 17} {
			b.Stroke(geometry.Line(geometry.Pt(x, base+0.8), geometry.Pt(x+16, base+0.8)), cellLine)
		}
	} else {
		b.Text(render.Text{At: geometry.Pt(end, base), String: b.size(p), Size: render.BodySize, Bold: true, Align: render.End, Color: render.Black})
	}
	layout.Write(b, geometry.Pt(box.Max.X-grainAt, base), string(p.Grain), render.BodySize, false)
	for i, l := range lines {
		layout.Write(b, geometry.Pt(box.Min.X+atName, base+3.1+Length(i)*typeset.LineHeight(render.SmallSize)), l, render.SmallSize, false)
	}
	layout.Rule(b, geometry.Pt(box.Min.X, box.Max.Y), box.Max)
}

// size gives a piece's width and height in words.
func (b *book) size(p geometry.Piece) string {
	w, h := p.Size()
	return b.Round.PrettyNumber(w) + " × " + b.Round.Pretty(h)
}

// ruleLines gives the lines below a piece: the rules for its size.
func (b *book) ruleLines(r sizeRule) []string {
	var text string
	switch {
	case r.width == "":
	case r.height == "":
		text = "width = " + r.width
	default:
		text = bracketed(r.width) + " × " + bracketed(r.height)
	}
	if r.remark != "" {
		if text != "" {
			text += "; "
		}
		text += r.remark
	}
	return typeset.Wrap(text, render.SmallSize, false, b.column().Width()-atName)
}

func material(m geometry.Material) string {
	switch m {
	case geometry.Lining:
		return "lining paper"
	case geometry.Cloth:
		return "book cloth"
	case geometry.Paper:
		return "covering paper"
	}
	return string(m)
}

// Heights of the drawing of a piece with its head: at most, and of its words.
const (
	cellTall  Length = 82
	cellWords Length = 19
)

// tallOf gives how tall the drawing of a piece is in a cell of a width.
func tallOf(p geometry.Piece, wide Length) Length {
	w, h := p.Size()
	return min(cellTall, cellWords+h*(wide-besides)/w)
}

// drawings gives the drawings of the pieces, two beside each other a block.
func (b *book) drawings() []block {
	var blocks []block
	ps := b.plan.Pieces
	for i := 0; i < len(ps); i += 2 {
		row := ps[i:min(i+2, len(ps))]
		wide := (b.column().Width() - 5) / 2
		if len(ps) == 1 {
			wide = b.column().Width()
		}
		var tall Length
		for _, p := range row {
			tall = max(tall, tallOf(p, wide))
		}
		k := block{
			height: func(Length) Length { return tall },
			draw: func(box geometry.Box, _ Length) {
				for n, p := range row {
					x := box.Min.X + Length(n)*(wide+5)
					b.pieceCell(p, geometry.Bx(x, box.Min.Y, x+wide, box.Max.Y))
				}
			},
		}
		if i == 0 {
			k.mark, k.fresh = "The pieces", true
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
func (b *book) pieceCell(p geometry.Piece, cell geometry.Box) {
	layout.Rule(b, cell.Min, geometry.Pt(cell.Max.X, cell.Min.Y))
	y := cell.Min.Y + typeset.LineHeight(render.BodySize)
	layout.Write(b, geometry.Pt(cell.Min.X, y), typeset.Fit(pattern.Name(p), render.BodySize, true, cell.Width()), render.BodySize, true)
	y += typeset.LineHeight(render.NoteSize)
	layout.Write(b, geometry.Pt(cell.Min.X, y), typeset.Fit(material(p.Material)+"; "+p.FaceUp, render.NoteSize, false, cell.Width()), render.NoteSize, false)

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
		b.Stroke(place(path), render.Stroke{Width: 0.15, Dash: []Length{2.4, 0.7, 0.5, 0.7}, Color: render.Black})
	}
	for _, path := range p.Folds {
		b.Stroke(place(path), render.Stroke{Width: 0.2, Dash: []Length{1.6, 0.8}, Color: render.Black})
	}
	for _, path := range p.Cuts() {
		b.Stroke(place(path), render.Stroke{Width: 0.4, Color: render.Black})
	}
	b.dimensions(p, at)
	b.grainArrow(p, at)
	b.partNames(p, at, place)
}

// dimensions sets a piece's width below it and its height on its left.
func (b *book) dimensions(p geometry.Piece, at geometry.Box) {
	w, h := p.Size()
	thin := render.Stroke{Width: 0.15, Color: render.Black}
	y, x := at.Max.Y+1.6, at.Min.X-1.6
	b.Stroke(geometry.Line(geometry.Pt(at.Min.X, y), geometry.Pt(at.Max.X, y)), thin)
	for _, e := range []Length{at.Min.X, at.Max.X} {
		b.Stroke(geometry.Line(geometry.Pt(e, y-0.8), geometry.Pt(e, y+0.8)), thin)
	}
	width := b.Round.Pretty(w)
	if height := b.Round.Pretty(h); typeset.Width(height, render.NoteSize, false) < at.Height() {
		b.heightMark(height, x, at)
	} else {
		width = b.size(p) // a piece so low has both below it
	}
	b.Text(render.Text{At: geometry.Pt(at.Center().X, y+1+typeset.Ascent(render.NoteSize)), String: width, Size: render.NoteSize, Align: render.Middle, Color: render.Black})
}

// heightMark sets a piece's height on its left.
func (b *book) heightMark(height string, x Length, at geometry.Box) {
	thin := render.Stroke{Width: 0.15, Color: render.Black}
	b.Stroke(geometry.Line(geometry.Pt(x, at.Min.Y), geometry.Pt(x, at.Max.Y)), thin)
	for _, e := range []Length{at.Min.Y, at.Max.Y} {
		b.Stroke(geometry.Line(geometry.Pt(x-0.8, e), geometry.Pt(x+0.8, e)), thin)
	}
	b.Text(render.Text{At: geometry.Pt(x-1-typeset.Descent(render.NoteSize), at.Center().Y), String: height, Size: render.NoteSize, Align: render.Middle, Turned: true, Color: render.Black})
}

// grainArrow sets an arrow along the grain beside a piece.
func (b *book) grainArrow(p geometry.Piece, at geometry.Box) {
	const long = 12
	x := at.Max.X + 2
	if p.Grain == geometry.GrainHeight {
		y := at.Min.Y + min(long, at.Height())/2
		b.twinArrow(geometry.Pt(x, y-long/2), geometry.Pt(x, y+long/2))
		b.Text(render.Text{At: geometry.Pt(x+1.2+typeset.Ascent(render.SmallSize), y), String: "grain", Size: render.SmallSize, Align: render.Middle, Turned: true, Color: render.Black})
		return
	}
	// Along the width: below, at the right end of the line that has the size.
	y := at.Max.Y + 1.6 + 1 + typeset.Ascent(render.NoteSize)*0.6
	if room := at.Width() / 2; room < 22 {
		b.twinArrow(geometry.Pt(x, at.Center().Y), geometry.Pt(x+4.6, at.Center().Y))
		return
	}
	b.twinArrow(geometry.Pt(at.Max.X-long, y), geometry.Pt(at.Max.X, y))
	b.Text(render.Text{At: geometry.Pt(at.Max.X+1, y+typeset.Ascent(render.SmallSize)/2), String: "grain", Size: render.SmallSize, Color: render.Black})
}

func (b *book) twinArrow(p, q geometry.Point) {
	b.Stroke(geometry.Line(p, q), thinArrow)
	b.arrowHead(p, q, 1.6)
	b.arrowHead(q, p, 1.6)
}

// bracketed sets a rule of several terms in brackets.
func bracketed(rule string) string {
	if strings.ContainsAny(rule, "+−") && !strings.HasPrefix(rule, "(") {
		return "(" + rule + ")"
	}
	return rule
}
