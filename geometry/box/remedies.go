package box

import "forel/geometry/plan"

// remedies returns what can be done where the book does not fit the small tray, or the
// trays do not fit each other. Work and limits are common practice, no source.
func (j Job) remedies() []plan.Remedy {
	pad := func(name, how string, minutes int, dimension string, per float64, most Length) plan.Remedy {
		return plan.Remedy{Name: name, How: plan.Say(how), Early: true, Late: true, Minutes: minutes, Gives: map[string]float64{dimension: per}, Most: most, PlusMinus: 0.1, Keeps: "both trays"}
	}
	nests := []string{nestHeight, nestDepth, nestThickness, plan.Thickness}
	out := []plan.Remedy{
		pad("pad head and tail wall of the small tray", "paste card of %s on the inside of head and tail wall of the small tray each, and cloth or paper over it", 50, plan.Height, -2, 2),
		pad("pad the fore-edge wall of the small tray", "paste card of %s on the inside of the fore-edge wall of the small tray, and cloth or paper over it", 35, plan.Depth, -1, 3),
		pad("a pad under the book", "lay a pad of %s into the small tray, covered like the lining", 30, plan.Thickness, -1, 5),
		pad("card inside head and tail wall of the large tray", "paste card of %s inside head and tail wall of the large tray each", 50, nestHeight, -2, 1.5),
		pad("card inside the fore-edge wall of the large tray", "paste card of %s inside the fore-edge wall of the large tray", 35, nestDepth, -1, 3),
	}
	if most := j.lidLining() - 0.1; most > 0.02 {
		out = append(out, plan.Remedy{Name: "a thinner lining in the large tray", Early: true, Minutes: 30, Gives: map[string]float64{nestThickness: 1, plan.Thickness: 1}, Most: most, PlusMinus: 0.04,
			Thinner: map[string]Length{"box.lid_lining": j.lidLining()}, Again: []string{largeLining}, Keeps: "both trays", How: plan.Say("line the large tray with paper that is %s thinner")})
	}
	return append(out,
		plan.Remedy{Name: "a new large tray", Early: true, Minutes: 240, Frees: nests, Again: []string{largeName}, Keeps: "the small tray",
			How: plan.Say("make the large tray anew, for the small one as it measures")},
		plan.StartAgain("the box", 720, []string{smallName, largeName, "case"}, append(nests, plan.Height, plan.Depth)...),
	)
}
