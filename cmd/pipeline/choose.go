package pipeline

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/choose"
	"forel/geometry/job"
	"forel/geometry/wording"
	"forel/render/advice"
)

// Choose advises what to make for a book. Of a job its books and its unit count.
type Choose struct {
	Job
	Use        string   // one of choose.Uses; "": the first
	Conditions []string // of choose.Conditions
	Format     string   // text, json or toml, which is the job file alone; "": text
}

// Make makes the advice, as the report.
func (c Choose) Make(context.Context) (r Result, err error) {
	bad := format(&c.Format, choiceFormats)
	if c.Use == "" {
		c.Use = choose.Uses[0]
	}
	if !slices.Contains(choose.Uses, c.Use) {
		bad = refuse(bad, fmt.Sprintf("--use: unknown use %.30q", c.Use), "give "+wording.Or(choose.Uses))
	}
	for _, one := range c.Conditions {
		if !slices.Contains(choose.Conditions, one) {
			bad = refuse(bad, fmt.Sprintf("--condition: unknown condition %.30q", one), "give "+wording.Or(choose.Conditions))
		}
	}
	if len(c.Files) == 0 && len(c.Flags) == 0 && !c.Example {
		return r, refuse(bad, "no book", "name a job file, or give --height, --width and --thickness")
	}
	w, err := c.unchecked((*jobfile.Shop).Unchecked, bad)
	if err != nil {
		return r, err
	}
	shared := w.file.Job.Shared()
	ask := choose.Ask{Books: shared.Books, Unit: shared.Unit, Use: c.Use, Conditions: c.Conditions}
	made, err := choose.Of(ask)
	if err != nil {
		return r, Problems(err)
	}
	lines, err := jobfile.Changed("", nil, changesFor(ask, made, shared.Title))
	if err != nil {
		return r, err
	}
	switch c.Format {
	case "json":
		r.Report, err = advice.JSON(made, ask, w.round.Unit, lines)
	case "toml":
		r.Report = lines
	default:
		r.Report = advice.Text(made, ask, w.round, lines)
	}
	return r, err
}

// exactly writes a length as a maker would type it, in a unit where nothing of it is lost.
func exactly(l geometry.Length, u geometry.Unit) string {
	for _, in := range []geometry.Unit{u, geometry.MM, geometry.IN} {
		s := geometry.Settable(l, in)
		if back, err := geometry.ParseLength(s, in); err == nil && back.Near(l) {
			return s
		}
	}
	return wording.Decimal(l.MM(), 6) + " mm"
}

// changesFor returns what a job file sets for a choice.
func changesFor(a choose.Ask, c choose.Choice, title string) (all []jobfile.Change) {
	typed := func(l geometry.Length) string { return exactly(l, a.Unit) }
	set := func(key, value string) { all = append(all, jobfile.Change{Key: key, Value: value}) }
	if title != "" {
		set("title", title)
	}
	set("units", a.Unit.String())
	in := func(top bool) {
		for _, s := range c.Sets {
			if strings.Contains(s.Key, ".") == top {
				continue
			}
			value := s.Word
			if value == "" {
				value = typed(s.Value)
			}
			set(s.Key, value)
		}
	}
	in(true)
	slices.Reverse(all) // what stands at the top is put before what is there
	for n, b := range a.Books {
		if b.Title != "" {
			set(job.BookKey(n, "title"), b.Title)
		}
		for _, d := range job.Dimensions {
			var readings []string
			for _, l := range *d.At(&b) {
				readings = append(readings, typed(l))
			}
			if readings != nil {
				set(job.BookKey(n, d.Key), strings.Join(readings, ";"))
			}
		}
		if b.Weight > 0 {
			set(job.BookKey(n, "weight"), wording.Decimal(b.Weight, 1)+" g")
		}
	}
	in(false)
	return all
}
