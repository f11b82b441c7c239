package quote

import (
	"slices"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/paper/bench"
	"forel/paper/order"
	"forel/render"
	"forel/render/document"
	"forel/render/staging"
)

// Client draws the quote for the client: what is made, a picture of it, the price.
func Client(q Costing, o document.Options) *document.Document {
	d := &document.Document{Options: o, Title: "Quote", Running: q.title(), Foot: "Quote"}
	t := q.Terms
	d.Add(d.Opening(q.title(), "Quote"))
	if t.Client != "" {
		d.Say("For "+wording.OneLine(t.Client), render.BodySize, true, 1)
	}
	if t.Maker != "" {
		d.Say("From "+wording.OneLine(t.Maker), render.BodySize, false, 0.4)
	}
	if !o.Date.IsZero() {
		d.Say("Date "+o.Date.Format("2 January 2006"), render.BodySize, false, 0.4)
	}
	if lacks := q.incomplete(o.Round); lacks != "" {
		d.Say(wording.Sentence(lacks), render.BodySize, true, 3)
	}
	for _, j := range q.Plan.Jobs {
		d.Add(made(d, q, j))
	}
	table := d.Table("Price", document.Table{Columns: columnsWith([]document.Column{{Head: "what", Broken: true}, {Head: "amount", Right: true}}, wording.OneLine(t.Currency)),
		Rows: q.sums(false), Size: render.BodySize, Apart: last(q.sums(false)), Full: true})
	table[0].Above = 6
	d.Add(table...)
	d.Say(wording.Capital(q.paid()), render.HeadSize, true, 2)
	d.Say("Not included: "+wording.OneLine(t.Excludes())+".", render.BodySize, false, 4)
	if t.Valid != "" {
		d.Say("This quote holds for: "+wording.OneLine(t.Valid)+".", render.BodySize, false, 1)
	}
	return d
}

// last tells of the last row, which has a rule above it.
func last(rows [][]string) func(int) bool { return func(i int) bool { return i == len(rows)-1 } }

// pictureGap is the white beside a picture.
const pictureGap Length = 6

// picture returns how large the picture of a case is: smaller where there are many.
func (q Costing) picture() (wide, tall Length) {
	if len(q.Cases) > 2 {
		return 28, 34
	}
	return 46, 56
}

// made returns what is made for one book, with its picture beside it.
func made(d *document.Document, q Costing, j bench.Job) document.Block {
	wide, tall := q.picture()
	return document.Block{Above: 6, Draw: func(box geometry.Box) Length {
		staging.Finished(d, j.Plan, geometry.Bx(box.Min.X, box.Min.Y, box.Min.X+wide, box.Min.Y+tall))
		words := geometry.Bx(box.Min.X+wide+pictureGap, box.Min.Y, box.Max.X, box.Max.Y)
		y := words.Min.Y
		if len(q.Cases) > 1 {
			y = document.Paragraph(d, words, y, wording.OneLine(j.Title()), render.HeadSize, true) + 1
		}
		for _, s := range says(j, d.Round) {
			y = document.Paragraph(d, words, y, s, render.BodySize, false) + 1
		}
		return max(y, box.Min.Y+tall)
	}}
}

// says tells what is made for one book.
func says(j bench.Job, r geometry.Rounding) (out []string) {
	p := j.Plan
	out = append(out, wording.Sentence(p.Kind+", for a "+p.Content))
	for _, key := range []string{plan.Contents, plan.Outside} {
		if f := p.Fact(key); f.Key != "" {
			out = append(out, wording.Sentence(f.Name+": "+f.Says().In(r.Pretty)))
		}
	}
	var names []string
	for _, m := range geometry.Materials {
		if slices.ContainsFunc(p.Pieces, func(q geometry.Piece) bool { return q.Material == m }) {
			names = append(names, wording.OneLine(order.Called(bench.Group{Material: m, Name: j.Names[m]})))
		}
	}
	return append(out, "Made of "+wording.And(names)+".")
}

// Maker draws the costing for the maker: every line of it.
func Maker(q Costing, o document.Options) *document.Document {
	d := &document.Document{Options: o, Title: "Costing", Running: q.title(), Foot: "Costing, for the maker"}
	d.Add(d.Opening(q.title(), "Costing, for the maker alone"))
	if lacks := q.incomplete(o.Round); lacks != "" {
		d.Say(wording.Sentence(lacks), render.BodySize, true, 3)
	}
	for _, p := range q.parts(o.Round) {
		if len(p.rows) > 0 {
			t := document.Table{Columns: p.columns, Rows: p.rows, Size: render.NoteSize, Full: true}
			if p.head == paid {
				t.Apart = last(p.rows)
			}
			table := d.Table(p.head, t)
			table[0].Above = 5
			d.Add(table...)
		}
		if p.sum != "" {
			d.Say(wording.Capital(p.sum), render.BodySize, true, 1)
		}
	}
	d.Notes(q.notes()...)
	return d
}
