package pdf

import (
	"math"

	"forel/geometry"
)

// bend is how far a curve that stands for an arc may leave it.
const bend geometry.Length = 0.002

// curves gives the cubic Bézier curves that stand for an arc: of each the two
// control points and the end. They meet the arc at their ends, lie outside it
// elsewhere and leave it by no more than bend.
func curves(s geometry.Segment) [][3]geometry.Point {
	center, r, start, sweep := s.Arc()
	n := max(1, int(math.Ceil(math.Abs(sweep)/(math.Pi/2)-1e-9)))
	for leaves(r, sweep/float64(n)) > bend {
		n++
	}
	turn := sweep / float64(n)
	// The control points lie on the tangents at the ends, so far that the middle
	// of the curve is on the arc.
	reach := r * geometry.Length(4./3*math.Tan(turn/4))
	at := func(a float64) (on, tangent geometry.Point) {
		sin, cos := math.Sincos(a)
		x, y := geometry.Length(cos), geometry.Length(sin)
		return center.Add(geometry.Pt(r*x, r*y)), geometry.Pt(-reach*y, reach*x)
	}
	out := make([][3]geometry.Point, n)
	for i := range out {
		a, t := at(start + turn*float64(i))
		b, u := at(start + turn*float64(i+1))
		if i == 0 {
			a = s.From
		}
		if i == n-1 {
			b = s.To
		}
		out[i] = [3]geometry.Point{a.Add(t), b.Sub(u), b}
	}
	return out
}

// leaves gives how far such a curve is from an arc of a radius where it is
// furthest: M. Goldapp, "Approximation of circular arcs by cubic polynomials"
// (1991), for the control points above; the formula is from memory, and the
// tests measure the curves.
func leaves(r geometry.Length, turn float64) geometry.Length {
	sin, cos := math.Sincos(math.Abs(turn) / 4)
	return r * geometry.Length(2./27*math.Pow(sin, 6)/(cos*cos))
}
