package onepiece

import (
	"slices"

	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/tolerance"
)

// inBody is where room must be left. Nothing is turned in, so the mouth is as
// wide as the body.
const inBody = "body"

// The links of the chain.
const (
	scoredHeight = iota
	scoredDepth
	scoredThickness
	cardThick
	bookHeight
	bookDepth
	bookThick
)

// Chain returns how the room in the case comes about: in height, depth and
// thickness.
func (j Job) Chain() plan.Chain {
	s, b := j.Scored(), j.Book()
	gap := func(dimension, where string, tight, loose, swell Length) plan.Gap {
		return plan.Gap{Dimension: dimension, Place: inBody, Where: where, Tight: tight, Loose: loose, Decides: true, Swell: swell}
	}
	card := plan.Variation{Name: "the " + j.Card.name() + "'s thickness", Key: "uncertainty.board"}
	card.Low, card.High = j.cardOff()
	return plan.Chain{
		Unit: j.Unit,
		Dimensions: []plan.Dimension{
			{Name: plan.Height, Key: "clearance.height", Clearance: j.Clearance.Height, Tight: "too tight"},
			{Name: plan.Depth, Key: "clearance.width", Clearance: j.Clearance.Width, Tight: "stands out"},
			{Name: plan.Thickness, Key: "clearance.thickness", Clearance: j.Clearance.Thickness, Tight: "too tight"},
		},
		Gaps: []plan.Gap{
			gap(plan.Height, "in the body", j.Limits.Tight, j.Limits.LooseHeight, 0),
			gap(plan.Depth, "", 0, 0, 0), // a book that is too deep does not stick; its spine stands out
			gap(plan.Thickness, "in the body", j.Limits.Tight, j.Limits.LooseBeside(b.Thick()), j.Limits.Grows(b)),
		},
		Links: []plan.Link{
			scoredHeight:    {Name: "from head score to tail score, left side", Length: s.Height},
			scoredDepth:     {Name: "from mouth edge to spine score", Length: s.Width},
			scoredThickness: {Name: "between the spine scores", Length: s.Thickness},
			cardThick:       {Name: j.Card.name(), Length: j.Card.Thickness, Varies: &card},
			bookHeight:      {Name: "the book, head to tail", Length: b.Height.Largest(), Book: true},
			bookDepth:       {Name: "the book, spine to fore-edge", Length: b.Width.Largest(), Book: true},
			bookThick:       {Name: "the book, thickness", Length: b.Thick(), Book: true},
		},
		Left:     j.left,
		Made:     measures,
		Off:      j.deviations(),
		Mends:    j.mends(),
		Remedies: j.remedies(), Early: "before it is glued",
		With: func(changes []job.Change) plan.Chain {
			k := j
			k.Settings().Apply(changes)
			return k.Chain()
		},
		Limits: j.limits(),
	}
}

// measures are what can be measured: the blank from score to score, and the case inside.
var measures = func() []plan.MadeSize {
	const scored, finished = "when the blank is scored, before it is folded", "when the glue is dry"
	return []plan.MadeSize{
		{Key: "scored-height", Name: "from head score to tail score, left side", When: scored},
		{Key: "scored-width", Name: "from mouth edge to spine score", When: scored},
		{Key: "scored-thickness", Name: "between the spine scores", When: scored},
		{Key: plan.MouthHeight, Name: "the mouth from head to tail, inside", When: finished},
		{Key: plan.MouthThickness, Name: "the mouth from side to side, inside", When: finished},
	}
}()

// limits says what is too tight and too loose. Nothing is turned in: the mouth is as
// wide as the body.
func (j Job) limits() plan.Remark { return plan.Limits(j.Common, j.Book().Thick(), "in the case") }

// left returns the room in height, depth and thickness, and then the measures, when the links have these
// lengths. What is marked and scored stays; the card's thickness and the book are
// what they are.
func (j Job) left(v []Length) []Length {
	r := j // as it comes out
	r.Card.Thickness = v[cardThick]
	r.Books = []job.Book{{Height: job.Readings{v[bookHeight]}, Width: job.Readings{v[bookDepth]}, Thickness: job.Readings{v[bookThick]}}}
	was := r.Scored()
	high, deep, thick := r.Clearance.Height+v[scoredHeight]-was.Height, r.Clearance.Width+v[scoredDepth]-was.Width, r.Clearance.Thickness+v[scoredThickness]-was.Thickness
	return []Length{high, deep, thick, v[scoredHeight], v[scoredDepth], v[scoredThickness], v[bookHeight] + high, v[bookThick] + thick}
}

