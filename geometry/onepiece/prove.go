package onepiece

import (
	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/geometry/walled"
)

// Report is the proof of a blank, with what the case measures that it folds to. Its faces
// are the walls from outside: every part where it lies on the outer face of a wall, the
// number of its layer from the inside, from 0, as its order.
type Report struct {
	plan.Proof
	Cavity  plan.Size
	Outside plan.Size
}

// Prove folds a blank up and looks at the case that comes of it. It knows the
// blank by its outline, slits, folds and seat alone, not by the rules that made it;
// the regions give parts their names. Each part is stiff, as thick as the card,
// and turns about its folds in the plane that Card.Bend gives. Beside what foldup finds
// it finds
//
//   - a cavity or an outside that is not what is wanted;
//   - layers of a wall with a space between, where paste does not hold.
//
// With no thickness there are no layers, and only folds and gaps are looked at.
func Prove(p geometry.Piece, j Job) Report {
	v, faults := j.body().Cover([]geometry.Piece{p}, func(geometry.Piece) Length { return j.Card.Thickness })
	v.Closed = j.Flaps.Relief // a gap no broader is one
	faces, wrong := v.Look(nil)
	r := Report{Proof: plan.Proof{Faces: faces, Faults: append(faults, wrong...)}}
	r.measure(j)
	r.show(v, j)
	return r
}

// The ends of the left spine score, on the layer of the card that keeps its length.
const (
	scoreAtTail geometry.Corner = "left spine score, tail"
	scoreAtHead geometry.Corner = "left spine score, head"
)

// body returns the walls of the case as it is to be, from outside. Each is to be closed
// as far as the cavity reaches.
func (j Job) body() foldup.Body {
	in, out, c, b := j.Cavity(), j.Outside(), j.Card.Thickness, j.Card.bend()
	body := foldup.Body{
		Surfaces: walled.Outside(space.Vec{}, space.Vec{X: out.Thickness, Y: out.Height, Z: out.Width}),
		Corners: map[geometry.Corner]space.Vec{
			scoreAtTail: {X: c - b, Y: 2*c - b, Z: c - b},
			scoreAtHead: {X: c - b, Y: 2*c + in.Height + b, Z: c - b},
		},
		Stiff: true, Bend: b,
	}
	low := space.Vec{X: c, Y: 2 * c, Z: c}
	high := low.Add(space.Vec{X: in.Thickness, Y: in.Height, Z: in.Width})
	for i, inside := range walled.Inside(low, high) {
		s := &body.Surfaces[i]
		s.Cover = polygon.Box(inside.Extent.Grow(-foldup.Sliver))
		s.Ground = foldup.Ground{Name: "gap between parts", Stuff: stage.Board}
	}
	return body
}

// measure takes the inside and the outside of the folded case, and compares them with
// what is wanted.
func (r *Report) measure(j Job) {
	r.Cavity, r.Outside = j.Outside(), j.Outside()
	for _, f := range r.Faces {
		if len(f.Layers) == 0 {
			continue // it is bare
		}
		less := func(size *plan.Size, deep Length) {
			switch f.Face {
			case walled.HeadOutside, walled.TailOutside:
				size.Height -= deep
			case walled.SpineOutside:
				size.Width -= deep
			default: // the shallower side ends the case at the mouth
				size.Thickness -= deep
				size.Width = min(size.Width, f.Layers[0].Shape.Bounds().Max.X)
			}
		}
		last := f.Layers[len(f.Layers)-1]
		less(&r.Cavity, f.Layers[0].Depth)
		less(&r.Outside, last.Depth-last.Thick)
		for n, l := range f.Layers[1:] {
			if gap := f.Layers[n].Depth - l.Depth - l.Thick; gap > foldup.Sliver {
				r.Fault(foldup.Misfit, "the %s lies %.3f mm off the layer under it", l.Name(), gap.MM())
			}
		}
	}
	r.CompareSize("room inside", r.Cavity, j.Cavity())
	r.CompareSize("outside", r.Outside, j.Outside())
}
