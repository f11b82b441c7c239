package handout

import (
	"fmt"
	"math"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/typeset"
)

// groupDigits returns how many decimals the thicknesses of a group take.
func (d *doc) groupDigits(g plan.Group) int {
	var thin []Length
	for _, m := range g.Measures {
		if m.Fine {
			thin = append(thin, m.Value)
		}
	}
	return d.digits(thin...)
}

// digits returns how many decimals thicknesses take in one column: in mm as few as
// tell all of them, from 1 to 3, in inches 3.
func (d *doc) digits(thin ...Length) int {
	const most = 3
	if d.Round.Unit == geometry.IN {
		return most
	}
	for n := 1; n < most; n++ {
		told := true
		for _, l := range thin {
			parts := float64(l/d.Round.Unit.Length()) * math.Pow10(n)
			told = told && math.Abs(parts-math.Round(parts)) < 1e-6
		}
		if told {
			return n
		}
	}
	return most
}

// thin writes a thickness with a number of decimals.
func (d *doc) thin(l Length, digits int) string {
	return fmt.Sprintf("%.*f %v", digits, float64(l/d.Round.Unit.Length()), d.Round.Unit)
}

// worksheet sets the worksheet: the measures, then the pieces.
func (d *doc) worksheet() {
	d.Flow(nil, d.opening())
	var blocks []document.Block
	for _, g := range d.plan.Worksheet {
		if len(g.Measures) > 0 {
			blocks = append(blocks, d.group(g)...)
		}
	}
	d.FlowInColumns(6, blockGap, blocks...)
	d.FlowOn(blockGap, d.pieces()...)
}

// opening returns the head of the worksheet, with room for a name and a date.
func (d *doc) opening() document.Block {
	about := "Worksheet for a " + d.plan.Kind + ", and how to make it"
	if d.blank {
		about = "Worksheet for a " + d.plan.Kind + ", to fill in"
	}
	head := d.Opening(wording.Titled(d.plan.Title, d.plan.Kind), about)
	head.Bookmark = "Worksheet"
	opening := head.Draw
	head.Draw = func(box geometry.Box) Length {
		y := opening(box) + typeset.LineHeight(render.BodySize) + 2.4
		x := box.Min.X
		for _, f := range []struct {
			word string
			wide Length
		}{{"Name", box.Width()*0.55 - 14}, {"Date", box.Width()*0.45 - 12}} {
			document.Write(d, geometry.Pt(x, y), f.word, render.BodySize, false)
			x += typeset.Width(f.word, render.BodySize, false) + 2
			d.Stroke(geometry.Line(geometry.Pt(x, y+0.6), geometry.Pt(x+f.wide, y+0.6)), render.Stroke{Width: 0.2, Color: render.Grey})
			x += f.wide + 5
		}
		return y + 1
	}
	return head
}

// group returns a group of measures, each with its length, or room for it.
func (d *doc) group(g plan.Group) []document.Block {
	const symbolWide = 5
	gap := Length(1.3)
	if d.tight {
		gap = 0.7
	}
	t := document.Table{Size: render.BodySize, Gap: gap, Dotted: true, Whole: true,
		Columns: []document.Column{{Right: true, Bold: true, Least: symbolWide}, {Broken: true}, {Right: true, Bold: !d.blank}}}
	digits := d.groupDigits(g)
	for _, m := range g.Measures {
		row := func(symbol, name, value, under string) {
			t.Rows, t.Notes = append(t.Rows, []string{symbol, name, value}), append(t.Notes, under)
		}
		switch under := d.under(m, digits); {
		case !d.blank:
			row(m.Symbol, m.Name, d.shown(m, digits), under)
		case m.Readings != nil:
			row(m.Symbol, m.Name, "", "")
			for n := range 3 {
				row("", fmt.Sprint("reading ", n+1), blank, "")
			}
			row("", "the largest", blank, under)
		default:
			row(m.Symbol, m.Name, blank, under)
		}
	}
	head := d.Paragraph(g.Head, render.BodySize, true).After(1)
	head.Stays = true
	return append([]document.Block{head}, d.Table("", t)...)
}

// under returns the small line below a measure.
func (d *doc) under(m plan.Measure, digits int) string {
	switch {
	case m.Rule != "":
		return "= " + m.Rule
	case d.blank && m.Usual:
		return "usual " + d.shown(m, digits)
	case !d.blank && len(m.Readings) > 1:
		var rs []string
		for _, l := range m.Readings {
			rs = append(rs, d.Round.PrettyNumber(l))
		}
		return "largest of " + strings.Join(rs, ", ")
	}
	return ""
}

// shown returns a measure in words.
func (d *doc) shown(m plan.Measure, digits int) string {
	switch {
	case m.Number != "":
		return m.Number
	case m.Fine:
		return d.thin(m.Value, digits)
	}
	return d.Round.Pretty(m.Value)
}
