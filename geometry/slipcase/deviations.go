package slipcase

import (
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/tolerance"
)

// deviations returns what can be off of the book and by the hand, and what it
// does to the room at each spot and to each measure.
func (j Job) deviations(spots []spot) []plan.Deviation {
	u := j.Uncertainty
	off := func(name, key string, plusMinus Length, effect func(spot) tolerance.Effect) plan.Deviation {
		d := plan.Deviation{Name: name, Key: key, PlusMinus: plusMinus}
		for _, s := range spots {
			d.Effects = append(d.Effects, effect(s))
		}
		for _, m := range j.measures() {
			d.Effects = append(d.Effects, m.off(key, effect))
		}
		return d
	}
	measuring, placing := "measuring the book", "placing the walls"
	if len(j.Books) > 1 {
		measuring = "measuring the volumes"
	}
	if j.Dividers() > 0 {
		placing = "placing walls and dividers"
	}
	return []plan.Deviation{
		off(measuring, "uncertainty.measuring", j.BookReading().PlusMinus, j.measuring),
		off("measuring the carcass", "uncertainty.measuring", u.Measuring, j.measuringCarcass),
		off("swelling when damp", "fit.swell", 0, func(s spot) tolerance.Effect { return tolerance.Takes(j.swell(s)) }), // reckoned with in full
		off("cutting", "uncertainty.cutting", u.Cutting, j.cutting),
		off("from piece to piece at one setting", "uncertainty.repeat", u.Repeat, j.repeating),
		off(placing, "uncertainty.placing", u.Placing, j.placing),
		off("squareness", "uncertainty.squareness", u.Squareness, j.outOfSquare),
		off("warp of the sides", "uncertainty.warp", u.Warp, j.warping),
	}
}

// measuring: the true sizes of the books.
func (j Job) measuring(s spot) tolerance.Effect {
	read := j.BookReading()
	if s.dimension == plan.Thickness {
		var thick tolerance.Effect
		for _, b := range j.booksIn(s.room) {
			thick = thick.Plus(read.Off(b.Thicknesses()...))
		}
		return thick.Times(-1)
	}
	var readings [][]Length
	for _, b := range j.Books {
		if s.dimension == plan.Height {
			readings = append(readings, b.Height)
		} else {
			readings = append(readings, b.Width)
		}
	}
	return read.Off(readings...).Times(-1)
}

// measuringCarcass: what stands on the bench, where that was measured. A covering goes
// over the largest reading, a book through the smallest place.
func (j Job) measuringCarcass(s spot) tolerance.Effect {
	readings := j.built(s.dimension)
	if len(readings) == 0 {
		return tolerance.Effect{}
	}
	e := j.Uncertainty.Reading().OffLeast(readings...)
	if s.dimension == plan.Thickness {
		return e.Times(1 / float64(j.compartments()))
	}
	return e
}

// standsAt tells whether the carcass was measured across a spot. What was cut is then
// known by that.
func (j Job) standsAt(s spot) bool { return len(j.built(s.dimension)) > 0 }

// ruled tells whether a spot lies between lines ruled on the walls, whose ends
// do not count.
func (j Job) ruled(s spot) bool { return s.dimension == plan.Thickness && s.room < j.Dividers() }

// oneSetting tells whether pieces of one size are cut at one setting.
func (j Job) oneSetting() bool { return j.Uncertainty.Settings != job.EachBySelf }

// alike returns how many pieces have the size that a spot comes from; the smallest
// counts: sides and spine wall in height, sides in depth, the walls in thickness.
// The spine wall is not at the mouth.
func (s spot) alike() int {
	if s.dimension == plan.Depth || s.place != InBody {
		return 2
	}
	return 3
}

// cutting: the setting of the fence, or each piece by itself.
func (j Job) cutting(s spot) tolerance.Effect {
	switch {
	case j.ruled(s), j.standsAt(s):
		return tolerance.Effect{}
	case j.oneSetting():
		return tolerance.Symmetric(j.Uncertainty.Cutting, 1)
	}
	return tolerance.Smallest(j.Uncertainty.Cutting, s.alike())
}

