package plan

import "forel/geometry/job"

// What careful work brings an uncertainty down to (common practice, no source).
const (
	careful     Length = 0.15 // a reading between two squares, or with a caliper
	carefulStep Length = 0.1
	testCut     Length = 0.15 // a strip cut for a try, measured, and the fence set again
)

// MeasureMaterial returns the mend of measuring a material that is off by low to
// high, or known by its name only, which the setting with the key known says; none
// where it is measured.
func MeasureMaterial(name, known string, low, high Length, byName bool) []Mend {
	set := job.Change{Key: "uncertainty.board", Value: job.Measured}
	switch {
	case byName:
		set = job.Change{Key: known, Word: job.KnownMeasured}
	case high-low <= 2*job.Measured+1e-9:
		return nil
	}
	return []Mend{{Say("measure the " + name + " with a caliper, several layers together"), set.Key, true, []job.Change{set}}}
}

// MeasureAgain returns the mend of measuring again what is named, the book; none where
// that is done with care.
func MeasureAgain(what string, u job.Uncertainty) []Mend {
	if u.Measuring <= careful && u.ReadingStep <= carefulStep {
		return nil
	}
	const key = "uncertainty.measuring"
	m, step := min(u.Measuring, careful), min(u.ReadingStep, carefulStep)
	return []Mend{{Say("measure "+what+" again, between two squares or with a caliper, and write down every %s", step), key, false,
		[]job.Change{{Key: key, Value: m}, {Key: "uncertainty.reading_step", Value: step}}}}
}

// CutForATry returns the mend of trying a size before the pieces are cut; none
// where that is done. What says what is done, how true at a %s.
func CutForATry(what string, u job.Uncertainty) []Mend {
	if u.Cutting <= testCut {
		return nil
	}
	return []Mend{{Say(what, testCut), "", false, []job.Change{{Key: "uncertainty.cutting", Value: testCut}}}}
}
