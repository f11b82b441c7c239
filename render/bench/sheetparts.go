package bench

import (
	"fmt"
	"math"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/typeset"
)

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
		hatch(on, f.box(o.Clean))
	}
}

// hatch draws slanting lines over a box, on one grid for the whole page.
func hatch(on render.Surface, b geometry.Box) {
	const gap = 3.2
	stroke := render.Stroke{Width: 0.12, Color: render.Color{R: 0xA8, G: 0xA8, B: 0xA8}}
	for n := math.Ceil(float64(b.Min.X+b.Min.Y) / gap); Length(n*gap) < b.Max.X+b.Max.Y; n++ {
		s := Length(n * gap)
		x0, x1 := max(b.Min.X, s-b.Max.Y), min(b.Max.X, s-b.Min.Y)
		if x1-x0 > 0.05 {
			on.Stroke(geometry.Line(geometry.Pt(x0, s-x0), geometry.Pt(x1, s-x1)), stroke)
		}
	}
}

// cutLines draws the sheet's outline and every cut.
func (f *figure) cutLines(on render.Surface) {
	edge := geometry.Rectangle(f.box(geometry.Bx(0, 0, f.sheet.Width, f.sheet.Height)))
	on.Stroke(edge, render.Stroke{Width: 0.5, Color: render.Black})
	corners := edge.Vertices
	for i := range corners {
		f.lines = append(f.lines, segment{corners[i].Point, corners[(i+1)%len(corners)].Point})
	}
	for _, c := range f.cuts {
		l := segment{f.at(c.From), f.at(c.To)}
		on.Stroke(l.path(), f.Theme[render.Cutting])
		f.lines = append(f.lines, l)
	}
}

// wordBlock is lines of text in one block, centred below each other.
type wordBlock struct {
	lines  []render.Text
	turned bool
	wider  float64 // by how much a viewer's typeface may be wider than ours
}

func block(turned bool, number string, lines ...string) wordBlock {
	w := wordBlock{turned: turned, lines: []render.Text{{String: number, Size: render.BodySize, Bold: true}}}
	for _, l := range lines {
		w.lines = append(w.lines, render.Text{String: l, Size: render.SmallSize})
	}
	return w
}

// extent returns the size of a block as it stands.
func (w wordBlock) extent() (wide, high Length) {
	for i, l := range w.lines {
		wide = max(wide, typeset.Width(l.String, l.Size, l.Bold)*Length(w.wider))
		if i > 0 {
			high += typeset.LineHeight(l.Size)
		}
	}
	high += typeset.Ascent(w.lines[0].Size) + typeset.Descent(w.lines[len(w.lines)-1].Size)
	if w.turned {
		return high, wide
	}
	return wide, high
}

// set sets a block round a centre and returns the place it takes.
func (w wordBlock) set(on render.Surface, centre geometry.Point) geometry.Box {
	wide, high := w.extent()
	box := geometry.Bx(centre.X-wide/2, centre.Y-high/2, centre.X+wide/2, centre.Y+high/2)
	down := typeset.Ascent(w.lines[0].Size)
	for i, l := range w.lines {
		if i > 0 {
			down += typeset.LineHeight(l.Size)
		}
		l.Align, l.Turned, l.Color = render.Middle, w.turned, render.Black
		l.At = geometry.Pt(centre.X, box.Min.Y+down)
		if w.turned {
			l.At = geometry.Pt(box.Min.X+down, centre.Y)
		}
		on.Text(l)
	}
	return box
}

// clear is the white between words and lines.
const clear Length = 0.5

