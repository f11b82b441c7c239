package pipeline

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/choose"
	"forel/geometry/wording"
	"forel/paper/bed"
	"forel/render/hairline"
)

// Setting is a setting of a command: a flag of the command line, and a blank of the page
// in a browser.
type Setting struct {
	Name   string
	Usage  string   // what it does, with what it takes in backquotes
	To     any      // what it sets: *string, *bool, *int or *[]string
	Words  []string // that it can be; none: any
	Commas bool     // of several: there may be commas between them
	Needed bool     // nothing is made without it
	Key    string   // of the job file that it stands for where it is set; "": none
	Usual  string   // what it comes to where it is not set, nor its key
}

// Settable is a command, by its address, with settings of its own.
type Settable interface{ Settings() []Setting }

// Shown is a command, by its address, with settings of how a job is shown.
type Shown interface{ Showing() []Setting }

// Takes returns what a setting takes, in a word: what its usage has in backquotes.
func (s Setting) Takes() string {
	_, rest, _ := strings.Cut(s.Usage, "`")
	word, _, _ := strings.Cut(rest, "`")
	return word
}

// Says returns the usage in plain text.
func (s Setting) Says() string { return strings.ReplaceAll(s.Usage, "`", "") }

// Typed returns what it is set to, as it is typed.
func (s Setting) Typed() string {
	switch to := s.To.(type) {
	case *string:
		return *to
	case *bool:
		return strconv.FormatBool(*to)
	case *int:
		return strconv.Itoa(*to)
	case *[]string:
		return strings.Join(*to, ", ")
	}
	panic("a setting of an unknown type: " + s.Name)
}

// Set sets it to what is typed; several have commas between them. An error is of type
// jobfile.Issues.
func (s Setting) Set(typed string) error {
	typed = strings.TrimSpace(typed)
	switch to := s.To.(type) {
	case *string:
		*to = typed
	case *bool:
		b, err := strconv.ParseBool(typed)
		if err != nil {
			return refuse(nil, fmt.Sprintf("--%s: %.20q is neither true nor false", s.Name, typed), "give one of them")
		}
		*to = b
	case *int:
		n, err := strconv.Atoi(typed)
		if err != nil {
			return refuse(nil, fmt.Sprintf("--%s: %.20q is no whole number", s.Name, typed), "give one such as 3")
		}
		*to = n
	case *[]string:
		*to = nil
		for _, one := range strings.Split(typed, ",") {
			if one = strings.TrimSpace(one); one != "" {
				*to = append(*to, one)
			}
		}
	default:
		panic("a setting of an unknown type: " + s.Name)
	}
	return nil
}

// Showing are the settings of how any job is shown.
func (j *Job) Showing() []Setting {
	return []Setting{{Name: "round", Usage: "`step` that shown sizes are rounded to: 0.5 or 0.1 mm, 1/32 or 1/64 in (default 0.1 mm or 1/32 in)", To: &j.Round}}
}

// formats is the setting of the format of a report; the first is the usual one.
func formats(to *string, usage string, known ...string) Setting {
	return Setting{Name: "format", Usage: "`format` of the " + usage, To: to, Words: known, Usual: known[0]}
}

// chosen gives settings that are one of some words their usual one where there is none, and
// tells of words that they can't be.
func chosen(all []Setting) (bad jobfile.Issues) {
	for _, s := range all {
		if to, ok := s.To.(*string); ok && s.Words != nil && *to == "" {
			*to = s.Usual
		}
		for _, word := range strings.Split(s.Typed(), ", ") {
			if s.Words != nil && word != "" && !slices.Contains(s.Words, word) {
				bad = refuse(bad, fmt.Sprintf("--%s: unknown %s %.30q", s.Name, s.Name, word), "give "+wording.Or(s.Words))
			}
		}
	}
	return bad
}

