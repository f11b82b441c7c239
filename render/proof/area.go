package proof

import (
	"math"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/polygon"
)

// area is one polygon on the page: its outline, then its holes. No ring
// repeats its first point.
type area struct{ rings [][]geometry.Point }

// areasOf gives the polygons of a shape.
func areasOf(g geom.Geometry) []area {
	var out []area
	for _, p := range polygon.Parts(g) {
		var a area
		for _, r := range p.DumpRings() {
			pts := polygon.Points(r.Coordinates())
			a.rings = append(a.rings, pts[:len(pts)-1])
		}
		out = append(out, a)
	}
	return out
}

// bounds gives the box around the area.
func (a area) bounds() geometry.Box { return geometry.Polygon(a.rings[0]...).Bounds() }

// path gives the area as one closed path to fill. Holes are reached over
// bridges of no width, and run the other way round than the outline, so that
// they stay open by either rule of filling.
func (a area) path() geometry.Path {
	way := func(ring []geometry.Point) bool { return geometry.Polygon(ring...).SignedArea() > 0 }
	outer := way(a.rings[0])
	pts := append([]geometry.Point{}, a.rings[0]...)
	for _, hole := range a.rings[1:] {
		pts = append(pts, a.rings[0][0])
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

// size gives the area in mm², breadth about how broad it is where it is long.
func (a area) size() float64 {
	var sum float64
	for i, ring := range a.rings {
		n := math.Abs(geometry.Polygon(ring...).SignedArea())
		if i > 0 {
			n = -n
		}
		sum += n
	}
	return sum
}

func (a area) breadth() Length {
	var around Length
	a.edges(func(p, q geometry.Point) { around += p.Distance(q) })
	return Length(2*a.size()) / max(around, 1e-9)
}

// edges calls f with every edge.
func (a area) edges(f func(p, q geometry.Point)) {
	for _, ring := range a.rings {
		for i, p := range ring {
			f(p, ring[(i+1)%len(ring)])
		}
	}
}

// holds tells whether a point lies in the area.
func (a area) holds(p geometry.Point) bool {
	in := false
	a.edges(func(q, r geometry.Point) {
		if (q.Y > p.Y) != (r.Y > p.Y) && p.X < q.X+(p.Y-q.Y)/(r.Y-q.Y)*(r.X-q.X) {
			in = !in
		}
	})
	return in
}

// clear gives how far a point is from the nearest edge.
func (a area) clear(p geometry.Point) Length {
	best := Length(math.Inf(1))
	a.edges(func(q, r geometry.Point) { best = min(best, toLine(p, q, r)) })
	return best
}

// toLine gives how far a point is from the line between two others.
func toLine(p, a, b geometry.Point) Length {
	d, v := b.Sub(a), p.Sub(a)
	size := d.X*d.X + d.Y*d.Y
	if size == 0 {
		return p.Distance(a)
	}
	t := max(0, min(1, (v.X*d.X+v.Y*d.Y)/size))
	return p.Distance(a.Add(d.Mul(float64(t))))
}

// searched is how finely an area is searched for a place, across and along.
const searched = 40

// taken is what words keep off.
type taken struct {
	boxes []geometry.Box
	lines [][2]geometry.Point
}

// meets tells whether a box lies on what is taken.
func (t taken) meets(b geometry.Box) bool {
	for _, o := range t.boxes {
		if b.Overlaps(o) {
			return true
		}
	}
	for _, l := range t.lines {
		if crossesBox(l[0], l[1], b) {
			return true
		}
	}
	return false
}

// room finds where in the area a box of the given size can stand clear of its
// edges and of what is taken: as far from the edges as it can, and of several
// such places near the middle.
func (a area) room(width, height Length, off taken) (geometry.Point, bool) {
	b := a.bounds()
	middle := b.Center()
	diagonal := geometry.Pt(width, height).Distance(geometry.Point{})
	var best geometry.Point
	bestClear, bestFar, found := Length(0), Length(0), false
	for i := range searched {
		for k := range searched {
			p := geometry.Pt(
				b.Min.X+b.Width()*(Length(i)+0.5)/searched,
				b.Min.Y+b.Height()*(Length(k)+0.5)/searched)
			near := a.clear(p)
			clear, far := min(near, 6).Round(0.1), p.Distance(middle)
			if found && (clear < bestClear || clear == bestClear && far >= bestFar) || near < min(width, height)/2 || !a.holds(p) {
				continue
			}
			box := geometry.Bx(p.X-width/2, p.Y-height/2, p.X+width/2, p.Y+height/2)
			// An edge farther than the box's corners can't cross it.
			if 2*near < diagonal && a.crosses(box) || off.meets(box) {
				continue
			}
			best, bestClear, bestFar, found = p, clear, far, true
		}
	}
	return best, found
}

// inner gives a point well inside the area.
func (a area) inner() geometry.Point {
	if p, ok := a.room(0, 0, taken{}); ok {
		return p
	}
	// Too thin for the search: the middle of the longest edge.
	var mid geometry.Point
	long := Length(-1)
	a.edges(func(p, q geometry.Point) {
		if l := p.Distance(q); l > long {
			long, mid = l, p.Add(q).Mul(0.5)
		}
	})
	return mid
}

// crosses tells whether an edge passes through a box.
func (a area) crosses(b geometry.Box) bool {
	hit := false
	a.edges(func(p, q geometry.Point) { hit = hit || crossesBox(p, q, b) })
	return hit
}

// crossesBox tells whether the line between two points has a part in a box.
func crossesBox(p, q geometry.Point, b geometry.Box) bool {
	if max(p.X, q.X) < b.Min.X || min(p.X, q.X) > b.Max.X || max(p.Y, q.Y) < b.Min.Y || min(p.Y, q.Y) > b.Max.Y {
		return false
	}
	return len(geometry.Line(p, q).Clip(b, 1)) > 0
}
