package polygon

// quickMeet gives what two shapes share where that needs no library: one is a box
// and the other lies in it, or both are boxes.
func quickMeet(a, b Shape) (g Shape, ok bool) {
	p, q := Bounds(a), Bounds(b)
	isP, isQ := isBox(a), isBox(b)
	switch {
	case isP && p.Contains(q):
		return b, true
	case isQ && q.Contains(p):
		return a, true
	case isP && isQ:
		return Box(p.Intersect(q)), true
	}
	return Shape{}, false
}

// isBox tells whether a shape is a rectangle that is level.
func isBox(s Shape) bool {
	p, ok := s.AsPolygon()
	if !ok || p.NumInteriorRings() > 0 {
		return false
	}
	ring := p.ExteriorRing().Coordinates()
	if ring.Length() != 5 {
		return false
	}
	level := ring.GetXY(0).Y == ring.GetXY(1).Y
	for i := range 4 {
		a, b := ring.GetXY(i), ring.GetXY(i+1)
		if level && a.Y != b.Y || !level && a.X != b.X {
			return false
		}
		level = !level
	}
	return true
}