// Settings are those of templates.
func (t *Templates) Settings() []Setting {
	return []Setting{
		{Name: "separate", Usage: "no two pieces on one sheet", To: &t.Separate},
		onlyOf(&t.Only, "print"),
		{Name: "mark-out", Usage: "print shaped pieces only; for plain rectangles a sheet of sizes and diagonals, to be marked out with rule and square", To: &t.MarkOut},
		{Name: "colour", Usage: "`line=#rrggbb`: colour of a kind of line, such as creasing=#0072b2 (inside-cuts, cutting, creasing, positions, legend)", To: &t.Colour},
		{Name: "line", Usage: "the drawings for a machine: hairlines of this `width` in mm, such as 0.02, all solid, words as single strokes", To: &t.Line},
	}
}

// Settings are those of the measuring sheet.
func (m *Measure) Settings() []Setting {
	return []Setting{
		{Name: "volumes", Usage: "blanks for this `number` of books at least", To: &m.Volumes},
		{Name: "both-units", Usage: "blanks for millimetres and inches", To: &m.Both},
	}
}

// Settings are those of the help to choose.
func (c *Choose) Settings() []Setting {
	return []Setting{
		formats(&c.Format, "advice: text, json or toml (the job file alone)", "text", "json", "toml"),
		{Name: "use", Usage: "what the case is for, a `word`: " + strings.Join(choose.Uses, ", "), To: &c.Use, Words: choose.Uses, Usual: choose.Uses[0]},
		{Name: "condition", Usage: "what the book is, `words` with commas between: fragile (its covering rubs or flakes), raised (ornaments or clasps stand out), loose (leaves or boards)", To: &c.Conditions, Words: choose.Conditions, Commas: true},
	}
}

// Settings are those of the gauge.
func (g *Gauge) Settings() []Setting {
	return []Setting{{Name: "check", Usage: "draw the sheet corrected by what was measured", To: &g.Check}}
}

// Settings are those of the cut list.
func (c *Cutlist) Settings() []Setting {
	return []Setting{
		formats(&c.Format, "list: text, json, csv or markdown", "text", "json", "csv", "markdown"),
		{Name: "outlines", Usage: "with json: each piece's outline, slits, folds and guide lines too", To: &c.Outlines},
	}
}

// Settings are those of the handout.
func (h *Handout) Settings() []Setting {
	return []Setting{
		{Name: "blank", Usage: "the worksheet alone and empty, to be filled in by hand", To: &h.Blank},
		{Name: "short", Usage: "four pages: the worksheet, and the steps with their checks, each with one figure where there is room", To: &h.Short},
		{Name: "tints", Usage: "tint board, cloth and paper in the figures; without, they are in greys", To: &h.Tints},
	}
}

// Settings are those of the plan of sheets.
func (s *Stock) Settings() []Setting {
	return slices.Concat([]Setting{
		formats(&s.Format, "list: text, markdown, json (everything) or csv (the cuts)", "text", "markdown", "json", "csv"),
		onlyOf(&s.Only, "lay out"),
		{Name: "cuts", Usage: "with text and markdown: the order of the cuts too", To: &s.Cuts},
		{Name: "exact", Usage: "cut linings and cloth to size; without, they are rounded up to 5 mm or 1/4 in and trimmed later", To: &s.Exact},
		{Name: "loose-walls", Usage: "let the walls of one case come off different strips, where that saves a sheet", To: &s.LooseWalls},
		searched(&s.Effort),
	}, s.Taking())
}

// Settings are those of the order list.
func (o *Order) Settings() []Setting {
	return []Setting{formats(&o.Format, "list: text or csv", "text", "csv"), searched(&o.Effort)}
}

// Settings are those of the quote.
func (q *Quote) Settings() []Setting {
	return []Setting{formats(&q.Format, "costing: text or csv", "text", "csv"), searched(&q.Effort)}
}

// searched is the setting of how sheets are laid out for what is bought.
func searched(effort *string) Setting {
	return Setting{Name: "effort", Usage: "how long to search: `steps`, or a time such as 20s; 0: the first good plan", To: effort, Usual: strconv.Itoa(StockSteps)}
}

