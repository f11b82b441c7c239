package pipeline

import (
	"context"
	"fmt"

	"golang.org/x/sync/errgroup"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/paper"
	"forel/render"
	renderfit "forel/render/fit"
	"forel/render/proof"
	"forel/render/templates"
)

// Templates makes the templates: a document to print and a drawing a piece.
type Templates struct {
	Job
	Separate bool     // no two pieces on one sheet
	Only     []string // pieces, or materials, that are printed; none: all
	MarkOut  bool     // plain rectangles are not printed: a sheet tells how to mark them out
	Colour   []string // of a kind of line, as line=#rrggbb
	Line     string   // the width of all lines of the drawings, solid, for a machine; "": lines to be read
}

const templatesName = "templates.pdf"

// Make makes templates.pdf and the drawings.
func (t Templates) Make(context.Context) (r Result, err error) {
	theme, bad := themeOf(t.Colour, render.DefaultTheme())
	line, more := lineOf(t.Line)
	w, err := t.read(&r, append(bad, more...))
	if err != nil {
		return r, err
	}
	asked := []worked{w}
	if unknown := t.only(t.Only, asked); unknown != nil {
		return r, unknown
	}
	w = asked[0]
	layout, err := r.templates(w, theme, line, t.Separate, t.MarkOut)
	if err != nil {
		return r, err
	}
	words := "after the overview and the key"
	if len(layout.Pages) > 0 && layout.Pages[0].Corner.Width() > 0 {
		words = "the overview and the key in a corner of the first"
	}
	r.Notes = []string{fmt.Sprintf("the templates take %s, %s; their area alone would fill %d", counted(len(layout.Pages), "a sheet", "sheets"), words, layout.AtLeast)}
	if len(layout.Pages) == 0 {
		r.Notes = []string{"every piece is a plain rectangle: a sheet tells how to mark them out with rule and square"}
	}
	r.Notes = append(r.Notes, "proof: "+proof.Verdict(w.plan.Proof), "fit: "+renderfit.Line(fit.Of(w.plan), w.round.Unit))
	r.Set, r.Part = "templates", len(t.Only) > 0
	return r, nil
}

// templates lays a job out and makes every file of it, the drawings before the
// document.
func (r *Result) templates(w worked, theme render.Theme, line geometry.Length, separate, markOut bool) (layout paper.Layout, err error) {
	o := w.printed()
	o.Theme, o.Line = theme, line
	drawn := w.plan.Drawn()
	files := make([]File, len(drawn), len(drawn)+1)
	var document Result
	var together errgroup.Group
	together.Go(func() error {
		printed := drawn
		if markOut {
			printed = templates.Shaped(drawn)
		}
		var lay paper.Options
		if separate {
			lay.Set = paper.Separate
		}
		layout = templates.Lay(w.plan, printed, o, lay)
		return document.add(templatesName, templates.Document(w.plan, layout, o))
	})
	for i, p := range drawn {
		files[i] = File{templates.FileName(p), templates.PieceSVG(w.plan, p, o)}
	}
	err = together.Wait()
	r.Files, r.Document = append(files, document.Files...), document.Document
	r.Wrote = []string{counted(len(drawn), "a drawing", "drawings"), templatesName}
	r.toPrint(templatesName, w.file.Print, ", then measure its rulers")
	return layout, err
}
