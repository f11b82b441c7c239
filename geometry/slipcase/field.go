package slipcase

import (
	"forel/geometry"
	"forel/geometry/wording"
)

// Field is one length of a job that a maker can set: its key in a job file,
// the limits outside which it is taken for a slip, and where it is kept.
type Field struct {
	Key      string
	What     string // what it measures, for messages
	Min, Max Length // both allowed
	At       func(*Job) *Length
	Auto     bool // the word "auto" stands for a length that suits, kept as zero
}

// Choice is a key whose value is one of a few words.
type Choice struct {
	Key   string
	What  string
	Words []string // the first is the default
	At    func(*Job) *string
}

// Choices lists every choice of a job.
var Choices = []Choice{
	{"compartments", "how several volumes stand in the case", []string{OneCompartment, EachItsOwn}, func(j *Job) *string { return &j.Compartments }},
	{"covering", "what the case is covered with", []string{ClothAndPaper, AllCloth, AllPaper, SidesOnly}, func(j *Job) *string { return &j.Covering }},
	{"lining.order", "whether linings go in before or after the boards are joined", []string{LinedBefore, LinedAfter}, func(j *Job) *string { return &j.Lining.Order }},
	{"pattern.direction", "whether the pattern has a top", []string{AnyWay, OneWay}, func(j *Job) *string { return &j.Pattern.Direction }},
	{"pattern.match", "what of the pattern lines up", []string{MatchNothing, MatchHeight, MatchMirrored, MatchRound}, func(j *Job) *string { return &j.Pattern.Match }},
	{"thumb_hole.shape", "the thumb hole in both sides", []string{NoHole, Semicircle, Triangle}, func(j *Job) *string { return &j.ThumbHole.Shape }},
	{"uncertainty.settings", "whether pieces that share a size are cut at one setting or each by itself", []string{OneSetting, EachBySelf}, func(j *Job) *string { return &j.Uncertainty.Settings }},
}

// Percent is a key whose value is a share in percent.
type Percent struct {
	Key      string
	What     string
	Min, Max float64 // both allowed
	At       func(*Job) *float64
}

// Percents lists every share of a job.
var Percents = []Percent{
	{"cloth.stretch", "how much the cloth grows across the grain when glued", 0, 5, func(j *Job) *float64 { return &j.Cloth.Stretch }},
	{"side_paper.stretch", "how much the side paper grows across the grain when glued", 0, 5, func(j *Job) *float64 { return &j.SidePaper.Stretch }},
	{"fit.swell", "how much thicker a book may grow when damp", 0, 20, func(j *Job) *float64 { return &j.Limits.Swell }},
}

