package templates

import (
	"forel/geometry/plan"
	"forel/paper"
)

// Pages is what a booklet is drawn on, for tests to record.
type Pages = pages

// DrawOn draws a booklet and gives the labels there was no room for.
func DrawOn(on Pages, p plan.Plan, l paper.Layout, o Options) []string { return draw(on, p, l, o) }
