package proof

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/render"
	"forel/render/document"
	"forel/render/typeset"
)

// mark is a fault with its number, and where on the page it is.
type mark struct {
	number string
	area   geometry.Path  // round the place, closed
	tag    geometry.Point // the middle of its number
}

const (
	tagRadius Length = 3
	faultHalo Length = 0.4 // white on both sides of a fault's line
)

// spot returns the place of a fault on its face: the box it names, or the whole
// face where it names none.
func spot(f foldup.Fault, extent geometry.Box) geometry.Box {
	if f.At.Min == f.At.Max {
		return extent
	}
	return f.At
}

// clamped returns a box drawn in to the border of another where it lies past it.
func clamped(b, border geometry.Box) geometry.Box {
	in := func(p geometry.Point) geometry.Point {
		return geometry.Pt(max(border.Min.X, min(border.Max.X, p.X)), max(border.Min.Y, min(border.Max.Y, p.Y)))
	}
	return geometry.Box{Min: in(b.Min), Max: in(b.Max)}
}

// freeSpot finds the place nearest to the one wanted where a tag stands within
// a zone and off what is taken already.
func freeSpot(want geometry.Point, zone geometry.Box, off taken) geometry.Point {
	in := zone.Grow(-tagRadius - 0.3)
	at := func(p geometry.Point) geometry.Box { return geometry.Around(p).Grow(tagRadius + 0.3) }
	const step Length = 1
	best, far, found := want, Length(0), false
	for x := in.Min.X; x <= in.Max.X; x += step {
		for y := in.Min.Y; y <= in.Max.Y; y += step {
			p := geometry.Pt(x, y)
			if d := p.Distance(want); (!found || d < far) && off.Free(at(p), 0, 0) {
				best, far, found = p, d, true
			}
		}
	}
	return best
}

// box returns the room the tag takes.
func (m mark) box() geometry.Box {
	return geometry.Box{Min: m.tag, Max: m.tag}.Grow(tagRadius + 0.3)
}

// sides returns the room that the line of a mark on an upright box takes.
func (m mark) sides() []geometry.Box {
	half := faultLine.Width/2 + faultHalo
	var out []geometry.Box
	for _, s := range m.area.Segments() {
		out = append(out, geometry.Line(s.From, s.To).Bounds().Grow(half))
	}
	return out
}

// drawMarks draws marks over all else: a thick line round each place, then a
// numbered disc on it or tied to it.
func drawMarks(s render.Surface, marks []mark) {
	for _, m := range marks {
		s.Stroke(m.area, render.Stroke{Width: faultLine.Width + 2*faultHalo, Color: render.White})
		s.Stroke(m.area, faultLine)
		if middle := m.area.Bounds().Center(); middle.Distance(m.tag) > tagRadius {
			s.Stroke(geometry.Line(middle, m.tag), render.Stroke{Width: 0.6, Color: render.Vermilion})
		}
	}
	for _, m := range marks {
		drawTag(s, m.number, m.tag)
	}
}

func drawTag(s render.Surface, number string, at geometry.Point) {
	s.Fill(geometry.Circle(at, tagRadius), render.White)
	s.Stroke(geometry.Circle(at, tagRadius), render.Stroke{Width: 0.7, Color: render.Vermilion})
	size := render.BodySize
	if len(number) > 1 {
		size = render.NoteSize
	}
	s.Text(render.Text{At: at.Add(geometry.Pt(0, typeset.Ascent(size)/2)), String: number, Size: size, Bold: true, Align: render.Middle, Color: render.Black})
}

// faults lists the faults with their numbers and where each is drawn.
func (d *doc) faults() []document.Block {
	const indent Length = 9
	var blocks []document.Block
	for i, f := range d.Proof.Faults {
		blocks = append(blocks, document.Block{Above: 2.5, Draw: func(box geometry.Box) Length {
			text := f.String()
			if page, ok := d.pageOf[f.Face]; ok {
				text += fmt.Sprintf(" (page %d)", page)
			}
			y := box.Min.Y
			drawTag(d, fmt.Sprint(i+1), geometry.Pt(box.Min.X+tagRadius+0.4, y+tagRadius))
			box.Min.X += indent
			box.Min.Y += tagRadius - typeset.LineHeight(render.BodySize) + typeset.Ascent(render.BodySize)/2
			return max(y+2*tagRadius, d.Paragraph(text, render.BodySize, false).Draw(box))
		}})
	}
	if blocks == nil {
		return nil
	}
	head := d.Heading("What is wrong")
	head.Bookmark, head.Fresh = "Faults", true
	about := d.Paragraph("The numbers are those of the marks on the faces. A fault without a page belongs to a piece or to the whole case, not to one face.", render.BodySize, false)
	about.Stays = true
	return append([]document.Block{head, about}, blocks...)
}
