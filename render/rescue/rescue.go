// Package rescue writes the ways back where a book does not fit its case, as text.
package rescue

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/plan"
	"forel/geometry/rescue"
	"forel/geometry/wording"
	renderfit "forel/render/fit"
)

// Text returns the report in words, in the unit u. State says which state the case is
// in: "finished".
func Text(title string, r rescue.Report, early bool, u geometry.Unit) []byte {
	var b strings.Builder
	if t := wording.OneLine(title); t != "" {
		fmt.Fprintf(&b, "%s\n\n", t)
	}
	state := "in the finished case"
	if early {
		state = r.Early
	}
	fine := func(l geometry.Length) string { return geometry.Fine(l, u) }
	rows := [][]string{{"play, " + state, "measured", "planned", "comes to", ""}}
	for _, p := range r.Places {
		row := []string{renderfit.Name(fit.Gap{Gap: p.Gap}), "-", fine(p.Planned), fine(p.Room), "good"}
		if p.Told {
			row[1] = fine(p.Measured)
		} else {
			row[4] = "as planned, not measured"
		}
		switch {
		case p.TooTight():
			row[4] = "too tight: under " + geometry.Settable(p.Tight, u)
		case p.TooLoose():
			row[4] = "too loose: over " + geometry.Settable(p.Loose, u)
		}
		if p.Slip {
			row[4] += "; " + wording.FarOff + " measure it again"
		}
		rows = append(rows, row)
	}
	b.WriteString(wording.Aligned(rows, func(i int) bool { return i > 0 && i < 4 }))
	if len(r.Ways) == 0 {
		b.WriteString("\nnothing needs to be done: the book is neither too tight nor too loose\n")
		return []byte(b.String())
	}
	for n, w := range r.Ways {
		head := "another way"
		if n == 0 {
			head = "the least work"
		}
		fmt.Fprintf(&b, "\n%d. %s, %s: %s\n", n+1, head, lasts(w.Minutes), names(w))
		keep := w.Steps[0] // the step that leaves least
		for _, s := range w.Steps {
			fmt.Fprintf(&b, "   do: %s\n", how(s).In(fine))
			if s.Minutes > keep.Minutes {
				keep = s
			}
		}
		fmt.Fprintf(&b, "   keep: %s\n", keep.Keeps)
		fmt.Fprintf(&b, "   cut again: %s\n", again(w))
		var then []string
		for i, p := range r.Places {
			if p.Told && (w.Room[i]-p.Room).Abs() > 0.005 {
				then = append(then, renderfit.Name(fit.Gap{Gap: p.Gap})+" "+fine(w.Room[i]))
			}
		}
		fits := "then it fits"
		if !w.Fits() {
			fits = "then it may still not fit"
			if slices.ContainsFunc(r.Places, func(p rescue.Place) bool { return !p.Told }) {
				fits += " (what was not measured is reckoned with as planned: measure it to be surer)"
			}
		}
		if len(then) > 0 {
			fits += ", " + wording.And(then)
		}
		fmt.Fprintf(&b, "   %s; %s\n", fits, renderfit.ChancesOf(w.Chance))
	}
	b.WriteString("\nwork is without drying; what can be done, how much, and how long it takes are common practice, no source\n")
	fmt.Fprintf(&b, "take care: %s\n", wording.Careful(wording.Knife, wording.Adhesive))
	return []byte(b.String())
}

// how says how a step is done.
func how(s rescue.Step) plan.Remark {
	if strings.Contains(s.How.Text, "%s") {
		return plan.Say(s.How.Text, s.Amount)
	}
	return s.How
}

// names lists what is done in a way.
func names(w rescue.Way) string {
	out := make([]string, len(w.Steps))
	for i, s := range w.Steps {
		out[i] = s.Name
	}
	return wording.And(out)
}

// again lists what is cut again in a way.
func again(w rescue.Way) string {
	switch {
	case len(w.Again) == 0:
		return "nothing"
	case len(w.Steps) == 1 && w.Steps[0].Whole && w.Steps[0].Name == plan.StartAgainName:
		return "everything"
	}
	return wording.And(w.Again)
}

// lasts says how long work lasts, roughly: to a quarter of an hour.
func lasts(minutes int) string {
	switch {
	case minutes < 60:
		return fmt.Sprintf("about %d minutes", minutes)
	case minutes%60 == 0:
		return "about " + wording.Count(minutes/60, "hour")
	}
	return fmt.Sprintf("about %d h %d min", minutes/60, minutes%60)
}
