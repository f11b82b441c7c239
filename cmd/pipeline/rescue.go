package pipeline

import (
	"context"
	"fmt"
	"slices"

	"forel/cmd/jobfile"
	"forel/cmd/recordfile"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/plan"
	"forel/geometry/rescue"
	"forel/geometry/wording"
	"forel/render"
	renderrescue "forel/render/rescue"
)

// Rescue tells the way back where a book does not fit the case that was made for it.
type Rescue struct {
	Job
	Lengths           // play as measured; it goes before what the record tells
	Unfinished bool   // it was measured while the case was still open
	Format     string // text or json; "": text
	Way        int    // whose pieces are drawn, from 1; 0: the first
	Draw       bool   // the templates of what is cut again too
}

// usualPlays are the names of play that have a flag of their own.
var usualPlays = []string{"play-height", "play-depth", "play-thickness"}

// Settings are those of the rescue.
func (r *Rescue) Settings() []Setting {
	says := map[string]string{"play-height": "`room` left from head to tail where it is tightest, with the book in; a minus before what is missing",
		"play-depth": "`room` left from spine to mouth", "play-thickness": "`room` left from side to side"}
	return append(r.settings(usualPlays, says, "any other `name=room` that forel record --show lists as play"), []Setting{
		{Name: "unfinished", Usage: "the play was measured before the case was finished: a carcass not covered yet, card not glued, trays not on their case", To: &r.Unfinished},
		formats(&r.Format, "report: text or json (in millimetres)", "text", "json"),
		{Name: "way", Usage: "`number` of the way whose pieces are drawn (default 1)", To: &r.Way},
	}...)
}

// Measured makes the settings those of the case.
func (r *Rescue) Measured() error { return r.ofCase(r.Job, fit.Play) }

// Make tells the ways back, and draws what is cut again if it is asked for.
func (r Rescue) Make(context.Context) (out Result, err error) {
	var bad jobfile.Issues
	w, err := r.read(&out, chosen(r.Settings()))
	if err != nil {
		return out, err
	}
	p, err := planned(w)
	if err != nil {
		return out, err
	}
	quantities := slices.DeleteFunc(fit.Quantities(p.Chain), func(q fit.Quantity) bool { return q.Sort != fit.Play })
	readings, bad := r.typed(quantities, w.round.Unit)
	stands := rescue.Stands{Play: map[string]geometry.Length{}, Early: r.Unfinished}
	if r.Old != nil && bad == nil && !r.Unfinished { // what is taken down is of the finished case
		old, err := recordfile.Parse(r.Old.Name, r.Old.Data)
		if err != nil {
			return out, err
		}
		for _, q := range quantities {
			if t, ok := old.Last(q.Key); ok {
				stands.Play[q.Key] = fit.Counting(fit.Play, t.Readings)
			}
		}
	}
	for _, one := range readings {
		stands.Play[one.Of.Key] = fit.Counting(fit.Play, one.All)
	}
	if len(stands.Play) == 0 && bad == nil {
		bad = refuse(bad, "no play is known", "measure it and give it, such as --play-height 0.1, or take it down with forel record")
	}
	if bad != nil {
		return out, bad
	}
	report := rescue.Of(p.Chain, stands)
	if n := len(report.Ways); r.Way < 0 || r.Way > max(n, 1) {
		return out, refuse(nil, fmt.Sprintf("--way: there is no way %d", r.Way), fmt.Sprintf("give 1 to %d", max(n, 1)))
	}
	if r.Format == "json" {
		out.Report = renderrescue.JSON(p.Title, report, r.Unfinished)
	} else {
		out.Report = renderrescue.Text(p.Title, report, r.Unfinished, w.round.Unit)
	}
	if !r.Draw || len(report.Ways) == 0 {
		return out, nil
	}
	return r.draw(out, w, report.Ways[max(r.Way, 1)-1])
}

// say adds a line to a report that is a text.
func (r *Result) say(format, line string) {
	if format != "json" {
		r.Report = append(r.Report, line...)
	}
}

// planned works out the case of a job as it was before anything of it was measured.
func planned(w worked) (plan.Plan, error) {
	sound, refused, _ := w.file.Kind.Planned(w.file.Job).Check()
	if len(refused) > 0 {
		return plan.Plan{}, Problems(refused)
	}
	p, err := sound.Make()
	if err != nil {
		return plan.Plan{}, Problems(err)
	}
	return p, nil
}

// draw draws what is cut again in a way, for the case that stands.
func (r Rescue) draw(out Result, w worked, way rescue.Way) (Result, error) {
	out.Set = "rescue"
	if len(way.Again) == 0 {
		out.say(r.Format, "nothing is cut again: there is nothing to draw\n")
		return out, nil
	}
	j := w.file.Kind.Planned(w.file.Job)
	j.Settings().Apply(way.Sets)
	sound, refused, _ := j.Check()
	if len(refused) > 0 { // so little room that no job has it
		out.say(r.Format, "what is cut again can't be drawn for the case as it stands: cut each piece like the one that it takes the place of, or choose another way with --way\n")
		return out, nil
	}
	var err error
	if w.plan, err = sound.Make(); err != nil {
		return out, Problems(err)
	}
	whole := len(w.plan.Pieces)
	if w.plan, _ = w.plan.Only(way.Again); len(w.plan.Pieces) < whole {
		w.plan.Warnings = slices.Insert(slices.Clone(w.plan.Warnings), 0, "these templates are for a case as it stands: cut again "+wording.And(way.Again)+" alone, and leave out the steps of what you keep")
	}
	_, err = out.templates(w, render.DefaultTheme(), 0, false, false)
	return out, err
}
