package proof

import (
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
)

// face is a face of the case with all that is told and drawn of it.
type face struct {
	foldup.FaceReport
	divider int // the number of the divider it is on, from the left; 0: it is on the case
	place   place
	shape   polygon.Shape  // its outline, in its own coordinates
	layers  []foldup.Layer // from the board up, cut off at the outline
	cells   []cell
	deepest int     // the most layers that lie on one spot
	covered float64 // the part that something lies on, in percent; 100 only where less than rounding is left
}

// study looks at every face of a report, those of the dividers last.
func study(r foldup.Report) []face {
	hole := holeOf(r.Carcass)
	var out []face
	for _, report := range r.Faces {
		out = append(out, face{FaceReport: report, shape: faceShape(r.Carcass, hole, report)})
	}
	for i, d := range r.Dividers {
		for _, report := range d.Faces {
			out = append(out, face{FaceReport: report, divider: i + 1, shape: polygon.Box(report.Extent)})
		}
	}
	for i := range out {
		f, report := &out[i], out[i].FaceReport
		f.place = placeOf(report)
		for _, l := range ordered(report) {
			if l.Shape = meet(l.Shape, f.shape); len(l.Shape) > 0 {
				f.layers = append(f.layers, l)
			}
		}
		f.cells = cellsOf(f.shape, f.layers)
		var under float64
		for _, c := range f.cells {
			f.deepest = max(f.deepest, len(c.on))
			if len(c.on) == 0 {
				under += c.shape.Size()
			}
		}
		if whole := f.shape.Size(); whole > 0 {
			f.covered = 100 * (1 - under/whole)
		}
	}
	return out
}

// each leaves out all dividers but the first: they are alike.
func each(faces []face) []face {
	return slices.DeleteFunc(slices.Clone(faces), func(f face) bool { return f.divider > 1 })
}

// under gives the look of a face where no covering lies, inside being that of
// the inside of the case.
func (f face) under(k looks, inside look) look {
	switch {
	case !f.Inside:
		return k.board
	case f.divider > 0 && inside.name != k.board.name:
		return k.lining // on both faces, before the divider goes in
	}
	return inside
}

// bare gives where nothing lies.
func (f face) bare() polygon.Shape {
	for _, c := range f.cells {
		if len(c.on) == 0 {
			return c.shape
		}
	}
	return nil
}

// pieces names what lies on the face, each piece once.
func (f face) pieces() []string {
	var out []string
	for _, l := range f.layers {
		if !slices.Contains(out, l.Piece) {
			out = append(out, l.Piece)
		}
	}
	return out
}

// faceOf gives the face with a name.
func faceOf(faces []face, name geometry.Face) (face, bool) {
	for _, f := range faces {
		if f.Face == name {
			return f, true
		}
	}
	return face{}, false
}
