package proof

import (
	"fmt"

	"forel/geometry"
)

// solidMarks marks the faults of the faces that are seen.
func (d *doc) solidMarks(sc sight, to func(geometry.Point) geometry.Point, zone geometry.Box) []mark {
	var out []mark
	var off taken
	for i, f := range d.Proof.Faults {
		for _, s := range sc.faces {
			if s.Face != f.Face {
				continue
			}
			at := clamped(spot(f, s.Extent), s.Extent)
			var pts []geometry.Point
			for _, q := range geometry.Rectangle(at).Flatten(1) {
				pts = append(pts, to(sc.flat(s.Frame.At(q))))
			}
			middle := to(sc.flat(s.Frame.At(at.Center())))
			if !s.whole.Moved(to).Holds(middle) {
				continue // behind a board
			}
			m := mark{number: fmt.Sprint(i + 1), area: geometry.Polygon(pts...), tag: freeSpot(middle, zone, off)}
			off.Boxes = append(off.Boxes, m.box())
			out = append(out, m)
		}
	}
	return out
}
