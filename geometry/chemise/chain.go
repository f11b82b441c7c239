package chemise

import (
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/tolerance"
)

// The places where room must be left: between the covers at the spine, and at the
// fore-edge, where a lapped flap lies on the book.
const (
	inBody     = "body"
	atSpine    = "spine"
	atForeEdge = "fore-edge"
)

// The first links of the chain; the widths of the boards follow.
const (
	boardHigh = iota
	boardThick
	coveringThick
	liningThick
	bookHeight
	bookDepth
	bookThick
	ownCover
	jointWide
	widths
)

// whenClosed is when a chemise is measured.
const whenClosed = "when the chemise is dry, with the book in it"

// Chain returns how the room for the book comes about, and what the closed chemise
// measures outside.
func (j Job) Chain() plan.Chain {
	lim := j.Limits
	grows, beside := lim.Grows(j.Book()), lim.LooseBeside(j.Book().Thick())
	gap := func(dimension, place, where string, tight, loose, swell Length) plan.Gap {
		return plan.Gap{Dimension: dimension, Place: place, Where: where, Tight: tight, Loose: loose, Decides: true, Swell: swell}
	}
	gaps := []plan.Gap{
		gap(plan.Height, inBody, "between head and tail", 0, lim.LooseHeight, 0), // what looks out there does not stick
		gap(plan.Depth, inBody, "between spine and fore-edge", lim.Tight, 0, 0),
		gap(plan.Thickness, atSpine, "at the spine", lim.Tight, beside, grows),
	}
	if j.ForeEdge == None {
		gaps[1].Where, gaps[1].Tight = "", 0
	}
	if j.ForeEdge == Lapped {
		gaps[2].Decides = false
		last := gap(plan.Thickness, atForeEdge, "under the flap at the fore-edge", lim.Tight, 0, grows)
		gaps = append(gaps, last)
	}
	depth := "too tight"
	if j.ForeEdge == None {
		depth = "looks out"
	}
	c := plan.Chain{
		Unit: j.Unit,
		Dimensions: []plan.Dimension{
			{Name: plan.Height, Key: "chemise.clearance_height", Clearance: j.Clearance.Height, Tight: "looks out"},
			{Name: plan.Depth, Key: "chemise.clearance_width", Clearance: j.Clearance.Width, Tight: depth},
			{Name: plan.Thickness, Key: "chemise.clearance_thickness", Clearance: j.Clearance.Thickness, Tight: "too tight"},
		},
		Gaps:  gaps,
		Links: j.links(),
		Left:  func(v []Length) []Length { return j.left(v, evenly(v[jointWide], len(j.panels()))) },
		Made: []plan.MadeSize{
			{Key: plan.OutsideHeight, Name: "the closed chemise from head to tail", When: whenClosed},
			{Key: plan.OutsideWidth, Name: "the closed chemise from spine to fore-edge", When: whenClosed},
			{Key: plan.OutsideThickness, Name: "the closed chemise with the book in it, thickness", When: whenClosed},
		},
		Mends:    j.mends(),
		Remedies: j.remedies(), Early: "before its boards are covered",
		With: func(changes []job.Change) plan.Chain {
			k := j
			k.Settings().Apply(changes)
			return k.Chain()
		},
		Limits: plan.Say("too tight: under %s between the covers or before the fore-edge, or a head that looks out; too loose: over %s in height or %s in thickness", lim.Tight, lim.LooseHeight, beside),
	}
	if j.ForeEdge == None {
		c.Limits = plan.Say("too tight: under %s between the covers, or a head or fore-edge that looks out; too loose: over %s in height or %s in thickness", lim.Tight, lim.LooseHeight, beside)
	}
	c.Limits = plan.AsSet(c.Limits, j.Unit)
	c.Off = j.deviations(c)
	return c
}

// links returns the lengths that the room comes from.
func (j Job) links() []plan.Link {
	u, b := j.Uncertainty, j.Book()
	out := []plan.Link{
		boardHigh:     {Name: "boards, head to tail", Length: j.room().Height},
		boardThick:    plan.BoardLink("thin board", knownKey, j.Board, u, j.Known),
		coveringThick: plan.MaterialLink("covering", "uncertainty.cloth", j.Covering, u.Cloth),
		liningThick:   plan.MaterialLink("lining", "uncertainty.lining", j.Lining, u.Lining),
		bookHeight:    {Name: "the book, head to tail", Length: b.Height.Largest(), Book: true},
		bookDepth:     {Name: "the book, spine to fore-edge", Length: b.Width.Largest(), Book: true},
		bookThick:     {Name: "the book, thickness", Length: b.Thick(), Book: true},
		ownCover:      {Name: "the book's own cover", Length: j.BookCover, Book: true},
		jointWide:     {Name: "joint between two boards", Length: j.joint()},
	}
	for _, p := range j.panels() {
		out = append(out, plan.Link{Name: p.Name + ", width", Length: p.Wide})
	}
	return out
}

