package plan

import "forel/geometry/stage"

// layers is how many layers of a material are measured together.
const layers = 4

// Thicker is how much thicker a material is taken to be to tell what that does.
const Thicker Length = 0.1

// LayersMeasured returns the check of a material's thickness under the caliper,
// several layers together. takes is what the height loses when one layer is Thicker.
func LayersMeasured(material, key string, thickness, takes Length) Check {
	return Check{
		Name: material + " thickness", When: "before anything is cut",
		See:   []stage.Say{stage.Words("four layers together measure %s, one %s", layers*thickness, thickness)},
		Fails: stage.Words("set "+key+" to a quarter of what four measure and print again: %s more in one layer takes %s of the height", Thicker, takes),
	}
}

// StripReaches returns what is seen of the strip round the spine.
func StripReaches(clearance Length) stage.Say {
	return stage.Words("the strip round the spine, folded at its marks, reaches %s past the fore-edge on both sides", clearance)
}
