package bench

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/bench"
	"forel/render"
	"forel/render/document"
	"forel/render/shape"
	"forel/render/typeset"
)

// figure is the drawing of one sheet.
type figure struct {
	Options
	plan   bench.Plan
	group  bench.Group
	sheet  bench.Sheet
	cuts   []bench.Cut // of this sheet
	lying  bool        // the page is
	wider  float64     // by how much a viewer's typeface may be wider than ours
	scale  Length      // 1 : scale
	origin geometry.Point

	words   shape.Taken        // where words stand, and their thin lines
	lines   []geometry.Segment // drawn on the page: the edges of the sheet, then the cuts
	unnamed []bench.Placed     // too small for their numbers
	missed  []string           // numbers there was no room for
}

// Room round the drawing for its head, numbers of cuts and the grain arrow.
const (
	aroundLeft   Length = 13
	aroundTop    Length = 8
	aroundRight  Length = 11
	aroundBottom Length = 9
	headTall     Length = 11
)

// missedTall is the height of the line at the foot of the drawing that tells of numbers
// there was no room for.
const missedTall Length = 5

// newFigure starts the drawing of a sheet, on a page that lies where that lets it be
// larger.
func newFigure(p bench.Plan, g bench.Group, i int, d *document.Document) *figure {
	f := &figure{Options: d.Options, plan: p, group: g, sheet: g.Sheets[i], wider: max(1, d.Wider.MM())}
	for n := range g.Cuts { // by reference: there may be very many
		if c := &g.Cuts[n]; c.Sheet == i && c.Part != "the roll" {
			f.cuts = append(f.cuts, *c)
		}
	}
	upright, lying := d.Room(false), d.Room(true)
	f.lying = f.scaleIn(lying) < f.scaleIn(upright)/1.1
	return f
}

// area is where the sheet is drawn in a room.
func (f *figure) area(room geometry.Box) geometry.Box {
	return geometry.Bx(room.Min.X+aroundLeft, room.Min.Y+headTall+aroundTop, room.Max.X-aroundRight, room.Max.Y-aroundBottom)
}

// scaleIn returns by how much smaller than it is a sheet is drawn in a room.
func (f *figure) scaleIn(room geometry.Box) Length {
	area := f.area(room)
	return max(f.sheet.Width/area.Width(), f.sheet.Height/area.Height())
}

func (f *figure) head() string {
	what := "Sheet"
	if f.sheet.Roll {
		what = "Length"
	}
	return fmt.Sprintf("%s %d: %s", what, f.sheet.Number, label(f.group, f.Round))
}

// list returns the list of the pieces.
func (f *figure) list() document.Table {
	t := document.Table{Size: noteSize, Columns: []document.Column{{Right: true, Bold: true}, {Broken: true}, {Right: true}}}
	for _, q := range f.sheet.Pieces {
		t.Rows = append(t.Rows, []string{fmt.Sprint(q.Number), piece(f.plan, q), size(q, f.Round)})
	}
	return t
}

// at returns a place on the page.
func (f *figure) at(p geometry.Point) geometry.Point {
	return f.origin.Add(p.Mul(float64(1 / f.scale)))
}

func (f *figure) box(b geometry.Box) geometry.Box {
	return geometry.Box{Min: f.at(b.Min), Max: f.at(b.Max)}
}

// draw draws the heading and the sheet into a room, and returns where they end.
func (f *figure) draw(on render.Surface, room geometry.Box) Length {
	area := f.area(room)
	f.scale = roundScale(f.scaleIn(room))
	w, h := f.sheet.Width/f.scale, f.sheet.Height/f.scale
	f.origin = geometry.Pt(area.Min.X+(area.Width()-w)/2, area.Min.Y)
	f.words, f.lines, f.unnamed, f.missed = shape.Taken{}, nil, nil, nil
	stock := f.group.Stock[f.sheet.Stock]
	wide := room.Width() / Length(f.wider)
	y := document.Paragraph(on, room, room.Min.Y-1.2, typeset.Fit(f.head(), render.HeadSize, true, wide), render.HeadSize, true)
	what := stock.Size()
	if f.sheet.Roll {
		what = f.Round.Pretty(f.sheet.Height) + " off the " + what
	}
	sub := fmt.Sprintf("%s, %s; %s; scale 1 : %.4g", what, stock.Along(), wording.Count(len(f.sheet.Pieces), "piece"), float64(f.scale))
	document.Paragraph(on, room, y-0.6, typeset.Fit(sub, render.BodySize, false, wide), render.BodySize, false)
	f.ground(on)
	f.cutLines(on)
	f.pieceNames(on)
	f.offcutNames(on)
	f.cutNumbers(on)
	f.grain(on)
	ends := f.origin.Y + h + aroundBottom
	if len(f.missed) > 0 {
		text := "No room for the numbers of " + strings.Join(f.missed, ", ") + ": see the lists."
		if typeset.Width(text, noteSize, false) > wide {
			text = fmt.Sprintf("No room for %d of the numbers: see the lists.", len(f.missed))
		}
		document.Paragraph(on, room, ends-missedTall, text, noteSize, false)
	}
	if stock.Grained() && stock.Grain == geometry.GrainHeight { // longer than a short sheet is tall
		ends = max(ends, f.origin.Y+shape.GrainLong(f.group.Material.Direction(), shape.GrainArm)+2)
	}
	return ends
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
