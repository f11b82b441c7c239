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
	bad := chosen(c.Settings())
	if len(c.Files) == 0 && len(c.Flags) == 0 && !c.Example {
		return r, refuse(bad, "no book", "name a job file, or give --height, --width and --thickness")
	}
	w, err := c.unchecked(false, bad)
	if err != nil {
		return r, err
	}
	shared := w.file.Job.Shared()
	ask := choose.Ask{Books: shared.Books, Unit: shared.Unit, Use: c.Use, Conditions: c.Conditions}
	made, err := choose.Of(ask)
	if err != nil {
		return r, Problems(err)
	}
	if choose.Holed(w.file.Job.Settings()) {
		made = made.Without()
	}
	whole, lines, err := c.jobFor(ask, made, shared.Title)
	switch {
	case err != nil && (lines == nil || c.Format == "toml"):
		return r, err
	case err != nil: // the lines are to be typed in
		r.Warnings, err = Problems(err), nil
	}
	if len(c.Files) == 1 && whole != nil { // the rest of it may want something else
		shop, _ := c.shop(new(jobfile.Issues))
		_, _, err := shop.Parse(c.Files[0].Name, whole, c.Flags...)
		r.Warnings = Problems(err)
		for i := range r.Warnings { // they are of a file that is not there yet
			r.Warnings[i].Line, r.Warnings[i].Reason = 0, "as advised: "+r.Warnings[i].Reason
		}
	}
	r.choices(made, ask.Unit)
	switch c.Format {
	case "json":
		r.Report = advice.JSON(made, ask, w.round.Unit, lines, whole)
	case "toml":
		r.Report = whole
	default:
		r.Report = advice.Text(made, ask, w.round, lines, len(c.Files) == 1)
	}
	return r, err
}

// choices notes what a choice sets: all of it, and each piece of advice by itself.
func (r *Result) choices(made choose.Choice, u geometry.Unit) {
	all := changesFor(u, made.Sets)
	r.advise("all of it", false, all)
	for _, a := range made.Advice {
		keys := made.Keys(a)
		r.advise(a.Name, false, slices.DeleteFunc(slices.Clone(all), func(c jobfile.Change) bool { return !slices.Contains(keys, c.Key) }))
	}
}

// jobFor returns a job file for a choice, and the lines of it to show: of a job that was
// read, that with what is advised (an error where it is not written so that it can be), and the lines that say so; else a new one, all of it.
func (c Choose) jobFor(a choose.Ask, made choose.Choice, title string) (whole, lines []byte, err error) {
	advised := changesFor(a.Unit, made.Sets)
	if len(c.Files) == 0 {
		head := []jobfile.Change{{Key: "units", Value: a.Unit.String()}}
		if title != "" {
			head = slices.Insert(head, 0, jobfile.Change{Key: "title", Value: title})
		}
		whole, err = jobfile.Changed("", nil, slices.Concat(head, changesOf(a), advised))
		return whole, whole, err
	}
	shown, instead := spelt(advised, c.Files[0].Data)
	if lines, err = jobfile.Changed("", nil, shown); err != nil {
		return nil, nil, err
	}
	lines = append(instead, lines...)
	whole, err = jobfile.Changed(c.Files[0].Name, c.Files[0].Data, advised)
	return whole, lines, err
}

// spelt returns changes so that they can be typed in: what the file has in short, such as board =
// "grey", takes a table where something is said beside it. instead says so in comments.
func spelt(changes []jobfile.Change, data []byte) (out []jobfile.Change, instead []byte) {
	said := map[string]bool{}
	for _, c := range changes {
		table, _, _ := strings.Cut(c.Key, ".")
		if name := jobfile.InShort(data, table); name != "" && !said[table] && table != c.Key {
			said[table] = true
			out = append(out, jobfile.Change{Key: table + ".material", Value: name})
			instead = fmt.Appendf(instead, "# take away %s = %q: it stands below [%s]\n", table, name, table)
		}
		out = append(out, c)
	}
	return out, instead
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

// changesFor returns what is set, what stands at the top of a job file first.
func changesFor(u geometry.Unit, sets []job.Change) (all []jobfile.Change) {
	for _, s := range sets {
		value := s.Word
		if value == "" {
			value = exactly(s.Value, u)
		}
		all = append(all, jobfile.Change{Key: s.Key, Value: value})
	}
	dots := func(c jobfile.Change) int { return strings.Count(c.Key, ".") }
	slices.SortStableFunc(all, func(a, b jobfile.Change) int { return min(dots(a), 1) - min(dots(b), 1) })
	return all
}

// changesOf returns what a new job file says of the books.
func changesOf(a choose.Ask) (all []jobfile.Change) {
	set := func(key, value string) { all = append(all, jobfile.Change{Key: key, Value: value}) }
	for n, b := range a.Books {
		if b.Title != "" {
			set(job.BookKey(n, "title"), b.Title)
		}
		for _, d := range job.Dimensions {
			var readings []string
			for _, l := range *d.At(&b) {
				readings = append(readings, exactly(l, a.Unit))
			}
			if readings != nil {
				set(job.BookKey(n, d.Key), strings.Join(readings, ";"))
			}
		}
		if b.Weight > 0 {
			set(job.BookKey(n, "weight"), wording.Decimal(b.Weight, 1)+" g")
		}
	}
	return all
}
