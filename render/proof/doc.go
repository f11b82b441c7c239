package proof

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render/document"
	"forel/render/typeset"
)

// doc is the document being made.
type doc struct {
	plan.Plan
	*document.Document
	faces  []face
	looks  looks
	pageOf map[geometry.Face]int // on which a face is drawn flat
}

// newDoc starts the document of a proof. Nothing of it is to be cut: no layer is
// opened.
func newDoc(p plan.Plan, o Options) *doc {
	pages := &document.Document{Options: o, Title: "Proof", Running: wording.Titled(p.Title, p.Kind), Wider: typeset.Substitute,
		About: "A " + p.Kind + " folded up from " + from(p) + ": seen from outside, then every face with what lies on it. " +
			"Figures, not at true size: not to be cut from.",
		Foot: "Figures, not at true size: do not cut from this page."}
	d := &doc{Plan: p, Document: pages, faces: study(p.Proof), looks: looksOf(p.Proof), pageOf: map[geometry.Face]int{}}
	d.Frame = d.legend
	return d
}

// across is what tables and faces beside each other take between the margins.
const across Length = 160

// narrow tells whether a page has no room for them: they stand below each other then.
func (d *doc) narrow() bool { return d.Room(false).Width() < across }

// Document draws the case from outside at an angle, what is wrong if anything is,
// then every face flat, and a table of them.
func Document(p plan.Plan, o Options) *document.Document {
	d := newDoc(p, o)
	before := append(d.opening(), d.faults()...)
	rows, shown := d.faceRows()
	all := append(before, rows...)
	all = append(all, d.table()...)
	// The list of faults tells the pages of the faces, and takes some itself.
	for range 2 * min(1, len(p.Proof.Faults)) {
		block := -len(before)
		for page, n := range d.Try(nil, all...) {
			for ; n > 0; n-- {
				if block >= 0 && block < len(shown) {
					for _, face := range shown[block] {
						d.pageOf[face] = page + 1
					}
				}
				block++
			}
		}
	}
	d.Flow(nil, all...)
	return d.Document
}
