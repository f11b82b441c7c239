package fit

import "forel/geometry/fit"

// Pages is a surface with pages, for tests.
type Pages = pages

// DrawOn draws the document on pages.
func DrawOn(on Pages, r fit.Report, o Options) { draw(on, r, o) }
