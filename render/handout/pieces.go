package handout

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
)

// blank is room to write a length by hand.
const blank = "________"

// pieces returns the list of pieces: each with its size, or room for it, and below it the
// rules for its size.
func (d *doc) pieces() []document.Block {
	t := document.Table{Size: render.BodySize, Ticks: []string{"cut", "checked"}, Apart: document.Rules, Whole: d.Frame != nil, Full: true,
		Columns: []document.Column{{Head: "piece", Bold: true, Broken: true}, {Head: "count", Right: true}, {Head: "of", Broken: true},
			{Head: "width × height", Right: true, Bold: !d.blank}, {Head: geometry.Directions(d.plan.Pieces) + " along"}}}
	for _, p := range d.plan.Pieces {
		size := d.Round.PrettySize(p.Size())
		if d.blank {
			size = blank + " × " + blank
		}
		t.Rows = append(t.Rows, []string{p.Name, fmt.Sprint(p.Count), p.Material.Words(), size, string(p.Grain)})
		t.Notes = append(t.Notes, d.rule(p))
	}
	blocks := d.Table("", t)
	notes := []document.Block{d.Paragraph(d.pieceNote(), render.NoteSize, false).After(0.5)}
	if d.blank {
		notes[0].Stays = true
		notes = append(notes, d.sources())
	}
	blocks[len(blocks)-1].Stays = true
	return append(blocks, notes...)
}

// pieceNote says how sizes are meant.
func (d *doc) pieceNote() string {
	note := wording.Capital(d.plan.Runs) + "."
	if d.blank {
		return note + " A very thin or thick case may need shorter flaps than these rules give: fold one of paper first."
	}
	return note + " Sizes are rounded " + d.Round.String() + "; the templates are exact."
}

// rule returns the line below a piece: the rules for its size, and how large a piece of
// patterned stock is cut first.
func (d *doc) rule(p geometry.Piece) string {
	r := p.Rule
	var parts []string
	switch {
	case r.Width == "":
	case r.Height == "":
		parts = append(parts, "width = "+r.Width)
	default:
		parts = append(parts, bracketed(r.Width)+" × "+bracketed(r.Height))
	}
	if r.Remark != "" {
		parts = append(parts, r.Remark)
	}
	if p.Extra != (geometry.Point{}) && !d.blank {
		parts = append(parts, "cut "+d.Round.PrettySize(p.Rough())+" first, then by the drawing of its face")
	}
	text := strings.Join(parts, "; ")
	if r.Part != "" && text != "" {
		return r.Part + ": " + text
	}
	return text
}

// bracketed sets a rule of several terms in brackets.
func bracketed(rule string) string {
	if strings.ContainsAny(rule, "+−") && !strings.HasPrefix(rule, "(") {
		return "(" + rule + ")"
	}
	return rule
}
