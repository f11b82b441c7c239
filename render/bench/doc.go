package bench

import (
	"fmt"

	"forel/geometry"
	"forel/paper/bench"
	"forel/render"
	"forel/render/document"
	"forel/render/svg"
	"forel/render/typeset"
)

// doc is the document being made.
type doc struct {
	*document.Document
	plan   bench.Plan
	missed []string // numbers and names there was no room for on the drawings
}

// Drawing is one file.
type Drawing struct {
	Name string
	SVG  []byte
}

// Document draws the plan: the shopping list, every sheet, the order of the cuts.
func Document(p bench.Plan, o Options) *document.Document {
	d := &doc{plan: p, Document: &document.Document{Options: o, Title: "Bench plan: " + titles(p), Running: titles(p),
		Foot: "Figures, not at true size: cut by the measures."}}
	d.shopping()
	for _, g := range p.Groups {
		for i := range g.Sheets {
			d.sheetPages(g, i)
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
			f := newFigure(p, g, i, o)
			f.wider = typeset.Substitute
			f.arrange()
			w, h := f.page()
			room := o.Setup.Reach(w > h)
			split := f.split(room)
			lines := (len(f.rows) + split.across - 1) / split.across
			tall := max(h, split.bottom+Length(lines)*rowHeight+3+h-room.Max.Y)
			c := svg.New(w, tall, fmt.Sprintf("Sheet %d of %s", s.Number, titles(p)), describe(p, g, s))
			c.Begin(render.Legend)
			c.Fill(geometry.Rectangle(geometry.Bx(0, 0, w, tall)), white)
			y := f.draw(c, room, split)
			f.legend(c, geometry.Bx(room.Min.X, y, room.Max.X, tall), f.rows, split.across)
			c.End()
			out = append(out, Drawing{FileName(s), c.Bytes()})
		}
	}
	return out
}

// FileName returns the name of a sheet's drawing.
func FileName(s bench.Sheet) string { return fmt.Sprintf("sheet-%02d.svg", s.Number) }

func describe(p bench.Plan, g bench.Group, s bench.Sheet) string {
	return fmt.Sprintf("%s, %.3f x %.3f mm, %s. A figure, not at true size: cut by the measures. Boxed numbers are cuts in their order, bold numbers pieces. %s",
		label(g, geometry.ToTenthMM), s.Width.MM(), s.Height.MM(), g.Stock[s.Stock].Along(), cautions)
}

// The look of pages.
var (
	white    = render.White
	pale     = render.Color{R: 0xE4, G: 0xE4, B: 0xE4} // what is thrown away
	noteSize = render.NoteSize
)
