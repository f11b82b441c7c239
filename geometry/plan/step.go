package plan

import (
	"forel/geometry/stage"
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

// Check is something to try at the bench (common practice, no source).
type Check struct {
	Step  int // the number of its step, from 1; Plan.Checks sets it
	Name  string
	When  string      // "before any board is cut"
	See   []stage.Say // what should be seen; sentences without capital and full stop
	Fails stage.Say   // what to do when it is not
}

// Care is what the finished thing is held against, and what to do about what
// is found.
type Care struct {
	Good []stage.Say // what should be found on the finished case
	Bad  []stage.Say // what may be found, and what to do about it
}
