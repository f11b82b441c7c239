package proof

import (
	"cmp"
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/shape"
	"forel/render/typeset"
)

// part is an area of a face on which the same layers lie.
type part struct {
	area area
	on   []int // indices of the layers, from the board up
}

// besideFace is the numbers on one side of a face.
type besideFace struct {
	column
	labels []label
}

// What is too small on the page to be seen has no number.
const (
	leastPart    = 0.6        // mm²
	leastBreadth = Length(.3) // mm
	numberGap    = Length(1.6)
	lineGap      = Length(0.05) // mm between the lines of one label, so that they don't touch
)

// areaLabels words the areas of a face: with the name of what lies uppermost
// where most is seen of it, with the number of layers elsewhere. The number of
// an overlap that has no room in its area stands beside the face.
func (d *doc) areaLabels(f flatFace, keep []geometry.Box) (inside []render.Text, beside [2]besideFace) {
	parts := partsOf(f)
	out := make([]bool, len(parts)) // the number stands beside
	for {
		beside = d.numbersBeside(f, parts, out)
		off := taken{Boxes: slices.Clone(keep)}
		for _, side := range beside {
			for _, l := range side.labels {
				off.Lines = append(off.Lines, geometry.Segment{From: l.Anchor, To: l.Port(side.Edge)})
			}
		}
		inside = nil
		again := false
		named := map[string]bool{}
		for i, p := range parts {
			if out[i] {
				continue
			}
			texts := d.wording(f, p, named, off)
			for _, t := range texts {
				off.Boxes = append(off.Boxes, typeset.Box(t).Grow(0.3))
			}
			inside = append(inside, texts...)
			if texts == nil && len(p.on) > 1 {
				out[i], again = true, true
			}
		}
		if !again {
			return inside, beside
		}
	}
}

// partsOf returns the areas of a face as they lie on the page, the largest first.
func partsOf(f flatFace) []part {
	var out []part
	for _, c := range f.cells {
		for _, a := range c.shape.Moved(f.onPage) {
			if a.Size() > leastPart && a.Breadth() > leastBreadth {
				out = append(out, part{a, c.on})
			}
		}
	}
	slices.SortStableFunc(out, func(p, q part) int { return cmp.Compare(q.area.Size(), p.area.Size()) })
	return out
}

// numbersBeside arranges the numbers of the areas chosen on both sides.
func (d *doc) numbersBeside(f flatFace, parts []part, chosen []bool) [2]besideFace {
	sides := [2]besideFace{
		{column: column{Edge: f.at.Min.X - numberGap, Leftward: true, Top: f.at.Min.Y, Bottom: f.at.Max.Y, Gap: 0}},
		{column: column{Edge: f.at.Max.X + numberGap, Leftward: false, Top: f.at.Min.Y, Bottom: f.at.Max.Y, Gap: 0}},
	}
	for i, p := range parts {
		if !chosen[i] {
			continue
		}
		l := label{Name: fmt.Sprint(len(p.on)), Size: render.SmallSize, Anchor: shape.Inner(p.area)}
		side := &sides[0]
		if l.Anchor.X > f.at.Center().X {
			side = &sides[1]
		}
		side.labels = append(side.labels, l)
	}
	for i := range sides {
		sides[i].labels = sides[i].Arrange(sides[i].labels)
	}
	return sides
}

// wording finds words that have room in an area, the fullest first, none if
// there are none.
func (d *doc) wording(f flatFace, p part, named map[string]bool, off taken) []render.Text {
	words := func(lines []string, style render.Text) []render.Text {
		return shape.Words(p.area, lines, style, lineGap, 0.8, off)
	}
	n := len(p.on)
	top := f.Ground.Name
	if n > 0 {
		top = f.layers[p.on[n-1]].Piece
	}
	if !named[top] {
		lines := []string{top, wording.Count(n, "layer")}
		if n == 0 {
			lines = lines[:1]
		}
		for _, turned := range []bool{false, true} {
			if t := words(lines, render.Text{Size: noteSize, Turned: turned}); t != nil {
				named[top] = true
				return t
			}
		}
	}
	if n == 0 {
		return nil
	}
	for _, size := range []render.Points{render.BodySize, render.SmallSize} {
		if t := words([]string{fmt.Sprint(n)}, render.Text{Size: size, Bold: true}); t != nil {
			return t
		}
	}
	return nil
}
