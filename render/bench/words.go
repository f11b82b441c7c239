// Package bench writes the plan of the work at the bench: the shopping list and
// the order of the cuts as text, Markdown, CSV and JSON, and a drawing of every
// sheet, each as SVG and all in one PDF.
package bench

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/bench"
	"forel/paper/money"
	"forel/render/document"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Options say how a plan looks.
type Options = document.Options

// cautions stand where the knife comes next.
var cautions = wording.Careful(wording.Knife, wording.Shear)

// label names a group with its thickness: "board 2 mm".
func label(g bench.Group, r geometry.Rounding) string {
	return wording.OfThickness(wording.OneLine(g.Label()), r.Thickness(g.Thickness))
}

// titles names the jobs of a plan.
func titles(p bench.Plan) string {
	return wording.Cases(len(p.Jobs), func(n int) string { return p.Jobs[n].Title() })
}

// buy says what is to be bought: "5 sheets", "1.31 m"; or of what is there how much is taken:
// "5 in hand".
func buy(g bench.Group, u bench.Use, r geometry.Rounding) string {
	s := g.Stock[u.Stock]
	switch {
	case s.Offcut > 0:
		return "in hand"
	case s.Roll && s.Owned():
		return rollLength(u.Length, r) + " in hand"
	case s.Roll:
		return rollLength(u.Length, r)
	case s.Owned():
		return fmt.Sprintf("%d in hand", u.Sheets)
	}
	return wording.Count(u.Sheets, "sheet")
}

// rollLength writes a length of roll, rounded up to a hundredth of what it is
// sold by.
func rollLength(l Length, r geometry.Rounding) string {
	per, unit := Length(1000), "m"
	if r.Unit == geometry.IN {
		per, unit = 36*geometry.Inch, "yd"
	}
	return fmt.Sprintf("%.2f %s", math.Ceil(float64(l/per)*100-1e-6)/100, unit)
}

// grams writes a weight in kilograms, or in pounds where makers work in inches
// (1 lb = 453.59237 g exactly, international agreement of 1959).
func grams(g float64, r geometry.Rounding) string {
	if r.Unit == geometry.IN {
		return fmt.Sprintf("%.2f lb", g/453.59237)
	}
	return fmt.Sprintf("%.2f kg", g/1000)
}

// cost writes what a use costs; the currency is the maker's.
func cost(g bench.Group, u bench.Use) string {
	c, known := g.Cost(u)
	if !known {
		return "–"
	}
	return money.Number(c)
}

// shares returns, in percent of what is bought, what goes into pieces, what is
// left worth keeping and what is waste.
func shares(g bench.Group) (pieces, kept, waste float64) {
	bought, p, k := g.Areas()
	if bought <= 0 {
		return 0, 0, 0
	}
	pieces, kept = 100*p/bought, 100*k/bought
	return pieces, kept, max(0, 100-pieces-kept)
}

func percent(v float64) string { return wording.Decimal(v, 0) + " %" }

// piece names a placed piece with its job: "side 2 of 2, Harbour log".
func piece(p bench.Plan, q bench.Placed) string {
	name := copyName(q)
	if len(p.Jobs) > 1 {
		name += ", " + wording.OneLine(p.Jobs[q.Job].Title())
	}
	return name
}

func copyName(q bench.Placed) string {
	if q.Of > 1 {
		return fmt.Sprintf("%s %d of %d", q.Name, q.Copy, q.Of)
	}
	return q.Name
}

// size writes a piece's size as it lies on the sheet, width first.
func size(q bench.Placed, r geometry.Rounding) string {
	return r.PrettySize(q.Box.Width(), q.Box.Height())
}

// part names what is cut: "sheet 1", "strip 1B".
func part(name string) string {
	if name != "the roll" && !strings.ContainsFunc(name, func(c rune) bool { return c >= 'A' }) {
		return "sheet " + name
	}
	if name == "the roll" {
		return name
	}
	return "strip " + name
}

// gives says what a cut gives, between the fence and the blade.
func gives(p bench.Plan, g bench.Group, c bench.Cut) string {
	switch c.Kind {
	case bench.Square:
		switch {
		case c.Part == "the roll":
			return "end of the roll cut square"
		case c.AlongY:
			return "left edge trimmed off"
		}
		return "upper edge trimmed off, square to it"
	case bench.CutOff:
		return "a length off the roll: " + part(c.Takes.Part)
	}
	return result(p, g, c, c.Takes)
}

// leaves says what lies beyond the blade.
func leaves(p bench.Plan, g bench.Group, c bench.Cut) string {
	if c.Kind == bench.Square || c.Kind == bench.CutOff {
		return ""
	}
	return result(p, g, c, c.Leaves)
}

func result(p bench.Plan, g bench.Group, c bench.Cut, r bench.Result) string {
	sheet := g.Sheets[c.Sheet]
	switch r.Kind {
	case bench.APart:
		switch {
		case r.Part == c.Part && c.Kind == bench.Clear:
			return part(r.Part) + ", to be cut on"
		case r.Part == c.Part:
			return part(r.Part) + ", the rest"
		}
		return part(r.Part)
	case bench.APiece:
		q := sheet.Pieces[r.Piece]
		return fmt.Sprintf("piece %d: %s", q.Number, piece(p, q))
	case bench.AnOffcut:
		return "offcut " + sheet.Offcuts[r.Off].Name
	case bench.SomeWaste:
		return "waste"
	}
	return ""
}

// remarks returns all that is to be said of a plan, a sentence each.
func remarks(p bench.Plan, r geometry.Rounding, round func(Length) string) []string {
	var out, sizes, weights []string
	for _, j := range p.Jobs {
		if said := j.Plan.InParts; said != "" {
			out = append(out, wording.OneLine(j.Title())+": "+said)
		}
	}
	for _, g := range p.Groups {
		if s := g.Stock[len(g.Stock)-1]; g.Assumed {
			sizes = append(sizes, fmt.Sprintf("%s on %s (%s)", label(g, r), s.Size(), s.Source))
		}
	}
	if len(sizes) > 0 {
		out = append(out, "without [[stock]] in the job, laid out on usual sizes: "+strings.Join(sizes, "; "))
	}
	for _, g := range p.Groups {
		if said := g.Weight.Source; !slices.Contains(weights, said) {
			weights = append(weights, said)
		}
	}
	if len(weights) > 0 {
		out = append(out, "weights are worked out from area and thickness, with "+strings.Join(weights, "; "))
	}
	for _, g := range p.Groups {
		for _, m := range g.Remarks {
			out = append(out, label(g, r)+": "+wording.OneLine(m.In(round)))
		}
	}
	return append(out, wording.Sources)
}
