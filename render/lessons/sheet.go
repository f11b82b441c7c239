package lessons

import (
	"cmp"
	"strings"

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
	n := func(l Length) string { return geometry.FineNumber(l, o.Round.Unit) }
	columns := []document.Column{{Head: "what (its name)", Broken: true}, {Head: "planned", Right: true}, {Head: "expected"}, {Head: "measured"}}
	blocks := []document.Block{d.Opening(title, "Record sheet"),
		d.Paragraph("Write down what you measure, at two or three places where you can. Of play the smallest counts. Day: "+blank, render.BodySize, false),
		d.Paragraph("All lengths are in "+o.Round.Unit.String()+"; "+expectation+".", render.BodySize, false).After(2)}
	for _, at := range moments(all) {
		var rows [][]string
		for _, l := range at {
			read := make([]string, len(l.Readings))
			for i, r := range l.Readings {
				read[i] = n(r)
			}
			rows = append(rows, []string{wording.Capital(l.Name) + " (" + l.Key + ")", n(l.Planned), l.expected(o.Round.Unit), cmp.Or(strings.Join(read, "; "), blank)})
		}
		blocks = append(blocks, d.Table(wording.Capital(at[0].when()), document.Table{Columns: columns, Rows: rows, Size: render.BodySize, Full: true})...)
	}
	d.Flow(nil, blocks...)
	return d
}
