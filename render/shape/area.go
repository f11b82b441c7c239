// Package shape has what pictures are made of: polygons with holes, their
// algebra, hatching, and the search for room in one.
package shape

import (
	"math"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/polygon"
)

// Area is one polygon on the page: its outline, then its holes. No ring
// repeats its first point.
type Area struct{ Rings [][]geometry.Point }

// AreasOf gives the polygons of a shape.
func AreasOf(g geom.Geometry) []Area {
	var out []Area
	for _, p := range polygon.Parts(g) {
		var a Area
		for _, r := range p.DumpRings() {
			pts := polygon.Points(r.Coordinates())
			a.Rings = append(a.Rings, pts[:len(pts)-1])
		}
		out = append(out, a)
	}
	return out
}

// Bounds gives the box around the area.
func (a Area) Bounds() geometry.Box { return geometry.Polygon(a.Rings[0]...).Bounds() }

// Path gives the area as one closed path to fill. Holes are reached over
// bridges of no width, and run the other way round than the outline, so that
// they stay open by either rule of filling.
func (a Area) Path() geometry.Path {
	way := func(ring []geometry.Point) bool { return geometry.Polygon(ring...).SignedArea() > 0 }
	outer := way(a.Rings[0])
	pts := append([]geometry.Point{}, a.Rings[0]...)
	for _, hole := range a.Rings[1:] {
		pts = append(pts, a.Rings[0][0])
		n := len(hole)
		for i := range n + 1 {
			if way(hole) == outer {
				pts = append(pts, hole[(2*n-i)%n])
			} else {
				pts = append(pts, hole[i%n])
			}
		}
	}
	return geometry.Polygon(pts...)
}

// Size gives the area in mm².
func (a Area) Size() float64 {
	var sum float64
	for i, ring := range a.Rings {
		n := math.Abs(geometry.Polygon(ring...).SignedArea())
		if i > 0 {
			n = -n
		}
		sum += n
	}
	return sum
}

// Breadth gives about how broad the area is where it is long.
func (a Area) Breadth() Length {
	var around Length
	a.Edges(func(p, q geometry.Point) { around += p.Distance(q) })
	return Length(2*a.Size()) / max(around, 1e-9)
}

// Edges calls f with every edge.
func (a Area) Edges(f func(p, q geometry.Point)) {
	for _, ring := range a.Rings {
		for i, p := range ring {
			f(p, ring[(i+1)%len(ring)])
		}
	}
}

// Holds tells whether a point lies in the area.
func (a Area) Holds(p geometry.Point) bool {
	in := false
	a.Edges(func(q, r geometry.Point) {
		if (q.Y > p.Y) != (r.Y > p.Y) && p.X < q.X+(p.Y-q.Y)/(r.Y-q.Y)*(r.X-q.X) {
			in = !in
		}
	})
	return in
}

// Clear gives how far a point is from the nearest edge.
func (a Area) Clear(p geometry.Point) Length {
	best := Length(math.Inf(1))
	for _, ring := range a.Rings {
		q := ring[len(ring)-1]
		for _, r := range ring {
			best = min(best, squared(p, q, r))
			q = r
		}
	}
	return Length(math.Sqrt(float64(best)))
}

// squared gives the square of how far a point is from the line between two
// others.
func squared(p, a, b geometry.Point) Length {
	d, v := b.Sub(a), p.Sub(a)
	if size := d.X*d.X + d.Y*d.Y; size > 0 {
		t := max(0, min(1, (v.X*d.X+v.Y*d.Y)/size))
		v = geometry.Pt(v.X-d.X*t, v.Y-d.Y*t)
	}
	return v.X*v.X + v.Y*v.Y
}

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

// in gives what is taken in a box.
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
// Edges and of what is taken: as far from the edges as it can, and of several
// such places near the middle.
func (a Area) Room(width, height Length, off Taken) (geometry.Point, bool) {
	return a.room(width, height, off, 0)
}

// room is Room; a place nearer the middle by even or less counts as no nearer.
func (a Area) room(width, height Length, off Taken, even Length) (geometry.Point, bool) {
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
			if 2*near < diagonal && a.Crosses(box) || off.Meets(box) {
				continue
			}
			best, bestClear, bestFar, found = p, clear, far, true
		}
	}
	return best, found
}

// Inner gives a point well inside the area; of two as good, by a hundredth of a
// millimetre, always the same, whatever the rounding.
func (a Area) Inner() geometry.Point {
	if p, ok := a.room(0, 0, Taken{}, 0.01); ok {
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
func (a Area) Crosses(b geometry.Box) bool {
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
