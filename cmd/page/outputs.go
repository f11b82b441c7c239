package page

import (
	"cmp"
	"context"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/geometry"
	"forel/geometry/wording"
	"forel/render/document"
)

// Output is what can be made of a job: a command, with what the page says of it.
type Output struct {
	Name     string    `json:"name"` // of the command
	Title    string    `json:"title"`
	Says     string    `json:"says"`
	Care     string    `json:"care,omitempty"`
	Keys     []string  `json:"keys,omitempty"`     // of the job file that matter to it alone, or the table that they are in
	Slow     bool      `json:"slow,omitempty"`     // made when it is asked for, not at once
	Begin    string    `json:"begin,omitempty"`    // of slow ones, the words of the button
	Once     bool      `json:"once,omitempty"`     // what is typed into its settings is of this time and this case
	Place    Place     `json:"place,omitempty"`    // where it stands; "": sheets
	Early    bool      `json:"early,omitempty"`    // it asks for the book alone, whether or not the case can be made
	Measures bool      `json:"measures,omitempty"` // its settings are those of the case: see the request settings
	Several  bool      `json:"several,omitempty"`  // several cases can be made together
	Settings []Setting `json:"settings,omitempty"`

	fresh func(pipeline.Progress) pipeline.Command // the command with its usual settings
}

// Setting is a setting of an output, as a form shows it.
type Setting struct {
	Name    string        `json:"name"`
	Label   string        `json:"label"`
	Says    string        `json:"says"`
	Kind    jobfile.Takes `json:"kind"`            // text, number, choice, several or yes
	Takes   string        `json:"takes,omitempty"` // what it takes, in a word: width
	Words   []string      `json:"words,omitempty"` // of a choice, or several
	Default string        `json:"default"`
	Needed  bool          `json:"needed,omitempty"` // nothing is made without it
	Once    bool          `json:"once,omitempty"`   // it is not kept for the next time
}

// What settings take that keys of a job file don't.
const (
	TakesYes     jobfile.Takes = "yes"     // it is on or off
	TakesSeveral jobfile.Takes = "several" // any of a few words, with commas between
)

// outputs are all that can be made, the most usual first. What is said of them here is the
// page's own; of their settings it is what the flags say.
var outputs = []Output{
	{Name: "templates", Title: "Templates to print", fresh: func(pipeline.Progress) pipeline.Command { return &pipeline.Templates{} },
		Says: "Every piece at true size, over as many sheets as it takes. Print at actual size, then measure the rulers before you cut.",
		Care: wording.Careful(wording.Knife, wording.Adhesive, wording.Machine), Keys: []string{"print"}},
	{Name: "choose", Title: "What should I make?", Place: InBook, Once: true, Early: true, fresh: func(pipeline.Progress) pipeline.Command { return &pipeline.Choose{} },
		Says: "What to make for this book, of how thick a board, and how the book comes out of it: each with its reason, and a button that fills it in.",
		Care: wording.Careful(wording.Knife, wording.Adhesive)},
	{Name: "handout", Title: "The handout", fresh: func(pipeline.Progress) pipeline.Command { return &pipeline.Handout{} },
		Says: "The worksheet filled in, then every step with its pictures and checks, to have beside you as you work.",
		Care: wording.Careful(wording.Knife, wording.Adhesive)},
	{Name: "cutlist", Title: "The list of pieces", fresh: func(pipeline.Progress) pipeline.Command { return &pipeline.Cutlist{} },
		Says: "Every piece with its size, for cutting by rule and square.",
		Care: wording.Careful(wording.Knife, wording.Shear)},
	{Name: "timetable", Title: "What to do when", Several: true, fresh: func(pipeline.Progress) pipeline.Command { return &pipeline.Timetable{Draw: true} },
		Says: "Every step with its time and what then must dry, day by day in the hours that your bench is open; with a date, a file for your calendar too.",
		Care: wording.Careful(wording.Knife, wording.Adhesive), Keys: []string{"times"}},
	{Name: "stock", Title: "What to buy, and how to cut it", Slow: true, Several: true, fresh: func(p pipeline.Progress) pipeline.Command { return &pipeline.Stock{Draw: true, Progress: p} },
		Says: "All pieces laid on the sheets and rolls that you own, or that are usual; with each sheet as a picture.",
		Care: wording.Careful(wording.Knife, wording.Shear), Keys: []string{"stock"}},
	{Name: "order", Title: "What to order", Slow: true, Begin: "Make the list", Several: true, fresh: func(p pipeline.Progress) pipeline.Command { return &pipeline.Order{Draw: true, Progress: p} },
		Says: "What is not in hand, in a seller's terms: how many sheets, how much of a roll, how much paste.",
		Keys: []string{"order", "adhesive"}},
	{Name: "quote", Title: "What it costs", Slow: true, Begin: "Work the price out", Several: true, fresh: func(p pipeline.Progress) pipeline.Command { return &pipeline.Quote{Draw: true, Progress: p} },
		Says: "What the case costs in materials and hours: a page for your client, and one for you.",
		Keys: []string{"quote", "extra"}},
	{Name: "record", Title: "What I measured", Slow: true, Begin: "Take it down", Once: true, Place: InKeep, Measures: true, fresh: func(pipeline.Progress) pipeline.Command { return &pipeline.Record{} },
		Says: "Take down what the case measures, beside what was planned."},
	{Name: "rescue", Title: "It does not fit: ways back", Slow: true, Begin: "Find the ways back", Once: true, Place: InKeep, Measures: true, fresh: func(pipeline.Progress) pipeline.Command { return &pipeline.Rescue{Draw: true} },
		Says: "Give the room that the book has in the case, and see the ways back, that of least work first.",
		Care: wording.Careful(wording.Knife, wording.Adhesive)},
	{Name: "lessons", Title: "What my cases teach", Slow: true, Begin: "See what they teach", Once: true, Place: InKeep, fresh: func(pipeline.Progress) pipeline.Command { return &pipeline.Lessons{} },
		Says: "What the records of the cases in this list say of your own hand, and the lines that are yours, for the habits of your shop. From five cases on."},
	{Name: "cutter", Title: "For a laser or a drag knife", Slow: true, fresh: func(pipeline.Progress) pipeline.Command { return &pipeline.Cutter{} },
		Says: "All pieces laid on the bed of your machine, a drawing for each bed, and a map of what lies where.",
		Care: wording.Careful(wording.Machine)},
	{Name: "measure", Title: "A sheet to measure by", fresh: func(pipeline.Progress) pipeline.Command { return &pipeline.Measure{} },
		Says: "How to measure the book and the materials, each with a picture, and blanks to write the readings into."},
	{Name: "gauge", Title: "How true your printer is", fresh: func(pipeline.Progress) pipeline.Command { return &pipeline.Gauge{} },
		Says: "Print this sheet at actual size, measure its rules, and type in what you measured: all that is printed at true size is corrected by it.",
		Keys: []string{"print.measured_across", "print.measured_along"}},
	{Name: "fit", Title: "The fit in full", fresh: func(pipeline.Progress) pipeline.Command { return &pipeline.Fit{Draw: true} },
		Says: "All that can be off, what it does to the room for the book, the checks at the bench, and strips of paper to try round the book.",
		Care: wording.Careful(wording.Knife, wording.Adhesive, wording.Machine)},
	{Name: "prove", Title: "The proof", fresh: func(pipeline.Progress) pipeline.Command { return &pipeline.Prove{Draw: true} },
		Says: "The pieces folded up, with what was looked for and found."},
}

