package pipeline

import (
	"strings"

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
	Base *roster.Base // what a roster leaves out; nil: none
}

// cases reads the jobs, or the rows of a roster, each with a title of its own.
func (c Cases) cases(r *Result, bad jobfile.Issues) ([]worked, error) {
	rosters := 0
	for _, f := range c.Files {
		if isRoster(f.Name) {
			rosters++
		}
	}
	switch {
	case rosters == 0:
		if c.Base != nil {
			bad = refuse(bad, "--job without a roster", "name a roster, such as class.csv, or the job file alone")
		}
		all, err := c.readAll(r, bad)
		for i, b := range atBench(all) {
			if all[i].plan.Title = wording.OneLine(b.Plan.Title); all[i].plan.Title == "" {
				all[i].plan.Title = wording.Capital(all[i].plan.Kind)
			}
		}
		return all, err
	case len(c.Files) > 1:
		return nil, refuse(bad, "a roster beside other files", "give one roster, or job files")
	case c.Example:
		return nil, refuse(bad, "both --example and a roster", "give one of them")
	}
	return c.roster(r, bad)
}

// roster reads the rows of a roster.
func (c Cases) roster(r *Result, bad jobfile.Issues) (all []worked, err error) {
	shop, wrongShop := c.shop()
	bad = append(append(bad, Contradictions(c.Flags)...), wrongShop...)
	rows, err := roster.Reader{Base: c.Base, Shop: shop, Flags: c.Flags}.Read(c.Files[0].Name, c.Files[0].Data)
	bad = append(bad, Problems(err)...)
	read := make([]worked, len(rows))
	wrong := make([]jobfile.Issues, len(rows))
	parallel.Each(len(rows), func(i int) {
		if wrong[i] = rows[i].Refused; wrong[i] != nil {
			return
		}
		w, err := work(rows[i].File, c.Round, c.Date)
		for _, p := range Problems(err) {
			p.Source, p.Line = rows[i].Source, rows[i].Line
			wrong[i] = append(wrong[i], p)
		}
		w.lighten()
		read[i] = w.ofClass(rows[i].Name)
	})
	for i, row := range rows {
		r.Warnings = append(r.Warnings, row.Suspects...)
		if bad = append(bad, wrong[i]...); wrong[i] == nil {
			all = append(all, read[i])
		}
	}
	return all, bad.Err()
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

func isRoster(name string) bool {
	name = strings.ToLower(name)
	return strings.HasSuffix(name, ".csv") || strings.HasSuffix(name, ".tsv")
}
