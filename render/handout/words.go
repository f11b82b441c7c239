package handout

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/render/document"
)

// before returns the page before the steps: tools, materials, cautions, and how to
// read the figures.
func (d *doc) before() []document.Block {
	read := []string{
		"Every figure is drawn from the measures of this case. Nothing is drawn thicker or longer than it is; cloth, paper and what a case is folded from are drawn as sheets without thickness, and each figure has a scale of its own. Only the look of the book, the pressing boards and the weight is made up.",
		"A bold outline is what this step is about; an arrow shows how it moves. A dashed line is a fold or a ruled line; a dashed frame shows a part larger.",
	}
	figures := d.Points("How to read the figures", read)
	figures[len(figures)-1].Stays = true
	blocks := slices.Concat(d.Points("Tools", d.plan.Tools), d.Points("Materials", d.materials()), d.Points("Take care", wording.Cautions()), figures,
		[]document.Block{{Above: 2, Draw: func(box geometry.Box) Length { return document.Key(d, box, 10, 5, d.key()) }}})
	blocks[0].Bookmark = "Before you start"
	if w := d.warnings(); len(w) > 0 {
		blocks = append(blocks, d.Points("About this job", w)...)
	}
	return blocks
}

// materials says how much of each material there is to get: the pieces cut of it.
func (d *doc) materials() []string {
	var order []geometry.Material
	of := map[geometry.Material][]string{}
	for _, p := range d.plan.Pieces {
		if of[p.Material] == nil {
			order = append(order, p.Material)
		}
		name := p.Name
		if p.Count > 1 {
			name = fmt.Sprintf("%d × %s", p.Count, name)
		}
		of[p.Material] = append(of[p.Material], name)
	}
	var out []string
	for _, m := range order {
		out = append(out, m.Words()+", for "+strings.Join(of[m], ", "))
	}
	var fitted []string
	for _, m := range d.plan.Materials {
		if m.Fitted {
			fitted = append(fitted, fmt.Sprintf("the %s must measure %s", m.Of, d.thin(m.Thickness, d.digits(m.Thickness))))
		}
	}
	if len(fitted) > 0 {
		out = append(out, wording.Sentence(strings.Join(fitted, ", ")+": with another thickness the case does not fit, since it counts in all that is cut to fit it"))
	}
	return out
}

// warnings returns what to know of this job.
func (d *doc) warnings() []string {
	var out []string
	for _, w := range d.plan.Warnings {
		out = append(out, "Take care: "+w+".")
	}
	for _, m := range d.plan.Mistaken {
		out = append(out, "Take care: "+m.Says+".")
	}
	for _, r := range d.plan.Remarks {
		out = append(out, wording.Sentence(r.In(d.Round.Pretty)))
	}
	return out
}
