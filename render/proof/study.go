package proof

import (
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/polygon"
)

// face is a face of the case with all that is told and drawn of it.
type face struct {
	foldup.FaceReport
	number  int // in the proof, since dividers have faces of the same names
	place   place
	shape   polygon.Shape  // its outline, in its own coordinates
	layers  []foldup.Patch // from the board up, cut off at the outline
	cells   []cell
	deepest int     // the most layers that lie on one spot
	covered float64 // the part that something lies on, in percent; 100 only where less than rounding is left
}

// study looks at every face of a proof.
func study(p plan.Proof) []face {
	out := make([]face, len(p.Faces))
	for i, report := range p.Faces {
		f := face{FaceReport: report, number: i, shape: report.Outline(), place: placeOf(report.Surface, p.View.Up)}
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
		out[i] = f
	}
	return out
}

// bare returns where nothing lies.
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

// faceOf returns the face with a name.
func faceOf(faces []face, name geometry.Face) (face, bool) {
	for _, f := range faces {
		if f.Face == name {
			return f, true
		}
	}
	return face{}, false
}
