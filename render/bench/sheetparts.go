package bench

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/polygon"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/labelled"
	"forel/render/shape"
)

// offcutHatch is that of what is worth keeping.
var offcutHatch = shape.Hatch{Angle: -45, Gap: 2.3, Stroke: render.Stroke{Width: 0.12, Color: render.Color{R: 0xA8, G: 0xA8, B: 0xA8}}}

// ground draws the sheet: what is waste and trim in grey, what is worth keeping
// hatched, its outline.
func (f *figure) ground(on render.Surface) {
	b := f.box(geometry.Bx(0, 0, f.sheet.Width, f.sheet.Height))
	on.Fill(geometry.Rectangle(b), pale)
	for _, q := range f.sheet.Pieces {
		on.Fill(geometry.Rectangle(f.box(q.Box)), white)
	}
	for _, o := range f.sheet.Offcuts {
		if !o.Kept() {
			continue
		}
		on.Fill(geometry.Rectangle(f.box(o.Box)), white)
		offcutHatch.Draw(on, polygon.Box(f.box(o.Clean))[0], nil)
	}
}

// cutLines draws the sheet's outline and every cut.
func (f *figure) cutLines(on render.Surface) {
	edge := geometry.Rectangle(f.box(geometry.Bx(0, 0, f.sheet.Width, f.sheet.Height)))
	on.Stroke(edge, render.Stroke{Width: 0.5, Color: render.Black})
	f.lines = edge.Segments()
	for _, c := range f.cuts {
		from, to := f.at(c.From), f.at(c.To)
		on.Stroke(geometry.Line(from, to), f.Theme[render.Cutting])
		f.lines = append(f.lines, geometry.Segment{From: from, To: to})
	}
}

// clear is the white between words and lines.
const clear Length = 0.5

// name sets in the middle of a box the first of some words that has room there, level or
// turned, and tells whether any has. On white they stand clear of what is beneath.
func (f *figure) name(on render.Surface, box geometry.Box, onWhite bool, tries ...labelled.Block) bool {
	room := box.Grow(-clear)
	for _, b := range tries {
		for _, turned := range []bool{false, true} {
			wide, high := b.Size(f.wider)
			if turned {
				wide, high = high, wide
			}
			if wide > room.Width() || high > room.Height() {
				continue
			}
			c := room.Center()
			at := geometry.Bx(c.X-wide/2, c.Y-high/2, c.X+wide/2, c.Y+high/2)
			if onWhite {
				on.Fill(geometry.Rectangle(at.Grow(0.4)), white)
			}
			b.Draw(on, at, turned, render.Black)
			f.words.Boxes = append(f.words.Boxes, at)
			return true
		}
	}
	return false
}

// small returns lines in small type.
func small(lines ...string) (out labelled.Block) {
	for _, l := range lines {
		out = append(out, labelled.Line{Text: l, Size: render.SmallSize})
	}
	return out
}

// pieceNames names every piece within it, as fully as there is room for.
func (f *figure) pieceNames(on render.Surface) {
	for _, q := range f.sheet.Pieces {
		number, name, measure := fmt.Sprint(q.Number), copyName(q), size(q, f.Round)
		wordings := [][]string{{name, measure}, {name}, {measure}, nil}
		if len(f.plan.Jobs) > 1 {
			wordings = append([][]string{{name, wording.OneLine(f.plan.Jobs[q.Job].Title()), measure}}, wordings...)
		}
		var tries []labelled.Block
		for _, lines := range wordings {
			tries = append(tries, append(labelled.Block{{Text: number, Size: render.BodySize, Bold: true}}, small(lines...)...))
		}
		tries = append(tries, labelled.Block{{Text: number, Size: render.SmallSize, Bold: true}})
		if !f.name(on, f.box(q.Box), false, tries...) {
			f.unnamed = append(f.unnamed, q)
		}
	}
}

// offcutNames names what is worth keeping.
func (f *figure) offcutNames(on render.Surface) {
	for _, o := range f.sheet.Offcuts {
		if o.Kept() {
			measure := f.Round.PrettySize(o.Clean.Width(), o.Clean.Height())
			f.name(on, f.box(o.Clean), true, small("offcut "+o.Name, measure), small(o.Name))
		}
	}
}

// grain draws the arrow of the grain, or the flutes, beside the sheet.
func (f *figure) grain(on render.Surface) {
	stock := f.group.Stock[f.sheet.Stock]
	if !stock.Grained() {
		return
	}
	b, word := f.box(geometry.Bx(0, 0, f.sheet.Width, f.sheet.Height)), f.group.Material.Direction()
	middle := shape.GrainLong(word, shape.GrainArm)/2 + 2 // from the corner of the sheet
	if stock.Grain == geometry.GrainHeight {
		shape.Grain(on, geometry.Pt(b.Max.X+aroundRight-2.5, b.Min.Y+middle), true, word, shape.GrainArm)
	} else {
		shape.Grain(on, geometry.Pt(b.Min.X+middle, b.Max.Y+aroundBottom-2.5), false, word, shape.GrainArm)
	}
}
