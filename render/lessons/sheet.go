package lessons

import (
	"cmp"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
)

// blank is room to write a length down.
const blank = "____________________"

// Sheet returns a page to write down on at the bench what is measured of a case: each
// length with what was planned and a blank, or what was measured already.
func Sheet(title string, all []Line, o document.Options) *document.Document {
	title = wording.OneLine(title)
	d := &document.Document{Options: o, Title: "Record sheet", Running: title, Foot: "Record sheet: then type it in with forel record."}
	u := o.Round.Unit
	columns := []document.Column{{Head: "what (its name)", Broken: true}, {Head: "planned", Right: true}, {Head: "expected"}, {Head: "measured"}}
	d.Add(d.Opening(title, "Record sheet"))
	d.Say("Write down what you measure, at two or three places where you can. Of play the smallest counts. Day: "+blank, render.BodySize, false, 0)
	d.Say("All lengths are in "+u.String()+"; "+expectation+".", render.BodySize, false, 2)
	for _, at := range moments(all) {
		var rows [][]string
		for _, l := range at {
			rows = append(rows, []string{wording.Capital(l.Name) + " (" + l.Key + ")", geometry.FineNumber(l.Planned, u), l.expected(u), cmp.Or(l.read(u), blank)})
		}
		d.Add(d.Table(wording.Capital(at[0].when()), document.Table{Columns: columns, Rows: rows, Size: render.BodySize, Full: true})...)
	}
	return d
}
