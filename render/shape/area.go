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
	off = off.Near(b, 0.01, 0.01)
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
			if 2*near < diagonal && Crosses(a, box) || !off.Free(box, 0, 0) {
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
			if b.Crossed(q, r) {
				return true
			}
			q = r
		}
	}
	return false
}
