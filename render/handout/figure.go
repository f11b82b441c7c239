package handout

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/document"
	"forel/render/svg"
)

// The size of a figure that stands by itself.
const (
	figureWide Length = 120
	figureTall Length = 84
)

// StepDrawings returns the pictures of a step of the work, from 0, as drawings with their
// labels.
func StepDrawings(p plan.Plan, step int, o Options) (out [][]byte) {
	d := &doc{Document: &document.Document{Options: o.Options}, plan: p, looks: looksOf(o.Tinted)}
	for _, row := range p.Steps[step].Pictures {
		for _, q := range row {
			out = append(out, d.figure(p.Steps[step], q))
		}
	}
	return out
}

// figure draws one picture of a step.
func (d *doc) figure(s plan.Step, q stage.Picture) []byte {
	page := d.AddPage(figureWide, figureTall)
	d.drawPanel(d.panel(q), geometry.Bx(0, 0, figureWide, figureTall).Grow(-2), atBoth)
	c := svg.New(figureWide, figureTall, s.Title, q.Caption.In(d.Round.Pretty))
	c.Begin(render.Legend)
	page.Play(c, geometry.Point{})
	c.End()
	return c.Bytes()
}
