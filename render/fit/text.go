package fit

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/plan"
	"forel/geometry/wording"
)

// mostLines is how long a summary is at most.
const mostLines = 15

// Summary returns the report in at most 15 lines: whether the book fits, where it is
// tightest, what to do, and what to try at the bench.
func Summary(r fit.Report, round geometry.Rounding) []byte {
	var lines []string
	if t := wording.OneLine(r.Title); t != "" {
		lines = append(lines, t)
	}
	lines = append(lines, Verdict(r, round.Unit)...)
	lines = append(lines, r.Chain.Limits.Text)
	if r.Weight != nil {
		if l := heavy(*r.Weight); l != "" {
			lines = append(lines, "warning: "+l)
		}
	}
	lines = append(lines, "try at the bench, each at its step of the work (--all tells how, and all the figures):")
	const caution = 1
	checks := r.Checks()
	if room := mostLines - caution - len(lines); len(checks) > room {
		checks = checks[:room-1]
	}
	for _, c := range checks {
		lines = append(lines, checkHead(c))
	}
	if n := len(r.Checks()) - len(checks); n > 0 {
		lines = append(lines, fmt.Sprintf("and %d more", n))
	}
	lines = append(lines, "take care: "+wording.Brief)
	return []byte(strings.Join(lines, "\n") + "\n")
}

// Text returns all of the report in words, in the maker's unit. Sizes are rounded as
// r says; clearances and thicknesses to 0.01 mm or 0.001 in.
func Text(r fit.Report, round geometry.Rounding) []byte {
	var b bytes.Buffer
	u := round.Unit
	if t := wording.OneLine(r.Title); t != "" {
		fmt.Fprintf(&b, "%s\n\n", t)
	}
	for _, l := range Verdict(r, u) {
		fmt.Fprintln(&b, l)
	}
	section := func(head string, rows [][]string) {
		if len(rows) > 1 {
			fmt.Fprintf(&b, "\n%s\n", head)
			b.WriteString(tableOf(rows).Text())
		}
	}
	section("what is left beyond the book ("+u.String()+")", gapRows(r, u))
	section("what eats it: plus or minus, how far it moves each clearance from end to end ("+u.String()+"), and its part of the variance", errorRows(r, u, tightestOf(r)))
	for _, d := range r.Chain.Dimensions {
		for _, g := range shown(r, d.Name) {
			section("chain of "+Name(g), chainRows(g, u, "", "length", func(i int) string { return "  " + g.Chain[i].Name }))
		}
	}
	for _, w := range r.WhatIf {
		section("what if the "+w.Material+" is really another, cut sizes as drawn ("+u.String()+")", whatIfRows(r, w, u))
	}
	section("what can be done, each by itself", mendRows(r, u))
	if lines := weightLines(r); len(lines) > 0 {
		b.WriteString("\nweight\n")
		for _, l := range lines {
			fmt.Fprintln(&b, "  "+l)
		}
	}
	b.WriteString("\nchecks at the bench, each at its step of the work\n")
	for _, c := range r.Checks() {
		fmt.Fprintln(&b, checkHead(c))
		for _, s := range c.See {
			fmt.Fprintf(&b, "   see: %s\n", s.In(thin(round)))
		}
		if c.Fails.Text != "" {
			fmt.Fprintf(&b, "   else: %s\n", c.Fails.In(thin(round)))
		}
		for _, f := range plan.Told(c.Found, thin(round)) {
			fmt.Fprintf(&b, "   found: %s\n      means: %s\n      do: %s\n", f[0], f[1], f[2])
		}
	}
	b.WriteString("\n")
	for _, n := range notes(r, u) {
		fmt.Fprintln(&b, n)
	}
	return b.Bytes()
}

// checkHead says at which step what is tried, and when.
func checkHead(c plan.Check) string { return fmt.Sprintf("step %d, %s: %s", c.Step, c.Name, c.When) }

// thin writes lengths under 5 mm finely, others as the rounding has them.
func thin(round geometry.Rounding) func(Length) string {
	return func(l Length) string {
		if l.Abs() < 5 {
			return geometry.Fine(l, round.Unit)
		}
		return round.Format(l)
	}
}

func gapRows(r fit.Report, u geometry.Unit) [][]string {
	rows := [][]string{{"", "exact", "worst", "to best", "expected", "±", "too tight", "snug", "too loose"}}
	damp := slices.ContainsFunc(r.Gaps, func(g fit.Gap) bool { return g.Swell > 0 })
	if damp {
		rows[0] = slices.Insert(rows[0], 2, "when damp")
	}
	n := func(l Length) string { return geometry.FineNumber(l, u) }
	for _, g := range r.Gaps {
		d := g.Distribution
		rows = append(rows, []string{Name(g), n(g.Drawn), n(g.Low), n(g.High), n(d.Expected()), n(2 * d.StandardDeviation()),
			chance(g.Chance.Tight), chance(g.Chance.Snug), judged(g)})
		if last := len(rows) - 1; damp {
			rows[last] = slices.Insert(rows[last], 2, n(g.Left()))
		}
	}
	return rows
}

