package templates

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
)

// cut returns how many of a template are cut: none of one that is a piece seen from
// its other face.
func cut(p geometry.Piece) string {
	if p.FaceOf != "" {
		return "–"
	}
	return fmt.Sprint(p.Count)
}

// of returns what a template is cut from.
func of(p geometry.Piece) string {
	if p.FaceOf != "" {
		return "drawing"
	}
	return string(p.Material)
}

// narrow is the width of a page whose columns stand one below the other.
const narrow geometry.Length = 165

// table lists every piece with its size and pages.
func (d *doc) table() []document.Block {
	t := document.Table{Size: render.BodySize, Full: true, Columns: []document.Column{{Head: "piece"}, {Head: "cut", Right: true}, {Head: "of"},
		{Head: "width", Right: true}, {Head: "height", Right: true}, {Head: geometry.Directions(d.plan.Drawn()) + " along"}, {Head: "pages", Right: true, Broken: true}}}
	for _, p := range d.plan.Drawn() {
		pages := "marked out"
		if on, ok := d.tiling(p); ok {
			pages = d.pagesText(on)
		}
		w, h := p.Size()
		t.Rows = append(t.Rows, []string{p.Name, cut(p), of(p), d.Round.Pretty(w), d.Round.Pretty(h), string(p.Grain), pages})
	}
	note := "Sizes here are rounded " + d.Round.String() + "; the templates are exact. " + wording.Sentence(d.plan.Runs)
	for _, r := range d.plan.Remarks {
		note += " " + wording.Sentence(r.In(d.Round.Pretty))
	}
	for _, m := range d.plan.Mistaken {
		note += " Take care: " + m.Says + "."
	}
	blocks := d.Table("", t)
	blocks[0].Above = 3
	return append(blocks, d.Paragraph(note, render.NoteSize, false).After(0.8))
}