// repeating: pieces cut at one setting, against each other.
func (j Job) repeating(s spot) tolerance.Effect {
	if j.ruled(s) || j.standsAt(s) || !j.oneSetting() {
		return tolerance.Effect{}
	}
	return tolerance.Smallest(j.Uncertainty.Repeat, s.alike())
}

// placing: head and tail wall, the spine wall, the dividers beside a compartment.
func (j Job) placing(s spot) tolerance.Effect {
	n := 2
	switch {
	case s.dimension != plan.Thickness && j.standsAt(s):
		n = 0
	case s.dimension == plan.Depth:
		n = 1
	case s.dimension == plan.Thickness:
		n -= j.sidesOf(s.room)
	}
	return tolerance.Symmetric(j.Uncertainty.Placing, n)
}

// sidesOf returns how many of the case's two sides bound a compartment.
func (j Job) sidesOf(room int) (n int) {
	if room == 0 {
		n++
	}
	if room == j.Dividers() {
		n++
	}
	return n
}

// outOfSquare: edges of sides and walls that lean.
func (j Job) outOfSquare(s spot) tolerance.Effect {
	q := j.Uncertainty.Squareness
	switch {
	case j.ruled(s), len(j.built(s.dimension)) > 1: // readings at several places show it
		return tolerance.Effect{}
	case s.dimension == plan.Depth:
		return tolerance.Symmetric(q, 1).TakesRoom() // the book touches the spine wall at one end only
	}
	lean := tolerance.Symmetric(q/2, 1) // two edges run together or apart from their middle
	if s.dimension == plan.Height {
		lean = tolerance.Symmetric(q/2, 2)
	}
	if s.place != InBody {
		return lean
	}
	return lean.TakesRoom() // at one end or the other
}

// warping: the sides, in or out.
func (j Job) warping(s spot) tolerance.Effect {
	if s.dimension != plan.Thickness {
		return tolerance.Effect{}
	}
	warp := j.Uncertainty.Warp
	if s.place == AtMouth {
		warp *= j.bowed()
	}
	return tolerance.Bows(warp, j.sidesOf(s.room))
}

// bowed returns which part of a side's bow counts at the mouth. Head and tail wall
// hold its ends, between them it is a parabola. Most lies on it where side paper
// covers a side tab of the cloth, which ends far from the middle; the middle counts
// where a side can bow there by more than the tab is thick, or where no tab ends.
func (j Job) bowed() Length {
	if j.Covering != ClothAndPaper {
		return 1
	}
	at := min((j.Cloth.Overlap-j.Edge())/j.Between().Height, 1./2)
	bow := 4 * at * (1 - at)
	if (1-bow)*j.Uncertainty.Warp > j.Cloth.Thickness {
		return 1
	}
	return bow
}

// carefulSet is what walls set against a square block keep within (common
// practice, no source).
const carefulSet Length = 0.1

// mends returns what can be tried about the fit, the least effort first:
// measuring costs minutes before anything is cut, a true setting of the fence
// costs care.
func (j Job) mends() []plan.Mend {
	u := j.Uncertainty
	low, high, byName := u.BoardOff(j.Board.Thickness, j.Board.Known)
	out := plan.MeasureMaterial("board", "board.known", low, high, byName)
	if j.AsBuilt.Measured() { // the boards are cut and joined
		return append(out, plan.MeasureAgain("the book and the carcass", u)...)
	}
	out = append(out, plan.MeasureAgain("the book", u)...)
	if !j.oneSetting() {
		out = append(out, plan.Mend{What: plan.Say("cut the walls off one strip at one setting of the fence, sides and spine wall at another"),
			Sets: []job.Change{{Key: "uncertainty.settings", Word: job.OneSetting}}})
	}
	out = append(out, plan.CutForATry("at each setting cut a strip for a try, measure it and set the fence again, true to %s", u)...)
	if u.Placing > carefulSet {
		out = append(out, plan.Mend{What: plan.Say("set the walls flush with the edges against a square block, true to %s", carefulSet),
			Sets: []job.Change{{Key: "uncertainty.placing", Value: carefulSet}}})
	}
	return out
}
