package box

import (
	"math"

	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/tolerance"
)

// The dimensions of the room between the trays, beside those of the book.
const (
	nestHeight    = "height between the trays"
	nestDepth     = "depth between the trays"
	nestThickness = "thickness between the trays"
)

// The places where room must be left.
const (
	atOpenEnd = "open-end"
	inMiddle  = "middle"
	inCorners = "corners"
	betweenIn = "floors"
	overSmall = "over-rim"
)

// The gaps of the chain in their order.
const (
	bookHighMiddle = iota
	bookHighEnd
	bookDeep
	bookThickGap
	nestHigh
	nestDeep
	nestThick
	gapCount
)

// The measures of the covered small tray in their order, after the gaps.
const (
	outHigh = gapCount + iota
	outWide
	outThick
	lengthCount
)

// The links of the chain.
const (
	bookHeight = iota
	bookDepth
	bookThick
	trayBoard
	trayCloth
	hingeThick
	smallLined
	largeLined
	smallLong // small tray inside: head to tail, open edge to fore-edge; its walls
	smallWide
	smallHigh
	largeLong // large tray likewise; measured, what it has beyond the small tray outside
	largeWide
	largeHigh
)

// follows tells whether the large tray is cut to the small one as measured.
func (j Job) follows() bool { return j.Order == AsMeasured || j.AsBuilt.Measured() }

// whenCovered is when the small tray is measured.
const whenCovered = "when the small tray is covered and dry, before anything of the large tray is cut"

// Unbuilt takes back what was measured of the small tray; the large one is still cut to
// what it will measure.
func (j *Job) Unbuilt() {
	if j.AsBuilt.Measured() {
		j.AsBuilt, j.Order = job.AsBuilt{}, AsMeasured
	}
}

// Chain returns how the room for the book and the room between the trays come about.
//
// Cut all at once, what the small tray comes out otherwise is lost between the trays,
// and again in the large one. Where the large tray is cut to the small one as measured,
// all of that is made up for: there is left what cutting the large tray and reading the
// small one leave.
func (j Job) Chain() plan.Chain {
	lim := j.Limits
	s := j.standing()
	grows, beside := lim.Grows(j.Book()), lim.LooseBeside(j.Book().Thick())
	c := plan.Chain{
		Unit: j.Unit,
		Dimensions: []plan.Dimension{
			{Name: plan.Height, Key: heightKey, Clearance: j.Clearance.Height, Tight: "too tight"},
			{Name: plan.Depth, Key: widthKey, Clearance: j.Clearance.Width, Tight: "too tight"},
			{Name: plan.Thickness, Key: thicknessKey, Clearance: j.Clearance.Thickness, Tight: "pressed"},
			{Name: nestHeight, Key: "box.room_height", Clearance: j.Room.Height, Tight: "sticks"},
			{Name: nestDepth, Key: "box.room_width", Clearance: j.Room.Width, Tight: "sticks"},
			{Name: nestThickness, Key: "box.room_depth", Clearance: j.Room.Depth, Tight: "keeps the lid up"},
		},
		Gaps: []plan.Gap{
			bookHighMiddle: {Dimension: plan.Height, Place: inMiddle, Where: "in the middle", Loose: lim.LooseHeight},
			bookHighEnd:    {Dimension: plan.Height, Place: atOpenEnd, Where: "at the open end", Decides: true},
			bookDeep:       {Dimension: plan.Depth, Place: inCorners, Where: "in the corners at the fore-edge", Decides: true},
			bookThickGap:   {Dimension: plan.Thickness, Place: betweenIn, Where: "between the floors at the hinge", Loose: beside + 2*j.hingeCloth(), Decides: true, Swell: grows},
			nestHigh:       {Dimension: nestHeight, Place: atOpenEnd, Where: "at the open end", Loose: mostPlay, Decides: true},
			nestDeep:       {Dimension: nestDepth, Place: inCorners, Where: "in the corners at the fore-edge", Loose: mostPlay, Decides: true},
			nestThick:      {Dimension: nestThickness, Place: overSmall, Where: "above the rim of the small tray", Decides: true},
		},
		Links: j.links(s),
		Left:  j.left,
		Made: []plan.MadeSize{
			{Key: plan.OutsideHeight, Name: "the covered small tray from head to tail, outside", When: whenCovered, Set: "as_built.height"},
			{Key: plan.OutsideWidth, Name: "the covered small tray from the open edge to the fore-edge, outside", When: whenCovered, Set: "as_built.width"},
			{Key: plan.OutsideThickness, Name: "the covered small tray from bench to rim", When: whenCovered, Set: "as_built.thickness"},
		},
		Mends:    j.mends(),
		Remedies: j.remedies(), Early: "before the trays are glued to the case",
		With: func(changes []job.Change) plan.Chain {
			k := j
			k.Settings().Apply(changes)
			return k.Chain()
		},
		Limits: plan.AsSet(plan.Say("too tight: the book, or the trays in each other, with no room left where they are tightest; too loose: over %s for the book in height, over %s in thickness at the hinge, over %s between the trays",
			lim.LooseHeight, beside+2*j.hingeCloth(), mostPlay), j.Unit),
	}
	for i, r := range j.AsBuilt.Each() { // the room in the small tray is as it is
		if len(r) > 0 {
			c.Dimensions[i].Key = ""
		}
	}
	c.Off = j.deviations(c)
	return c
}

