package pipeline

import (
	"slices"
	"strings"
	"sync/atomic"
	"time"

	"forel/cmd/jobfile"
	"forel/cmd/roster"
	"forel/geometry"
	"forel/geometry/parallel"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/wording"
)

// Cases are one job, several, or those of a roster, which is a file whose name ends in .csv
// or .tsv.
type Cases struct {
	Job
	Base *File // a job file that gives what a roster leaves out; nil: none

	reading Progress // of a roster; nil where nobody asks
}

// cases reads the jobs, or the rows of a roster on all processors, each with a title of its
// own. Beside an error those are returned that can be made.
func (c Cases) cases(r *Result, bad jobfile.Issues) ([]worked, error) {
	switch {
	case !slices.ContainsFunc(c.Files, isRoster):
		if c.Base != nil {
			bad = refuse(bad, "--job without a roster", "name a roster, such as class.csv, or the job file alone")
		}
		all, err := c.readAll(r, bad)
		for i, b := range atBench(all) {
			all[i].plan.Title = wording.Titled(b.Plan.Title, b.Plan.Kind)
			all[i].slim()
		}
		return all, err
	case len(c.Files) > 1:
		return nil, refuse(bad, "a roster beside other files", "give one roster, or job files")
	case c.Example:
		return nil, refuse(bad, "both --example and a roster", "give one of them")
	}
	rows, wrongShop := c.roster(c.Base, &bad)
	all, wrong := make([]worked, len(rows)), make([]jobfile.Issues, len(rows))
	var done atomic.Int64
	parallel.Each(len(rows), func(i int) {
		c.reading.at(float64(done.Add(1)) / float64(len(rows)))
		if all[i], wrong[i] = workRow(rows[i], c.Round, c.Date); wrong[i] == nil {
			all[i].plan.Title = rows[i].Name
			all[i].slim()
		}
		rows[i].File = nil // a class can be large
	})
	for i, row := range rows {
		r.Warnings = append(r.Warnings, row.Suspects...)
		bad = append(bad, wrong[i]...)
	}
	return slices.DeleteFunc(all, func(w worked) bool { return w.plan.Pieces == nil }), eachOnce(bad, wrongShop).Err()
}

// roster reads the one file as a roster; base is a job file that gives what it leaves out, nil:
// none. What is wrong with the shop, with the flags and with the table is added to bad.
func (s Source) roster(base *File, bad *jobfile.Issues) (rows []roster.Row, wrongShop jobfile.Issues) {
	shop, wrongShop := s.shop(bad)
	with := roster.Reader{Shop: shop, Flags: s.Flags}
	if base != nil {
		with.Base = roster.Base{Source: base.Name, Data: base.Data}
	}
	rows, err := with.Read(s.Files[0].Name, s.Files[0].Data)
	*bad = append(*bad, Problems(err)...)
	return rows, wrongShop
}

// workRow works out the job of a row, or tells what is wrong with it.
func workRow(row roster.Row, round string, date time.Time) (w worked, refused jobfile.Issues) {
	if row.Refused != nil {
		return w, row.Refused
	}
	w, err := work(row.File, round, date)
	for _, p := range Problems(err) {
		p.Source, p.Line = row.Source, row.Line
		refused = append(refused, p)
	}
	return w, refused
}

// slim leaves of a case worked out what is asked for later: sizes and outlines of its
// pieces, what they are cut from, how long steps take, the last picture, how it prints. A case
// with its proof is large, and there may be thousands.
func (w *worked) slim() {
	p, f := w.plan, *w.file
	pieces := make([]geometry.Piece, len(p.Pieces))
	for i, q := range p.Pieces {
		pieces[i] = geometry.Piece{Name: q.Name, Material: q.Material, Count: q.Count, Outline: q.Outline, Grain: q.Grain, Extra: q.Extra, Trimmed: q.Trimmed}
	}
	steps := make([]plan.Step, len(p.Steps))
	last := &plan.Step{}
	for i, s := range p.Steps {
		steps[i] = plan.Step{Title: s.Title, Spells: s.Spells}
		if n := len(s.Pictures); n > 0 {
			row := s.Pictures[n-1]
			last.Pictures, last = nil, &steps[i]
			last.Pictures = [][]stage.Picture{{row[len(row)-1]}}
		}
	}
	f.Job, f.Case = nil, nil
	w.file = &f
	w.plan = plan.Plan{Title: p.Title, Kind: p.Kind, Shows: p.Shows, Content: p.Content, Pieces: pieces, Steps: steps,
		Materials: p.Materials, Equals: p.Equals, InParts: p.InParts, Facts: p.Facts}
}

// noJob tells of a roster where a job file is wanted.
func noJob(f File) jobfile.Issue {
	i := issue("", "is a roster, and this takes job files", "name a job file, or give the roster to forel class, order, quote or timetable")
	i.Source = f.Name
	return i
}

func isRoster(f File) bool {
	name := strings.ToLower(f.Name)
	return strings.HasSuffix(name, ".csv") || strings.HasSuffix(name, ".tsv")
}