// Fields lists every single length of a job in the order of a job file. The
// limits are generous; what fits together is for Job.Check.
var Fields = append([]Field{
	{"board.thickness", "the board's measured thickness", 0.5, 6, func(j *Job) *Length { return &j.Board.Thickness }, false},
	{"lining.thickness", "the lining paper's thickness, 0 for none", 0, 1, func(j *Job) *Length { return &j.Lining.Thickness }, false},
	{"lining.trim", "what a lining is cut beyond its board", 0, 50, func(j *Job) *Length { return &j.Lining.Trim }, false},
	{"cloth.thickness", "the cloth's thickness", 0.05, 1.5, func(j *Job) *Length { return &j.Cloth.Thickness }, false},
	{"cloth.overlap", "the cloth's margin on the sides", 5, 100, func(j *Job) *Length { return &j.Cloth.Overlap }, false},
	{"cloth.turn_in", "the cloth turned over head and tail", 5, 100, func(j *Job) *Length { return &j.Cloth.TurnIn }, false},
	{"cloth.mouth_turn_in", "the cloth turned in at the mouth", 5, 100, func(j *Job) *Length { return &j.Cloth.MouthTurnIn }, false},
	{"cloth.spine_gap", "the gap from the spine edge to head and tail cloth", 0, 25, func(j *Job) *Length { return &j.Cloth.SpineGap }, false},
	{"cloth.corner_distance", "how far from the corner a wedge stops", 1, 25, func(j *Job) *Length { return &j.Cloth.CornerDistance }, false},
	{"side_paper.thickness", "the side paper's thickness", 0.03, 1, func(j *Job) *Length { return &j.SidePaper.Thickness }, false},
	{"side_paper.inset", "the side paper's inset", 0.5, 60, func(j *Job) *Length { return &j.SidePaper.Inset }, false},
	{"side_paper.turn_in", "the side paper beyond the mouth", 3, 100, func(j *Job) *Length { return &j.SidePaper.TurnIn }, false},
	{"pattern.repeat_across", "how far on the pattern comes again across the grain, 0 for not at all", 0, 1000, func(j *Job) *Length { return &j.Pattern.Across }, false},
	{"pattern.repeat_along", "how far on the pattern comes again along the grain, 0 for not at all", 0, 1500, func(j *Job) *Length { return &j.Pattern.Along }, false},
	{"pattern.from_spine", "where a line of the pattern falls, from the spine edge of a side", 0, 700, func(j *Job) *Length { return &j.Pattern.FromSpine }, false},
	{"pattern.from_tail", "where a line of the pattern falls, from the tail edge of a side", 0, 700, func(j *Job) *Length { return &j.Pattern.FromTail }, false},
	{Key: "thumb_hole.radius", What: "the thumb hole's radius, or how deep a triangle goes", Min: 6, Max: 60, At: func(j *Job) *Length { return &j.ThumbHole.Radius }, Auto: true},
	{"divider.set_back", "how far a divider stands back from the mouth", 0, 60, func(j *Job) *Length { return &j.Divider.SetBack }, false},
	{"divider.lap", "the strip round a divider's mouth edge on each face", 4, 60, func(j *Job) *Length { return &j.Divider.Lap }, false},
	{"clearance.height", "the room above the book", 0, 25, func(j *Job) *Length { return &j.Clearance.Height }, false},
	{"clearance.width", "the room before the fore-edge", 0, 25, func(j *Job) *Length { return &j.Clearance.Width }, false},
	{"clearance.thickness", "the room beside the book", 0, 25, func(j *Job) *Length { return &j.Clearance.Thickness }, false},
}, uncertaintyFields...)

// ReadingsField is one dimension of a book.
type ReadingsField struct {
	Key      string // within its [[book]]
	What     string
	Min, Max Length
	At       func(*Book) *Readings
	Optional bool
}

// BookFields lists the dimensions of a book with their limits.
var BookFields = []ReadingsField{
	{"height", "the book from head to tail", 40, 700, func(b *Book) *Readings { return &b.Height }, false},
	{"width", "the book from spine to fore-edge", 20, 700, func(b *Book) *Readings { return &b.Width }, false},
	{"thickness", "the book's thickness", 1, 300, func(b *Book) *Readings { return &b.Thickness }, false},
	{"thickness_at_fore_edge", "the book's thickness at the fore-edge", 1, 300, func(b *Book) *Readings { return &b.ForeEdge }, true},
}

// CheckRange tells what is wrong with a length outside [lo, hi]; it gives a
// zero Problem where nothing is. A length that would lie within the limits in
// the other unit is asked about.
func CheckRange(key, what string, l, lo, hi Length, unit geometry.Unit) Problem {
	if l >= lo && l <= hi { // false for NaN too
		return Problem{}
	}
	limits := "give " + Show(lo, unit, +1) + " to " + Show(hi, unit, -1)
	p := Problem{Key: key, Right: limits + " (" + what + ")"}
	switch {
	case l < 0:
		p.Wrong = "a length can't be negative"
	case l == 0:
		p.Wrong = "zero is no measurement"
	case l < lo:
		p.Wrong = Show(l, unit, 0) + " is too small"
	case l > hi:
		p.Wrong = Show(l, unit, 0) + " is too large"
	default:
		p.Wrong = "not a length"
	}
	switch {
	case unit == geometry.MM && l > 0 && l < lo && l*geometry.Inch >= lo && l*geometry.Inch <= hi:
		p.Right += `; if it was inches, write "` + wording.Decimal(l.MM(), 4) + ` in"`
	case unit == geometry.IN && l > hi && l/geometry.Inch >= lo && l/geometry.Inch <= hi:
		p.Right += `; if it was millimetres, write "` + wording.Decimal(float64(l/geometry.Inch), 4) + ` mm"`
	}
	return p
}
