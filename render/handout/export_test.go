package handout

import (
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/render/document"
	"forel/render/figure"
)

// bookOf returns a book that nothing is drawn on.
func bookOf(p plan.Plan, o document.Options) *doc {
	return &doc{Document: &document.Document{Options: o}, plan: p, looks: figure.Looks(false)}
}

// Thicknesses returns the thicknesses of material on a worksheet as they are shown.
func Thicknesses(p plan.Plan, o Options) []string {
	b := bookOf(p, o.Options)
	var out []string
	for _, g := range p.Worksheet {
		for _, m := range g.Measures {
			if m.Fine {
				out = append(out, b.shown(m, b.groupDigits(g)))
			}
		}
	}
	return out
}

// Words gives all that the steps and the checks say.
func Words(p plan.Plan, o Options) string {
	b := bookOf(p, o.Options)
	var out []string
	for _, s := range p.Steps {
		out = append(append(out, s.Title), b.said(s.Text)...)
	}
	return strings.Join(append(append(out, b.said(p.Finished.Good)...), b.said(p.Finished.Bad)...), "\n")
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
func Figures(p plan.Plan) []Figure {
	b := bookOf(p, document.Options{Round: geometry.ToTenthMM})
	var out []Figure
	for _, s := range p.Steps {
		for _, row := range s.Pictures {
			for _, picture := range row {
				q := b.panel(picture)
				seen, _ := q.See()
				f := Figure{Step: s.Title, Fresh: q.Fresh(), Unworked: seen.Unworked()}
				for _, o := range seen.Objects {
					f.Objects = append(f.Objects, o.Name)
				}
				out = append(out, f)
			}
		}
	}
	return out
}