// mostPlay is how much room between the trays lets them rattle (common practice, no
// source).
const mostPlay Length = 1.5

// links returns the lengths that the room comes from. s is the job as the small tray
// stands.
func (j Job) links(s Job) []plan.Link {
	u, b := j.Uncertainty, j.Book()
	small, large := s.small(), s.large()
	out := []plan.Link{
		bookHeight: {Name: "the book, head to tail", Length: b.Height.Largest(), Book: true},
		bookDepth:  {Name: "the book, spine to fore-edge", Length: b.Width.Largest(), Book: true},
		bookThick:  {Name: "the book, thickness", Length: b.Thick(), Book: true},
		trayBoard:  plan.BoardLink("trays' board", knownKey, j.Board, u, j.Known),
		trayCloth:  plan.MaterialLink("trays' cloth", "uncertainty.cloth", j.Cloth, u.Cloth),
		hingeThick: plan.MaterialLink("hinge", "uncertainty.cloth", j.hingeCloth(), u.Cloth),
		smallLined: plan.MaterialLink("small tray's lining", "uncertainty.lining", j.Lining, u.Lining),
		largeLined: plan.MaterialLink("large tray's lining", "uncertainty.lining", j.lidLining(), u.Lining),
		smallLong:  {Name: "small tray, head wall to tail wall", Length: small.l},
		smallWide:  {Name: "small tray, open edge to fore-edge wall", Length: small.b},
		smallHigh:  {Name: "small tray, walls with the base", Length: small.d + j.Board},
		largeLong:  {Name: "large tray, head wall to tail wall", Length: large.l},
		largeWide:  {Name: "large tray, open edge to fore-edge wall", Length: large.b},
		largeHigh:  {Name: "large tray, walls with the base", Length: large.d + j.Board},
	}
	if j.follows() {
		ways := [3]string{"head to tail", "open edge to fore-edge", "bench to rim"}
		beyond := [3]string{"head to tail", "to the fore-edge wall", "walls with the base"}
		for i, is := range s.covered(small).Each() {
			cut := &out[largeLong+i]
			cut.Name, cut.Length = "large tray, beyond the small one as measured, "+beyond[i], cut.Length-is
			if j.isMeasured(smallLong + i) {
				out[smallLong+i] = plan.Link{Name: "small tray, covered, " + ways[i], Length: is}
			}
		}
	}
	return out
}

