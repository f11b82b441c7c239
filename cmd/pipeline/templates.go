package pipeline

import (
	"context"
	"fmt"

	"golang.org/x/sync/errgroup"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/kinds"
	"forel/paper"
	"forel/render"
	renderfit "forel/render/fit"
	"forel/render/proof"
	"forel/render/templates"
)

// Templates makes the patterns: a document to print and a drawing a piece.
type Templates struct {
	Job
	Separate bool     // no two pieces on one sheet
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
	files, layout, err := w.templates(theme, line, paper.Options{Separate: t.Separate})
	if err != nil {
		return r, err
	}
	r.Files, r.Wrote = files, []string{counted(len(files)-1, "a drawing", "drawings"), templatesName}
	r.Notes = []string{fmt.Sprintf("the patterns take %s, after the overview and the key; their area alone would fill %d", counted(len(layout.Pages), "a sheet", "sheets"), layout.AtLeast),
		"proof: " + proof.Verdict(w.plan.Proof), "fit: " + renderfit.Line(fit.Of(w.plan), w.round.Unit)}
	r.Print = Print{templatesName, w.file.Print.Sheet.String(), ", then measure its rulers"}
	r.Earlier = Earlier{"job", drawingNames()}
	return r, nil
}

// templates lays a job out and makes every file of it, the drawings before the
// booklet.
func (w worked) templates(theme render.Theme, line geometry.Length, lay paper.Options) (files []File, layout paper.Layout, err error) {
	o := w.printed()
	o.Theme, o.Line = theme, line
	drawn := w.plan.Drawn()
	files = make([]File, len(drawn)+1)
	var together errgroup.Group
	together.Go(func() (err error) {
		layout = o.Setup.Lay(drawn, lay)
		files[len(drawn)] = File{Name: templatesName}
		files[len(drawn)].Data, err = templates.Booklet(w.plan, layout, o)
		return err
	})
	for i, p := range drawn {
		files[i] = File{templates.FileName(p), templates.PieceSVG(w.plan, p, o)}
	}
	return files, layout, together.Wait()
}

// drawingNames returns the files of drawings that templates of any kind may have.
func drawingNames() (files []string) {
	for _, n := range kinds.Pieces() {
		files = append(files, templates.FileName(geometry.Piece{Name: n}))
	}
	return files
}
