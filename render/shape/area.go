// Package shape has what pictures are made of: hatching, arrows, and the search for room in
// a polygon.
package shape

import (
	"forel/geometry"
	"forel/geometry/polygon"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Sliver is how broad a part must be, in mm, to count as more than rounding.
const Sliver Length = 1e-3

// Area is one polygon on the page.
type Area = polygon.Area

// searched is how finely an area is searched for a place, across and along.
const searched = 40

// mostClear is how far from an edge a place need be at most.
const mostClear Length = 6

// Taken is what words keep off.
type Taken struct {
	Boxes []geometry.Box
	Lines [][2]geometry.Point
}

// Meets tells whether a box lies on what is taken.
func (t Taken) Meets(b geometry.Box) bool {
	for _, o := range t.Boxes {
		if b.Overlaps(o) {
			return true
		}
	}
	for _, l := range t.Lines {
		if crossesBox(l[0], l[1], b) {
			return true
		}
	}
	return false
}

// in returns what is taken in a box.
func (t Taken) in(b geometry.Box) Taken {
	var out Taken
	for _, o := range t.Boxes {
		if b.Overlaps(o) {
			out.Boxes = append(out.Boxes, o)
		}
	}
	for _, l := range t.Lines {
		if crossesBox(l[0], l[1], b) {
			out.Lines = append(out.Lines, l)
		}
	}
	return out
}

// Room finds where in the area a box of the given size can stand clear of its
// edges and of what is taken: as far from the edges as it can, and of several
// such places near the middle.
func Room(a Area, width, height Length, off Taken) (geometry.Point, bool) {
	return room(a, width, height, off, 0)
}

// room is Room; a place nearer the middle by even or less counts as no nearer.
func room(a Area, width, height Length, off Taken, even Length) (geometry.Point, bool) {
	b := a.Bounds()
	if width > b.Width() || height > b.Height() {
		return geometry.Point{}, false
	}
	off = off.in(b.Grow(0.01))
	middle := b.Center()
	diagonal := geometry.Pt(width, height).Distance(geometry.Point{})
	var best geometry.Point
	bestClear, bestFar, found := Length(0), Length(0), false
	step := max(b.Height()/searched, 1e-9)
	for i := range searched {
		x := b.Min.X + b.Width()*(Length(i)+0.5)/searched
		for k := 0; k < searched; k++ {
			p := geometry.Pt(x, b.Min.Y+b.Height()*(Length(k)+0.5)/searched)
			far := p.Distance(middle)
			need := min(width, height) / 2
			if found {
				need = max(need, bestClear-0.06)
				if bestClear >= mostClear && far >= bestFar-even {
					continue
				}
			}
			near := a.Clear(p)
			if near < need {
				// From place to place it changes by no more than their distance.
				k += int((need - near) / step * 0.999)
				continue
			}
			clear := min(near, mostClear).Round(0.1)
			if found && (clear < bestClear || clear == bestClear && far >= bestFar-even) || !a.Holds(p) {
				continue
			}
			box := geometry.Bx(p.X-width/2, p.Y-height/2, p.X+width/2, p.Y+height/2)
			// An edge farther than the box's corners can't cross it.
			if 2*near < diagonal && Crosses(a, box) || off.Meets(box) {
				continue
			}
			best, bestClear, bestFar, found = p, clear, far, true
		}
	}
	return best, found
}

// Inner returns a point well inside the area; of two as good, by a hundredth of a
// millimetre, always the same, whatever the rounding.
func Inner(a Area) geometry.Point {
	if p, ok := room(a, 0, 0, Taken{}, 0.01); ok {
		return p
	}
	// Too thin for the search: the middle of the longest edge.
	var mid geometry.Point
	long := Length(-1)
	a.Edges(func(p, q geometry.Point) {
		if l := p.Distance(q); l > long {
			long, mid = l, p.Add(q).Mul(0.5)
		}
	})
	return mid
}

// Crosses tells whether an edge passes through a box.
func Crosses(a Area, b geometry.Box) bool {
	for _, ring := range a.Rings {
		q := ring[len(ring)-1]
		for _, r := range ring {
			if crossesBox(q, r, b) {
				return true
			}
			q = r
		}
	}
	return false
}

// crossesBox tells whether the line between two points has a part in a box.
func crossesBox(p, q geometry.Point, b geometry.Box) bool {
	if max(p.X, q.X) < b.Min.X || min(p.X, q.X) > b.Max.X || max(p.Y, q.Y) < b.Min.Y || min(p.Y, q.Y) > b.Max.Y {
		return false
	}
	return b.Crossed(p, q)
}
