package jobfile

import (
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/paper"
)

// The words of print.ink.
const (
	inColour = "colour"
	inBlack  = "black"
)

// printKeys are the keys of [print]: how templates are printed, and whether in black alone.
func (r *reader) printKeys(s *paper.Setup, black *bool) []kept {
	sheet := job.Setting{Key: "print.paper", What: "the sheet to print on"}
	for _, p := range paper.Sheets {
		sheet.Words = append(sheet.Words, strings.ToLower(p.Name))
	}
	ink := job.Setting{Key: "print.ink", What: "what is printed with", Words: []string{inColour, inBlack}}
	margin := func(side, what string, to *Length) kept {
		return lengthAt("print.margin"+side, what, 0, paper.MostMargin, to)
	}
	even := margin("", "what the printer leaves white on every side", new(Length))
	even.to = func(v value) { // that of every side without its own
		s.Margins = paper.EvenMargins(r.length(v, even.Key, even.What, 0, paper.MostMargin))
	}
	measured := func(way string, to *Length) kept {
		what := " mm measured " + way + " the sheet as it is fed"
		k := lengthAt("print.measured_"+way, "what "+plain(paper.Gauged.MM())+what, paper.LeastMeasured, paper.MostMeasured, to)
		k.to = func(v value) { *to = r.measured(v, k.Key, what) }
		return k
	}
	return []kept{
		{sheet, func(v value) { s.Sheet = r.size(v, paper.ParseSheet) }},
		even,
		margin("_left", "what the printer leaves white at the left of the sheet as it is fed", &s.Margins.Left),
		margin("_right", "what the printer leaves white at its right", &s.Margins.Right),
		margin("_top", "what the printer leaves white at its top", &s.Margins.Top),
		margin("_bottom", "what the printer leaves white at its bottom", &s.Margins.Bottom),
		lengthAt("print.overlap", "how far neighbouring sheets overlap", paper.LeastOverlap, paper.MostOverlap, &s.Overlap),
		measured("across", &s.Measured.Across),
		measured("along", &s.Measured.Along),
		{ink, func(v value) { *black = r.choice(v, ink) == inBlack }},
	}
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
	l, p, ok := r.measure(v, key, "what "+plain(rule.MM())+what, rule/paper.Gauged*paper.LeastMeasured, rule/paper.Gauged*paper.MostMeasured, nil)
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
	s = paper.DefaultSetup()
	r.keepAll("", r.printKeys(&s, new(bool)))
	r.invalid()
	if issues := r.told(); len(issues) > 0 {
		return s, unit, issues
	}
	return s, r.flagUnit, nil
}
