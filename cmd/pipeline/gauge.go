package pipeline

import (
	"context"
	"fmt"

	"forel/cmd/jobfile"
	"forel/paper"
	"forel/render/document"
	"forel/render/gauge"
)

// Gauge makes the sheet that tells how true a printer is. Of a job file only
// [print] and the unit count.
type Gauge struct {
	Source
	Check bool // draw the sheet corrected by what was measured
}

// Make makes gauge.pdf and gauge.svg, or gauge-check.pdf.
func (g Gauge) Make(context.Context) (r Result, err error) {
	if err := g.one(nil); err != nil {
		return r, err
	}
	var bad jobfile.Issues
	shop, _ := g.shop(&bad)
	if bad != nil {
		return r, bad
	}
	file, flags := File{}, g.Flags
	if len(g.Files) == 1 {
		file = g.Files[0]
	} else {
		usual := jobfile.Flag{Name: "--margin", Key: "print.margin", Value: fmt.Sprintf("%g mm", gauge.Margin.MM())}
		flags = append([]jobfile.Flag{usual}, flags...)
	}
	o := gauge.Options{Options: document.Options{Date: g.Date}, Corrected: g.Check}
	if o.Setup, o.Round.Unit, err = shop.Print(file.Name, file.Data, flags); err != nil {
		return r, err
	}
	if g.Check && o.Setup.Measured == (paper.Measured{}) {
		return r, refuse(nil, "--check: nothing was measured", "set print.measured_across and print.measured_along to what the gauge measured")
	}
	if err := o.Check(); err != nil {
		return r, Problems(err)
	}
	name := "gauge-check.pdf"
	r.Set = "gauge check"
	if !g.Check {
		name, r.Set = "gauge.pdf", "gauge"
		r.Files = []File{{"gauge.svg", gauge.SVG(o)}}
	}
	r.Document = gauge.Document(o)
	doc, err := r.Document.PDF()
	r.Files = append(r.Files, File{name, doc})
	r.Wrote = namesOf(r.Files)
	r.Print = Print{name, o.Setup.Sheet.String(), ", then measure its rules"}
	return r, err
}
