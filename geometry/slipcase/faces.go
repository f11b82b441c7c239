package slipcase

import (
	"forel/geometry"
	"forel/geometry/walled"
)

// The faces of a case: outside, the edges of board round the mouth, inside.
const (
	LeftOutside                = walled.LeftOutside
	RightOutside               = walled.RightOutside
	SpineOutside               = walled.SpineOutside
	HeadOutside                = walled.HeadOutside
	TailOutside                = walled.TailOutside
	LeftMouth    geometry.Face = "mouth edge of the left side"
	RightMouth   geometry.Face = "mouth edge of the right side"
	HeadMouth    geometry.Face = "mouth edge of the head wall"
	TailMouth    geometry.Face = "mouth edge of the tail wall"
	LeftInside                 = walled.LeftInside
	RightInside                = walled.RightInside
	SpineInside                = walled.SpineInside
	HeadInside                 = walled.HeadInside
	TailInside                 = walled.TailInside
)

// The faces of a divider.
const (
	DividerLeft  geometry.Face = "left face of a divider"
	DividerRight geometry.Face = "right face of a divider"
	DividerMouth geometry.Face = "mouth edge of a divider"
)

// end is the head or the tail of a case, with the sides at the left and at the right of what
// covers it, drawn back up with the mouth at the top.
type end struct {
	name            string
	outside, inside geometry.Face
	left, right     string
}

// ends lists both.
var ends = []end{{"head", HeadOutside, HeadInside, "left", "right"}, {"tail", TailOutside, TailInside, "right", "left"}}

// at returns the corner of an end at a side, at the mouth or at the spine.
func (e end) at(side string, mouth bool) place {
	return place{right: side == "right", head: e.name == "head", mouth: mouth}
}

// place is a corner by the walls that meet there. Its zero value is at the left,
// the tail and the spine.
type place struct{ right, head, mouth bool }

// corner names an outer corner of the carcass, or of a divider.
func (p place) corner() geometry.Corner {
	word := func(is bool, yes, no string) string {
		if is {
			return yes
		}
		return no
	}
	return geometry.Corner(word(p.right, "right", "left") + ", " + word(p.head, "head", "tail") + ", " + word(p.mouth, "mouth", "spine"))
}

// within names the corner between the boards that is nearest to it.
func (p place) within() geometry.Corner { return p.corner() + ", between the boards" }

// places lists all corners.
func places() []place {
	var out []place
	for n := range 8 {
		out = append(out, place{n&1 != 0, n&2 != 0, n&4 != 0})
	}
	return out
}
