package templates

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
)

// cut returns how many of a pattern are cut: none of one that is a piece seen from
// its other face.
func cut(p geometry.Piece) string {
	if p.FaceOf != "" {
		return "–"
	}
	return fmt.Sprint(p.Count)
}

// of returns what a pattern is cut from.
func of(p geometry.Piece) string {
	if p.FaceOf != "" {
		return "drawing"
	}
	return string(p.Material)
}

// narrow is the width of a page whose columns stand one below the other.
const narrow geometry.Length = 165

// table lists every piece with its size and pages.
func (b *booklet) table() []document.Block {
	t := document.Table{Size: render.BodySize, Full: true, Columns: []document.Column{{Head: "piece"}, {Head: "cut", Right: true}, {Head: "of"},
		{Head: "width", Right: true}, {Head: "height", Right: true}, {Head: geometry.Directions(b.plan.Drawn()) + " along"}, {Head: "pages", Right: true, Broken: true}}}
	for _, p := range b.plan.Drawn() {
		pages := "marked out"
		if on, ok := b.tiling(p); ok {
			pages = b.pagesText(on)
		}
		w, h := p.Size()
		t.Rows = append(t.Rows, []string{p.Name, cut(p), of(p), b.Round.Pretty(w), b.Round.Pretty(h), string(p.Grain), pages})
	}
	note := "Sizes here are rounded " + b.Round.String() + "; the patterns are exact. " + wording.Sentence(b.plan.Runs)
	for _, r := range b.plan.Remarks {
		note += " " + wording.Sentence(r.In(b.Round.Pretty))
	}
	for _, m := range b.plan.Mistaken {
		note += " Take care: " + m.Says + "."
	}
	blocks := b.Table("", t)
	blocks[0].Above = 3
	return append(blocks, b.Paragraph(note, render.NoteSize, false).After(0.8))
}
