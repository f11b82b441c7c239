package foldup

import (
	"fmt"

	"forel/geometry"
)

// clear works out the clearance from the boards and what lies inside.
func (r *Report) clear(known Conditions) {
	c := r.Carcass
	on := map[geometry.Face]FaceReport{}
	for _, f := range r.Faces {
		on[f.Face] = f
	}
	l := known.Lining
	k := &r.Clearance
	k.BodyHeight = c.Height - 2*c.Lined - 2*l - known.Height
	k.BodyWidth = c.Depth - c.Lined - l - known.Width
	k.BodyThickness = (c.Width - 2*c.Lined - 2*l - known.Thickness) / Length(known.Compartments)
	k.MouthHeight = k.BodyHeight - on[geometry.HeadInside].Stack - on[geometry.TailInside].Stack
	k.MouthCorners = k.BodyHeight - on[geometry.HeadInside].Corners - on[geometry.TailInside].Corners
	// From left to right what lies on both sides of each compartment.
	between := []Length{on[geometry.LeftInside].Stack}
	for _, d := range r.Dividers {
		between = append(between, d.Faces[0].Stack, d.Faces[1].Stack)
	}
	between = append(between, on[geometry.RightInside].Stack)
	k.MouthThickness = k.BodyThickness
	for i := 0; i+1 < len(between); i += 2 {
		k.MouthThickness = min(k.MouthThickness, k.BodyThickness-between[i]-between[i+1])
	}
	tight := func(what string, l Length, least bool) {
		if l < -1e-9 || !least && l <= 0 {
			r.Faults = append(r.Faults, Fault{Kind: Tight, What: fmt.Sprintf("%s: %.2f mm is left", what, l.MM())})
		}
	}
	tight("depth", k.BodyWidth, true)
	tight("height at the mouth", k.MouthHeight, known.SidesOnly)
	tight("height in the corners of the mouth", k.MouthCorners, known.SidesOnly)
	tight("thickness at the mouth", k.MouthThickness, false)
}
