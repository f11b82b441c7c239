package handout

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/render/layout"
)

// The cautions of a handout (common practice, no source).
var cautions = []string{
	"Knives cut people. Use a sharp blade and a heavy straightedge, keep your fingers behind its edge, cut away from yourself in several light strokes. Cap the knife whenever you put it down; drop spent blades into a closed tin.",
	"Adhesives: read the label, air the room, keep them off skin and eyes, wash your hands before you eat.",
	"If a laser or a drag knife cuts the pieces: read the maker's manual first; never put chlorinated plastics (PVC, some coated cloths) under a laser; never leave a machine running unattended; use extraction, and keep means to put out a fire at hand.",
	"Local rules and the word of a qualified teacher come before this sheet.",
}

// before gives the page before the steps: tools, materials, cautions, and how to
// read the figures.
func (b *book) before() []block {
	read := []string{
		"Every figure is drawn from the measures of this case. Nothing is drawn thicker or longer than it is; cloth, paper and card are drawn as sheets without thickness, and each figure has a scale of its own. Only the look of the book, the pressing boards and the weight is made up.",
		"A bold outline is what this step is about; an arrow shows how it moves. A dashed line is a fold or a ruled line; a dashed frame shows a part larger.",
	}
	section := func(mark, head string, points []string) block {
		return block{
			mark:   mark,
			height: func(Length) Length { return layout.StepsHeight(head, points, b.column().Width()) },
			draw:   func(box geometry.Box, _ Length) { layout.Points(b, box, head, points) },
		}
	}
	blocks := []block{
		section("Before you start", "Tools", b.plan.Tools),
		section("", "Materials", b.materials()),
		section("", "Take care", cautions),
		section("", "How to read the figures", read),
	}
	b.looksKey(&blocks)
	if w := b.warnings(); len(w) > 0 {
		blocks = append(blocks, section("", "About this job", w))
	}
	return blocks
}

// materials says how much of each material there is to get: the pieces cut of it.
func (b *book) materials() []string {
	var order []geometry.Material
	of := map[geometry.Material][]string{}
	for _, p := range b.plan.Pieces {
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
	for _, m := range b.plan.Materials {
		if m.Fitted {
			out = append(out, fmt.Sprintf("The %s must measure %s: with another the case does not fit, since it counts in all that is cut to fit it.", m.Of, b.thin(m.Thickness, b.digits(m.Thickness))))
		}
	}
	return out
}

// warnings gives what to know of this job.
func (b *book) warnings() []string {
	var out []string
	for _, w := range b.plan.Warnings {
		out = append(out, "Take care: "+w+".")
	}
	for _, m := range b.plan.Mistaken {
		out = append(out, "Take care: "+m+".")
	}
	for _, r := range b.plan.Remarks {
		out = append(out, capital(r.In(b.Round.Pretty))+".")
	}
	return out
}

// looksKey adds the key to the hatching.
func (b *book) looksKey(blocks *[]block) {
	*blocks = append(*blocks, block{
		height: func(Length) Length { return 8 },
		draw:   func(box geometry.Box, _ Length) { b.drawLooks(box) },
	})
}
