package fit

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"forel/geometry/fit"
	"forel/render/data"
)

// grams writes a weight as it is known: to 5 g, from a kilogram on to 0.01 kg.
func grams(g float64) string {
	if g >= 1000 {
		return fmt.Sprintf("%.2f kg", g/1000)
	}
	return fmt.Sprintf("%.0f g", 5*math.Round(g/5))
}

// weightLines says what the case weighs and carries, a sentence a line, without full
// stops.
func weightLines(r fit.Report) []string {
	w := r.Weight
	if w == nil {
		return nil
	}
	var parts, sources []string
	for _, p := range w.Parts {
		parts = append(parts, string(p.Material)+" "+grams(p.Grams))
		if !slices.Contains(sources, p.Source) {
			sources = append(sources, p.Source)
		}
	}
	out := []string{fmt.Sprintf("the case weighs about %s, dry and without adhesive: %s (by %s)", grams(w.Case), strings.Join(parts, ", "), strings.Join(sources, "; "))}
	if w.Known == 0 {
		return append(out, "what goes in was not weighed: give book.weight to see what the case carries")
	}
	what := "the book weighs"
	switch {
	case w.Known < w.Of:
		what = fmt.Sprintf("the %d of %d volumes that were weighed come to", w.Known, w.Of)
	case w.Of > 1:
		what = "the volumes weigh"
	}
	weighs := fmt.Sprintf("%s %s, %s with the case", what, grams(w.Books), grams(w.Books+w.Case))
	if w.On == "" {
		return append(out, weighs)
	}
	on := fmt.Sprintf("%s with %.1f N", w.On, w.Newtons)
	if w.Holds != "" {
		on += fmt.Sprintf(", %.2f N a centimetre of the seam that holds %s", w.Newtons/(w.Seam.MM()/10), w.Holds)
	}
	out = append(out, weighs+": upright and lifted by its sides it stands on the "+on)
	if l := heavy(*w); l != "" {
		out = append(out, "warning: "+l)
	}
	return out
}

// heavy says that a load is heavy for what bears it; nothing where it is not.
// What would do is common practice, no source.
func heavy(w fit.Weight) string {
	switch least, thin := w.Thin(); {
	case !thin:
		return ""
	case least == 0:
		return grams(w.Books) + " " + w.TooHeavy
	default:
		return fmt.Sprintf("%s of %.4g mm is thin for %s; take %.4g mm or more, or laminate two", w.Material, w.Has.MM(), grams(w.Books), least.MM())
	}
}

// weightJSON reports what a case weighs and carries; nil where that is not known.
func weightJSON(w *fit.Weight) any {
	if w == nil {
		return nil
	}
	books, load := any(data.Null), any(data.Null) // where none was weighed
	if w.Known > 0 {
		books, load = mm(w.Books), mm(w.Newtons)
	}
	return data.Object{
		{"case_g", mm(w.Case)},
		{"materials", data.List(w.Parts, func(p fit.Part) data.Object {
			return data.Object{{"material", p.Material}, {"area_mm2", mm(p.Area)}, {"weight_g", mm(p.Grams)}, {"source", p.Source}}
		})},
		{"books_g", books},
		{"books_weighed", w.Known},
		{"books", w.Of},
		{"stands_on", w.On},
		{"load_n", load},
		{"seam_mm", mm(w.Seam)},
		{"warning", data.Given(heavy(*w))},
	}
}
