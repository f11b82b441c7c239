package handout

import (
	"slices"

	"forel/geometry/stage"
	"forel/render"
	"forel/render/document"
	"forel/render/figure"
)

// key lists the stuffs that are seen in the figures, of which there is something to
// tell apart; the glued backs of all are white.
func (d *doc) key() []document.Sample {
	seen := map[stage.Stuff]bool{}
	for _, s := range d.plan.Steps {
		for _, p := range slices.Concat(s.Pictures...) {
			for _, f := range p.Faces {
				seen[f.Front], seen[f.Back] = true, true
			}
		}
	}
	back := "its glued back"
	if seen[stage.ClothBack] && seen[stage.PaperBack] {
		back = "the glued back of either"
	}
	seen[stage.ClothBack] = seen[stage.ClothBack] || seen[stage.PaperBack] // they look alike
	var out []document.Sample
	for _, e := range []struct {
		stuff stage.Stuff
		name  string
	}{{stage.Card, "blank, outside"}, {stage.CardInside, "inside"}, {stage.Board, "board"}, {stage.Lining, "lining"}, {stage.Cloth, "cloth"}, {stage.Paper, "paper"}, {stage.ClothBack, back}} {
		if seen[e.stuff] {
			border := render.Stroke{Width: 0.25, Color: render.Black}
			out = append(out, document.Sample{Draw: figure.Swatch(d, d.looks[e.stuff], border), Text: e.name})
		}
	}
	return out
}
