package chemise

import (
	"forel/geometry"
	"forel/geometry/plan"
)

// remedies returns what can be done where the book does not fit. Work and limits are
// common practice, no source.
func (j Job) remedies() []plan.Remedy {
	return []plan.Remedy{
		{Name: "line one cover with paper", Early: true, Late: true, Minutes: 30, Gives: map[string]float64{plan.Thickness: -1}, Most: 0.5, PlusMinus: 0.04, Keeps: "all of the chemise",
			How: plan.Say("paste paper of %s on the inside of one cover, clear of the joints, and dry it under a weight")},
		{Name: "line both covers with paper", Early: true, Late: true, Minutes: 45, Gives: map[string]float64{plan.Thickness: -2}, Most: 0.5, PlusMinus: 0.04, Keeps: "all of the chemise",
			How: plan.Say("paste paper of %s on the inside of each cover, clear of the joints, and dry it under a weight")},
		{Name: "a new spine", Early: true, Minutes: 60, Frees: []string{plan.Thickness}, Again: []string{spineName, coveringName, liningName}, Keeps: "the covers",
			How: plan.Say("cut the spine again, and covering and lining for it")},
		plan.StartAgain("the chemise", 240, []string{string(geometry.ThinBoard), string(geometry.ChemiseCloth), string(geometry.ChemiseLining)}, plan.Height, plan.Depth, plan.Thickness),
	}
}
