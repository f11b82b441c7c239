package page

import (
	"errors"
	"math"
	"slices"
	"strings"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/wording"
	renderfit "forel/render/fit"
)

// Verdict is how a job comes out, in a word.
type Verdict string

// Verdicts.
const (
	Fits    Verdict = "fits"
	Risky   Verdict = "risky"   // it can be made, but may be too tight or too loose
	Empty   Verdict = "empty"   // the book is still to be measured, and nothing else is wrong
	Refused Verdict = "refused" // it can't be made as it stands
)

// Answer tells whether the book will fit.
type Answer struct {
	Verdict  Verdict  `json:"verdict"`
	Says     string   `json:"says"`               // one sentence
	Chances  string   `json:"chances,omitempty"`  // another: how likely each fit is
	More     []string `json:"more,omitempty"`     // what else forel fit says in short, a sentence each
	Warnings []Fault  `json:"warnings,omitempty"` // what can be made, but looks like a slip
	Mends    []Mend   `json:"mends,omitempty"`    // of the fit: what to do about it, the least effort first
	Tightest *Gap     `json:"tightest,omitempty"`
	Numbers  []Number `json:"numbers,omitempty"` // sizes of the finished case and what is left in it
}

// Gap is a place where there must be room.
type Gap struct {
	Name  string `json:"name"`  // "height at the mouth"
	Drawn string `json:"drawn"` // as drawn
	Chain []Link `json:"chain"`
}

// Link is a length that gives room in a gap, or takes it.
type Link struct {
	Name  string `json:"name"`
	Text  string `json:"text"`
	Gives bool   `json:"gives,omitempty"`
	Times string `json:"times,omitempty"` // how often it counts, where not once
}

// Number is a size with what it is.
type Number struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

// Fault is one thing wrong, or worth a second look.
type Fault struct {
	Key   string `json:"key"`             // of its blank; "": of none
	Line  int    `json:"line,omitempty"`  // of the job file; 0: no line is to blame
	Says  string `json:"says"`            // what is wrong
	Fix   string `json:"fix,omitempty"`   // what would do
	Empty bool   `json:"empty,omitempty"` // nothing is typed there yet
	Shop  bool   `json:"shop,omitempty"`  // it is of the shop file: Line is there
	Mend  *Mend  `json:"mend,omitempty"`

	source string // the file
}

// Mend is what would do, as changes of the job file and words for a button.
type Mend struct {
	Label   string   `json:"label"`
	Sets    []Change `json:"sets"`
	Then    string   `json:"then,omitempty"`    // of the fit: how it will be
	Advised bool     `json:"advised,omitempty"` // of the fit: the first that is enough
	Habit   bool     `json:"habit,omitempty"`   // it is for the shop file: to be adopted, not set
}

// answerOf tells how a job comes out.
func answerOf(c *pipeline.Case, faults []Fault) *Answer {
	if len(faults) > 0 {
		return refusal(faults)
	}
	r, u := c.Fit(), c.Round.Unit
	lines := renderfit.Verdict(r, u)
	fits, chances, _ := strings.Cut(lines[0], "; ")
	a := &Answer{Verdict: Fits, Says: wording.Sentence("the " + c.Plan.Content + " " + fits), Chances: wording.Sentence(chances)}
	if !r.Settled.Enough() {
		a.Verdict = Risky
	}
	advised := false
	for _, m := range r.Mends {
		advised = advised || m.Advised
		one := Mend{Then: renderfit.Then(m), Label: onPage(m.What.In(func(l geometry.Length) string { return geometry.Settable(l, u) })), Advised: m.Advised}
		for _, set := range m.Sets {
			one.Sets = append(one.Sets, jobfile.ChangeOf(set, u))
		}
		if len(one.Sets) > 0 {
			a.Mends = append(a.Mends, one)
		}
	}
	if advised { // it stands among the mends
		lines = lines[:len(lines)-1]
	}
	for _, l := range lines[1:] {
		a.More = append(a.More, onPage(wording.Sentence(l)))
	}
	a.Tightest = gapOf(r, u)
	for _, f := range c.Plan.Facts {
		a.Numbers = append(a.Numbers, Number{f.Name, f.Says().In(c.Round.Pretty)})
	}
	return a
}

// refusal tells of a job that can't be made.
func refusal(faults []Fault) *Answer {
	empty := !slices.ContainsFunc(faults, func(f Fault) bool { return !f.Empty })
	if empty {
		return &Answer{Verdict: Empty, Says: "Type in what you measured: the height, the width and the thickness of the book."}
	}
	a := &Answer{Verdict: Refused, Says: "This can't be made as it stands."}
	for _, f := range faults {
		if !f.Empty {
			a.Says = wording.Sentence(strings.TrimPrefix(f.Says, "the book: "))
			break
		}
	}
	return a
}

// gapOf returns the place most likely to be too tight.
func gapOf(r fit.Report, u geometry.Unit) *Gap {
	if len(r.Gaps) == 0 {
		return nil
	}
	g := r.Gaps[r.Worst.Gap]
	var chain []Link
	for _, l := range g.Chain {
		one := Link{Name: l.Name, Text: geometry.Fine(l.Length, u), Gives: l.Counts > 0}
		if n := math.Abs(l.Counts); n != 1 {
			one.Times = wording.Decimal(n, 2)
		}
		chain = append(chain, one)
	}
	return &Gap{renderfit.Name(g), geometry.Fine(g.Drawn, u), chain}
}

// refuse adds what an error tells; bare numbers of the job are in unit u.
func (a *Response) refuse(err error, u geometry.Unit) {
	var issues jobfile.Issues
	var one jobfile.Issue
	switch {
	case err == nil:
	case errors.As(err, &issues), errors.As(err, &one):
		a.Faults = append(a.Faults, faultsOf(err, u)...)
	default:
		a.Error = err.Error()
	}
}

// faultsOf returns what an error tells of, one by one.
func faultsOf(err error, u geometry.Unit) (out []Fault) {
	for _, i := range pipeline.Problems(err) {
		f := Fault{Key: i.Key, Line: i.Line, Says: onPage(wording.Printable(i.Wrong())), Fix: onPage(wording.Printable(i.Fix)), source: i.Source}
		if i.Mend.Key != "" {
			set := jobfile.ChangeOf(i.Mend, u)
			f.Mend = &Mend{Label: "use " + set.Value, Sets: []Change{set}}
		}
		f.ofShop(i.Source)
		if n := len(out) - 1; n >= 0 && f.Key == "" && f.Mend == nil && out[n].Key == "" && out[n].Mend == nil && out[n].Fix == f.Fix {
			out[n].Fix = "" // it is said once, at the end
		}
		out = append(out, f)
	}
	return out
}
