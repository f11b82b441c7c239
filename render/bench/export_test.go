package bench

import (
	"forel/geometry"
	"forel/paper/bench"
	"forel/render/document"
)

// DrawSheet draws one sheet and returns the numbers left out, the pages, and the room on them.
func DrawSheet(p bench.Plan, g bench.Group, i int, o Options) (missed []string, pages []*document.Page, room geometry.Box) {
	d := &document.Document{Options: o}
	f := sheetPages(d, p, g, i)
	return f.missed, d.Pages(), o.Setup.Reach(f.lying)
}
