package fit

import (
	"math"
	"slices"

	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/tolerance"
)

// CameOut says how far cases came out otherwise than a chain reckons: of a gap, the
// distribution of its room for the one that the chain gives.
type CameOut func(g plan.Gap, reckoned tolerance.Distribution) tolerance.Distribution

// Chances returns the chances of a case as a whole, with what is known of how cases came
// out; nil where nothing is.
func Chances(c plan.Chain, as CameOut) Chance { return settled(cameOut(c, as)) }

func cameOut(c plan.Chain, as CameOut) []Gap {
	gaps, _ := gapsOf(c)
	for i, g := range gaps {
		if as != nil {
			gaps[i].Distribution = as(g.Gap, g.Distribution)
			gaps[i].Chance = gaps[i].chance()
		}
	}
	return gaps
}

// Least returns the smallest clearances with which a case is too tight no more than Once,
// each as small as a maker can set, the chance shared alike by all places where a book
// can stick. Where a clearance takes room in another dimension, that one has more.
func Least(c plan.Chain, as CameOut) (sets []job.Change) {
	const rounds, hair = 5, Length(1e-3)
	for _, d := range c.Dimensions {
		if d.Key != "" {
			sets = append(sets, job.Change{Key: d.Key, Value: d.Clearance})
		}
	}
	for round := range rounds {
		gaps, decide := cameOut(c.With(sets), as), 0
		for _, g := range gaps {
			if g.Decides {
				decide++
			}
		}
		each := 1 - math.Pow(1-Once, 1/float64(decide))
		lacking := false
		for _, d := range c.Dimensions {
			i := slices.IndexFunc(sets, func(s job.Change) bool { return d.Key != "" && s.Key == d.Key })
			if i < 0 {
				continue
			}
			more, some := Length(math.Inf(-1)), false
			for _, g := range gaps {
				if g.Dimension == d.Name && g.Decides {
					more, some = max(more, g.Tight-g.Distribution.Under(each)), true
				}
			}
			switch {
			case !some && round == 0:
				sets = slices.Delete(sets, i, i+1)
			case some && (round == 0 || more > hair):
				sets[i].Value, lacking = max(0, onGrid(sets[i].Value+more, true, c.Unit)), true
			}
		}
		if !lacking {
			break
		}
	}
	return sets
}
