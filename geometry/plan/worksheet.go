package plan

import (
	"slices"

	"forel/geometry/job"
	"forel/geometry/wording"
)

// Measure is a line of the worksheet with one length: its symbol, what it is,
// the rule it comes from, and what it is in this job.
type Measure struct {
	Symbol, Name, Rule string
	Value              Length
	Readings           []Length // what Value is the largest of; nil: it was not measured so
	Fine               bool     // a thickness of material, shown more finely
	Number             string   // in place of a length
	Usual              bool     // a choice of the maker's, which has a usual size
}

// Group is lines of the worksheet under a head.
type Group struct {
	Head     string
	Part     string // of several things made together, the one it is of: each has symbols of its own
	Measures []Measure
}

// ContentGroup returns the lines of the measures of a job's one book, or of what it wears
// where it wears something: that is not measured but worked out.
func ContentGroup(c job.Common) Group {
	g := BookGroup(c.Book())
	if c.Wears != "" {
		g.Head = wording.Capital(c.Whose(0))
		for i := range g.Measures {
			g.Measures[i].Name = []string{"height", "width", "thickness"}[i] + ", as the closed " + c.Wears
			g.Measures[i].Readings = nil
		}
	}
	return g
}

// BookGroup returns the lines of a book's measures, with their readings.
func BookGroup(b job.Book) Group {
	return Group{Head: "The book", Measures: []Measure{
		{Symbol: "H", Name: "height, head to tail", Value: b.Height.Largest(), Readings: b.Height},
		{Symbol: "W", Name: "width, with the round", Value: b.Width.Largest(), Readings: b.Width},
		{Symbol: "T", Name: "thickness, the thicker edge", Value: b.Thick(), Readings: slices.Concat(b.Thickness, b.ForeEdge)},
	}}
}

// ClearanceGroup returns the lines of the room that a case leaves beyond the book.
func ClearanceGroup(c job.Clearance) Group {
	return Group{Head: "Room beyond the book", Measures: []Measure{
		{Symbol: "cH", Name: "in height", Value: c.Height, Usual: true},
		{Symbol: "cW", Name: "in width", Value: c.Width, Usual: true},
		{Symbol: "cT", Name: "in thickness", Value: c.Thickness, Usual: true},
	}}
}
