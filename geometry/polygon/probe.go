package polygon

import "math"

// mostProbes is how many edges of each shape a result is tried at.
const mostProbes = 12

// place is a point of the plane.
type place struct{ x, y float64 }

// edge is a side of a polygon.
type edge struct{ a, b place }

// ring is the edges of one polygon, holes among them.
type ring []edge

// probes are the edges of shapes and where a result is tried: beside them.
type probes struct {
	shapes [][]ring
	tried  []edge
	around float64 // the length of all edges
}

// ringsOf gives the polygons of a shape.
func ringsOf(s Shape) []ring {
	var out []ring
	for _, p := range Parts(s) {
		r := make(ring, 0, 8)
		for _, line := range p.DumpRings() {
			seq := line.Coordinates()
			for i := range seq.Length() - 1 {
				a, b := seq.GetXY(i), seq.GetXY(i+1)
				r = append(r, edge{place{a.X, a.Y}, place{b.X, b.Y}})
			}
		}
		out = append(out, r)
	}
	return out
}

func probesOf(shapes []Shape) probes {
	var p probes
	for _, s := range shapes {
		rings, count := ringsOf(s), 0
		for _, r := range rings {
			count += len(r)
		}
		every, n := 1+count/mostProbes, 0
		for _, r := range rings {
			for _, e := range r {
				if n%every == 0 {
					p.tried = append(p.tried, e)
				}
				p.around += e.long()
				n++
			}
		}
		p.shapes = append(p.shapes, rings)
	}
	return p
}

// signed tells whether a shape may have -0 among its coordinates: a polygon that
// has, and lines.
func (p probes) signed(shape int) bool {
	for _, r := range p.shapes[shape] {
		for _, e := range r {
			if e.a.x == 0 && math.Signbit(e.a.x) || e.a.y == 0 && math.Signbit(e.a.y) {
				return true
			}
		}
	}
	return len(p.shapes[shape]) == 0
}

// agree tells whether a result holds the places beside the edges that it should,
// and no others. Places nearer to an edge than two steps of the grid are left
// out: there it may be either way.
func (p probes) agree(g Shape, keeps func(in []bool) bool, step float64) bool {
	result := ringsOf(g)
	in := make([]bool, len(p.shapes))
	for _, e := range p.tried {
		dx, dy := e.b.x-e.a.x, e.b.y-e.a.y
		long := e.long()
		if long == 0 {
			continue
		}
		for _, off := range []float64{4 * step / long, -4 * step / long} {
			// Not the middle, where other edges often end.
			q := place{e.a.x + 0.4871*dx - off*dy, e.a.y + 0.4871*dy + off*dx}
			if p.beside(q, 2*step) {
				continue
			}
			for i, s := range p.shapes {
				in[i] = hold(s, q)
			}
			if hold(result, q) != keeps(in) {
				return false
			}
		}
	}
	return true
}

// beside tells whether a place is nearer to an edge of any shape than a distance.
func (p probes) beside(q place, d float64) bool {
	for _, rings := range p.shapes {
		for _, r := range rings {
			for _, e := range r {
				if e.near(q, d) {
					return true
				}
			}
		}
	}
	return false
}

// hold tells whether a place is in any of several polygons.
func hold(rings []ring, q place) bool {
	for _, r := range rings {
		in := false
		for _, e := range r {
			if e.crossed(q) {
				in = !in
			}
		}
		if in {
			return true
		}
	}
	return false
}

func (e edge) long() float64 { return math.Hypot(e.b.x-e.a.x, e.b.y-e.a.y) }

// crossed tells whether a ray from a place to the right goes through an edge.
func (e edge) crossed(q place) bool {
	return (e.a.y > q.y) != (e.b.y > q.y) && q.x < e.a.x+(e.b.x-e.a.x)*(q.y-e.a.y)/(e.b.y-e.a.y)
}

// near tells whether a place is nearer to an edge than a distance.
func (e edge) near(q place, d float64) bool {
	if q.x < min(e.a.x, e.b.x)-d || q.x > max(e.a.x, e.b.x)+d || q.y < min(e.a.y, e.b.y)-d || q.y > max(e.a.y, e.b.y)+d {
		return false
	}
	dx, dy := e.b.x-e.a.x, e.b.y-e.a.y
	t := max(0, min(1, ((q.x-e.a.x)*dx+(q.y-e.a.y)*dy)/max(dx*dx+dy*dy, 1e-300)))
	return math.Hypot(q.x-e.a.x-t*dx, q.y-e.a.y-t*dy) < d
}
