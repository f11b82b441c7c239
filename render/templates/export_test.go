package templates

import (
	"forel/geometry/plan"
	"forel/paper"
	"forel/render/document"
)

// Draw draws the document, and returns the labels there was no room for.
func Draw(p plan.Plan, l paper.Layout, o Options) (*document.Document, []string) {
	return draw(p, l, o)
}