// Taking are those that change the shop file.
func (l *Ledger) Taking() []Setting {
	return []Setting{
		{Name: "take", Usage: "take what the plan uses off the counts of the shop file, and put the offcuts worth keeping into it, each with a number", To: &l.Take},
		{Name: "undo", Usage: "take the last taking back; nothing is planned", To: &l.Undo},
		{Name: "on", Usage: "`day` of the taking, such as 2026-11-28 (default: that of SOURCE_DATE_EPOCH, or none)", To: &l.On},
	}
}

// flagsOf returns the keys of a job file that settings set.
func flagsOf(all []Setting) (flags []jobfile.Flag) {
	for _, s := range all {
		if s.Key != "" && s.Typed() != "" {
			flags = append(flags, jobfile.Flag{Name: "--" + s.Name, Key: s.Key, Value: s.Typed()})
		}
	}
	return flags
}

// Settings are those of the beds.
func (c *Cutter) Settings() []Setting {
	d := bed.Default()
	mm := func(l geometry.Length) string { return fmt.Sprintf("%.4g mm", l.MM()) }
	return []Setting{
		{Name: "bed", Usage: "`size` of the bed, width x height, such as 600x300 mm or 24x12 in", To: &c.Bed, Key: "machine.bed", Needed: true},
		onlyOf(&c.Only, "lay out"),
		{Name: "kerf", Usage: "`width` that the beam takes away, measured on a test cut; 0 for a knife", To: &c.Kerf, Key: "machine.kerf", Usual: mm(d.Kerf)},
		{Name: "spacing", Usage: "`distance` between neighbouring pieces; 0: the edge that two share is cut once", To: &c.Spacing, Key: "machine.spacing", Usual: mm(d.Gap)},
		{Name: "margin", Usage: "`distance` kept from the bed's edges", To: &c.Margin, Key: "machine.margin", Usual: mm(d.Margin)},
		{Name: "grain", Usage: "`direction` of the stock's grain on the bed: height, width or none (default height); or of one material, such as board=width", To: &c.Grain},
		{Name: "tabs", Usage: "`number` of light tabs that hold each piece in its sheet", To: &c.Tabs, Key: "machine.tabs"},
		{Name: "tab-width", Usage: "`width` of a tab", To: &c.TabWidth, Key: "machine.tab_width", Usual: mm(d.TabWidth)},
		{Name: "creases", Usage: "`materials` whose folds a creasing tool of the machine creases, with commas between; all or none (default: all but cloth, paper and corrugated board)", To: &c.Creases},
		{Name: "line", Usage: "`width` of all lines in mm, for a machine that cuts hairlines", To: &c.Line, Usual: mm(hairline.Usual)},
		{Name: "labels", Usage: "names in single strokes and lines to rule too, in layers of their own (Positions, Legend) that are not cut", To: &c.Labels},
		{Name: "colour", Usage: "`line=#rrggbb`: colour of a kind of line, for software that goes by colour, such as inside-cuts=#0072b2", To: &c.Colour},
		{Name: "effort", Usage: "how long to search for a layout: `steps`, or a time such as 20s; 0: the first good one", To: &c.Effort, Usual: strconv.Itoa(bedSteps)},
	}
}

// Settings are those of the proof.
func (p *Prove) Settings() []Setting {
	return []Setting{formats(&p.Format, "report: text or json (in millimetres, exact to 0.001)", "text", "json")}
}

// Settings are those of the fit.
func (f *Fit) Settings() []Setting {
	return []Setting{
		formats(&f.Format, "report: text or json (in millimetres, exact to 0.001)", "text", "json"),
		{Name: "all", Usage: "with text: everything, with the chains of dimensions and each check in full", To: &f.All},
	}
}

// Settings are those of the timetable.
func (t *Timetable) Settings() []Setting {
	return []Setting{
		{Name: "start", Usage: "`date` of the first day, such as 2026-12-01, or when on it, 2026-12-01 10:30; without, days are counted from 1", To: &t.Start},
		formats(&t.Format, "report: text or json (times in minutes)", "text", "json"),
	}
}
