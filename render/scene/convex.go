package scene

import (
	"math"

	"forel/geometry"
)

// convex is a polygon without inward corners, counterclockwise; nil for one that
// has any. Most faces are convex, and what they share is worked out sooner.
type convex []geometry.Point

// convexOf gives the convex polygon through points, nil where they make none.
func convexOf(points []geometry.Point) convex {
	pts := append([]geometry.Point(nil), points...)
	if signed(pts) < 0 {
		for i := range len(pts) / 2 {
			pts[i], pts[len(pts)-1-i] = pts[len(pts)-1-i], pts[i]
		}
	}
	for i, p := range pts {
		q, r := pts[(i+1)%len(pts)], pts[(i+2)%len(pts)]
		if left(p, q, r) < -1e-6 {
			return nil
		}
	}
	return pts
}

// left gives how far r is left of the line from p to q, zero where that is a
// point.
func left(p, q, r geometry.Point) geometry.Length {
	d := q.Sub(p)
	long := size(d)
	if long == 0 {
		return 0
	}
	return (d.X*(r.Y-p.Y) - d.Y*(r.X-p.X)) / long
}

// size gives how long a way is: faster than math.Hypot, which minds lengths that
// no scene has.
func size(d geometry.Point) geometry.Length {
	return geometry.Length(math.Sqrt(float64(d.X*d.X + d.Y*d.Y)))
}

// apart tells whether one of the edges of either parts the two: they share no
// area broader than a speck.
func (c convex) apart(o convex) bool { return c.parts(o) || o.parts(c) }

func (c convex) parts(o convex) bool {
	for i, p := range c {
		q := c[(i+1)%len(c)]
		beyond := !p.Near(q)
		for _, r := range o {
			if left(p, q, r) > thin {
				beyond = false
				break
			}
		}
		if beyond {
			return true
		}
	}
	return false
}

// holds tells whether points lie in the polygon or on its edge.
func (c convex) holds(points []geometry.Point) bool {
	for i, p := range c {
		q := c[(i+1)%len(c)]
		for _, r := range points {
			if left(p, q, r) < -1e-9 {
				return false
			}
		}
	}
	return true
}

// clipped gives the part of a polygon where a linear function is above zero.
func clipped(points []geometry.Point, above func(geometry.Point) float64) []geometry.Point {
	var kept []geometry.Point
	for i, p := range points {
		q := points[(i+1)%len(points)]
		dp, dq := above(p), above(q)
		if dp > 0 {
			kept = append(kept, p)
		}
		if (dp > 0) != (dq > 0) {
			kept = append(kept, p.Add(q.Sub(p).Mul(dp/(dp-dq))))
		}
	}
	return kept
}
