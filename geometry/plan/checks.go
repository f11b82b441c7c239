package plan

import (
	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/stage"
)

// layers is how many layers of a material are measured together.
const layers = 4

// Thicker is how much thicker a material is taken to be to tell what that does.
const Thicker Length = 0.1

// LayersMeasured returns the check of a material's thickness under the caliper,
// several layers together. takes is what room is less by when one layer is Thicker: "of the
// height"; none where nothing is.
func LayersMeasured(material, key, room string, thickness, takes Length) Check {
	c := Check{
		Name: material + " thickness", When: "before anything is cut",
		See:   []stage.Say{stage.Words("four layers together measure %s, one %s", layers*thickness, thickness)},
		Fails: stage.Words("set " + key + " to a quarter of what four measure and print again"),
	}
	if takes > 1e-6 {
		c.Fails = stage.Words(c.Fails.Text+": %s more in one layer takes %s "+room, Thicker, takes)
	}
	return c
}

// TakenFrom returns what a gap loses when a link, the thickness of a layer, is Thicker.
func (c Chain) TakenFrom(gap, link int) Length {
	v := c.Drawn()
	before := c.Left(v)[gap]
	v[link] += Thicker
	return before - c.Left(v)[gap]
}

// Readable returns half a millimetre, or 1/32 in, which is near it, as it can be read off
// a ruler.
func Readable(u geometry.Unit) Length { return job.Round(u, 0.5, 1./32) }

// MeasureWorn returns the step of measuring a book with what it wears, which is made first,
// before the outer case is cut: outer names that. Pictures and checks are the caller's.
func MeasureWorn(c job.Common, outer string) Step {
	what := c.Whose(0)
	return Step{
		Title: "Measure " + what,
		Short: Say("Measure " + what + ", closed, and compare it with the worksheet."),
		Text: []stage.Say{
			Say("Close the " + c.Wears + " round the book and press it lightly. Measure height, width and thickness at three places each and compare the largest with the worksheet, which has what they come to by the sizes of the parts."),
			Say("If yours are larger by more than %s, cut nothing yet: make the "+outer+" by itself, with what you measured for its book.", Readable(c.Unit)),
		},
	}
}

// MeasureContent says what to do when the paper strips do not fit what a case is for.
func MeasureContent(c job.Common, outer string) stage.Say {
	if c.Wears != "" {
		return stage.Words("measure " + c.Whose(0) + " again, and make the " + outer + " by itself for what you find: nothing is cut yet")
	}
	return stage.Words("measure the book again and correct the job: nothing is cut yet")
}

// StripReaches returns what is seen of the strip round the spine.
func StripReaches(clearance Length) stage.Say {
	return stage.Words("the strip round the spine, folded at its marks, reaches %s past the fore-edge on both sides", clearance)
}
