package proof

import (
	"forel/geometry/foldup"
	"forel/geometry/space"
)

// place is how a face is seen by someone who looks straight at it.
type place struct {
	flipX, flipY bool // seen from in front, X runs left or Y runs down
}

// placeOf returns the place of a face. It is seen with the top of the case or,
// where it lies level, the end that is farther from the viewer's feet at the top:
// of its axes X or Y is turned round where they would show it as in a mirror. A
// face that lies level keeps its X from left to right.
func placeOf(s foldup.Surface, up space.Vec) place {
	if s.Frame.Normal().Dot(s.Normal) >= 0 {
		return place{}
	}
	level := s.Normal.Dot(up).Abs() > 0.5
	return place{flipX: !level, flipY: level}
}

// reach returns how far a layer on a face reaches in from the open side of the
// case, and whether the face goes there.
func (f face) reach(l foldup.Patch) (Length, bool) {
	b := l.Shape.Bounds()
	switch f.Open {
	case space.Vec{}:
		return 0, false
	case f.Frame.U:
		return f.Extent.Max.X - b.Min.X, true
	case f.Frame.V:
		return f.Extent.Max.Y - b.Min.Y, true
	case f.Frame.U.Mul(-1):
		return b.Max.X - f.Extent.Min.X, true
	}
	return b.Max.Y - f.Extent.Min.Y, true
}
