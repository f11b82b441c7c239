package plan

import (
	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/tolerance"
)

// The dimensions that what is put into a case has: head to tail, spine to
// fore-edge, side to side. A kind may have others beside them.
const (
	Height    = "height"
	Depth     = "depth"
	Thickness = "thickness"
)

// Chain tells how the room that is left in a case comes about: which gaps must
// stay open, the lengths they come from, and what can be off. A kind of case
// returns it; geometry/fit adds up what comes of it.
//
// A case as it comes out has other lengths than were drawn. What was cut stays
// as it was cut, materials and books are what they are, and Left returns the room
// that is then left. No sensitivity is written down: it is a difference of two
// such cases.
//
// What a kind measures outside can be the book of another kind's chain: see
// Nested.
type Chain struct {
	Unit       geometry.Unit // that the maker works in
	Dimensions []Dimension   // in the order they are shown
	Gaps       []Gap         // of each dimension and volume from the widest place to the tightest
	Links      []Link
	// Left returns the room in each gap when the links have these lengths, and
	// after that the Made.
	Left func(links []Length) []Length
	Made []MadeSize
	Off  []Deviation
	// Mends is what can be tried about the fit, the least effort first; a change of
	// clearance goes without saying.
	Mends []Mend
	// Remedies is what can be done where the book does not fit the case that stands. Early is
	// until when the case is open to more of them, such as "before it is covered"; Open is
	// then the place of the gaps where the play is measured, where that is not the one that
	// decides.
	Remedies    []Remedy
	Early, Open string
	// With returns the chain of the same job with settings changed.
	With func(changes []job.Change) Chain
	// Limits says what is called too tight and too loose, without capital and
	// full stop, its lengths written out.
	Limits Remark
}

// Drawn returns the lengths of the links as drawn or measured.
func (c Chain) Drawn() []Length {
	out := make([]Length, len(c.Links))
	for i, l := range c.Links {
		out[i] = l.Length
	}
	return out
}

// Dimension is a direction in which there must be room.
type Dimension struct {
	Name      string // "height"
	Key       string // the setting that gives more room, such as "clearance.height"; empty: none does any more
	Clearance Length // what it is set to
	Tight     string // what too little room is called, such as "too tight"
}

// Gap is room that must stay open.
type Gap struct {
	Dimension string // the name of one of Chain.Dimensions
	Place     string // a word for programs, such as "mouth"
	Where     string // "at the mouth"; empty where a dimension has one gap only
	Volume    string // whose compartment, where there are several; else empty
	Tight     Length // less is too tight
	Loose     Length // more is too loose; zero where it is not judged for that
	Decides   bool   // it is the tightest place of its dimension and volume: judged for too tight
	Swell     Length // what is put in takes so much of it when damp, where that is allowed for
}

// MadeSize is what the case, or a part of it, measures at the bench. Of a case that
// another can be made round the first three are what it measures outside: height,
// depth and thickness.
type MadeSize struct {
	Key  string // for a record of what was measured: "outside-height"
	Name string // "the bare carcass from head to tail, outside"
	When string // "when the carcass is dry, before it is covered"
	Set  string // the setting of a job file that takes its readings; empty: none
}

// The keys of measures that kinds share.
const (
	OutsideHeight    = "outside-height"
	OutsideWidth     = "outside-width"
	OutsideThickness = "outside-thickness"
	MouthHeight      = "mouth-height"
	MouthThickness   = "mouth-thickness"
)

// Link is a length that room comes from.
type Link struct {
	Name   string
	Length Length     // as drawn or as measured
	Book   bool       // of the book, or of one of several
	Varies *Variation // of a material, what its thickness can be; nil: Chain.Off tells of it
	Sold   []job.Sold // of a material, the sizes sold by a name that it could be
}

// MaterialLink returns the link of a layer of a material, measured to a plus or minus that
// the setting with the key says.
func MaterialLink(name, key string, thickness, plusMinus Length) Link {
	return Link{Name: name, Length: thickness, Varies: &Variation{Name: "the " + name + "'s thickness", Key: key, Low: -plusMinus, High: plusMinus}}
}

// BoardLink returns the link of a board that was measured, or is known by its trade name
// only, as the setting with the key knownKey says.
func BoardLink(name, knownKey string, thickness Length, u job.Uncertainty, known string) Link {
	l := MaterialLink(name, "uncertainty.board", thickness, 0)
	if l.Varies.Low, l.Varies.High, l.Varies.ByName = u.BoardOff(thickness, known); l.Varies.ByName {
		l.Varies.Key, l.Sold = knownKey, job.BoardsLike(thickness)
	}
	return l
}

