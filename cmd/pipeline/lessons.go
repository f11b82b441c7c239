package pipeline

import (
	"context"
	"slices"

	"forel/cmd/jobfile"
	"forel/cmd/recordfile"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	learnt "forel/geometry/lessons"
	"forel/geometry/wording"
	"forel/render/lessons"
)

// Lessons learns from records what a maker's own errors are.
type Lessons struct {
	Source        // the records
	For    *File  // a job to tell what it means for; nil: none
	Format string // text or json; "": text
	Units  string // of what is written; "": those of the job, or mm
}

// Settings are those of the lessons.
func (l *Lessons) Settings() []Setting {
	return []Setting{
		formats(&l.Format, "report: text or json (in millimetres)", "text", "json"),
		{Name: "units", Usage: "`unit` of what is written: mm or in (default: that of --job, else mm)", To: &l.Units},
	}
}

// Make tells what the records teach.
func (l Lessons) Make(context.Context) (r Result, err error) {
	bad := chosen(l.Settings())
	if len(l.Files) == 0 {
		bad = refuse(bad, "no records to learn from", "name records, or a folder with some: files that end in .record.toml, which forel record writes")
	}
	unit := geometry.MM
	switch l.Units {
	case "", "mm":
	case "in":
		unit = geometry.IN
	default:
		bad = refuse(bad, "--units: unknown unit "+wording.Quote(l.Units), "give mm or in")
	}
	var w worked
	if l.For != nil {
		w, err = Job{Source: Source{Files: []File{*l.For}, Shop: l.Shop}}.read(&r, nil)
		bad = append(bad, Problems(err)...)
		if err == nil && l.Units == "" {
			unit = w.round.Unit
		}
	}
	var cases []learnt.Case
	for _, f := range l.Files {
		rec, err := recordfile.Parse(f.Name, f.Data)
		if err != nil {
			bad = append(bad, Problems(err)...)
			continue
		}
		cases = append(cases, caseOf(rec))
	}
	if bad != nil {
		return r, bad
	}
	all := learnt.Learn(cases)
	var advice *lessons.Advice
	if l.For != nil {
		c := w.plan.Chain
		own := c.With(all.Sets())
		advice = &lessons.Advice{Title: w.plan.Title, Told: fit.Chances(c, nil), Own: fit.Chances(own, all.CameOut), Clearances: fit.Least(own, all.CameOut)}
		r.advise("the smallest clearances with which this book rarely sticks", false, changesIn(unit, advice.Clearances))
		advice.Then = fit.Chances(c.With(slices.Concat(all.Sets(), advice.Clearances)), all.CameOut)
	}
	r.advise("what is off in your own work", true, changesIn(unit, all.Sets()))
	if l.Format == "json" {
		r.Report = lessons.JSON(all, advice)
	} else {
		r.Report = lessons.Lessons(all, advice, unit)
	}
	return r, nil
}

// advise notes what is advised, where it is anything.
func (r *Result) advise(what string, habit bool, sets []jobfile.Change) {
	if len(sets) > 0 {
		r.Advised = append(r.Advised, Advised{what, sets, habit})
	}
}

// changesIn returns settings as a maker types them.
func changesIn(u geometry.Unit, sets []job.Change) (out []jobfile.Change) {
	for _, s := range sets {
		out = append(out, jobfile.ChangeOf(s, u))
	}
	return out
}

// caseOf returns what a record tells of its case: of each length what was taken down last
// before something was done to the case.
func caseOf(r recordfile.Record) learnt.Case {
	c := learnt.Case{Name: r.Source}
	for i, t := range r.Taken {
		again := slices.ContainsFunc(r.Taken[i+1:], func(o recordfile.Taken) bool { return o.Key == t.Key && o.Changed == t.Changed })
		if !again {
			c.Taken = append(c.Taken, learnt.Taken{Quantity: t.Quantity, Value: fit.Counting(t.Sort, t.Readings), Mean: t.Mean, SD: t.SD, Line: t.Line, Changed: t.Changed})
		}
	}
	return c
}
