package jobfile

import (
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/paper"
)

// marginFields are the margins of a Setup: the first is that of every side
// without its own.
var marginFields = []struct {
	key, what string
	set       func(*paper.Margins, Length)
}{
	{"print.margin", "what the printer leaves white on every side", func(m *paper.Margins, l Length) { *m = paper.EvenMargins(l) }},
	{"print.margin_left", "what the printer leaves white at the left of the sheet as it is fed", func(m *paper.Margins, l Length) { m.Left = l }},
	{"print.margin_right", "what the printer leaves white at its right", func(m *paper.Margins, l Length) { m.Right = l }},
	{"print.margin_top", "what the printer leaves white at its top", func(m *paper.Margins, l Length) { m.Top = l }},
	{"print.margin_bottom", "what the printer leaves white at its bottom", func(m *paper.Margins, l Length) { m.Bottom = l }},
}

// measuredFields are what the gauge sheet measured.
var measuredFields = []struct {
	key, what string
	at        func(*paper.Measured) *Length
}{
	{"print.measured_across", "across the sheet as it is fed", func(m *paper.Measured) *Length { return &m.Across }},
	{"print.measured_along", "along the sheet as it is fed", func(m *paper.Measured) *Length { return &m.Along }},
}

// The words of print.ink.
const (
	inColour = "colour"
	inBlack  = "black"
)

var ink = job.Setting{Key: "print.ink", What: "what is printed with", Words: []string{inColour, inBlack}}

// overlap is how far neighbouring sheets overlap.
var overlap = job.Setting{Key: "print.overlap", What: "how far neighbouring sheets overlap", Min: float64(paper.LeastOverlap), Max: float64(paper.MostOverlap), Length: new(Length)}

// printSettings are the keys of [print]; what they hold is read by print.
func printSettings() []job.Setting {
	sheet := job.Setting{Key: "print.paper", What: "the sheet to print on"}
	for _, s := range paper.Sheets {
		sheet.Words = append(sheet.Words, strings.ToLower(s.Name))
	}
	out := []job.Setting{sheet}
	for _, f := range marginFields {
		out = append(out, job.Setting{Key: f.key, What: f.what, Max: float64(paper.MostMargin), Length: new(Length)})
	}
	out = append(out, overlap)
	for _, f := range measuredFields {
		out = append(out, job.Setting{Key: f.key, What: "what " + plain(paper.Gauged.MM()) + " mm measured " + f.what, Min: float64(paper.LeastMeasured), Max: float64(paper.MostMeasured), Length: new(Length)})
	}
	return append(out, ink)
}

// printKeys are the keys of [print].
var printKeys = keysOf(printSettings())

func keysOf(settings []job.Setting) (keys []string) {
	for _, s := range settings {
		keys = append(keys, s.Key)
	}
	return keys
}

// print reads how templates are printed, and whether in black alone.
func (r *reader) print() (s paper.Setup, black bool) {
	s = paper.DefaultSetup()
	if v, ok := r.get("print.paper"); ok {
		s.Sheet = r.size(v, paper.ParseSheet)
	}
	for _, f := range marginFields {
		if v, ok := r.get(f.key); ok {
			f.set(&s.Margins, r.length(v, f.key, f.what, 0, paper.MostMargin))
		}
	}
	if v, ok := r.get(overlap.Key); ok {
		s.Overlap = max(paper.LeastOverlap, r.length(v, overlap.Key, overlap.What, Length(overlap.Min), Length(overlap.Max)))
	}
	for _, f := range measuredFields {
		if v, ok := r.get(f.key); ok {
			*f.at(&s.Measured) = r.measured(v, f.key, f.what)
		}
	}
	if v, ok := r.get(ink.Key); ok {
		black = r.choice(v, ink) == inBlack
	}
	return s, black
}

// scaling says where a print goes wrong by more than a printer does.
const scaling = `so much is a scaling setting, not the printer: in the print dialogue set the scale to 100 % (actual size) with no "fit to page", ` +
	`in the printer's own settings turn borderless printing off, which enlarges; then print the gauge again`

// Limits of a rule other than that of 200 mm.
const (
	leastRule Length = 50
	mostRule  Length = 2000
)

// measured reads what a rule of the gauge sheet measured: a length stands for
// the rule of 200 mm, "149.3 of 150 mm" for another.
func (r *reader) measured(v value, key, what string) Length {
	rule := paper.Gauged
	if text, of, ok := strings.Cut(v.text, " of "); ok && v.kind == textKind {
		_, unit := geometry.UnitOf(of, geometry.MM)
		if _, own := geometry.UnitOf(text, geometry.MM); own == "" {
			text += " " + unit
		}
		v.text = text
		var p job.Problem
		if rule, p, ok = r.measure(value{kind: textKind, text: of, at: v.at}, key, "the rule that was measured", leastRule, mostRule, nil); !ok {
			r.tell(v.at, p)
			return 0
		}
	}
	l, p, ok := r.measure(v, key, "what "+plain(rule.MM())+" mm measured "+what, rule/paper.Gauged*paper.LeastMeasured, rule/paper.Gauged*paper.MostMeasured, nil)
	if !ok {
		if l > 0 {
			p.Fix += "; " + scaling
		}
		r.tell(v.at, p)
		return 0
	}
	return l / rule * paper.Gauged
}

// Print reads only how things are printed: [print] of a job file, which may be
// nil, with flags in its place, whatever the rest of the job is. unit is that of
// the job. What is printed has to be checked by the caller. The shop may be nil.
func (shop *Shop) Print(source string, data []byte, flags []Flag) (s paper.Setup, unit geometry.Unit, err error) {
	r, issues := shop.open(source, data, flags)
	if issues != nil {
		return s, unit, issues
	}
	r.units()
	r.lendHabits()
	r.lendPrinter()
	s, _ = r.print()
	r.tellTwice()
	if issues := r.withSlips(r.issues); len(issues) > 0 {
		return s, unit, issues
	}
	return s, r.flagUnit, nil
}
