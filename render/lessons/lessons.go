package lessons

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/lessons"
	"forel/geometry/wording"
	renderfit "forel/render/fit"
)

// Advice is what was learnt for one job.
type Advice struct {
	Title      string
	Clearances []job.Change // the smallest with which a book sticks no more than once in 50
	Told       fit.Chance   // as the job is
	Own        fit.Chance   // with what was learnt
	Then       fit.Chance   // and with the clearances
}

// Lessons returns what was learnt in words, in the unit u. Advice may be nil.
func Lessons(l lessons.Learnt, a *Advice, u geometry.Unit) []byte {
	var b strings.Builder
	fmt.Fprintf(&b, "from %s\n\n", wording.Count(l.Cases, "record"))
	b.WriteString(wording.Aligned(rowsOf(l, u), func(i int) bool { return i == 1 || i == 2 }))
	for _, s := range said(l, u) {
		fmt.Fprintf(&b, "\n%s", s)
	}
	for _, s := range l.Slips {
		fmt.Fprintf(&b, "\nleft out: %s:%d: %s measured %s, %s was expected: a slip? put it right there", wording.OneLine(s.Case), s.Line, s.Key, geometry.Fine(s.Value, u), geometry.Fine(s.Mean, u))
	}
	if l.Changed > 0 {
		fmt.Fprintf(&b, "\nleft out: %s measured after something was done to the case", wording.Count(l.Changed, "length"))
	}
	b.WriteString("\n")
	if sets := l.Sets(); len(sets) > 0 {
		b.WriteString("\nto paste into a job file, or into your shop file as a habit")
		if slices.ContainsFunc(l.Lessons, func(one lessons.Lesson) bool { return one.Enough && one.Sort != fit.Play && one.Off.Biased() }) {
			b.WriteString("; what is off on average is in it until you put that right")
		}
		b.WriteString(":\n")
		b.WriteString(tables(sets, u))
	}
	if a != nil {
		b.WriteString(a.text(u))
	}
	return []byte(b.String())
}

// tables writes settings as tables of a job file.
func tables(sets []job.Change, u geometry.Unit) string {
	var b strings.Builder
	table := ""
	for _, c := range sets {
		of, key, _ := strings.Cut(c.Key, ".")
		if of != table {
			fmt.Fprintf(&b, "\n[%s]\n", of)
		}
		table = of
		fmt.Fprintf(&b, "%s = %q\n", key, geometry.Settable(c.Value, u))
	}
	return b.String()
}

// rowsOf is the table of what was learnt.
func rowsOf(l lessons.Learnt, u geometry.Unit) [][]string {
	n := func(v float64) string { return geometry.FineNumber(Length(v), u) }
	signed := func(v float64) string {
		if s := n(v); v > 0 && strings.Trim(s, "0.") != "" {
			return "+" + s
		}
		return n(v)
	}
	rows := [][]string{{"(" + u.String() + ")", "cases", "lengths", "off on average", "plus or minus (19 of 20)", "reckoned with"}}
	for _, one := range l.Lessons {
		row := []string{one.Name, fmt.Sprint(one.Cases), fmt.Sprint(max(one.Off.N, one.Cases))}
		if !one.Enough {
			rows = append(rows, append(row, fmt.Sprintf("too few to conclude from: %d cases at least", lessons.Fewest), "", ""))
			continue
		}
		o, w := one.Off, one.Own
		rows = append(rows, append(row, fmt.Sprintf("%s (%s to %s)", signed(o.Mean), signed(o.MeanLow), signed(o.MeanHigh)),
			fmt.Sprintf("%s (%s to %s)", n(2*w.SD), n(2*w.SDLow), n(2*w.SDHigh)), n(one.Was.MM())))
	}
	return rows
}

// biases are what is said of a lesson that is off on average.
var biases = map[fit.Sort]struct{ what, more, less, then string }{
	fit.Layer: {"layers measure", "more", "less", " than the jobs said: measure before you cut, and say so in the job"},
	fit.Size:  {"sizes come out", "larger", "smaller", " than drawn: look for it in the fence, the rule or the side of the line that you cut on"},
	fit.Play:  {"your cases come out", "roomier", "tighter", " than reckoned"},
}

// said says what each lesson means; in brackets stands what holds the truth in 19 of 20
// such samples.
func said(l lessons.Learnt, u geometry.Unit) (out []string) {
	if len(l.Lessons) == 0 {
		return []string{"nothing to learn from yet: take down what you measure with forel record"}
	}
	if slices.ContainsFunc(l.Lessons, func(one lessons.Lesson) bool { return one.Enough }) {
		out = append(out, "in brackets: what holds the truth in 19 of 20 such samples. What your readings are off is in these figures too")
	}
	for _, one := range l.Lessons {
		if !one.Enough || !one.Off.Biased() {
			continue
		}
		b := biases[one.Sort]
		than := b.more
		if one.Off.Mean < 0 {
			than = b.less
		}
		out = append(out, one.Name+": "+b.what+" "+geometry.Fine(Length(math.Abs(one.Off.Mean)), u)+" "+than+b.then)
	}
	return out
}

// text says what was learnt for a job.
func (a Advice) text(u geometry.Unit) string {
	var b strings.Builder
	name := cmp.Or(wording.OneLine(a.Title), "this job")
	chances := renderfit.ChancesOf
	if len(a.Clearances) > 0 {
		fmt.Fprintf(&b, "\nfor %s the smallest clearances with which a book sticks no more than once in %.0f:\n", name, 1/fit.Once)
		b.WriteString(tables(a.Clearances, u))
	}
	fmt.Fprintf(&b, "\nthe fit of %s as its file has it: %s\nwith your own errors: %s\n", name, chances(a.Told), chances(a.Own))
	if len(a.Clearances) > 0 {
		fmt.Fprintf(&b, "and with these clearances: %s\n", chances(a.Then))
	}
	return b.String()
}
