package proof

import (
	"math"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/space"
	"forel/render/data"
)

type mm = data.MM

// lengths are by the key of a fact and the name of its part.
type lengths map[string]map[string]mm

// JSON returns the report for other programs, exact to a thousandth of a
// millimetre. Outlines are in their face's own coordinates and not cut off at
// its extent; the last point of one joins the first.
func JSON(p plan.Plan) ([]byte, error) {
	r := p.Proof
	folded := any(nil)
	if len(r.Folded) > 0 {
		folded = factsJSON(r.Folded)
	}
	return data.JSON("proof", data.Object{
		{"title", p.Title},
		{"kind", p.Kind},
		{"sound", r.Sound()},
		{"faults", data.List(r.Faults, faultJSON)},
		{"faces", data.List(study(r), faceJSON)},
		{"boards", data.List(r.Solids, solidJSON)},
		{"clearance_mm", factsJSON(r.Clearances)},
		{"folded_mm", folded},
	})
}

func faultJSON(f foldup.Fault) data.Object {
	at := any(nil)
	if f.At != (geometry.Box{}) {
		at = boxJSON(f.At)
	}
	return data.Object{{"kind", f.Kind}, {"piece", data.Given(f.Piece)}, {"face", data.Given(f.Face)}, {"at_mm", at}, {"what", f.What}}
}

func faceJSON(f face) data.Object {
	covered := any(nil) // of a face outside
	if !f.Inside {
		covered = math.Floor(f.covered*1000) / 1000 // less than 100 where anything is bare
	}
	layers := []data.Object{} // from the board up
	for _, l := range ordered(f.FaceReport) {
		for _, p := range l.Shape {
			var outline []data.Point
			holes := any(nil)
			if len(p.Rings) > 0 {
				outline = data.Line(p.Rings[0])
			}
			if len(p.Rings) > 1 {
				holes = data.List(p.Rings[1:], data.Line)
			}
			layers = append(layers, data.Object{{"piece", l.Piece}, {"order", l.Order}, {"tucked", l.Tucked}, {"outline_mm", outline}, {"holes_mm", holes}})
		}
	}
	return data.Object{
		{"name", f.Face},
		{"board", f.Board},
		{"inside", f.Inside},
		{"ground", f.Ground.Name}, // what is seen where no layer lies
		{"extent_mm", boxJSON(f.Extent)},
		// Where the face lies in the case: the origin of its coordinates, and the unit steps
		// that its X and Y go.
		{"frame_mm", data.Object{{"origin", vecJSON(f.Frame.O)}, {"x", vecJSON(f.Frame.U)}, {"y", vecJSON(f.Frame.V)}}},
		{"covered_percent", covered},
		{"most_layers", f.deepest},
		{"pile_mm", mm(f.Stack)},           // the thickest, tucks left out
		{"pile_corners_mm", mm(f.Corners)}, // the thickest, tucks counted
		{"layers", layers},
	}
}

func factsJSON(facts []plan.Fact) lengths {
	out := lengths{}
	for _, f := range facts {
		out[f.Key] = map[string]mm{}
		for _, p := range f.Parts {
			out[f.Key][p.Key] = mm(p.Length)
		}
	}
	return out
}

// solidJSON reports a board as it stands: the corners of the box around it.
func solidJSON(s plan.Solid) data.Object {
	var least, most [3]mm
	for i, v := range s.Corners() {
		for k, l := range vecJSON(v) {
			if i == 0 {
				least[k], most[k] = l, l
			}
			least[k], most[k] = min(least[k], l), max(most[k], l)
		}
	}
	return data.Object{{"name", s.Name}, {"min_mm", least}, {"max_mm", most}}
}

func vecJSON(v space.Vec) [3]mm { return [3]mm{mm(v.X), mm(v.Y), mm(v.Z)} }

func boxJSON(b geometry.Box) data.Object {
	return data.Object{{"min", data.At(b.Min)}, {"max", data.At(b.Max)}}
}
