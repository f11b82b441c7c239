package foldup

import "forel/geometry"

// Meeting is where a face inside meets a wall, square to it: the wall stands at
// one end of the face, of its X (along 0) or its Y (1), and the face at one end
// of the wall.
type Meeting struct {
	face, wall Surface
	along      int
	far        bool // at the far end
	wallAlong  int
	wallFar    bool
}

// Square tells whether two faces inside stand square to each other.
func Square(a, b Surface) bool { return a.Inside && b.Inside && a.Normal.Dot(b.Normal).Abs() < 1e-9 }

// MeetingOf returns where a face meets a wall that is square to it.
func MeetingOf(face, wall Surface) Meeting {
	end := func(s, other Surface) (int, bool) { // the other is where its normal comes from
		if d := s.Frame.U.Dot(other.Normal); d.Abs() > 0.5 {
			return 0, d < 0
		}
		return 1, s.Frame.V.Dot(other.Normal) < 0
	}
	m := Meeting{face: face, wall: wall}
	m.along, m.far = end(face, wall)
	m.wallAlong, m.wallFar = end(wall, face)
	return m
}

// ends returns the two ends of a box along its X (along 0) or its Y (1).
func ends(b *geometry.Box, along int) (low, high *Length) {
	if along == 0 {
		return &b.Min.X, &b.Max.X
	}
	return &b.Min.Y, &b.Max.Y
}

// ToWall returns how far a box of the face ends from the wall.
func (m Meeting) ToWall(b geometry.Box) Length {
	low, high := ends(&b, m.along)
	least, most := ends(&m.face.Extent, m.along)
	if m.far {
		return *most - *high
	}
	return *low - *least
}

// Strip returns the part of the wall no farther from the face than wide.
func (m Meeting) Strip(wide Length) geometry.Box {
	return EndOf(m.wall.Extent, m.wallAlong, m.wallFar, wide)
}

// End returns the part of a box of the face no farther from the wall's end of it
// than wide.
func (m Meeting) End(b geometry.Box, wide Length) geometry.Box { return EndOf(b, m.along, m.far, wide) }

// Reach returns from where to where a box of the wall lies along the line where
// they meet, in the face's coordinates.
func (m Meeting) Reach(wall geometry.Box) (from, to Length) {
	on := func(p geometry.Point) Length {
		q := m.face.Frame.Flat(m.wall.Frame.At(p))
		if m.along == 0 {
			return q.Y
		}
		return q.X
	}
	a, b := on(wall.Min), on(wall.Max)
	return min(a, b), max(a, b)
}

// Between returns the part of a box of the face between two places of the line
// where they meet.
func (m Meeting) Between(b geometry.Box, from, to Length) geometry.Box {
	low, high := ends(&b, 1-m.along)
	*low, *high = max(*low, from), min(*high, to)
	return b
}

// EndOf returns the part of a box no farther than wide from the end of its X
// (along 0) or its Y (1), the far one or the near one.
func EndOf(b geometry.Box, along int, far bool, wide Length) geometry.Box {
	low, high := ends(&b, along)
	if far {
		*low = *high - wide
	} else {
		*high = *low + wide
	}
	return b
}
