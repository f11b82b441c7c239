package fit

import (
	"math"

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
// can stick.
func Least(c plan.Chain, as CameOut) (sets []job.Change) {
	gaps, decide := cameOut(c, as), 0
	for _, g := range gaps {
		if g.Decides {
			decide++
		}
	}
	each := 1 - math.Pow(1-Once, 1/float64(decide))
	for _, d := range c.Dimensions {
		if d.Key == "" {
			continue
		}
		more, some := Length(math.Inf(-1)), false
		for _, g := range gaps {
			if g.Dimension == d.Name && g.Decides {
				more, some = max(more, g.Tight-g.Distribution.Under(each)), true
			}
		}
		if some {
			sets = append(sets, job.Change{Key: d.Key, Value: max(0, onGrid(d.Clearance+more, true, c.Unit))})
		}
	}
	return sets
}
