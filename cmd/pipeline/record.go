package pipeline

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"
	"time"

	"forel/cmd/jobfile"
	"forel/cmd/recordfile"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/wording"
	"forel/render/lessons"
)

// Record takes down what was measured of a case, beside what was planned.
type Record struct {
	Job
	Lengths
	Did  []string // what was done to the case before they were measured
	Day  string   // of the measuring, such as 2026-05-02; "": that of the Source, if any
	Show bool     // tell of all that can be measured, and take nothing down
	Draw bool     // and a sheet to write it on at the bench
}

// Lengths are what was measured of a case.
type Lengths struct {
	Old      *File    // the record that there is; nil: none
	Readings []string // as name=lengths

	asked []Setting // a setting for each length; nil: the usual ones
}

// usualReadings are the names that have a flag of their own.
var usualReadings = []string{"board", "outside-height", "outside-width", "outside-thickness", "mouth-height", "mouth-thickness",
	"play-height", "play-depth", "play-thickness"}

// Settings are those of the record.
func (r *Record) Settings() []Setting {
	says := map[string]string{"board": "`lengths` that one layer of board measured, such as \"1.98; 2.02\"",
		"outside-height": "`lengths` that the bare carcass, or what is measured in its place, has outside from head to tail",
		"mouth-height":   "`lengths` from head to tail inside the finished mouth",
		"play-height":    "`room` left from head to tail with the book in; a minus before what is missing"}
	return append(r.settings(usualReadings, says, "any other `name=lengths` that --show lists, such as cloth=0.36"), []Setting{
		{Name: "done", Usage: "`what` was done to the case before this was measured, such as \"pared the cloth at the mouth\"", To: &r.Did},
		{Name: "date", Usage: "`day` of the measuring, such as 2026-05-02", To: &r.Day},
		{Name: "show", Usage: "list all that can be measured, with what is taken down; take nothing down; with --out a sheet to write on too", To: &r.Show},
	}...)
}

// settings returns a setting for each length that is asked for: those of the case, or else the
// usual ones, each with what is said of it, and any other.
func (l *Lengths) settings(usual []string, says map[string]string, other string) []Setting {
	if l.asked == nil {
		for _, name := range usual {
			l.asked = append(l.asked, Setting{Name: name, Usage: cmp.Or(says[name], "`lengths` likewise"), To: new(string)})
		}
		l.asked = append(l.asked, Setting{Name: "reading", Usage: other, To: &l.Readings})
	}
	return slices.Clip(l.asked)
}

// Measuring is a command, by its address, that takes what was measured of a case. Measured
// gives it a setting for each length of the job that it reads, in place of the usual ones.
type Measuring interface{ Measured() error }

// Measured makes the settings those of the case.
func (r *Record) Measured() error {
	return r.ofCase(r.Job, fit.Layer, fit.Size, fit.Play)
}

// ofCase asks for all lengths of some sorts that can be measured of a job's case.
func (l *Lengths) ofCase(j Job, sorts ...fit.Sort) error {
	w, err := j.read(&Result{}, nil)
	if err != nil {
		return err
	}
	all, _, err := quantitiesOf(w)
	if err != nil {
		return err
	}
	l.asked = []Setting{}
	for _, q := range all {
		if !slices.Contains(sorts, q.Sort) {
			continue
		}
		low, high := q.Within()
		fine := func(l geometry.Length) string { return geometry.Fine(l, w.round.Unit) }
		usage := q.Name + ", " + fine(q.Planned) + " as planned, of 19 in 20 cases " + fine(low) + " to " + fine(high)
		if q.When != "" {
			usage += "; " + q.When
		}
		l.asked = append(l.asked, Setting{Name: q.Key, Usage: usage, To: new(string)})
	}
	return nil
}

// sheetName is the sheet to write on.
const sheetName = "record.pdf"

// RecordSuffix is how the name of a record ends.
const RecordSuffix = ".record.toml"

// RecordName returns the name of the record of a job file, which stands beside it.
func RecordName(jobName string) string {
	return strings.TrimSuffix(baseName(jobName), ".toml") + RecordSuffix
}

// Make takes down what was measured.
func (r Record) Make(context.Context) (out Result, err error) {
	var bad jobfile.Issues
	if r.Draw && !r.Show {
		bad = refuse(bad, "--out writes an empty sheet, and nothing is taken down with it", "give --show as well, or leave --out away")
	}
	if len(r.Files) == 0 && !r.Show {
		bad = refuse(bad, "no job file for the record to stand beside", "name one, such as forel record case.toml")
	}
	day := r.Day
	if day == "" && !r.Date.IsZero() {
		day = r.Date.Format(time.DateOnly)
	}
	if _, err := time.Parse(time.DateOnly, day); day != "" && err != nil {
		bad = refuse(bad, "--date: "+wording.Quote(day)+" is no day", "write it as year-month-day, such as 2026-05-02")
	}
	w, err := r.read(&out, bad)
	if err != nil {
		return out, err
	}
	quantities, kind, err := quantitiesOf(w)
	if err != nil {
		return out, err
	}
	var old recordfile.Record
	var before []byte
	if r.Old != nil {
		if old, err = recordfile.Parse(r.Old.Name, r.Old.Data); err != nil {
			return out, err
		}
		before = r.Old.Data
	}
	readings, bad := r.typed(quantities, w.round.Unit)
	if len(readings) == 0 && bad == nil {
		readings = built(w, quantities, old)
	}
	if len(readings) == 0 && len(r.Did) == 0 && !r.Show && bad == nil {
		bad = refuse(bad, "nothing to take down", "give what was measured, such as --play-height 1.4; --show lists what can be")
	}
	if bad != nil {
		return out, bad
	}
	did := make([]string, len(r.Did))
	for i, d := range r.Did {
		did[i] = wording.OneLine(d)
	}
	text := before
	if !r.Show {
		if text, err = recordfile.Added(before, w.plan.Title, kind, day, did, readings); err != nil {
			return out, err
		}
		name := RecordName(r.Files[0].Name)
		out.Files, out.Wrote = []File{{Name: name, Data: text}}, []string{name}
		if old, err = recordfile.Parse(name, text); err != nil {
			return out, fmt.Errorf("what was written can't be read again: %w", err)
		}
	}
	lines := linesOf(quantities, old)
	if r.Draw {
		if err := out.add(sheetName, lessons.Sheet(w.plan.Title, lines, w.printed())); err != nil {
			return out, err
		}
		out.Wrote, out.Set = []string{sheetName}, "record"
		out.toPrint(sheetName, w.file.Print, "")
	}
	if !r.Show {
		lines = slices.DeleteFunc(lines, func(l lessons.Line) bool { return len(l.Readings) == 0 })
	}
	out.Report = lessons.Record(w.plan.Title, lines, w.round.Unit)
	return out, nil
}

