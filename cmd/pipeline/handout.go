package pipeline

import (
	"context"
	"strings"

	"forel/cmd/jobfile"
	"forel/render/handout"
)

// Handout makes the worksheet and the illustrated steps for a learner.
type Handout struct {
	Job
	Blank bool // the worksheet alone and empty
	Short bool // four pages
	Tints bool // tint board, cloth and paper in the figures
}

const handoutName = "handout.pdf"

// assumed is a book that stands in for one where none is given and no length of
// it is shown.
var assumed = []jobfile.Flag{
	{Name: "--height", Key: "book.height", Value: "220 mm"},
	{Name: "--width", Key: "book.width", Value: "150 mm"},
	{Name: "--thickness", Key: "book.thickness", Value: "30 mm"},
}

// Make makes handout.pdf, or worksheet.pdf where it is to be empty.
func (h Handout) Make(context.Context) (r Result, err error) {
	name, draw := handoutName, handout.Document
	if h.Blank {
		name, draw = "worksheet.pdf", handout.Worksheet
		if bad := h.notBlank(); bad != nil {
			return r, bad
		}
		if !h.Example && len(h.Files) == 0 {
			h.Flags = append(h.Flags[:len(h.Flags):len(h.Flags)], assumed...)
		}
	}
	w, err := h.read(&r, nil)
	if err != nil {
		return r, err
	}
	err = r.add(name, draw(w.plan, handout.Options{Options: w.printed(), Tinted: h.Tints, Short: h.Short, Times: w.file.Times}))
	r.Wrote, r.Set = []string{name}, strings.TrimSuffix(name, ".pdf")
	return r, err
}

// notBlank refuses what an empty worksheet has no use for.
func (h Handout) notBlank() (bad jobfile.Issues) {
	for _, f := range h.Flags {
		if f.Key == "title" || strings.HasPrefix(f.Key, "book.") {
			bad = refuse(bad, f.Name+" with --blank", "leave one of them out: the worksheet is filled in by hand")
		}
	}
	if h.Short {
		bad = refuse(bad, "--short with --blank", "leave one of them out: the empty worksheet is short")
	}
	if h.Tints {
		bad = refuse(bad, "--tints with --blank", "leave one of them out: the empty worksheet has no figures")
	}
	return bad
}
