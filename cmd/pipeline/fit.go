package pipeline

import (
	"context"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/paper/stock"
	renderfit "forel/render/fit"
)

// Fit tells how the book will fit.
type Fit struct {
	Job
	Format string // text or json; "": text
	All    bool   // of a text, all there is, not a summary
	Draw   bool   // fit.pdf and the plots too
}

const fitName = "fit.pdf"

// Make makes the report, and the drawings if they are asked for.
func (f Fit) Make(context.Context) (r Result, err error) {
	w, err := f.read(&r, chosen(f.Settings()))
	if err != nil {
		return r, err
	}
	report := fit.Of(w.plan).Weighed(w.weigh)
	switch {
	case f.Format == "json":
		r.Report = renderfit.JSON(report)
	case f.All:
		r.Report = renderfit.Text(report, w.round)
	default:
		r.Report = renderfit.Summary(report, w.round)
	}
	if !f.Draw {
		return r, nil
	}
	o := w.printed()
	for _, p := range renderfit.Plots(report, o) {
		r.Files = append(r.Files, File{p.File, p.SVG})
	}
	err = r.add(fitName, renderfit.Document(report, o))
	r.Wrote, r.Set = namesOf(r.Files), "fit"
	r.toPrint(fitName, o.Setup, " for its paper strips")
	return r, err
}

// weigh weighs a material: by the grammage or density of its stock, where the job
// tells of one, else by its own grammage, else by what is usual.
func (w worked) weigh(m geometry.Material, area float64, thickness geometry.Length) (float64, string) {
	of := stock.Stock{Material: m}.OrWeighs(w.plan.Grammage(m))
	for _, s := range w.file.Stock {
		named := s.Name != "" && s.Name == w.file.Names[m]
		if (s.Material == m || named) && (s.Density > 0 || s.Grammage > 0) && (s.Thickness == 0 || s.Thickness.Near(thickness)) {
			of = s
			break
		}
	}
	return of.Grams(area, thickness)
}
