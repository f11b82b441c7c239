package fit

import (
	"forel/geometry/fit"
	"forel/render/document"
)

// Pages draws the document.
func Pages(r fit.Report, o Options) []*document.Page { return draw(r, o).Pages() }