// quantitiesOf returns what can be measured of a case as it was planned, before anything
// of it was made, and what is made.
func quantitiesOf(w worked) ([]fit.Quantity, string, error) {
	p, err := planned(w)
	if err != nil {
		return nil, "", err
	}
	return fit.Quantities(p.Chain), p.Kind, nil
}

// linesOf returns the quantities with what was measured of each last.
func linesOf(quantities []fit.Quantity, rec recordfile.Record) (out []lessons.Line) {
	for _, q := range quantities {
		l := lessons.Line{Quantity: q}
		l.Low, l.High = q.Within()
		if t, ok := rec.Last(q.Key); ok {
			t.Name, t.When = q.Name, q.When
			l = lessons.Line{Quantity: t.Quantity, Low: t.Low, High: t.High, Readings: t.Readings, Date: t.Date, Slip: t.Slip()}
		}
		out = append(out, l)
	}
	return out
}

// typed reads what was measured: what is typed for each length that is asked for, and of others
// name=lengths.
func (l Lengths) typed(quantities []fit.Quantity, u geometry.Unit) (out []recordfile.Reading, bad jobfile.Issues) {
	read := func(flag, name, text string) {
		q, ok := quantityOf(quantities, name)
		if !ok {
			names := make([]string, len(quantities))
			for i, q := range quantities {
				names[i] = q.Key
			}
			bad = refuse(bad, flag+": "+wording.Quote(name)+" is not measured of this case", "give --reading with one of "+wording.Or(names)+", such as --reading "+names[0]+"=1.2")
			return
		}
		all, err := recordfile.Typed(q, text, u)
		if err != nil {
			bad = append(bad, Problems(fmt.Errorf("%s: %w", flag, err))...)
			return
		}
		for _, l := range all {
			if why := misread(q, l, u); why != "" {
				bad = refuse(bad, flag+": "+geometry.Settable(l, u)+" is far from the "+geometry.Settable(q.Planned, u)+" that was planned", why)
				return
			}
		}
		if slices.ContainsFunc(out, func(o recordfile.Reading) bool { return o.Of.Key == q.Key }) {
			bad = refuse(bad, flag+": "+q.Key+" is given twice", "keep one, with ; between its readings")
			return
		}
		out = append(out, recordfile.Reading{Of: q, All: all})
	}
	for _, s := range l.asked {
		if to, ok := s.To.(*string); ok && *to != "" {
			read("--"+s.Name, s.Name, *to)
		}
	}
	for _, kv := range l.Readings {
		name, text, ok := strings.Cut(kv, "=")
		if name = strings.TrimSpace(name); !ok || name == "" {
			bad = refuse(bad, fmt.Sprintf("--reading %.40q gives no name and lengths", kv), "write it as name=lengths, such as cloth=0.36")
			continue
		}
		read("--reading "+name, name, text)
	}
	return out, bad
}

// quantityOf returns the quantity of a name; of one case in another the name may leave out
// which, where only one has it.
func quantityOf(quantities []fit.Quantity, name string) (found fit.Quantity, ok bool) {
	n := 0
	for _, q := range quantities {
		if q.Key == name {
			return q, true
		}
		if strings.HasPrefix(q.Key, name+"-of-the-") {
			found, n = q, n+1
		}
	}
	return found, n == 1
}

// misread tells what a reading would be right as, where it is near the plan in another
// unit or with its point elsewhere; empty where it is none of these.
func misread(q fit.Quantity, l geometry.Length, u geometry.Unit) string {
	if !q.Slip(l) {
		return ""
	}
	for _, as := range []struct {
		times geometry.Length
		words string
	}{{geometry.Inch, "if it was inches, write in after it"}, {1 / geometry.Inch, "if it was millimetres, write mm after it"}, {10, "if it was centimetres, write cm after it"}, {0.1, "look for its decimal point"}} {
		if near := l * as.times; near > q.Planned*0.9 && near < q.Planned*1.1 {
			return as.words
		}
	}
	return ""
}

// built returns the readings that stand in the job file and not yet in the record.
func built(w worked, quantities []fit.Quantity, old recordfile.Record) (out []recordfile.Reading) {
	for _, q := range quantities {
		s, ok := w.file.Job.Settings().Find(q.Set)
		_, have := old.Last(q.Key)
		if ok && q.Set != "" && s.Readings != nil && len(*s.Readings) > 0 && !have {
			out = append(out, recordfile.Reading{Of: q, All: slices.Clone([]geometry.Length(job.Readings(*s.Readings)))})
		}
	}
	return out
}