// left returns the room in the gaps, and then the measures, when the links have these lengths: both trays as
// they were cut, layers as thick as they are.
func (j Job) left(v []Length) []Length {
	t, k, q, f, lid := v[trayBoard], v[trayCloth], v[hingeThick], v[smallLined], v[largeLined]
	var in, out, large [3]Length // the small tray inside, and covered outside; the large one inside
	for i, walls := range [3]Length{2*t + 2*k, t + k, 2 * k} {
		in[i], large[i] = v[smallLong+i], v[largeLong+i]
		if j.isMeasured(smallLong + i) {
			in[i] -= walls
		}
		out[i] = in[i] + walls
		if j.follows() {
			large[i] += out[i]
		}
	}
	gaps := make([]Length, lengthCount)
	gaps[outHigh], gaps[outWide], gaps[outThick] = out[0], out[1], out[2]
	gaps[bookHighMiddle] = in[0] - 2*k - v[bookHeight]
	gaps[bookHighEnd] = in[0] - 4*k - v[bookHeight]
	gaps[bookDeep] = in[1] - 2*k - v[bookDepth]
	gaps[bookThickGap] = large[2] - 2*t - 2*k - 2*q - f - lid - v[bookThick]
	gaps[nestHigh] = large[0] - 4*k - out[0]
	gaps[nestDeep] = large[1] - 2*k - out[1]
	gaps[nestThick] = large[2] - t - lid - out[2]
	return gaps
}

// deviations returns what can be off of the book and by the hand, and what it does to
// each gap.
func (j Job) deviations(c plan.Chain) []plan.Deviation {
	u, b, read := j.Uncertainty, j.Book(), j.BookReading()
	off := func(name, key string, plusMinus Length, at map[int]tolerance.Effect) plan.Deviation {
		return plan.Off(lengthCount, name, key, plusMinus, at)
	}
	high, wide := read.Off(b.Height).Times(-1), read.Off(b.Width).Times(-1)
	out := []plan.Deviation{
		off("measuring the book", "uncertainty.measuring", read.PlusMinus, map[int]tolerance.Effect{
			bookHighMiddle: high, bookHighEnd: high, bookDeep: wide, bookThickGap: read.Off(b.Thicknesses()...).Times(-1)}),
		off("swelling when damp", "fit.swell", 0, map[int]tolerance.Effect{bookThickGap: tolerance.Takes(j.Limits.Grows(b))}), // reckoned with in full
	}
	if j.follows() {
		out = append(out, off("measuring the small tray", "uncertainty.measuring", u.Measuring, j.readings(u.Reading())))
	}
	slopes := c.Sensitivities()
	// through tells what errors of the trays' lengths come to; those that were measured are as
	// they are, unless the error is in the measure.
	through := func(measured bool, of func(at, length int) tolerance.Effect) map[int]tolerance.Effect {
		return plan.Through(slopes, func(length, link int, counts float64) tolerance.Effect {
			if link < smallLong || j.isMeasured(link) && !(measured && length < outHigh) {
				return tolerance.Effect{}
			}
			return of(link-smallLong, length).Times(math.Abs(counts))
		})
	}
	// Of several pieces that differ that one decides which takes room; but the large tray is
	// cut to the highest wall of the small one, and the largest is measured.
	cut := func(plusMinus func(pieces int) tolerance.Effect) map[int]tolerance.Effect {
		return through(false, func(at, length int) tolerance.Effect {
			e := plusMinus([]int{2, 1, 3, 2, 1, 3}[at]) // that set each length of the trays, in their order
			if smallLong+at == smallHigh && length == bookThickGap || length >= outHigh {
				return e.Times(-1)
			}
			return e
		})
	}
	one := func(int) tolerance.Effect { return tolerance.Symmetric(u.Cutting, 1) }
	cutting, repeat := cut(one), map[int]tolerance.Effect{}
	if u.Settings == job.EachBySelf {
		cutting = cut(func(n int) tolerance.Effect { return tolerance.Smallest(u.Cutting, n) })
	} else {
		repeat = cut(func(n int) tolerance.Effect { return tolerance.Smallest(u.Repeat, n) })
	}
	// Walls beside their lines: two of a tray from head to tail, one at the fore-edge.
	placing := through(false, func(at, _ int) tolerance.Effect {
		return tolerance.Symmetric(u.Placing, []int{2, 1, 0, 2, 1, 0}[at])
	})
	// Corners out of square: head and tail wall that lean take room from head to tail, a
	// fore-edge wall at its far end in the depth. The largest reading of a tray has its leaning
	// in it.
	lean, end := tolerance.Symmetric(u.Squareness/2, 2).TakesRoom(), tolerance.Symmetric(u.Squareness, 1).TakesRoom()
	leaning := through(true, func(at, length int) tolerance.Effect {
		e := []tolerance.Effect{lean, end, {}, lean, end, {}}[at]
		if length >= outHigh {
			return e.Times(-1)
		}
		return e
	})
	return append(out,
		off("cutting", "uncertainty.cutting", u.Cutting, cutting),
		off("from piece to piece at one setting", "uncertainty.repeat", u.Repeat, repeat),
		off("placing the walls", "uncertainty.placing", u.Placing, placing),
		off("squareness", "uncertainty.squareness", u.Squareness, leaning),
	)
}