// outputsOf returns all outputs with their settings.
func outputsOf() []Output {
	out := slices.Clone(outputs)
	for i, o := range out {
		out[i].Settings = formsOf(o.fresh(nil))
	}
	return out
}

// formsOf returns the settings of a command as a form shows them.
func formsOf(c pipeline.Command) (out []Setting) {
	all := settingsOf(c)
	for _, s := range all {
		f := formOf(s)
		f.Says = onPage(inPlainWords(f.Says, all))
		out = append(out, f)
	}
	return out
}

// output returns the output that a request names.
func (q Request) output() (Output, error) {
	i := slices.IndexFunc(outputs, func(o Output) bool { return o.Name == q.Name })
	if i < 0 {
		return Output{}, fmt.Errorf("unknown command %.40q", q.Name)
	}
	return outputs[i], nil
}

// settings tells of the settings of an output, which are those of the case where it measures.
func (a *Response) settings(q Request) error {
	o, err := q.output()
	if err != nil {
		return err
	}
	c := o.fresh(nil)
	if err := q.reads(c); err != nil {
		return err
	}
	o.Settings = formsOf(c)
	a.Outputs = []Output{o}
	return nil
}

// reads gives a command the files of the request.
func (q Request) reads(c pipeline.Command, others ...pipeline.File) error {
	c.(pipeline.Reads).From(append([]pipeline.File{{Name: q.Source, Data: []byte(q.Text)}}, others...)...)
	c.(pipeline.Reads).Lend(q.shop())
	q.beside(c)
	if m, ok := c.(pipeline.Measuring); ok {
		return m.Measured()
	}
	return nil
}

// settingsOf returns all settings of a command.
func settingsOf(c pipeline.Command) (all []pipeline.Setting) {
	all = c.(pipeline.Settable).Settings()
	if s, ok := c.(*pipeline.Stock); ok {
		all = append(all, slices.DeleteFunc(s.Taking(), func(s pipeline.Setting) bool { return s.Name == "undo" })...) // which is a question of its own
	}
	if s, ok := c.(pipeline.Shown); ok {
		all = append(all, s.Showing()...)
	}
	return all
}

