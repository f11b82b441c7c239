package polygon

import (
	"slices"

	"forel/geometry"
)

// hair is how near to an edge what runs along it lies on it, in mm: far less than a
// line is wide.
const hair Length = 2e-3

// Along returns the runs of a line that lie in a shape, its edges among it.
func (s Shape) Along(line []geometry.Point) [][]geometry.Point { return s.runs(line, true) }

// Past returns the runs of a line that lie outside a shape.
func (s Shape) Past(line []geometry.Point) [][]geometry.Point { return s.runs(line, false) }

func (s Shape) runs(line []geometry.Point, inside bool) [][]geometry.Point {
	var out [][]geometry.Point
	var run []geometry.Point
	for i := 1; i < len(line); i++ {
		p, q := line[i-1], line[i]
		stops := append(s.stops(p, q), 1)
		slices.Sort(stops)
		from, at := 0.0, p
		for _, to := range stops {
			if to-from < 1e-9 {
				continue
			}
			next := p.Add(q.Sub(p).Mul(to))
			if s.near(at.Add(next).Mul(0.5)) != inside {
				if len(run) > 0 {
					out, run = append(out, run), nil
				}
			} else {
				if len(run) == 0 {
					run = append(run, at)
				}
				if from > 0 && len(run) > 1 { // goes on the same way
					run = run[:len(run)-1]
				}
				run = append(run, next)
			}
			from, at = to, next
		}
	}
	if len(run) > 0 {
		out = append(out, run)
	}
	return out
}

// near tells whether a place lies in the shape or on its edge.
func (s Shape) near(p geometry.Point) bool {
	return slices.ContainsFunc(s, func(a Area) bool { return a.Holds(p) || a.Clear(p) < hair })
}

// stops returns where a line from p to q crosses edges of a shape or passes their
// ends, as parts of its length.
func (s Shape) stops(p, q geometry.Point) []float64 {
	d := q.Sub(p)
	long := p.Distance(q)
	if long == 0 {
		return nil
	}
	var out []float64
	take := func(t float64) {
		if t > 0 && t < 1 {
			out = append(out, t)
		}
	}
	for _, a := range s {
		a.Edges(func(e, f geometry.Point) {
			v, g := e.Sub(p), f.Sub(e)
			if off := d.Cross(v) / long; off.Abs() < hair {
				take(float64(v.Dot(d) / (long * long)))
			}
			if det := float64(d.Cross(g)); det != 0 {
				if u := float64(v.Cross(d)) / det; u >= 0 && u <= 1 {
					take(float64(v.Cross(g)) / det)
				}
			}
		})
	}
	return out
}

// Clip returns the part of a polygon where a linear function is not below zero (one
// step of Sutherland and Hodgman, "Reentrant polygon clipping", 1974). The order of its
// points is kept; of a polygon with inward corners parts may hang on each other by
// edges that run to and fro.
func Clip(points []geometry.Point, above func(geometry.Point) Length) []geometry.Point {
	var kept []geometry.Point
	for i, p := range points {
		q := points[(i+1)%len(points)]
		a, b := above(p), above(q)
		if a >= 0 {
			kept = append(kept, p)
		}
		if a > 0 && b < 0 || a < 0 && b > 0 {
			kept = append(kept, p.Add(q.Sub(p).Mul((a / (a - b)).MM())))
		}
	}
	return kept
}
