package main

import (
	"io"

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
		{"shop", "write a commented shop file to begin with, or list what yours has", aboutShop, flagsShop},
		{"plain", "print a job with all that it takes from the shop file as one job file", aboutPlain, flagsPlain},
		{"measure", "write a sheet to measure a book and its materials by", aboutMeasure, flagsMeasure},
		{"choose", "advise what to make for a book, and of how thick a board", aboutChoose, flagsChoose},
		{"templates", "write the templates: a drawing a piece and a PDF to print", aboutTemplates, flagsTemplates},
		{"gauge", "write a sheet to gauge your printer by", aboutGauge, flagsGauge},
		{"cutlist", "print the list of pieces with their sizes", aboutCutlist, flagsCutlist},
		{"handout", "write the worksheet and illustrated steps for a learner", aboutHandout, flagsHandout},
		{"stock", "lay the pieces of one job or of many on sheets and rolls: what to buy, how to cut", aboutStock, flagsStock},
		{"order", "list what is to be ordered, in a seller's terms, a block for each supplier", aboutOrder, flagsOrder},
		{"quote", "reckon what a case costs: a page for the client, a costing for the maker", aboutQuote, flagsQuote},
		{"cutter", "lay the pieces out on the bed of a laser or a drag knife", aboutCutter, flagsCutter},
		{"prove", "fold the case up, report what is found and draw it", aboutProve, flagsProve},
		{"fit", "tell how the book will fit, and what to check at the bench", aboutFit, flagsFit},
		{"timetable", "tell what to do when: work and drying, over days, of one case or of many", aboutTimetable, flagsTimetable},
		{"record", "take down what was measured, beside what was planned", aboutRecord, flagsRecord},
		{"rescue", "tell the way back where a book does not fit its case", aboutRescue, flagsRescue},
		{"lessons", "tell what many records teach: your own errors, your own clearances", aboutLessons, flagsLessons},
		{"class", "make every student's files from a roster, and an index of them", aboutClass, flagsClass},
		{"completion", "print a script that completes forel's words in a shell", aboutCompletion, flagsCompletion},
		{"man", "print the manual page", aboutMan, flagsMan},
		{"version", "print which forel this is", aboutVersion, flagsVersion},
	}
}

func flagsPlain(f *flags) action {
	var p pipeline.Plain
	f.job(&p.Job)
	f.key("paper", "print.paper", paperUsage)
	f.key("printer", "print.printer", printerUsage)
	return f.makes(&p)
}

// intoFolder is the help of --out where there is no more to say.
const intoFolder = "`folder` to write into"

func flagsMeasure(f *flags) action {
	var m pipeline.Measure
	f.writes(&m, &m.Job, "measure/", intoFolder, nil)
	return f.makes(&m)
}

func flagsChoose(f *flags) action {
	var c pipeline.Choose
	f.job(&c.Job)
	f.key("weight", "book.weight", "the book's `weight`, such as \"850 g\" or \"1.2 kg\"; without, it is reckoned from its size")
	f.settings(c.Settings())
	return f.makes(&c)
}

func flagsTemplates(f *flags) action {
	var t pipeline.Templates
	f.writes(&t, &t.Job, "case/", intoFolder, nil)
	return f.makes(&t)
}

func flagsGauge(f *flags) action {
	var g pipeline.Gauge
	f.source, f.dated = &g.Source, true
	f.out("gauge/", intoFolder, nil)
	f.key("paper", "print.paper", paperUsage)
	f.key("printer", "print.printer", printerUsage)
	f.shop = f.String("shop", "", shopUsage)
	f.key("units", "units", "the `unit` you measure in: mm or in")
	f.StringArray(setFlag, nil, "any `key=value` of [print], such as print.margin_left=6")
	f.settings(g.Settings())
	return f.makes(&g)
}

func flagsCutlist(f *flags) action {
	var c pipeline.Cutlist
	f.job(&c.Job)
	f.settings(c.Settings())
	return f.makes(&c)
}

func flagsHandout(f *flags) action {
	var h pipeline.Handout
	f.writes(&h, &h.Job, "case/", intoFolder, nil)
	return f.makes(&h)
}

func flagsStock(f *flags) action {
	var s pipeline.Stock
	f.writes(&s, &s.Job, "bench/", "`folder` to write stock.pdf and a drawing of each sheet into", &s.Draw)
	f.several = true
	f.long("laying out", &s.Progress)
	return f.makes(&s)
}

func flagsOrder(f *flags) action {
	var o pipeline.Order
	f.writes(&o, &o.Job, "order/", "`folder` to write order.pdf into", &o.Draw)
	f.rosters(&o.Cases)
	f.long("laying out", &o.Progress)
	return f.makes(&o)
}

func flagsQuote(f *flags) action {
	var q pipeline.Quote
	f.writes(&q, &q.Job, "quote/", "`folder` to write quote.pdf and costing.pdf into", &q.Draw)
	f.rosters(&q.Cases)
	f.long("reckoning", &q.Progress)
	return f.makes(&q)
}

func flagsCutter(f *flags) action {
	var c pipeline.Cutter
	f.settings(c.Settings())
	f.key("cutter", "machine.cutter", "the machine, a `name` of the shop file")
	f.job(&c.Job)
	f.out("cut/", intoFolder, nil)
	f.prints()
	f.several = true
	return f.makes(&c)
}

func flagsProve(f *flags) action {
	var p pipeline.Prove
	f.writes(&p, &p.Job, "case/", "`folder` to draw proof.svg and proof.pdf into", &p.Draw)
	return f.makes(&p)
}

func flagsFit(f *flags) action {
	var c pipeline.Fit
	f.writes(&c, &c.Job, "case/", "`folder` to draw fit.pdf and the fit-*.svg plots into", &c.Draw)
	f.key("swell", "fit.swell", "`percent` the book may grow thicker when damp, such as 1.5")
	return f.makes(&c)
}

func flagsTimetable(f *flags) action {
	var t pipeline.Timetable
	f.writes(&t, &t.Job, "case/", "`folder` to write timetable.pdf and timetable.ics into", &t.Draw)
	f.rosters(&t.Cases)
	f.long("looking for the order of work", &t.Progress)
	return f.makes(&t)
}

// rosters makes a command one of several jobs or of a roster, and adds --job.
func (f *flags) rosters(c *pipeline.Cases) {
	f.several = true
	f.base("job", "with a roster: job `file` that gives what it leaves out", &c.Base)
}
