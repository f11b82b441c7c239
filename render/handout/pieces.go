package handout

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
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
	pieceTall Length = 8.3 // of a row; leastTall where that spares a page
	leastTall Length = 7.8
	shortTall Length = 7.65 // in a short handout
	tick      Length = 3.6
)

// pieceRows returns the list of pieces, a row a block, the head with the first of
// each page.
func (d *doc) pieceRows() []document.Block {
	var blocks []document.Block
	for i, p := range d.plan.Pieces {
		lines := d.ruleLines(p)
		tall := d.rowTall + Length(max(0, len(lines)-1))*typeset.LineHeight(render.SmallSize)
		row := func(box geometry.Box) Length {
			box.Max.Y = box.Min.Y + tall
			d.pieceRow(p, lines, box)
			return box.Max.Y
		}
		k := document.Block{Draw: row, Head: d.pieceHead}
		if i == 0 {
			k = document.Block{Above: blockGap, Draw: func(box geometry.Box) Length {
				box.Min.Y = d.pieceHead(box)
				return row(box)
			}}
		}
		blocks = append(blocks, k)
	}
	blocks = append(blocks, d.Paragraph(d.pieceNote(), render.NoteSize, false).After(0.5))
	if d.blank {
		blocks = append(blocks, d.sources())
	}
	return blocks
}

// pieceNote says how sizes are meant.
func (d *doc) pieceNote() string {
	note := wording.Capital(d.plan.Runs) + "."
	if d.blank {
		return note + " A very thin or thick case may need shorter flaps than these rules give: fold one of paper first."
	}
	return note + " Sizes are rounded " + d.Round.String() + "; the templates are exact."
}

func (d *doc) pieceHead(box geometry.Box) Length {
	box.Max.Y = box.Min.Y + 9
	y := box.Max.Y - 2.2
	for _, h := range []struct {
		x    Length
		word string
		end  bool
	}{
		{atCut, "cut", false}, {atChecked, "checked", false}, {atName, "piece", false}, {atCount, "count", true}, {atOf, "of", false},
		{box.Width() - sizeEnds, "width × height", true}, {box.Width() - grainAt, geometry.Directions(d.plan.Pieces) + " along", false},
	} {
		t := render.Text{At: geometry.Pt(box.Min.X+h.x, y), String: h.word, Size: render.NoteSize, Bold: true, Color: render.Black}
		if h.end {
			t.Align = render.End
		}
		if h.word != "of" || !d.narrowBlank() {
			d.Text(t)
		}
	}
	document.Rule(d, geometry.Pt(box.Min.X, box.Max.Y), box.Max)
	return box.Max.Y
}

func (d *doc) pieceRow(p geometry.Piece, lines []string, box geometry.Box) {
	base := box.Min.Y + 4
	for _, x := range []Length{atCut, atChecked} {
		document.Tick(d, geometry.Pt(box.Min.X+x, base+0.4), tick)
	}
	document.Write(d, geometry.Pt(box.Min.X+atName, base), p.Name, render.BodySize, true)
	d.Text(render.Text{At: geometry.Pt(box.Min.X+atCount, base), String: fmt.Sprint(p.Count), Size: render.BodySize, Align: render.End, Color: render.Black})
	end := box.Max.X - sizeEnds
	of, sized := render.BodySize, render.BodySize // smaller in a narrow column
	if !d.blank {
		of, sized = d.sizesIn(end-box.Min.X-atOf-1, p.Material.Words(), d.size(p))
	}
	if !d.narrowBlank() {
		document.Write(d, geometry.Pt(box.Min.X+atOf, base), p.Material.Words(), of, false)
	}
	if d.blank {
		d.Text(render.Text{At: geometry.Pt(end-18.5, base), String: "×", Size: render.BodySize, Align: render.Middle, Color: render.Black})
		for _, x := range []Length{end - 36, end - 17} {
			d.Stroke(geometry.Line(geometry.Pt(x, base+0.8), geometry.Pt(x+16, base+0.8)), cellLine)
		}
	} else {
		d.Text(render.Text{At: geometry.Pt(end, base), String: d.size(p), Size: sized, Bold: true, Align: render.End, Color: render.Black})
	}
	document.Write(d, geometry.Pt(box.Max.X-grainAt, base), string(p.Grain), render.BodySize, false)
	for i, l := range lines {
		document.Write(d, geometry.Pt(box.Min.X+atName, base+3.1+Length(i)*typeset.LineHeight(render.SmallSize)), l, render.SmallSize, false)
	}
	document.Rule(d, geometry.Pt(box.Min.X, box.Max.Y), box.Max)
}

// narrowBlank tells whether a row has no room for a material beside the blanks of a size:
// it stands before the rule then.
func (d *doc) narrowBlank() bool { return d.blank && d.column().Width() < leastColumn }

// sizesIn returns the sizes of type in which a plain word and a bold one stand side
// by side in a width, as large as can be, the first one smaller before the other.
func (d *doc) sizesIn(width Length, plain, bold string) (render.Points, render.Points) {
	sizes := []render.Points{render.BodySize, render.NoteSize, render.SmallSize}
	for _, second := range sizes {
		for _, first := range sizes {
			if typeset.Width(plain, first, false)+typeset.Width(bold, second, true) <= width {
				return first, second
			}
		}
	}
	return render.SmallSize, render.SmallSize
}

// size returns a piece's width and height in words.
func (d *doc) size(p geometry.Piece) string {
	w, h := p.Size()
	return d.Round.PrettyNumber(w) + " × " + d.Round.Pretty(h)
}

// ruleLines returns the lines below a piece: the rules for its size, and how large
// a piece of patterned stock is cut first.
func (d *doc) ruleLines(p geometry.Piece) []string {
	r, text := p.Rule, ""
	switch {
	case r.Width == "":
	case r.Height == "":
		text = "width = " + r.Width
	default:
		text = bracketed(r.Width) + " × " + bracketed(r.Height)
	}
	if r.Remark != "" {
		if text != "" {
			text += "; "
		}
		text += r.Remark
	}
	if p.Extra != (geometry.Point{}) && !d.blank {
		w, h := p.Rough()
		text += "; cut " + d.Round.PrettyNumber(w) + " × " + d.Round.Pretty(h) + " first, then by the drawing of its face"
	}
	text = strings.TrimPrefix(text, "; ")
	if d.narrowBlank() && text != "" {
		text = p.Material.Words() + ": " + text
	}
	if r.Part != "" && text != "" {
		text = r.Part + ": " + text
	}
	return typeset.Break(text, render.SmallSize, false, d.column().Width()-atName)
}

// bracketed sets a rule of several terms in brackets.
func bracketed(rule string) string {
	if strings.ContainsAny(rule, "+−") && !strings.HasPrefix(rule, "(") {
		return "(" + rule + ")"
	}
	return rule
}
