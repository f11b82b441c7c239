package templates

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/paper"
)

// Lay lays the templates of pieces over sheets. A wide sheet has the overview and the
// key in a corner of the first. What is made first has sheets of its own, unless lay says
// otherwise.
func Lay(c plan.Plan, pieces []geometry.Piece, o Options, lay paper.Options) paper.Layout {
	if lay.Set == nil {
		lay.Set = c.BatchOf
	}
	l := o.Setup.Lay(pieces, lay)
	if !o.Setup.Wide() || len(pieces) == 0 {
		return l
	}
	var best *paper.Layout
	for _, wide := range []geometry.Length{190, 250, 320, 400} { // a wider one is lower
		for high := geometry.Length(0); ; {
			need := wordsHigh(c, l, o, wide)
			if need <= high {
				if best == nil || len(l.Pages) < len(best.Pages) {
					kept := l
					best = &kept
				}
				break
			}
			high = need + 1
			if !o.Setup.Takes(wide, high) {
				break
			}
			lay.Corner = geometry.Pt(wide, high)
			l = o.Setup.Lay(pieces, lay)
		}
	}
	if best == nil { // on pages of their own
		lay.Corner = geometry.Point{}
		l = o.Setup.Lay(pieces, lay)
		best = &l
	}
	return *best
}

// wordsHigh returns how tall the overview and the key are in a column.
func wordsHigh(c plan.Plan, l paper.Layout, o Options, wide geometry.Length) geometry.Length {
	d := &doc{plan: c, layout: l, Document: newDocument(c, o), corner: geometry.Bx(0, 0, wide, tall)}
	d.Surface = d.Document
	d.AddPage(wide, tall)
	d.words()
	return d.Page.Lowest()
}

// tall is taller than any column of words.
const tall geometry.Length = 1e5

// words draws the overview and below it the key in the corner of a page.
func (d *doc) words() {
	d.overview()
	box := d.corner
	box.Min.Y = d.Page.Lowest() + 6
	d.keyCells(box, d.layout.Tilings, keyGrid(box, len(d.layout.Tilings)))
}