// judged writes the chance of too loose; "-" for a place that is not judged for it.
func judged(g fit.Gap) string {
	if g.Loose == 0 {
		return "-"
	}
	return chance(g.Chance.Loose)
}

// tightestOf returns the tightest gap of each dimension, by index.
func tightestOf(r fit.Report) []int {
	var out []int
	for _, d := range r.Chain.Dimensions {
		out = append(out, r.Tightest(d.Name))
	}
	return out
}

// errorRows has a column for each of some gaps, and a row for each error that moves one.
func errorRows(r fit.Report, u geometry.Unit, shown []int) [][]string {
	rows := [][]string{{"", "±"}}
	for _, i := range shown {
		rows[0] = append(rows[0], r.Gaps[i].Dimension, "part")
	}
	for k, e := range r.Errors {
		plusMinus := "-"
		if e.PlusMinus > 0 {
			plusMinus = geometry.FineNumber(e.PlusMinus, u)
		}
		if e.High > 0 {
			plusMinus = geometry.FineNumber(e.Low, u) + "–" + geometry.FineNumber(e.High, u)
		}
		row, any := []string{e.Name, plusMinus}, false
		for _, i := range shown {
			moves, part := "-", "-"
			if m := e.Effects[i].Moves(); m > 0 {
				any, moves, part = true, geometry.FineNumber(m, u), fmt.Sprintf("%.0f %%", 100*r.Share(k, i))
			}
			row = append(row, moves, part)
		}
		if any {
			rows = append(rows, row)
		}
	}
	return rows
}

// chainRows has a row for each link of a chain, named by name, below two heads of the names
// and their lengths.
func chainRows(g fit.Gap, u geometry.Unit, names, lengths string, name func(link int) string) [][]string {
	rows := [][]string{{names, lengths, "counts", "sum"}}
	sums := g.Sums()
	for i, l := range g.Chain {
		rows = append(rows, []string{name(i), geometry.FineNumber(l.Length, u), counts(l.Counts), geometry.FineNumber(sums[i], u)})
	}
	return rows
}

// counts writes how many times a link counts, with its sign.
func counts(v float64) string {
	if v > 0 {
		return "+" + wording.Decimal(v, 2)
	}
	return wording.Decimal(v, 2)
}

func whatIfRows(r fit.Report, w fit.WhatIf, u geometry.Unit) [][]string {
	rows := [][]string{{w.Material, "thickness"}}
	var shown []int
	tightest := tightestOf(r)
	for i, g := range r.Gaps {
		depends := slices.ContainsFunc(g.Chain, func(l fit.Link) bool { return l.Name == w.Material })
		if depends && (g.Volume == "" || slices.Contains(tightest, i)) {
			shown = append(shown, i)
			rows[0] = append(rows[0], Name(g))
		}
	}
	for _, tried := range w.Tried {
		row := []string{tried.Name, geometry.FineNumber(tried.Thickness, u)}
		for _, i := range shown {
			row = append(row, geometry.FineNumber(tried.Left[i], u))
		}
		rows = append(rows, row)
	}
	return rows
}

func mendRows(r fit.Report, u geometry.Unit) [][]string {
	rows := [][]string{{"then too tight", "too loose", "", ""}}
	for _, m := range r.Mends {
		mark := ""
		switch {
		case m.Advised:
			mark = "advised"
		case m.Chance.Enough():
			mark = "enough"
		}
		rows = append(rows, []string{chance(m.Chance.Tight), chance(m.Chance.Loose), mark, m.What.In(settable(u)) + sets(r, m, u)})
	}
	return rows
}

// sets says what to write in the job file, but for a clearance, which the sentence
// says.
func sets(r fit.Report, m fit.Mend, u geometry.Unit) string {
	var parts []string
	for _, s := range m.Sets {
		value := strconv.Quote(s.Word)
		if s.Word == "" {
			value = geometry.FineNumber(s.Value, u)
		}
		if !slices.ContainsFunc(r.Chain.Dimensions, func(d plan.Dimension) bool { return d.Key == s.Key }) {
			parts = append(parts, s.Key+"="+value)
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return " (" + strings.Join(parts, ", ") + ")"
}

// notes says what the numbers mean.
func notes(r fit.Report, u geometry.Unit) []string {
	return []string{
		r.Chain.Limits.Text,
		"how a book behaves when its case is tipped can't be told: friction has no usable published value",
		"worst and best: every error at the end of its plus or minus at once; expected ±: 19 of 20 cases, errors added as squares (root-sum-square)",
		"plus or minus is two standard deviations, a thickness known only by a trade name anywhere in its range with equal chance; set yours under [uncertainty]",
		"clearances are shown to " + geometry.FineStep(u) + "; the JSON report is exact to 0.001 mm",
		"take care: " + wording.Brief,
		wording.Sources,
	}
}
