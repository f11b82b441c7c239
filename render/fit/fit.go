// Package fit shows a report on how a case will fit: as words, as JSON, and as
// drawings: the distribution of each clearance with its limits, the chain it
// comes from, the checks at the bench, and paper strips at true size to try
// round the book. It works nothing out; all numbers come with the report.
package fit

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/wording"
	"forel/render/document"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Options say how a report is shown.
type Options = document.Options

// settable writes a length as a maker would type it.
func settable(u geometry.Unit) func(Length) string {
	return func(l Length) string { return geometry.Settable(l, u) }
}

// chance writes a chance in percent, to a tenth; what is not certain is not
// written as if it were.
func chance(p float64) string {
	switch {
	case p < 1e-9:
		return "0 %"
	case p < 0.0005:
		return "< 0.1 %"
	case p > 1-1e-9:
		return "100 %"
	case p > 0.9995:
		return "> 99.9 %"
	}
	return fmt.Sprintf("%.1f %%", 100*p)
}

// often says in words how often something happens.
func often(p float64) string {
	switch {
	case p < 1.0/1000:
		return "fewer than 1 case in 1000"
	case p < 0.29:
		return fmt.Sprintf("about 1 case in %.0f", 1/p)
	case p > 0.95:
		return "nearly every case"
	}
	return fmt.Sprintf("about %.0f cases in 10", min(10*p, 10))
}

// Name names a gap: "height at the mouth".
func Name(g fit.Gap) string {
	out := g.Dimension
	if g.Where != "" {
		out += " " + g.Where
	}
	if g.Volume != "" {
		out += ", " + wording.OneLine(g.Volume)
	}
	return out
}

// ChancesOf says chances of a case in a line.
func ChancesOf(c fit.Chance) string {
	return fmt.Sprintf("snug: %s; too tight: %s; too loose: %s", chance(c.Snug), often(c.Tight), often(c.Loose))
}

// Line says in one line whether the book fits, and what to do where it may not.
func Line(r fit.Report, u geometry.Unit) string {
	if r.Settled.Enough() {
		return fits(r)
	}
	return fits(r) + "; " + Advice(r, u)
}

// fits says whether the book fits.
func fits(r fit.Report) string {
	var may []string
	if r.Settled.Tight > fit.Once {
		may = append(may, "too tight")
	}
	if r.Settled.Loose > fit.Once {
		may = append(may, "too loose")
	}
	does := "fits"
	if may != nil {
		does = "may be " + wording.Or(may)
	}
	return does + "; " + ChancesOf(r.Settled)
}

// Verdict says in a few lines how the case will fit.
func Verdict(r fit.Report, u geometry.Unit) []string {
	g, e := r.Gaps[r.Worst.Gap], r.Errors[r.Worst.Error]
	second := fmt.Sprintf("tightest: %s, %s when nothing is off, %s to %s in the worst case; most of what can be off there, %.0f %%, is %s (up to %s from end to end)",
		Name(g), geometry.Fine(g.Drawn, u), geometry.Fine(g.Low, u), geometry.Fine(g.High, u), 100*r.Worst.Share, e.Name, geometry.Fine(e.Effects[r.Worst.Gap].Moves(), u))
	lines := []string{fits(r), second}
	if l := damp(r, u); l != "" {
		lines = append(lines, l)
	}
	return append(lines, Advice(r, u))
}

// damp says what the allowance for damp leaves where it leaves the least; nothing
// where there is none.
func damp(r fit.Report, u geometry.Unit) string {
	var least *fit.Gap
	for i, g := range r.Gaps {
		if g.Swell > 0 && (least == nil || g.Left() < least.Left()) {
			least = &r.Gaps[i]
		}
	}
	if least == nil {
		return ""
	}
	return fmt.Sprintf("damp is reckoned with: it takes %s of the %s, which leaves %s of %s",
		geometry.Fine(least.Swell, u), Name(*least), geometry.Fine(least.Left(), u), geometry.Fine(least.Drawn, u))
}

// Then says how the case will fit once a mend is made.
func Then(m fit.Mend) string {
	return fmt.Sprintf("then it is too tight in %s, too loose in %s", often(m.Chance.Tight), often(m.Chance.Loose))
}

// Advice is the cheapest mend in a sentence.
func Advice(r fit.Report, u geometry.Unit) string {
	write := settable(u)
	for _, m := range r.Mends {
		if m.Advised {
			return fmt.Sprintf("cheapest mend: %s; %s", m.What.In(write)+sets(r, m, u), Then(m))
		}
	}
	if !r.Settled.Enough() {
		return "no mend will do: the errors are larger than what lies between too tight and too loose; do the largest first, then work it out again"
	}
	return fmt.Sprintf("nothing needs mending: it is neither too tight nor too loose more than once in %.0f cases", 1/fit.Once)
}
