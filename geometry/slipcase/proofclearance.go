package slipcase

import (
	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
)

// Left is what is left between the book and all that is inside the case.
type Left struct {
	BodyHeight, BodyWidth, BodyThickness Length // where nothing is turned in; of each compartment
	MouthHeight, MouthThickness          Length // at the mouth; in the tightest compartment
	MouthCorners                         Length // in height, where tabs lie over each other in the corners
}

// clear works out the clearance from the boards and what lies inside.
func (r *Report) clear(j Job) {
	c := r.Carcass
	on := map[geometry.Face]foldup.FaceReport{}
	for _, f := range r.Faces {
		on[f.Face] = f
	}
	l, in := j.liningAfter(), j.Contents()
	k := &r.Clearance
	k.BodyHeight = c.Height - 2*c.Lined - 2*l - in.Height
	k.BodyWidth = c.Depth - c.Lined - l - in.Width
	k.BodyThickness = (c.Width - 2*c.Lined - 2*l - in.Thickness) / Length(j.compartments())
	k.MouthHeight = k.BodyHeight - on[HeadInside].Stack - on[TailInside].Stack
	k.MouthCorners = k.BodyHeight - on[HeadInside].Corners - on[TailInside].Corners
	// From left to right what lies on both sides of each compartment.
	between := []Length{on[LeftInside].Stack}
	for range r.Dividers {
		between = append(between, on[DividerLeft].Stack, on[DividerRight].Stack)
	}
	between = append(between, on[RightInside].Stack)
	k.MouthThickness = k.BodyThickness
	for i := 0; i+1 < len(between); i += 2 {
		k.MouthThickness = min(k.MouthThickness, k.BodyThickness-between[i]-between[i+1])
	}
	tight := func(what string, l Length, least bool) {
		if l < -1e-9 || !least && l <= 0 {
			r.fault(foldup.Tight, "", "", "%s: %.2f mm is left", what, l.MM())
		}
	}
	tight("depth", k.BodyWidth, true)
	tight("height at the mouth", k.MouthHeight, j.Covering == SidesOnly)
	tight("height in the corners of the mouth", k.MouthCorners, j.Covering == SidesOnly)
	tight("thickness at the mouth", k.MouthThickness, false)
	r.Clearances = k.facts()
}

// facts lists the clearances for those who read the proof.
func (k Left) facts() []plan.Fact {
	return []plan.Fact{
		{Key: "body", Name: "in the body", Parts: []plan.Part{{Key: "height", Length: k.BodyHeight}, {Key: "depth", Length: k.BodyWidth}, {Key: "thickness", Length: k.BodyThickness}}},
		{Key: "mouth", Name: "at the mouth", Parts: []plan.Part{{Key: "height", Length: k.MouthHeight}, {Key: "thickness", Length: k.MouthThickness}}},
		{Key: "mouth_corners", Name: "in its corners", Parts: []plan.Part{{Key: "height", Length: k.MouthCorners}}},
	}
}
