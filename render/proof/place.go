package proof

import (
	"forel/geometry"
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
	across, along := f.Open.Dot(f.Frame.U), f.Open.Dot(f.Frame.V)
	span := func(b geometry.Box) (least, most Length) { // toward the open side
		p, q := b.Min.X*across+b.Min.Y*along, b.Max.X*across+b.Max.Y*along
		return min(p, q), max(p, q)
	}
	_, most := span(f.Extent)
	least, _ := span(l.Shape.Bounds())
	return most - least, f.Open != space.Vec{}
}