// places is at how many places the small tray is measured each way.
const places = 3

// isMeasured tells whether a link was measured, not cut.
func (j Job) isMeasured(link int) bool {
	return link >= smallLong && link < largeLong && len(j.AsBuilt.Each()[link-smallLong]) > 0
}

// readings returns what reading the small tray does: the large one is cut to it.
func (j Job) readings(read tolerance.Reading) map[int]tolerance.Effect {
	out := map[int]tolerance.Effect{}
	for i, r := range j.AsBuilt.Each() {
		e := read.Off(r).Times(-1)
		if len(r) == 0 { // it will be read at three places, as is told: the largest of them is off most
			step := float64(read.Step) / math.Sqrt(3)
			e = tolerance.Smallest(Length(math.Hypot(float64(read.PlusMinus), step)), places).Times(-1)
		}
		out[nestHigh+i] = e
	}
	out[bookThickGap] = out[nestThick]
	// The tray is as it is. Where its inside is reckoned from readings, the smallest place
	// is the book's room.
	if a := j.AsBuilt; len(a.Height) > 0 {
		out[bookHighMiddle], out[bookHighEnd] = read.OffLeast(a.Height...), read.OffLeast(a.Height...)
	}
	if a := j.AsBuilt; len(a.Width) > 0 {
		out[bookDeep] = read.OffLeast(a.Width...)
	}
	return out
}

// mends returns what can be tried about the fit, the least effort first.
func (j Job) mends() []plan.Mend {
	low, high, byName := j.Uncertainty.BoardOff(j.Board, j.Known)
	out := plan.MeasureMaterial("trays' board", knownKey, low, high, byName)
	if !j.follows() {
		out = append(out, plan.Mend{What: plan.Say("cover the small tray and measure it before the large tray is cut"), Before: true,
			Sets: []job.Change{{Key: orderKey, Word: AsMeasured}}})
	}
	out = append(out, plan.MeasureAgain("the book", j.Uncertainty)...)
	return append(out, plan.CutForATry("at each setting cut a strip for a try, measure it and set the fence again, true to %s", j.Uncertainty)...)
}

// gauges returns the strips of paper to try round the book.
func (j Job) gauges() []plan.Gauge {
	b, c, k := j.Book(), j.Clearance, j.Cloth
	return []plan.Gauge{
		plan.Sleeve("Sleeve as wide as the small tray at its open end", b.Height.Largest()+c.Height-2*k, b.Thick()+c.Thickness),
		plan.SpineStrip(b.Width.Largest()+c.Width-k, b.Thick()+c.Thickness),
	}
}
