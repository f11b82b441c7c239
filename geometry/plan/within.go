package plan

import (
	"fmt"
	"strings"

	"forel/geometry/job"
)

// Inner is the job of what a book wears inside another case.
type Inner interface {
	Job
	// AsBook returns the book of the case that the inner one stands in: what it
	// measures outside, closed. The job must be one that was not refused.
	AsBook() job.Book
	Chain() Chain
}

// Outer is the job of a case that something else can stand in.
type Outer interface {
	Job
	Chain() Chain
}

// Within returns the job of a case round what the book wears, both made from one
// job file: sizes pass on by themselves. fresh returns the two jobs with every
// default set; inner and outer name them, such as "chemise" and "slipcase". A
// setting that both have, and all that is Common, is set once, but for clearances,
// where each has its own.
func Within(fresh func() (Inner, Outer), inner, outer string) Job {
	w := &within{fresh: fresh, names: [2]string{inner, outer}}
	w.inner, w.outer = fresh()
	w.common = *w.outer.Shared()
	return w
}

// within is such a job. What its settings and Shared hold goes before what the two
// jobs have in common with it.
type within struct {
	fresh  func() (Inner, Outer)
	names  [2]string
	common job.Common
	inner  Inner
	outer  Outer
}

func (w *within) Shared() *job.Common { return &w.common }

// Unbuilt takes back what was measured of the outer case.
func (w *within) Unbuilt() {
	if b, ok := w.outer.(Built); ok {
		b.Unbuilt()
	}
}

// shared returns the settings that both have in common. Where the outer case has keys of
// its own for its clearances, these are left out.
func (w *within) shared() job.Settings {
	if w.ownRoom() {
		return w.common.FitSettings()
	}
	return w.common.Settings()
}

// ownRoom tells whether the outer case has keys of its own for its clearances.
func (w *within) ownRoom() bool {
	_, common := w.outer.Settings().Find("clearance.height")
	return !common
}

func (w *within) Settings() job.Settings {
	shared := w.shared()
	var own job.Settings
	for _, s := range append(w.inner.Settings(), w.outer.Settings()...) {
		_, common := shared.Find(s.Key)
		if _, have := own.Find(s.Key); !common && !have {
			own = append(own, s)
		}
	}
	return append(own, shared...)
}

// passOn gives the inner job what both have in common.
func (w *within) passOn() {
	in := w.inner.Shared()
	room := in.Clearance
	*in = w.common
	in.Clearance = room
}

// passOut gives the outer job the inner one for its book, which is not measured.
func (w *within) passOut() {
	out := w.outer.Shared()
	room := out.Clearance
	*out = w.common
	if w.ownRoom() {
		out.Clearance = room
	}
	b := w.inner.AsBook()
	b.Title, b.Weight = w.common.Book().Title, w.common.Book().Weight
	out.Books = []job.Book{b}
	out.Wears = w.names[0]
}

func (w *within) Check() (sound Checked, refused, suspect job.Problems) {
	w.passOn()
	in, refused, suspect := w.inner.Check()
	if len(refused) > 0 {
		return nil, refused, suspect
	}
	w.passOut()
	out, refused, more := w.outer.Check()
	for _, p := range more {
		if !strings.HasPrefix(p.Key, "book") { // that is told of the real one
			suspect = append(suspect, p)
		}
	}
	for i, p := range refused {
		if strings.HasPrefix(p.Key, "book") {
			refused[i].Reason += fmt.Sprintf(", with its %s on", w.names[0])
			if p.Mend.Key != "" {
				refused[i].Fix, refused[i].Mend.Value = w.without(p.Mend)
			}
		}
	}
	if len(refused) > 0 {
		return nil, refused, suspect
	}
	return checkedWithin{in, out, w.copied()}, nil, suspect
}

// without returns the change of the book itself for one of the book with what it wears.
func (w *within) without(of job.Change) (fix string, value Length) {
	unit, out, book := w.common.Unit, w.outer.Shared(), w.common.Book()
	for _, d := range job.Dimensions {
		if job.BookKey(0, d.Key) != of.Key {
			continue
		}
		worn, own := d.At(&out.Books[0]).Largest(), d.At(&book).Largest()
		if worn < d.Min {
			return "at least " + job.Show(own+d.Min-worn, unit, +1), job.Shown(own+d.Min-worn, unit, +1)
		}
		value = own + d.Max - worn
	}
	return "at most " + job.Show(value, unit, -1), job.Shown(value, unit, -1)
}

// copied returns a job of its own with the same settings.
func (w *within) copied() *within {
	k := Within(w.fresh, w.names[0], w.names[1]).(*within)
	k.common = w.common
	k.Settings().Take(w.Settings())
	return k
}

// chain returns the chain of the two.
func (w *within) chain() Chain {
	w.passOn()
	w.passOut()
	return Nested(w.inner.Chain(), w.outer.Chain(), "the "+w.names[0], "the "+w.names[1], func(changes []job.Change) Chain {
		k := w.copied()
		k.Settings().Apply(changes)
		return k.chain()
	})
}

// checkedWithin is such a job that can be made.
type checkedWithin struct {
	inner, outer Checked
	job          *within
}

func (c checkedWithin) Make() (Plan, error) {
	in, err := c.inner.Make()
	if err != nil {
		return Plan{}, err
	}
	out, err := c.outer.Make()
	if err != nil {
		return Plan{}, err
	}
	p := Joined(in, out, c.job.names[0], c.job.names[1])
	p.Chain = c.job.chain()
	return p, nil
}
