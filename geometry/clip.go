package geometry

// Clipped is a stretch of a path, and how far along the path it starts, so
// that dashes go on where another stretch of the same path is drawn elsewhere.
type Clipped struct {
	Path  Path
	Start Length
}

// Clip returns the stretches of a path that lie in a box, borders included. A
// path wholly inside comes back as it is; otherwise arcs are flattened to the
// tolerance and each stretch is open.
func (p Path) Clip(b Box, tolerance Length) []Clipped {
	if b.Contains(p.Bounds()) {
		return []Clipped{{Path: p}}
	}
	points := p.Flatten(tolerance)
	if p.Closed && len(points) > 0 {
		points = append(points, points[0])
	}
	var out []Clipped
	var run []Point
	var along, start Length
	end := func() {
		if len(run) > 1 {
			out = append(out, Clipped{Line(run...), start})
		}
		run = nil
	}
	for i := 1; i < len(points); i++ {
		from, to := points[i-1], points[i]
		length := from.Distance(to)
		t0, t1, ok := clipLine(from, to, b)
		if !ok {
			end()
			along += length
			continue
		}
		if run == nil || t0 > 0 {
			end()
			start = along + length*Length(t0)
			run = []Point{from.Add(to.Sub(from).Mul(t0))}
		}
		run = append(run, from.Add(to.Sub(from).Mul(t1)))
		if t1 < 1 {
			end()
		}
		along += length
	}
	end()
	return out
}

// Crossed tells whether the line between two points has a part in the box, its borders
// left out.
func (b Box) Crossed(from, to Point) bool {
	if max(from.X, to.X) <= b.Min.X || min(from.X, to.X) >= b.Max.X || max(from.Y, to.Y) <= b.Min.Y || min(from.Y, to.Y) >= b.Max.Y {
		return false
	}
	_, _, ok := clipLine(from, to, b)
	return ok
}

// clipLine returns the part of a line inside a box as fractions of its length
// (Liang and Barsky, 1984: "A new concept and method for line clipping").
func clipLine(from, to Point, b Box) (t0, t1 float64, ok bool) {
	t1 = 1
	d := to.Sub(from)
	for _, side := range [4][2]Length{
		{-d.X, from.X - b.Min.X}, {d.X, b.Max.X - from.X},
		{-d.Y, from.Y - b.Min.Y}, {d.Y, b.Max.Y - from.Y},
	} {
		p, q := side[0], side[1]
		switch {
		case p == 0 && q < 0:
			return 0, 0, false
		case p < 0:
			t0 = max(t0, float64(q/p))
		case p > 0:
			t1 = min(t1, float64(q/p))
		}
	}
	return t0, t1, t0 < t1
}
