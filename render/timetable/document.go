package timetable

import (
	"fmt"
	"slices"
	"unicode/utf8"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Document returns the timetable as pages: what it comes to, the days as pictures, each
// day as a table.
func (t Table) Document(o document.Options) *document.Document {
	d := &document.Document{Options: o, Title: "Timetable", Running: t.title(), Foot: "Timetable: times are habits; touch it to know that it is dry."}
	lines := t.lines()
	d.Add(d.Opening("Timetable", t.title()))
	for _, s := range t.summary() {
		d.Say(s, render.BodySize, false, 1)
	}
	d.Add(d.Table("When it is ready", t.handed())...)
	d.Add(t.overview(d, lines)...)
	for _, day := range days(batches(lines)) {
		d.Add(t.ofDay(d, day)...)
	}
	var said []string
	for _, l := range lines {
		said = append(said, l.title, l.dries.What)
	}
	d.Add(d.Points("Good to know", slices.Concat(notes, wording.CareFor(said...), []string{wording.Local}))...)
	return d
}

// ofDay returns the table of a day.
func (t Table) ofDay(d *document.Document, day []line) []document.Block {
	const narrow = 16 // letters; such a column is not made narrower
	long := 0
	var rows [][]string
	for _, l := range day {
		row := []string{l.from.Format("15:04"), l.to.Format("15:04"), fmt.Sprint(l.step), l.title, "", t.dries(l)}
		if t.several() {
			row[4] = t.caseNames(l.cases)
			long = max(long, utf8.RuneCountInString(row[4]))
		}
		rows = append(rows, row)
	}
	columns := []document.Column{{Head: "from"}, {Head: "to"}, {Head: "step", Right: true}, {Head: "what", Broken: true, Bold: true}, {Head: "case", Broken: long > narrow}, {Head: "then", Broken: true}}
	out := d.Table(t.dayName(day[0].from), document.Table{Columns: columns, Rows: rows, Size: render.BodySize, Ticks: []string{""}})
	out[0].Bookmark = t.dayName(day[0].from)
	return out
}
