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
	left, right := on[geometry.LeftInside].Stack, on[geometry.RightInside].Stack
	switch known.Compartments {
	case 1:
		k.MouthThickness = k.BodyThickness - left - right
	case 2:
		k.MouthThickness = k.BodyThickness - max(left, right) - known.Strip
	default:
		k.MouthThickness = k.BodyThickness - max(left, right, known.Strip) - known.Strip
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
