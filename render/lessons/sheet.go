package lessons

import (
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
	d := &document.Document{Options: o, Title: strings.TrimSuffix("Record sheet: "+title, ": "), Running: title, Foot: "Record sheet: then type it in with forel record."}
	n := func(l Length) string { return geometry.FineNumber(l, o.Round.Unit) }
	var rows [][]string
	for _, l := range all {
		read := make([]string, len(l.Readings))
		for i, r := range l.Readings {
			read[i] = n(r)
		}
		measured := strings.Join(read, "; ")
		if measured == "" {
			measured = blank
		}
		rows = append(rows, []string{wording.Capital(l.Name) + ", " + l.When + " (" + l.Key + ")", n(l.Planned), n(l.Low) + " to " + n(l.High), measured})
	}
	columns := []document.Column{{Head: "what, and when (its name)", Broken: true}, {Head: "planned", Right: true}, {Head: "19 of 20 keep within", Broken: true}, {Head: "measured (" + o.Round.Unit.String() + ")"}}
	blocks := []document.Block{d.Opening(title, "Record sheet"),
		d.Paragraph("Write down what you measure, at two or three places where you can. Of play the smallest counts. Day: "+blank, render.BodySize, false).After(2)}
	d.Flow(nil, append(blocks, d.Table("What can be measured", document.Table{Columns: columns, Rows: rows, Size: render.BodySize, Full: true})...)...)
	return d
}
