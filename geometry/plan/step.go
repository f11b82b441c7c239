package plan

import (
	"forel/geometry/stage"
	"forel/geometry/wording"
	"forel/geometry/work"
)

// Step is one step of the work. The steps of a plan are the one order of work:
// templates print their short form, the handout all of it, the fit their checks.
type Step struct {
	Title    string            // "Glue the spine wall to a side"
	Short    stage.Say         // what is done, in one or two sentences, for the overview of the templates; empty: left out there
	Text     []stage.Say       // what is done, paragraph by paragraph
	Pictures [][]stage.Picture // in rows of one or two
	Checks   []Check           // what is tried before the next step
	Spells   []work.Spell      // what it takes: work and drying, in order
}

// Dries says how to dry what was glued or pasted. Times are common practice, no source.
const Dries = "until dry: commonly an hour or two for glue, overnight for paste; longer in a damp room"

// Check is something to try at the bench (common practice, no source).
type Check struct {
	Step  int // the number of its step, from 1; Plan.Checks sets it
	Name  string
	When  string      // "before any board is cut"
	See   []stage.Say // what should be seen; sentences without capital and full stop
	Fails stage.Say   // what to do when it is not; empty where Found tells
	Found []Finding   // what may be found instead, where it is not all one
}

// Finding is what may be found at a check, what that means, and what to do about it;
// clauses and sentences without capital and full stop, What such that "where" may go before it.
type Finding struct{ What, Means, Do stage.Say }

// Told returns the findings in words, three sentences each; write writes a length.
func Told(found []Finding, write func(Length) string) (rows [][]string) {
	for _, f := range found {
		rows = append(rows, []string{wording.Sentence(f.What.In(write)), wording.Sentence(f.Means.In(write)), wording.Sentence(f.Do.In(write))})
	}
	return rows
}

// Care is what the finished thing is held against, and what to do about what
// is found.
type Care struct {
	Good []stage.Say // what should be found on the finished case
	Bad  []stage.Say // what may be found, and what to do about it
}
