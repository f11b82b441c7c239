package plan

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
	Measures []Measure
}

// Fact is something measured of the finished thing, or left in it: what it is,
// and one or more lengths, each with a name of its own.
type Fact struct {
	Key   string // for reports that programs read, such as "outside"
	Name  string // for readers, such as "outside, bare of covering"
	Parts []Part
}

// Part is one length of a fact, such as the height.
type Part struct {
	Name   string
	Length Length
}
