package proof

import (
	"slices"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
)

// face is a face of the case with all that is told and drawn of it.
type face struct {
	foldup.FaceReport
	place   place
	shape   geom.Geometry  // its outline, in its own coordinates
	layers  []foldup.Layer // from the board up, cut off at the outline
	cells   []cell
	deepest int     // the most layers that lie on one spot
	covered float64 // the part that something lies on, in percent; 100 only where less than rounding is left
}

// study looks at every face of a proof.
func study(p plan.Proof) []face {
	out := make([]face, len(p.Faces))
	for i, report := range p.Faces {
		f := face{FaceReport: report, shape: report.Outline(), place: placeOf(report.Surface, p.View.Up)}
		for _, l := range ordered(report) {
			if l.Shape = solid(meet(l.Shape, f.shape)); !l.Shape.IsEmpty() {
				f.layers = append(f.layers, l)
			}
		}
		f.cells = cellsOf(f.shape, f.layers)
		var under float64
		for _, c := range f.cells {
			f.deepest = max(f.deepest, len(c.on))
			if len(c.on) == 0 {
				under += c.shape.Area()
			}
		}
		if whole := f.shape.Area(); whole > 0 {
			f.covered = 100 * (1 - under/whole)
		}
		out[i] = f
	}
	return out
}

// bare gives where nothing lies.
func (f face) bare() geom.Geometry {
	for _, c := range f.cells {
		if len(c.on) == 0 {
			return c.shape
		}
	}
	return geom.Geometry{}
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
