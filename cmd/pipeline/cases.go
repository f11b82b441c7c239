package pipeline

import (
	"slices"
	"strings"
	"sync/atomic"
	"time"

	"forel/cmd/jobfile"
	"forel/cmd/roster"
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
}

// cases reads the jobs, or the rows of a roster. Beside an error those are returned that can
// be made.
func (c Cases) cases(r *Result, bad jobfile.Issues) (all []worked, err error) {
	err = c.each(r, bad, nil, func(n int) { all = make([]worked, n) }, func(i int, w worked) {
		w.lighten()
		all[i] = w
	})
	return slices.DeleteFunc(all, func(w worked) bool { return w.plan.Pieces == nil }), err
}

// each reads the jobs, or the rows of a roster, and hands over what can be made, each with a
// title of its own; begin is told how many there are. Rows come in any order, on all
// processors, and are not kept: a class can be large.
func (c Cases) each(r *Result, bad jobfile.Issues, p Progress, begin func(n int), take func(i int, w worked)) error {
	switch {
	case !slices.ContainsFunc(c.Files, isRoster):
		if c.Base != nil {
			bad = refuse(bad, "--job without a roster", "name a roster, such as class.csv, or the job file alone")
		}
		all, err := c.readAll(r, bad)
		begin(len(all))
		for i, b := range atBench(all) {
			w := all[i]
			w.plan.Title = wording.Titled(b.Plan.Title, b.Plan.Kind)
			take(i, w)
		}
		return err
	case len(c.Files) > 1:
		return refuse(bad, "a roster beside other files", "give one roster, or job files")
	case c.Example:
		return refuse(bad, "both --example and a roster", "give one of them")
	}
	rows, wrongShop := c.roster(c.Base, &bad)
	begin(len(rows))
	wrong := make([]jobfile.Issues, len(rows))
	var done atomic.Int64
	parallel.Each(len(rows), func(i int) {
		p.at(float64(done.Add(1)) / float64(len(rows)))
		var w worked
		if w, wrong[i] = workRow(rows[i], c.Round, c.Date); wrong[i] == nil {
			w.plan.Title = rows[i].Name
			take(i, w)
		}
		rows[i].File = nil
	})
	for i, row := range rows {
		r.Warnings = append(r.Warnings, row.Suspects...)
		bad = append(bad, wrong[i]...)
	}
	return eachOnce(bad, wrongShop).Err()
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

// lighten leaves out of a case worked out its proof and, but for the last, its pictures:
// there may be thousands of cases.
func (w *worked) lighten() {
	w.plan.Faces, w.plan.Proof, w.plan.Chain = nil, plan.Proof{}, plan.Chain{}
	var last *plan.Step
	for i := range w.plan.Steps {
		s := &w.plan.Steps[i]
		if len(s.Pictures) == 0 {
			continue
		}
		if last != nil {
			last.Pictures = nil
		}
		row := s.Pictures[len(s.Pictures)-1]
		s.Pictures, last = [][]stage.Picture{row[len(row)-1:]}, s
	}
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