// pieceNames names every piece within it, as fully as there is room for.
func (f *figure) pieceNames(on render.Surface) {
	for _, q := range f.sheet.Pieces {
		room := f.box(q.Box).Grow(-clear)
		number, name, measure := fmt.Sprint(q.Number), copyName(q), size(q, f.Round)
		title := wording.OneLine(f.plan.Jobs[q.Job].Title())
		var tries []wordBlock
		for _, lines := range [][]string{{name, title, measure}, {name, measure}, {name}, {measure}, nil} {
			if len(lines) == 3 && len(f.plan.Jobs) == 1 {
				continue
			}
			tries = append(tries, block(false, number, lines...), block(true, number, lines...))
		}
		small := wordBlock{lines: []render.Text{{String: number, Size: render.SmallSize, Bold: true}}}
		tries = append(tries, small, wordBlock{turned: true, lines: small.lines})
		placed := false
		for _, w := range tries {
			w.wider = f.wider
			if wide, high := w.extent(); wide <= room.Width() && high <= room.Height() {
				f.taken = append(f.taken, w.set(on, room.Center()))
				placed = true
				break
			}
		}
		if !placed {
			f.unnamed = append(f.unnamed, q)
		}
	}
}

// offcutNames names what is worth keeping.
func (f *figure) offcutNames(on render.Surface) {
	for _, o := range f.sheet.Offcuts {
		if !o.Kept() {
			continue
		}
		room := f.box(o.Clean).Grow(-clear)
		measure := f.Round.PrettyNumber(o.Clean.Width()) + " × " + f.Round.Pretty(o.Clean.Height())
		name := wordBlock{lines: []render.Text{{String: "offcut " + o.Name, Size: render.SmallSize}, {String: measure, Size: render.SmallSize}}}
		short := wordBlock{lines: []render.Text{{String: o.Name, Size: render.SmallSize}}}
		for _, w := range []wordBlock{name, {turned: true, lines: name.lines}, short, {turned: true, lines: short.lines}} {
			w.wider = f.wider
			wide, high := w.extent()
			if wide > room.Width() || high > room.Height() {
				continue
			}
			c := room.Center()
			on.Fill(geometry.Rectangle(geometry.Bx(c.X-wide/2, c.Y-high/2, c.X+wide/2, c.Y+high/2).Grow(0.4)), white)
			f.taken = append(f.taken, w.set(on, c))
			break
		}
	}
}

// grainArm is how long an arrow of the grain is beyond its word, on each side.
const grainArm Length = 8

// grainLong returns how far an arrow along the height reaches below the sheet's upper edge.
func (f *figure) grainLong() Length {
	return 2*grainArm + typeset.Width(f.group.Material.Direction(), noteSize, false) + 2
}

// grain draws the arrow of the grain, or the flutes, beside the sheet.
func (f *figure) grain(on render.Surface) {
	stock := f.group.Stock[f.sheet.Stock]
	if !stock.Grained() {
		return
	}
	b := f.box(geometry.Bx(0, 0, f.sheet.Width, f.sheet.Height))
	stroke := render.Stroke{Width: 0.3, Color: render.Black}
	word := render.Text{String: f.group.Material.Direction(), Size: noteSize, Align: render.Middle, Color: render.Black}
	wide := typeset.Width(word.String, noteSize, false)
	const head, long = 1.4, grainArm
	if stock.Grain == geometry.GrainHeight {
		x, y := b.Max.X+aroundRight-2.5, b.Min.Y+long+wide/2+2
		word.At, word.Turned = geometry.Pt(x+typeset.Ascent(noteSize)/2-0.3, y), true
		for _, way := range []Length{-1, 1} {
			tip := y + way*(long+wide/2)
			on.Stroke(geometry.Line(geometry.Pt(x, y+way*(wide/2+1)), geometry.Pt(x, tip)), stroke)
			on.Stroke(geometry.Line(geometry.Pt(x-head/2, tip-way*head), geometry.Pt(x, tip), geometry.Pt(x+head/2, tip-way*head)), stroke)
		}
	} else {
		x, y := b.Min.X+long+wide/2+2, b.Max.Y+aroundBottom-2.5
		word.At = geometry.Pt(x, y+typeset.Ascent(noteSize)/2-0.3)
		for _, way := range []Length{-1, 1} {
			tip := x + way*(long+wide/2)
			on.Stroke(geometry.Line(geometry.Pt(x+way*(wide/2+1), y), geometry.Pt(tip, y)), stroke)
			on.Stroke(geometry.Line(geometry.Pt(tip-way*head, y-head/2), geometry.Pt(tip, y), geometry.Pt(tip-way*head, y+head/2)), stroke)
		}
	}
	on.Text(word)
}
