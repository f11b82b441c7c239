package templates

import (
	"forel/geometry/plan"
	"forel/paper"
	"forel/render/document"
)

// Pages draws a document, and returns its pages and the labels there was no room for.
func Pages(p plan.Plan, l paper.Layout, o Options) ([]*document.Page, []string) {
	d, missed := draw(p, l, o)
	return d.Pages(), missed
}
