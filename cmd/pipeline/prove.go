package pipeline

import (
	"context"

	"forel/render/proof"
)

// Prove folds a case up and reports what is found.
type Prove struct {
	Job
	Format string // text or json; "": text
	Draw   bool   // proof.svg and proof.pdf too
}

// Make makes the report, and the drawings if they are asked for.
func (p Prove) Make(context.Context) (r Result, err error) {
	w, err := p.read(&r, chosen(p.Settings()))
	if err != nil {
		return r, err
	}
	if p.Format == "json" {
		r.Report = proof.JSON(w.plan)
	} else {
		r.Report = proof.Text(w.plan, w.round)
	}
	if !p.Draw {
		return r, nil
	}
	doc := proof.Document(w.plan, w.printed())
	r.Files = []File{{"proof.svg", doc.SVG()}}
	err = r.add("proof.pdf", doc)
	r.Wrote, r.Set = namesOf(r.Files), "proof"
	return r, err
}
