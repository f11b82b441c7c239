package main

import (
	"io"
	"strconv"

	"forel/cmd/pipeline"
)

// command is one word after forel.
type command struct {
	name    string
	summary string
	about   string                // its help: usage, what it does, an example
	flags   func(f *flags) action // defines its flags
}

// action is what a command does once its flags are parsed.
type action func(out io.Writer, say voice) error

func commands() []command {
	return []command{
		{"new", "write a commented starter job file", aboutNew, flagsNew},
		{"templates", "write the templates: a drawing a piece and a PDF to print", aboutTemplates, flagsTemplates},
		{"gauge", "write a sheet to gauge your printer by", aboutGauge, flagsGauge},
		{"cutlist", "print the list of pieces with their sizes", aboutCutlist, flagsCutlist},
		{"handout", "write the worksheet and illustrated steps for a learner", aboutHandout, flagsHandout},
		{"stock", "lay the pieces of one job or of many on sheets and rolls: what to buy, how to cut", aboutStock, flagsStock},
		{"cutter", "lay the pieces out on the bed of a laser or a drag knife", aboutCutter, flagsCutter},
		{"prove", "fold the case up, report what is found and draw it", aboutProve, flagsProve},
		{"fit", "tell how the book will fit, and what to check at the bench", aboutFit, flagsFit},
		{"class", "make every student's files from a roster, and an index of them", aboutClass, flagsClass},
		{"completion", "print a script that completes forel's words in a shell", aboutCompletion, flagsCompletion},
		{"man", "print the manual page", aboutMan, flagsMan},
		{"version", "print which forel this is", aboutVersion, flagsVersion},
	}
}

func flagsTemplates(f *flags) action {
	var t pipeline.Templates
	f.job(&t.Job)
	f.out("templates", "case/", "`folder` to write into; made if it is not there", nil)
	f.prints()
	f.BoolVar(&t.Separate, "separate", false, "no two pieces on one sheet")
	f.StringSliceVar(&t.Only, "only", nil, "print only these `pieces`, materials or parts, such as cloth,paper, \"side paper\" or \"small tray\"")
	f.BoolVar(&t.MarkOut, "mark-out", false, "print shaped pieces only; for plain rectangles a sheet of sizes and diagonals, to be marked out with rule and square")
	f.StringArrayVar(&t.Colour, "colour", nil, "`line=#rrggbb`: colour of a kind of line, such as creasing=#0072b2 (inside-cuts, cutting, creasing, positions, legend)")
	f.StringVar(&t.Line, "line", "", "the drawings for a machine: hairlines of this `width`, such as 0.02, all solid, words as single strokes")
	return f.makes(&t)
}

func flagsGauge(f *flags) action {
	var g pipeline.Gauge
	f.source, f.dated = &g.Source, true
	f.out("gauge", "gauge/", "`folder` to write into; made if it is not there", nil)
	f.key("paper", "print.paper", paperUsage)
	f.key("units", "units", "the `unit` you measure in: mm or in")
	f.sets("any `key=value` of [print], such as print.margin_left=6")
	f.BoolVar(&g.Check, "check", false, "draw the sheet corrected by what was measured")
	return f.makes(&g)
}

func flagsCutlist(f *flags) action {
	var c pipeline.Cutlist
	f.job(&c.Job)
	f.StringVar(&c.Format, "format", "text", "`format` of the list: text, json, csv or markdown")
	f.BoolVar(&c.Outlines, "outlines", false, "with json: each piece's outline, slits, folds and guide lines too")
	return f.makes(&c)
}

func flagsHandout(f *flags) action {
	var h pipeline.Handout
	f.job(&h.Job)
	f.out("handout", "case/", "`folder` to write into; made if it is not there", nil)
	f.prints()
	f.BoolVar(&h.Blank, "blank", false, "the worksheet alone and empty, to be filled in by hand")
	f.BoolVar(&h.Short, "short", false, "four pages: the worksheet, and the steps, each with one figure where there is room")
	f.BoolVar(&h.Tints, "tints", false, "tint board, cloth and paper in the figures; without, they are in greys")
	return f.makes(&h)
}

