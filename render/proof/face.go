package proof

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/polygon"
	"forel/render"
	"forel/render/shape"
	"forel/render/typeset"
)

// drawFace draws a face flat: what lies on it, its edges named, the number of
// layers in each area, and its faults.
func (d *doc) drawFace(f flatFace) {
	marks := d.faceMarks(f)
	var keep []geometry.Box
	for _, m := range marks {
		keep = append(keep, m.box())
		keep = append(keep, m.sides()...)
	}
	inside, beside := d.areaLabels(f, keep)
	for _, t := range inside {
		keep = append(keep, typeset.Box(t).Grow(0.5))
	}
	d.faceGround(f, keep)
	for _, side := range beside {
		side.Draw(d, side.labels)
	}
	for _, t := range inside {
		d.Text(t)
	}
	d.edgeNames(f, len(beside[0].labels) > 0, len(beside[1].labels) > 0, len(marks) > 0)
	drawMarks(d, marks)
}

// faceGround draws the materials of a face and the outlines of its layers,
// hatching kept off words.
func (d *doc) faceGround(f flatFace, keep []geometry.Box) {
	page := func(g polygon.Shape) polygon.Shape { return g.Moved(f.onPage) }
	under := d.looks.ground(f.Ground)
	shade := func(g polygon.Shape, l look) {
		for _, a := range page(g) {
			l.shade(d, a, keep)
		}
	}
	for _, a := range page(f.shape) {
		d.Fill(a.Path(), under.Tint)
	}
	for _, l := range f.layers {
		for _, a := range page(l.Shape) {
			d.Fill(a.Path(), d.looks.piece(l.Piece).Tint)
		}
	}
	shade(f.bare(), under)
	for _, l := range f.layers {
		shade(l.Shape, d.looks.piece(l.Piece))
	}
	for _, l := range f.layers {
		for _, run := range shape.FreeEdges(l.Shape, f.shape) {
			for i, p := range run {
				run[i] = f.onPage(p)
			}
			d.Stroke(geometry.Line(run...), d.looks.piece(l.Piece).outline(l.Tucked))
		}
	}
	for _, a := range page(f.shape) {
		for _, ring := range a.Rings {
			d.Stroke(geometry.Polygon(ring...), outerEdge)
		}
	}
}

// edgeNames says what lies beyond each edge of a face, farther off on a side
// where numbers stand.
func (d *doc) edgeNames(f flatFace, numbersLeft, numbersRight, marked bool) {
	gap := Length(1)
	if marked {
		gap = 2.4 // for the line round a fault
	}
	off := func(numbers bool) Length {
		if numbers {
			return numberGap + 4
		}
		return gap
	}
	const size = render.SmallSize
	mid := f.at.Center()
	up, down := typeset.Ascent(size), typeset.Descent(size)
	text := func(s string, at geometry.Point, turned bool) {
		d.Text(render.Text{At: at, String: s, Size: size, Align: render.Middle, Turned: turned, Color: render.Black})
	}
	text(f.Beyond.Top, geometry.Pt(mid.X, f.at.Min.Y-gap-down+0.3), false)
	text(f.Beyond.Bottom, geometry.Pt(mid.X, f.at.Max.Y+gap+up), false)
	text(f.Beyond.Left, geometry.Pt(f.at.Min.X-off(numbersLeft)-down, mid.Y), true)
	text(f.Beyond.Right, geometry.Pt(f.at.Max.X+off(numbersRight)+up, mid.Y), true)
}

// faceMarks marks the faults of a face. What lies past the face is marked at
// its border.
func (d *doc) faceMarks(f flatFace) []mark {
	var out []mark
	var off taken
	for i, fault := range d.Proof.Faults {
		if fault.Face != f.Face {
			continue
		}
		at := moveBox(spot(fault, f.Extent), f.onPage)
		at = clamped(at, f.at)
		const least = 1.6 // mm across
		at.Min.X, at.Max.X = at.Min.X-max(0, least-at.Width())/2, at.Max.X+max(0, least-at.Width())/2
		at.Min.Y, at.Max.Y = at.Min.Y-max(0, least-at.Height())/2, at.Max.Y+max(0, least-at.Height())/2
		m := mark{number: fmt.Sprint(i + 1), area: geometry.Rectangle(at), tag: freeSpot(at.Center(), f.at, off)}
		off.Boxes = append(off.Boxes, m.box())
		out = append(out, m)
	}
	return out
}
