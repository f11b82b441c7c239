package bench

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/bench"
	"forel/render"
	"forel/render/document"
	"forel/render/typeset"
)

// figure is the drawing of one sheet with the list of its pieces.
type figure struct {
	Options
	plan   bench.Plan
	group  bench.Group
	sheet  bench.Sheet
	cuts   []bench.Cut // of this sheet
	rows   []row
	missed []string
	turned bool // the page is
	apart  bool // the list has pages of its own
	chosen [2]bool
	wider  float64 // by how much a viewer's typeface may be wider than ours

	scale  Length // 1 : scale
	origin geometry.Point
	taken  []geometry.Box // where words stand
	lines  []segment      // drawn on the page

	inWay struct{ taken, line int } // what was in the way of a number last

	leaders    []segment      // thin lines from a number to what it belongs to
	unnamed    []bench.Placed // too small for their numbers
	unnumbered []bench.Cut
}

// row is one line of the list of pieces.
type row struct{ number, text, size string }

// rowHeight is that of a line of the list of pieces.
const rowHeight Length = 3.9

// legendGap is the white between columns of the list.
const legendGap Length = 4

func newFigure(p bench.Plan, g bench.Group, i int, o Options) *figure {
	f := &figure{Options: o, plan: p, group: g, sheet: g.Sheets[i], wider: 1}
	for n := range g.Cuts { // by reference: there may be very many
		if c := &g.Cuts[n]; c.Sheet == i && c.Part != "the roll" {
			f.cuts = append(f.cuts, *c)
		}
	}
	for _, q := range f.sheet.Pieces {
		f.rows = append(f.rows, row{fmt.Sprint(q.Number), piece(p, q), size(q, o.Round)})
	}
	f.arrange()
	return f
}

// arrange turns the page, or gives it to the drawing alone, where that lets the
// drawing be larger.
func (f *figure) arrange() {
	best := Length(0)
	for _, way := range []struct {
		turned, apart bool
		gain          Length // by which it must be better to be worth it
	}{{false, false, 1}, {true, false, 1.1}, {false, true, 1.3}, {true, true, 1.4}} {
		if way.apart && len(f.rows) < 12 {
			continue
		}
		f.turned, f.apart = way.turned, way.apart
		room := f.room()
		area := f.area(room, f.split(room))
		if worth := min(area.Width()/f.sheet.Width, area.Height()/f.sheet.Height) / way.gain; worth > best {
			best, f.chosen = worth, [2]bool{way.turned, way.apart}
		}
	}
	f.turned, f.apart = f.chosen[0], f.chosen[1]
}

// area is where the sheet is drawn.
func (f *figure) area(room geometry.Box, s split) geometry.Box {
	return geometry.Bx(room.Min.X+aroundLeft, room.Min.Y+headTall+aroundTop, room.Max.X-aroundRight, s.bottom-aroundBottom)
}

// page returns the size of the page: the maker's paper, upright or turned.
func (f *figure) page() (w, h Length) {
	w, h = f.Setup.Sheet.Width, f.Setup.Sheet.Height
	if f.turned {
		w, h = h, w
	}
	return w, h
}

// room returns what of the page is drawn on.
func (f *figure) room() geometry.Box {
	return (&document.Document{Options: f.Options}).Room(f.turned)
}

func (f *figure) head() string {
	what := "Sheet"
	if f.sheet.Roll {
		what = "Length"
	}
	return fmt.Sprintf("%s %d: %s", what, f.sheet.Number, label(f.group, f.Round))
}

// split is how a page is shared between the drawing and the list.
type split struct {
	rows   int // of the list on the first page
	across int // columns of the list
	bottom Length
}

// Room round the drawing for numbers of cuts and the grain arrow.
const (
	aroundLeft   Length = 13
	aroundTop    Length = 8
	aroundRight  Length = 11
	aroundBottom Length = 9
	headTall     Length = 11
)

// split shares the room on a page: the list takes what it needs, but no more
// than two fifths.
func (f *figure) split(room geometry.Box) split {
	s := split{across: 1}
	for across := 3; across > 1; across-- {
		if f.widest() <= (room.Width()-Length(across-1)*legendGap)/Length(across) {
			s.across = across
			break
		}
	}
	most := int(0.4 * room.Height() / rowHeight)
	if f.apart {
		most = 0
	}
	lines := min(most, (len(f.rows)+s.across-1)/s.across)
	s.rows = min(len(f.rows), lines*s.across)
	s.bottom = room.Max.Y - Length(lines)*rowHeight - 3
	return s
}