func flagsStock(f *flags) action {
	var s pipeline.Stock
	f.job(&s.Job)
	f.several = true
	f.StringVar(&s.Format, "format", "text", "`format` of the list: text, markdown, json (everything) or csv (the cuts)")
	f.BoolVar(&s.Cuts, "cuts", false, "with text and markdown: the order of the cuts too")
	f.out("", "bench/", "`folder` to write stock.pdf and a drawing of each sheet into; made if it is not there", &s.Draw)
	f.prints()
	f.BoolVar(&s.Exact, "exact", false, "cut linings and cloth to size; without, they are rounded up to 5 mm or 1/4 in and trimmed later")
	f.BoolVar(&s.LooseWalls, "loose-walls", false, "let the walls of one case come off different strips, where that saves a sheet")
	f.StringVar(&s.Effort, "effort", strconv.Itoa(pipeline.StockSteps), "how long to search: `steps`, or a time such as 20s; 0: the first good plan")
	f.long("laying out", &s.Progress)
	return f.makes(&s)
}

func flagsCutter(f *flags) action {
	c := pipeline.DefaultCutter()
	f.StringVar(&c.Bed, "bed", "", "`size` of the bed, width x height, such as 600x300 or 24x12in")
	f.StringVar(&c.Kerf, "kerf", c.Kerf, "`width` that the beam takes away, measured on a test cut; 0 for a knife")
	f.StringVar(&c.Spacing, "spacing", c.Spacing, "`distance` between neighbouring pieces; 0: the edge that two share is cut once")
	f.StringVar(&c.Margin, "margin", c.Margin, "`distance` kept from the bed's edges")
	f.StringArrayVar(&c.Grain, "grain", nil, "`direction` of the stock's grain on the bed: height, width or none (default height); or of one material, such as board=width")
	f.IntVar(&c.Tabs, "tabs", 0, "`number` of light tabs that hold each piece in its sheet")
	f.StringVar(&c.TabWidth, "tab-width", c.TabWidth, "`width` of a tab")
	f.StringVar(&c.Creases, "creases", "", "`materials` whose folds a creasing tool of the machine creases, with commas between; all or none (default: all but cloth, paper and corrugated board)")
	f.StringVar(&c.Line, "line", c.Line, "`width` of all lines, for a machine that cuts hairlines")
	f.BoolVar(&c.Labels, "labels", false, "names in single strokes and lines to rule too, in layers of their own (Positions, Legend) that are not cut")
	f.StringArrayVar(&c.Colour, "colour", nil, "`line=#rrggbb`: colour of a kind of line, for software that goes by colour, such as inside-cuts=#0072b2")
	f.StringVar(&c.Effort, "effort", c.Effort, "how long to search for a layout: `steps`, or a time such as 20s; 0: the first good one")
	f.out("cutter", "cut/", "`folder` to write into; made if it is not there", nil)
	f.job(&c.Job)
	f.prints()
	f.several = true
	return f.makes(&c)
}

func flagsProve(f *flags) action {
	var p pipeline.Prove
	f.job(&p.Job)
	f.StringVar(&p.Format, "format", "text", "`format` of the report: text or json (in millimetres, exact to 0.001)")
	f.out("", "case/", "`folder` to draw proof.svg and proof.pdf into; made if it is not there", &p.Draw)
	f.prints()
	return f.makes(&p)
}

func flagsFit(f *flags) action {
	var c pipeline.Fit
	f.job(&c.Job)
	f.StringVar(&c.Format, "format", "text", "`format` of the report: text or json (in millimetres, exact to 0.001)")
	f.BoolVar(&c.All, "all", false, "with text: everything, with the chains of dimensions and each check in full")
	f.out("", "case/", "`folder` to draw fit.pdf and the fit-*.svg plots into; made if it is not there", &c.Draw)
	f.prints()
	f.key("swell", "fit.swell", "`percent` the book may grow thicker when damp, such as 1.5")
	return f.makes(&c)
}
