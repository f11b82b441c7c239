package pipeline

import (
	"context"

	"forel/render/cutlist"
	"forel/render/document"
)

// Cutlist lists every piece with its size.
type Cutlist struct {
	Job
	Format   string // text, json, csv or markdown; "": text
	Outlines bool   // with json: each piece's geometry too
}

// Make makes the list, as the report.
func (c Cutlist) Make(context.Context) (r Result, err error) {
	bad := chosen(c.Settings())
	if c.Outlines && c.Format != "json" {
		bad = refuse(bad, "--outlines goes with json only", "add --format json")
	}
	w, err := c.read(&r, bad)
	if err != nil {
		return r, err
	}
	switch c.Format {
	case "json":
		r.Report = cutlist.JSON(w.plan, c.Outlines)
	case "csv":
		r.Report = cutlist.CSV(w.plan, w.round)
	case "markdown":
		r.Report = cutlist.Text(w.plan, w.round, document.Markdown)
	default:
		r.Report = cutlist.Text(w.plan, w.round, document.Plain)
	}
	return r, nil
}
