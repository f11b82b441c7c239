package handout

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/typeset"
)

// cellWide is the room for a length that is written or read.
const cellWide Length = 21

var cellLine = render.Stroke{Width: 0.2, Color: render.Grey}

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
func (d *doc) worksheet() { d.Flow(nil, d.sections()...) }

// sections returns the worksheet in blocks.
func (d *doc) sections() []document.Block {
	title := cmp.Or(d.Running, wording.Capital(d.plan.Kind))
	about := "Worksheet for a " + d.plan.Kind + ", and how to make it"
	if d.blank {
		about = "Worksheet for a " + d.plan.Kind + ", to fill in"
	}
	head := d.Opening(title, about)
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
			d.Stroke(geometry.Line(geometry.Pt(x, y+0.6), geometry.Pt(x+f.wide, y+0.6)), cellLine)
			x += f.wide + 5
		}
		return y + 1
	}
	blocks := []document.Block{head}
	groups := slices.DeleteFunc(slices.Clone(d.plan.Worksheet), func(g plan.Group) bool { return len(g.Measures) == 0 })
	for _, gs := range d.pagesOf(groups) {
		left, right := d.shared(gs)
		blocks = append(blocks, document.Block{Above: blockGap, Draw: func(box geometry.Box) Length {
			half := (box.Width() - 6) / 2
			d.drawGroups(left, geometry.Bx(box.Min.X, box.Min.Y, box.Min.X+half, box.Max.Y))
			d.drawGroups(right, geometry.Bx(box.Max.X-half, box.Min.Y, box.Max.X, box.Max.Y))
			return box.Min.Y + max(d.groupsHeight(left), d.groupsHeight(right))
		}})
	}
	return append(blocks, d.pieces()...)
}

// headTall is what the head of the worksheet takes of its first page.
const headTall Length = 28

// pagesOf shares groups out so that each share, in two columns, is no taller than
// a page, or than what the head leaves of the first: all are one share where the sheet
// is not very low and they are not many.
func (d *doc) pagesOf(gs []plan.Group) (shares [][]plan.Group) {
	fits := func(gs []plan.Group, room Length) bool {
		left, right := d.shared(gs)
		return max(d.groupsHeight(left), d.groupsHeight(right)) <= room
	}
	for len(gs) > 0 {
		room := d.column().Height()
		if shares == nil {
			room -= headTall
		}
		n := len(gs)
		for n > 1 && !fits(gs[:n], room) {
			n--
		}
		shares, gs = append(shares, gs[:n]), gs[n:]
	}
	return shares
}

// shared shares groups between two columns in their order, so that both are
// about as tall.
func (d *doc) shared(gs []plan.Group) (left, right []plan.Group) {
	best := Length(-1)
	for i := range gs {
		tall := max(d.groupsHeight(gs[:i+1]), d.groupsHeight(gs[i+1:]))
		if best < 0 || tall < best {
			best, left, right = tall, gs[:i+1], gs[i+1:]
		}
	}
	return left, right
}

const (
	groupGap  Length = 1.2
	lineTall  Length = 5.8
	ruledTall Length = 7.5
	readTall  Length = 12
)

func (d *doc) tall(m plan.Measure) Length {
	switch {
	case d.blank && m.Readings != nil:
		return readTall
	case d.under(m, 0) != "":
		return ruledTall
	}
	return lineTall
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

func (d *doc) groupsHeight(gs []plan.Group) Length {
	var h Length
	for _, g := range gs {
		h += typeset.LineHeight(render.BodySize) + 1 + groupGap
		for _, m := range g.Measures {
			h += d.tall(m)
		}
	}
	return h
}

// drawGroups sets groups of measures in a column.
func (d *doc) drawGroups(gs []plan.Group, box geometry.Box) {
	y := box.Min.Y
	for _, g := range gs {
		digits := d.groupDigits(g)
		y += typeset.LineHeight(render.BodySize)
		document.Write(d, geometry.Pt(box.Min.X, y), g.Head, render.BodySize, true)
		y += 1
		document.Rule(d, geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y))
		for _, m := range g.Measures {
			h := d.tall(m)
			d.drawMeasure(m, digits, geometry.Bx(box.Min.X, y, box.Max.X, y+h))
			y += h
		}
		y += groupGap
	}
}

// symbolWide is the room for a symbol.
const symbolWide Length = 7

func (d *doc) drawMeasure(m plan.Measure, digits int, box geometry.Box) {
	base := box.Min.Y + 4.4
	document.WriteEnd(d, geometry.Pt(box.Min.X+symbolWide-1.5, base), m.Symbol, render.BodySize, true)
	x := box.Min.X
	if m.Symbol != "" {
		x += symbolWide
	}
	cell := box.Max.X - cellWide
	name := typeset.Fit(m.Name, render.NoteSize, false, cell-x-1)
	document.Write(d, geometry.Pt(x, base), name, render.NoteSize, false)
	if under := d.under(m, digits); under != "" {
		document.Write(d, geometry.Pt(x, base+3.1), typeset.Fit(under, render.SmallSize, false, cell-x-1), render.SmallSize, false)
	}
	if d.blank && m.Readings != nil { // places for three readings, then the largest
		base += 5.6
		document.Write(d, geometry.Pt(x, base), "readings", render.SmallSize, false)
		from := x + typeset.Width("readings", render.SmallSize, false) + 1.5
		wide := (cell - 9 - from) / 3
		for i := range 3 {
			at := from + wide*Length(i)
			d.Stroke(geometry.Line(geometry.Pt(at, base+1), geometry.Pt(at+wide-1.5, base+1)), cellLine)
		}
		d.Text(render.Text{At: geometry.Pt(cell-0.8, base), String: "largest", Size: render.SmallSize, Align: render.End, Color: render.Black})
	}
	d.Stroke(geometry.Line(geometry.Pt(cell, base+1), geometry.Pt(box.Max.X, base+1)), cellLine)
	if !d.blank {
		value := d.shown(m, digits)
		document.Leader(d, x+typeset.Width(name, render.NoteSize, false), box.Max.X-typeset.Width(value, render.BodySize, true), base, render.NoteSize)
		d.Text(render.Text{At: geometry.Pt(box.Max.X, base), String: value, Size: render.BodySize, Bold: true, Align: render.End, Color: render.Black})
	}
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