// Columns of a line of the list.
const (
	numberWide Length = 6
	sizeGap    Length = 3
)

func (f *figure) widest() Length {
	var wide Length
	for _, r := range f.rows {
		wide = max(wide, numberWide+sizeGap+Length(f.wider)*(typeset.Width(r.text, noteSize, false)+typeset.Width(r.size, noteSize, false)))
	}
	return wide
}

// legend sets the list of pieces.
func (f *figure) legend(on render.Surface, box geometry.Box, rows []row, across int) {
	down := (len(rows) + across - 1) / across
	wide := (box.Width() - Length(across-1)*legendGap) / Length(across)
	for i, r := range rows {
		x := box.Min.X + Length(i/down)*(wide+legendGap)
		y := box.Min.Y + Length(i%down+1)*rowHeight
		on.Text(render.Text{At: geometry.Pt(x+numberWide-2, y), String: r.number, Size: noteSize, Bold: true, Align: render.End, Color: render.Black})
		on.Text(render.Text{At: geometry.Pt(x+wide, y), String: r.size, Size: noteSize, Align: render.End, Color: render.Black})
		text := typeset.Fit(r.text, noteSize, false, wide-numberWide-sizeGap-typeset.Width(r.size, noteSize, false))
		on.Text(render.Text{At: geometry.Pt(x+numberWide, y), String: text, Size: noteSize, Color: render.Black})
	}
}

// at returns a place on the page.
func (f *figure) at(p geometry.Point) geometry.Point {
	return f.origin.Add(p.Mul(float64(1 / f.scale)))
}

func (f *figure) box(b geometry.Box) geometry.Box {
	return geometry.Box{Min: f.at(b.Min), Max: f.at(b.Max)}
}

// draw draws the heading and the sheet into the room, and returns where the list
// of pieces begins.
func (f *figure) draw(on render.Surface, room geometry.Box, s split) Length {
	area := f.area(room, s)
	f.scale = roundScale(max(f.sheet.Width/area.Width(), f.sheet.Height/area.Height()))
	w := f.sheet.Width / f.scale
	f.origin = geometry.Pt(area.Min.X+(area.Width()-w)/2, area.Min.Y)
	f.taken, f.lines, f.leaders, f.missed = nil, nil, nil, nil
	f.unnamed, f.unnumbered = nil, nil
	stock := f.group.Stock[f.sheet.Stock]
	y := document.Paragraph(on, room, room.Min.Y-1.2, typeset.Fit(f.head(), render.HeadSize, true, room.Width()), render.HeadSize, true)
	what := stock.Size()
	if f.sheet.Roll {
		what = f.Round.Pretty(f.sheet.Height) + " off the " + what
	}
	sub := fmt.Sprintf("%s, %s; %s; scale 1 : %.4g", what, stock.Along(), wording.Count(len(f.sheet.Pieces), "piece"), float64(f.scale))
	document.Paragraph(on, room, y-0.6, typeset.Fit(sub, render.BodySize, false, room.Width()), render.BodySize, false)
	f.ground(on)
	f.cutLines(on)
	f.pieceNames(on)
	f.offcutNames(on)
	f.cutNumbers(on)
	f.callouts(on)
	f.grain(on)
	if len(f.missed) > 0 {
		text := "No room for the numbers of " + strings.Join(f.missed, ", ")
		document.Paragraph(on, room, f.origin.Y+f.sheet.Height/f.scale+aroundBottom-1.5-typeset.LineHeight(noteSize), typeset.Fit(text+": see the lists.", noteSize, false, room.Width()), noteSize, false)
	}
	ends := f.origin.Y + f.sheet.Height/f.scale + aroundBottom
	if stock.Grained() && stock.Grain == geometry.GrainHeight { // longer than a short sheet is tall
		ends = max(ends, f.origin.Y+f.grainLong())
	}
	return min(s.bottom, ends+2)
}

// roundScale takes a scale up to one that is easily said.
func roundScale(s Length) Length {
	for _, n := range []Length{1, 1.25, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 7.5, 8, 8.5, 9, 9.5, 10, 11, 12, 13, 14, 15, 16, 18, 20, 25, 30, 40, 50, 75, 100} {
		if n >= s-1e-9 {
			return n
		}
	}
	return s
}