// formOf returns a setting as a form shows it.
func formOf(s pipeline.Setting) Setting {
	f := Setting{Name: s.Name, Label: label(s.Name), Says: s.Says(), Takes: s.Takes(), Words: s.Words, Default: cmp.Or(s.Typed(), s.Usual), Needed: s.Needed, Kind: jobfile.TakesText}
	switch s.To.(type) {
	case *bool:
		f.Kind = TakesYes
	case *int:
		f.Kind = jobfile.TakesNumber
	}
	f.Once = f.Name == "take" || f.Name == "on" // of what is taken once
	if s.Words != nil {
		f.Kind = jobfile.TakesChoice
		if s.Commas {
			f.Kind = TakesSeveral
		}
	}
	return f
}

// label is the name of a setting as words.
func label(name string) string { return strings.ReplaceAll(name, "-", " ") }

// make runs a command on the job.
func (d *Desk) make(ctx context.Context, a *Response, q Request, progress pipeline.Progress) error {
	o, err := q.output()
	if err != nil {
		return err
	}
	c := o.fresh(progress)
	var others []pipeline.File
	if o.Several {
		others = filesOf(q.Others, q.Source)
	}
	if err := q.reads(c, others...); err != nil {
		return err
	}
	settings := settingsOf(c)
	for name, typed := range q.Flags {
		n := slices.IndexFunc(settings, func(s pipeline.Setting) bool { return s.Name == name })
		if n < 0 {
			return fmt.Errorf("%s has no setting %.40q", q.Name, name)
		}
		a.Faults = append(a.Faults, faultsOf(settings[n].Set(typed), unitOf(q))...)
	}
	if len(a.Faults) == 0 {
		if r, ok := c.(*pipeline.Record); ok {
			r.Draw = r.Show
		}
		r, err := c.Make(ctx)
		a.refuse(err, unitOf(q))
		a.Warnings = faultsOf(r.Warnings, unitOf(q))
		for _, list := range [][]Fault{a.Faults, a.Warnings} {
			for i := range list {
				list[i].ofOther(others)
			}
		}
		if err == nil {
			a.advise(r.Advised)
			a.made(q, r, settings)
			a.keeps(r)
			if q.Name == "record" && r.Document == nil && len(r.Files) > 0 {
				text := string(r.Files[0].Data)
				a.Record = &text
			}
		}
	}
	for i := range a.Faults {
		a.Faults[i].atSetting(settings)
	}
	return nil
}

// unitOf returns the unit of bare numbers of a job.
func unitOf(q Request) (u geometry.Unit) {
	if state, err := jobfile.Read(q.Source, []byte(q.Text)); err == nil {
		u = state.Unit
	}
	return u
}

// made tells of what was made; a report is a file too, as the command line prints it.
func (a *Response) made(q Request, r pipeline.Result, settings []pipeline.Setting) {
	a.Report, a.Print = plainReport(r.Report, settings), r.Print.File
	for _, n := range r.Notes {
		if toldElsewhere.MatchString(n) {
			continue
		}
		if n = inPlainWords(onPage(strings.TrimSpace(n)), settings); !fileFirst.MatchString(n) {
			n = wording.Capital(n)
		}
		a.Notes = append(a.Notes, n+".")
	}
	add := func(name string, data []byte) {
		a.Files = append(a.Files, File{Name: name, Type: media(name), Data: data})
	}
	if len(r.Report) > 0 {
		add(q.Name+map[string]string{"text": ".txt", "json": ".json", "csv": ".csv", "markdown": ".md", "toml": ".toml"}[formatOf(settings)], r.Report)
	}
	for _, f := range r.Files {
		add(f.Name, f.Data)
	}
	if !q.Pages || r.Document == nil {
		return
	}
	for _, d := range append([]*document.Document{r.Document}, r.Beside...) {
		pages, of := d.Drawings(), ""
		if len(r.Beside) > 0 {
			of, _, _ = strings.Cut(d.Title, ":")
			of += ", "
		}
		for i, p := range pages {
			a.Pages = append(a.Pages, File{Name: of + d.PageText(i+1, len(pages)), Type: media(".svg"), Data: p})
		}
	}
}

// formatOf returns the format of a report.
func formatOf(settings []pipeline.Setting) string {
	for _, s := range settings {
		if s.Name == "format" {
			return s.Typed()
		}
	}
	return "text"
}

var (
	toldElsewhere = regexp.MustCompile(`^(proof|fit|take care): `) // the page says these by itself
	fileFirst     = regexp.MustCompile(`^\S+\.(svg|pdf)\b`)
)

// atSetting makes the setting that a fault tells of its key, such as --bed.
func (f *Fault) atSetting(settings []pipeline.Setting) {
	if f.Key != "" && !strings.HasPrefix(f.Key, "--") {
		return // of the job
	}
	for _, words := range []string{f.Key, f.Says, f.Fix} {
		if m := flagName.FindStringSubmatch(words); m != nil {
			f.Key = "--" + m[1]
			break
		}
	}
	f.Says = inPlainWords(strings.TrimPrefix(f.Says, f.Key+": "), settings)
	f.Fix = inPlainWords(f.Fix, settings)
}
