package onepiece

// Field is one length of a job that a maker can set: its key in a job file,
// the limits outside which it is taken for a slip, and where it is kept.
type Field struct {
	Key      string
	What     string // what it measures, for messages
	Min, Max Length // both allowed
	At       func(*Job) *Length
}

// Fields lists every length of a job but the book's (see slipcase.BookFields) in
// the order of a job file. What fits together is for Job.Check.
var Fields = []Field{
	{"card.thickness", "the card's measured thickness", 0, 4, func(j *Job) *Length { return &j.Card.Thickness }},
	{"flaps.relief", "what is left free about a flap", 0, 3, func(j *Job) *Length { return &j.Flaps.Relief }},
	{"flaps.taper", "what a flap is narrower at its end", 0, 5, func(j *Job) *Length { return &j.Flaps.Taper }},
	{"clearance.height", "the room above the book", 0, 25, func(j *Job) *Length { return &j.Clearance.Height }},
	{"clearance.width", "the room before the fore-edge", 0, 25, func(j *Job) *Length { return &j.Clearance.Width }},
	{"clearance.thickness", "the room beside the book", 0, 25, func(j *Job) *Length { return &j.Clearance.Thickness }},
}

// Fraction is one number of a job that is a part of something and has no unit.
type Fraction struct {
	Key      string
	What     string
	Min, Max float64 // both allowed
	At       func(*Job) *float64
}

// Fractions lists every fraction of a job.
var Fractions = []Fraction{
	{"card.bend", "how deep in the card, from its inside, lies what keeps its length in a fold", 0, 1, func(j *Job) *float64 { return &j.Card.Bend }},
}