// left returns the room in the gaps when the links have these lengths, then what the
// closed chemise measures outside. The chemise is put together from its boards as
// they were cut; layers are as thick as they are.
func (j Job) left(v, joints []Length) []Length {
	ps := j.panels()
	for n := range ps {
		ps[n].Wide = v[widths+n]
	}
	c := shut(ps, joints, v[boardThick], v[coveringThick], v[liningThick])
	width, thick := c.clear(j.ForeEdge)
	spine := thick
	if j.ForeEdge == Lapped { // the flap lies between the book and the front cover
		spine = c.dressed(frontCoverName).Min.Y - c.dressed(backCoverName).Max.Y - (c.b + c.i + c.k)
	}
	out := []Length{v[boardHigh] - v[bookHeight], width - v[bookDepth], spine - v[bookThick]}
	if j.ForeEdge == Lapped {
		out = append(out, thick-v[bookThick])
	}
	outWide, outThick := c.outside(j.ForeEdge, v[ownCover])
	return append(out, v[boardHigh]+2*v[coveringThick], outWide, outThick)
}

// deviations returns what can be off of the book and by the hand, and what it does
// to each length that the chain's Left returns. What the width of a board or of a
// joint does is a difference of two chemises.
func (j Job) deviations(c plan.Chain) []plan.Deviation {
	u, b, read := j.Uncertainty, j.Book(), j.Uncertainty.Reading()
	n := len(c.Left(c.Drawn()))
	high, deep, outHigh := 0, 1, n-3
	off := func(name, key string, plusMinus Length, at map[int]tolerance.Effect) plan.Deviation {
		return plan.Off(n, name, key, plusMinus, at)
	}
	thick := func(e tolerance.Effect) map[int]tolerance.Effect {
		out := map[int]tolerance.Effect{}
		for i := deep + 1; i < outHigh; i++ {
			out[i] = e
		}
		return out
	}
	measuring := thick(read.Off(b.Thicknesses()...).Times(-1))
	measuring[high], measuring[deep] = read.Off(b.Height).Times(-1), read.Off(b.Width).Times(-1)

	ps := j.panels()
	slopes := c.Sensitivities()
	repeat, cutting := map[int]tolerance.Effect{}, plan.Through(slopes, func(_, link int, counts float64) tolerance.Effect {
		if link < widths {
			return tolerance.Effect{}
		}
		return tolerance.Symmetric(u.Cutting, 1).Times(counts)
	})
	// All boards have one height; the lowest counts inside, the highest outside.
	if u.Settings == job.EachBySelf {
		cutting[high], cutting[outHigh] = tolerance.Smallest(u.Cutting, len(ps)), tolerance.Smallest(u.Cutting, len(ps)).Times(-1)
	} else {
		cutting[high], cutting[outHigh] = tolerance.Symmetric(u.Cutting, 1), tolerance.Symmetric(u.Cutting, 1)
		repeat[high], repeat[outHigh] = tolerance.Smallest(u.Repeat, len(ps)), tolerance.Smallest(u.Repeat, len(ps)).Times(-1)
	}
	placing := plan.Through(j.jointSlopes(c), func(_, _ int, counts float64) tolerance.Effect {
		return tolerance.Symmetric(u.Placing, 1).Times(counts)
	})
	q := u.Squareness
	lean := tolerance.Symmetric(q/2, 2).TakesRoom()
	end := tolerance.Symmetric(q, 1).TakesRoom()
	return []plan.Deviation{
		off("measuring the book", "uncertainty.measuring", u.Measuring, measuring),
		off("swelling when damp", "fit.swell", 0, thick(tolerance.Takes(j.Limits.Grows(b)))), // reckoned with in full
		off("cutting", "uncertainty.cutting", u.Cutting, cutting),
		off("from piece to piece at one setting", "uncertainty.repeat", u.Repeat, repeat),
		off("placing the boards", "uncertainty.placing", u.Placing, placing),
		off("squareness", "uncertainty.squareness", q, map[int]tolerance.Effect{
			high: lean, deep: end, outHigh: lean.Times(-1), outHigh + 1: end.Times(-1)}),
	}
}

// jointSlopes returns, of each length that Left returns, how many times each joint
// counts in it.
func (j Job) jointSlopes(c plan.Chain) [][]float64 {
	const step Length = 1e-3
	drawn := c.Drawn()
	joints := evenly(j.joint(), len(j.panels()))
	out := make([][]float64, len(c.Left(drawn)))
	for n := range joints {
		at := func(by Length) []Length {
			moved := append([]Length(nil), joints...)
			moved[n] += by
			return j.left(drawn, moved)
		}
		up, down := at(step), at(-step)
		for i := range out {
			out[i] = append(out[i], float64((up[i]-down[i])/(2*step)))
		}
	}
	return out
}

// mends returns what can be tried about the fit, the least effort first.
func (j Job) mends() []plan.Mend {
	low, high, byName := j.Uncertainty.BoardOff(j.Board, j.Known)
	out := append(plan.MeasureMaterial("thin board", knownKey, low, high, byName), plan.MeasureAgain("the book", j.Uncertainty)...)
	out = append(out, plan.CutForATry("at each setting cut a strip for a try, measure it and set the fence again, true to %s", j.Uncertainty)...)
	if j.Uncertainty.Placing > carefulJoint {
		out = append(out, plan.Mend{What: plan.Say("lay the boards against a spacer as wide as the joint, true to %s", carefulJoint),
			Sets: []job.Change{{Key: "uncertainty.placing", Value: carefulJoint}}})
	}
	return out
}

// carefulJoint is what boards laid against a spacer keep within (common practice,
// no source).
const carefulJoint Length = 0.1

// gauges returns the strips of paper to try round the book.
func (j Job) gauges() []plan.Gauge {
	in := j.room()
	return []plan.Gauge{plan.Sleeve("Sleeve as wide as the chemise inside", in.Height, in.Thickness), plan.SpineStrip(in.Width, in.Thickness)}
}