// Variation is how far the thickness of a material can be off.
type Variation struct {
	Name, Key string // "the board's thickness", and the setting that says how far
	Low, High Length // what it can be off, less and more
	ByName    bool   // known by its trade name only: anything between is as likely
}

// Effect returns what that is, on the thickness.
func (v Variation) Effect() tolerance.Effect {
	if v.ByName {
		return tolerance.Uniform(v.Low, v.High)
	}
	return tolerance.Normal(v.Low, v.High)
}

// Deviation is something that can be off by the hand, or of the book.
type Deviation struct {
	Name, Key string             // "cutting", and the setting that says how far
	PlusMinus Length             // zero where there is none
	Effects   []tolerance.Effect // on each length that Chain.Left returns
}

// Off returns a deviation from what it does to some of the so many lengths that Chain.Left
// returns, by their index.
func Off(lengths int, name, key string, plusMinus Length, at map[int]tolerance.Effect) Deviation {
	d := Deviation{Name: name, Key: key, PlusMinus: plusMinus, Effects: make([]tolerance.Effect, lengths)}
	for i, e := range at {
		d.Effects[i] = e
	}
	return d
}

// Mend is something to try about the fit, by itself.
type Mend struct {
	What   Remark       // a sentence, without capital and full stop
	Moves  string       // where not empty, the key of what it settles; how far that can move the fit is told
	Before bool         // it is done before a clearance is changed
	Sets   []job.Change // what is then true of the job
}

// Gauge is a strip of paper, printed at true size, to fold and lay round the
// book before anything is cut.
type Gauge struct {
	Name   string
	Panels []Panel
	Closed bool   // its ends meet: a sleeve
	Try    string // what to do with it
}

// Panel is what lies between two folds of a gauge.
type Panel struct {
	Name   string
	Length Length
}

// Length returns the strip from end to end, without the tab that closes it.
func (g Gauge) Length() Length {
	var sum Length
	for _, p := range g.Panels {
		sum += p.Length
	}
	return sum
}

// Sleeve returns a gauge that is slid over the book: head to tail so long, and
// so thick.
func Sleeve(name string, height, thickness Length) Gauge {
	return Gauge{Name: name, Closed: true,
		Panels: []Panel{{"head to tail", height}, {"thickness", thickness}, {"head to tail", height}, {"thickness", thickness}},
		Try:    "Fold at the marks, ink outside, and join the ends mark on mark. Slide it over the fore-edge and along the book: it should pass everywhere without being pushed."}
}

// SpineStrip returns a gauge that is laid round the spine.
func SpineStrip(depth, thickness Length) Gauge {
	return Gauge{Name: "Strip round the spine",
		Panels: []Panel{{"fore-edge to spine", depth}, {"thickness", thickness}, {"spine to fore-edge", depth}},
		Try:    "Fold at the marks, ink outside, and lay it round the spine, close to it. Both ends should reach past the fore-edge: what they reach is the clearance in depth."}
}

// Load is what carries the weight of what is put in, and how much it may carry.
type Load struct {
	Weights  []float64         // grams of each book as weighed; 0: not weighed
	On       string            // what bears it when the case stands upright, such as "tail wall"; empty: nothing of the case does
	Seam     Length            // along which that is joined to the rest
	Holds    string            // what the seam holds: "that wall to the sides"; empty: there is none to speak of
	Material geometry.Material // of what bears it
	Has      Length            // its thickness
	Needs    []LeastThickness  // from the lightest load; empty: any thickness bears Most
	Most     float64           // grams; more is too heavy for such a case
	TooHeavy string            // what to say of a heavier load, after its weight
}

// LeastThickness is how thick a material a load of up to so many grams needs.
type LeastThickness struct {
	Most  float64
	Least Length
}

// Bears returns the least thickness for a load in grams, 0 where any will do;
// ok is false where the load is too heavy for such a case.
func (l Load) Bears(grams float64) (least Length, ok bool) {
	if l.On == "" {
		return 0, true
	}
	if grams > l.Most {
		return 0, false
	}
	for _, n := range l.Needs {
		if grams <= n.Most {
			return n.Least, true
		}
	}
	return 0, true
}
