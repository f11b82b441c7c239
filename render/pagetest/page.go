package pagetest

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/render"
	"forel/render/record"
	"forel/render/typeset"
)

// slack is what boxes may share by the rounding of floats.
const slack geometry.Length = 1e-6

// Apart finds words that lie on other words.
func Apart(p *record.Surface) (faults []string) {
	var boxes []geometry.Box
	for _, a := range p.Texts {
		boxes = append(boxes, typeset.Box(a.Text).Grow(-slack))
	}
	for i, a := range p.Texts {
		for j, b := range p.Texts[:i] {
			if boxes[i].Overlaps(boxes[j]) {
				faults = append(faults, fmt.Sprintf("%.60q at %.1f lies on %.60q at %.1f", a.String, a.At, b.String, b.At))
			}
		}
	}
	return faults
}

// Within finds what reaches out of an area.
func Within(p *record.Surface, area geometry.Box) (faults []string) {
	area = area.Grow(1e-4) // pictures are fitted by bounds that are worked out on a grid
	for _, a := range p.Texts {
		if box := typeset.Box(a.Text); !area.Contains(box) {
			faults = append(faults, fmt.Sprintf("%.60q at %.1f leaves %.1f", a.String, box, area))
		}
	}
	for _, lines := range [][]record.Stroked{p.Strokes, p.Fills} {
		for _, s := range lines {
			if box := s.Path.Bounds(); !area.Contains(box) {
				faults = append(faults, fmt.Sprintf("a line in %s at %.1f leaves %.1f", s.Layer, box, area))
			}
		}
	}
	return faults
}

// OffLines finds words that a line runs through. A line counts that no fill
// behind the words has painted over.
func OffLines(p *record.Surface) (faults []string) {
	fills, strokes := bounded(p.Fills), bounded(p.Strokes)
	for _, a := range p.Texts {
		box := inked(a.Text).Grow(-slack)
		painted := -1 // everything up to here is
		for _, f := range fills {
			if f.covers(box) {
				painted = f.Nth
			}
		}
		for _, s := range strokes {
			if s.Nth > painted && s.runsInto(box) {
				faults = append(faults, fmt.Sprintf("a line in %s at %.1f runs through %.60q at %.1f", s.Layer, s.bounds, a.String, box))
			}
		}
	}
	return faults
}

// bound is a path with the box around it.
type bound struct {
	record.Stroked
	bounds geometry.Box
}

func bounded(all []record.Stroked) (out []bound) {
	for _, s := range all {
		out = append(out, bound{s, s.Path.Bounds()})
	}
	return out
}

// inked is where the letters of a text are: off the room below its
// line where none goes there.
func inked(t render.Text) geometry.Box {
	box := typeset.Box(t)
	switch {
	case strings.Trim(t.String, "0123456789. ") != "":
	case t.Turned:
		box.Max.X = t.At.X
	default:
		box.Max.Y = t.At.Y
	}
	return box
}

// covers tells whether a filled path holds all of a box: no edge enters the box,
// and its middle is within.
func (p bound) covers(box geometry.Box) bool {
	return p.bounds.Contains(box) && !p.runsInto(box) && box.Center().In(p.Path.Flatten(0.05))
}

// runsInto tells whether a path enters a box.
func (p bound) runsInto(box geometry.Box) bool {
	b := p.bounds
	if b.Max.X <= box.Min.X || b.Min.X >= box.Max.X || b.Max.Y <= box.Min.Y || b.Min.Y >= box.Max.Y {
		return false
	}
	points := p.Path.Flatten(0.05)
	if p.Path.Closed {
		points = append(points, points[0])
	}
	for i := 1; i < len(points); i++ {
		if Enters(points[i-1], points[i], box) {
			return true
		}
	}
	return false
}

// Enters tells whether a straight line has a point inside a box. It halves the
// line until a part is clear of the box or its middle is in it.
func Enters(a, b geometry.Point, box geometry.Box) bool {
	if max(a.X, b.X) <= box.Min.X || min(a.X, b.X) >= box.Max.X || max(a.Y, b.Y) <= box.Min.Y || min(a.Y, b.Y) >= box.Max.Y {
		return false
	}
	m := a.Add(b).Mul(0.5)
	if m.X > box.Min.X && m.X < box.Max.X && m.Y > box.Min.Y && m.Y < box.Max.Y {
		return true
	}
	if a.Distance(b) < 1e-5 {
		return false
	}
	return Enters(a, m, box) || Enters(m, b, box)
}

// OfTheScale finds words whose size is not one of the type scale's.
func OfTheScale(p *record.Surface) (faults []string) {
	for _, a := range p.Texts {
		if !slices.Contains([]render.Points{20, 12, 9, 7.5, 6.5}, a.Size) {
			faults = append(faults, fmt.Sprintf("%.60q has a size of %v pt", a.String, a.Size))
		}
	}
	return faults
}

// Faults finds all that is wrong with a page whose words and lines belong in an
// area.
func Faults(p *record.Surface, area geometry.Box) []string {
	return slices.Concat(Apart(p), Within(p, area), OffLines(p), OfTheScale(p))
}
