package bench

import (
	"fmt"

	"forel/geometry"
	"forel/paper/bench"
	"forel/render"
	"forel/render/document"
	"forel/render/typeset"
)

// doc is the document being made.
type doc struct {
	*document.Document
	plan bench.Plan
}

// Drawing is one file.
type Drawing struct {
	Name string
	SVG  []byte
}

// foot stands at the foot of each page.
const foot = "Figures, not at true size: cut by the measures."

// Document draws the plan: the shopping list, every sheet, the order of the cuts.
func Document(p bench.Plan, o Options) *document.Document {
	d := &doc{plan: p, Document: &document.Document{Options: o, Title: "Bench plan", Running: titles(p),
		Foot: foot}}
	d.shopping()
	for _, g := range p.Groups {
		for i := range g.Sheets {
			sheetPages(d.Document, p, g, i)
		}
	}
	d.cutPages()
	return d.Document
}

// Drawings returns a drawing of each sheet, named by its number.
func Drawings(p bench.Plan, o Options) []Drawing {
	var out []Drawing
	for _, g := range p.Groups {
		for i, s := range g.Sheets {
			d := &document.Document{Options: o, Title: fmt.Sprintf("Sheet %d of %s", s.Number, titles(p)), About: describe(g, s), Foot: foot, Wider: typeset.Substitute}
			sheetPages(d, p, g, i)
			out = append(out, Drawing{FileName(s), d.SVG()})
		}
	}
	return out
}

// FileName returns the name of a sheet's drawing.
func FileName(s bench.Sheet) string { return fmt.Sprintf("sheet-%02d.svg", s.Number) }

func describe(g bench.Group, s bench.Sheet) string {
	return fmt.Sprintf("%s, %.3f x %.3f mm, %s. A figure, not at true size: cut by the measures. Boxed numbers are cuts in their order, bold numbers pieces. %s",
		label(g, geometry.ToTenthMM), s.Width.MM(), s.Height.MM(), g.Stock[s.Stock].Along(), cautions)
}

// The look of pages.
var (
	white    = render.White
	pale     = render.Color{R: 0xE4, G: 0xE4, B: 0xE4} // what is thrown away
	noteSize = render.NoteSize
)
