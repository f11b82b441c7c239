package bench

import "forel/geometry"

// segment is a straight line on the page.
type segment struct{ from, to geometry.Point }

func (s segment) path() geometry.Path { return geometry.Line(s.from, s.to) }

func (s segment) bounds() geometry.Box { return geometry.Around(s.from, s.to) }

// crosses tells whether a line runs through a box or touches it.
func crosses(l segment, b geometry.Box) bool {
	lb := l.bounds()
	if lb.Max.X < b.Min.X || lb.Min.X > b.Max.X || lb.Max.Y < b.Min.Y || lb.Min.Y > b.Max.Y {
		return false
	}
	if l.from.X == l.to.X || l.from.Y == l.to.Y {
		return true
	}
	// A slanting line misses the box if all its corners are on one side.
	var left, right bool
	for _, c := range []geometry.Point{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}} {
		if s := side(l.from, l.to, c); s >= 0 {
			left = true
		} else {
			right = true
		}
	}
	return left && right
}

// side is over 0 where r lies on one side of the line from p to q, under 0 on
// the other.
func side(p, q, r geometry.Point) geometry.Length {
	return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X)
}

// meets tells whether two lines cross, their ends apart.
func meets(l segment, from, to geometry.Point) bool {
	return side(l.from, l.to, from)*side(l.from, l.to, to) < -1e-9 && side(from, to, l.from)*side(from, to, l.to) < -1e-9
}
