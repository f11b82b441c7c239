package slipcase

import (
	"slices"

	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/tolerance"
)

// Unbuilt takes back what was measured of the carcass.
func (j *Job) Unbuilt() { j.AsBuilt = job.AsBuilt{} }

// outside is the place of a measure of the bare carcass.
const outside = "outside"

// measured is a measure of the case and where it is taken.
type measured struct {
	plan.MadeSize
	spot
}

// measures returns what can be measured: the bare carcass outside, and the mouth of the
// finished case, where one space is between its sides.
func (j Job) measures() []measured {
	const bare, finished = "when the carcass is dry, before it is covered", "when the covering is dry"
	of := func(dimension string) (at spot) { // the tightest place of the first compartment
		for _, s := range j.spots() {
			if s.dimension == dimension && s.room == 0 {
				at = s
			}
		}
		return at
	}
	out := []measured{
		{plan.MadeSize{Key: plan.OutsideHeight, Name: "the bare carcass from head to tail, outside", When: bare, Set: "as_built.height"}, spot{plan.Height, outside, 0}},
		{plan.MadeSize{Key: plan.OutsideWidth, Name: "the bare carcass from spine to mouth, outside", When: bare, Set: "as_built.width"}, spot{plan.Depth, outside, 0}},
		{plan.MadeSize{Key: plan.OutsideThickness, Name: "the bare carcass from side to side, outside", When: bare, Set: "as_built.thickness"}, spot{plan.Thickness, outside, 0}},
		{plan.MadeSize{Key: plan.MouthHeight, Name: "the mouth from head to tail, inside", When: finished}, of(plan.Height)},
	}
	if j.Dividers() == 0 {
		out = append(out, measured{plan.MadeSize{Key: plan.MouthThickness, Name: "the mouth from side to side, inside", When: finished}, of(plan.Thickness)})
	}
	return out
}

// off returns what an error does to a measure, where it does effect to the room at a
// spot. The largest of several pieces is measured outside, the smallest decides inside;
// the book counts in neither.
func (m measured) off(key string, effect func(spot) tolerance.Effect) tolerance.Effect {
	made := key == "uncertainty.cutting" || key == "uncertainty.repeat"
	switch {
	case key == "uncertainty.measuring" || key == "fit.swell":
		return tolerance.Effect{}
	case m.place != outside:
		return effect(m.spot)
	case made:
		return effect(spot{m.dimension, InBody, 0}).Times(-1)
	}
	return tolerance.Effect{}
}

// size returns a measure of a case as it comes out, whose room at the spots is left.
func (m measured) size(r Job, spots []spot, left, walls []Length, built bool) Length {
	out, in := r.Outside(), r.Contents()
	switch at := slices.Index(spots, m.spot); {
	case m.place == outside && m.dimension == plan.Height:
		return out.Height
	case m.place == outside && m.dimension == plan.Depth:
		return out.Width
	case m.place == outside:
		thick := 2 * r.Edge()
		if built {
			thick = 0
		}
		for _, w := range walls {
			thick += w
		}
		return thick
	case m.dimension == plan.Height:
		return in.Height + left[at]
	default:
		return in.Thickness + left[at]
	}
}