// deviations returns what can be off of the book and by the hand. Height and
// thickness lie between two folds, the depth has one.
func (j Job) deviations() []plan.Deviation {
	u, b, read := j.Uncertainty, j.Book(), j.BookReading()
	none := tolerance.Effect{}
	// off tells of an error what it does to height, depth and thickness.
	off := func(name, key string, plusMinus Length, effects ...tolerance.Effect) plan.Deviation {
		inside := []tolerance.Effect{effects[0], effects[2]}
		if key == "uncertainty.measuring" || key == "fit.swell" { // of the book
			inside = []tolerance.Effect{none, none}
		}
		scored := []tolerance.Effect{none, none, none}
		if key == "uncertainty.cutting" {
			scored = effects
		}
		return plan.Deviation{Name: name, Key: key, PlusMinus: plusMinus, Effects: slices.Concat(effects, scored, inside)}
	}
	once := tolerance.Symmetric(u.Cutting, 1)
	fold := func(n int) tolerance.Effect { return tolerance.Symmetric(u.Placing, n) }
	q := u.Squareness
	out := []plan.Deviation{
		off("measuring the book", "uncertainty.measuring", read.PlusMinus,
			read.Off(b.Height).Times(-1), read.Off(b.Width).Times(-1), read.Off(b.Thicknesses()...).Times(-1)),
		off("swelling when damp", "fit.swell", 0, none, none, tolerance.Takes(j.Limits.Grows(b))), // reckoned with in full
		off("marking and "+j.Card.words().scoring, "uncertainty.cutting", u.Cutting, once, once, once),
		off("folding on the score", "uncertainty.placing", u.Placing, fold(2), fold(1), fold(2)),
		// Edges lean by half from their middle, two in height; the book touches the
		// spine at one end only.
		off("squareness", "uncertainty.squareness", u.Squareness,
			tolerance.Symmetric(q/2, 2).TakesRoom(), tolerance.Symmetric(q, 1).TakesRoom(), tolerance.Symmetric(q/2, 1).TakesRoom()),
		off("warp of the sides", "uncertainty.warp", u.Warp, none, none, tolerance.Bows(u.Warp, 2)),
	}
	if j.Card.Kind == Corrugated {
		takes, slips := crushedOff*j.Card.Thickness, slippedOff*j.Card.Thickness
		all := tolerance.Symmetric(takes, 1) // one hand crushes all folds of a case alike
		out = append(out,
			off("what a crushed fold takes up", "card.bend", takes, all.Times(2), all, all.Times(2)),
			off("spine folds off their line", "card.kind", slips, none, tolerance.Symmetric(slips, 1), tolerance.Symmetric(slips, 2)))
	}
	return out
}

// What folds of corrugated board can be off once a strip was tried, plus or minus, as
// parts of its thickness (common practice, no source). A fold takes up more or less of
// it by how broad and how flat it was crushed. One along the flutes goes to the nearest
// hollow between two of them, which are about two thicknesses apart, as far as the
// crushed line is broad.
const (
	crushedOff Length = 1. / 20
	slippedOff Length = 1. / 8
)

// pressed is the plus or minus of a measured corrugated board, as a part of its
// thickness: the jaws press flutes together (common practice, no source).
const pressed Length = 1. / 20

// cardOff returns how much less and more than measured the card may be.
func (j Job) cardOff() (low, high Length) {
	low, high = j.Uncertainty.CardOff()
	if j.Card.Kind == Corrugated && j.Uncertainty.Board == 0 {
		off := max(high, pressed*j.Card.Thickness)
		return -off, off
	}
	return low, high
}

// mends returns what can be tried about the fit, the least effort first.
func (j Job) mends() []plan.Mend {
	var out []plan.Mend
	if j.Card.Kind == Solid { // no caliper makes the thickness of flutes surer
		low, high := j.cardOff()
		out = plan.MeasureMaterial(j.Card.name(), "", low, high, false)
	}
	out = append(out, plan.MeasureAgain("the book", j.Uncertainty)...)
	return append(out, plan.CutForATry("mark, "+j.Card.words().score+" and fold a strip for a try, measure it and correct the marks, true to %s", j.Uncertainty)...)
}

// gauges returns the strips of paper to try round the book.
func (j Job) gauges() []plan.Gauge {
	in := j.Cavity()
	return []plan.Gauge{plan.Sleeve("Sleeve as wide as the case inside", in.Height, in.Thickness), plan.SpineStrip(in.Width, in.Thickness)}
}

// The most that a folded case should carry, in grams (common practice, no source).
const (
	mostInCard       = 1000
	mostInCorrugated = 2000
)

// load returns what carries the book.
func (j Job) load() plan.Load {
	in, most, kilos := j.Cavity(), mostInCard, "1 kg"
	if j.Card.Kind == Corrugated {
		most, kilos = mostInCorrugated, "2 kg"
	}
	return plan.Load{Weights: []float64{j.Book().Weight}, On: "flaps at the tail", Seam: 2*in.Width + in.Thickness,
		Material: j.Card.material(), Has: j.Card.Thickness, Most: float64(most),
		TooHeavy: "is heavy for folded " + j.Card.name() + "; make a case of boards for more than " + kilos}
}
