package handout

import (
	"strings"

	"forel/geometry"
	"forel/render/document"
	"forel/render/scene"
)

// Pages draws a handout, or the empty worksheet.
func Pages(s Subject, o Options, blank bool) []*document.Page { return draw(s, o, blank).Pages() }

// bookOf returns a book that nothing is drawn on.
func bookOf(s Subject, o document.Options) *book {
	return &book{Document: &document.Document{Options: o}, Subject: s, palette: paletteOf(false)}
}

// Rule is a line of a worksheet as it is printed, and the length it stands for.
type Rule struct {
	Symbol, Rule string
	Value        geometry.Length
}

// Rules gives every line of a worksheet that has a symbol or a rule, and those of
// the pieces, the width and the height of each under its name.
func Rules(s Subject) (lines []Rule, sizes map[string][2]string) {
	b := bookOf(s, document.Options{})
	r := b.rules()
	for _, g := range r.groups {
		for _, m := range g.measures {
			lines = append(lines, Rule{m.symbol, m.rule, m.value})
		}
	}
	sizes = map[string][2]string{}
	for n, z := range r.sizes {
		sizes[n] = [2]string{z.width, z.height}
	}
	return lines, sizes
}

// Thicknesses gives the thicknesses of material on a worksheet as they are shown.
func Thicknesses(s Subject, o Options) []string {
	b := bookOf(s, o.Options)
	var out []string
	for _, g := range b.rules().groups {
		for _, m := range g.measures {
			if m.fine {
				out = append(out, b.shown(m))
			}
		}
	}
	return out
}

// Words gives all that the steps and the checks say.
func Words(s Subject, o Options) string {
	b := bookOf(s, o.Options)
	var out []string
	for _, st := range b.allSteps() {
		out = append(append(out, st.title), st.text...)
	}
	good, bad := b.checkWords()
	return strings.Join(append(append(out, good...), bad...), "\n")
}

// Figure is a picture of a step: the objects that are seen in it, those that are
// to be noticed, and the shapes that could not be worked out.
type Figure struct {
	Step     string
	Objects  []string
	Fresh    []string
	Unworked int
}

// Figures gives the figures of a handout in their order.
func Figures(s Subject) []Figure {
	b := bookOf(s, document.Options{Round: geometry.ToTenthMM})
	var out []Figure
	for _, st := range b.allSteps() {
		for _, row := range st.rows {
			for _, p := range row {
				whole := scene.See(p.faces, p.view)
				f := Figure{Step: st.title, Fresh: p.fresh, Unworked: whole.Unworked()}
				seen, _ := p.look()
				for _, o := range seen.Objects {
					f.Objects = append(f.Objects, o.Name)
				}
				out = append(out, f)
			}
		}
	}
	return out
}
