package chemise

import (
	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
)

// report is the proof of a chemise, with what it closes to.
type report struct {
	plan.Proof
	flat   flat
	closed closed
}

// prove folds the covering over the boards as they lie flat, knowing the pieces by
// their outlines, cuts, folds and seats alone; then it shuts the boards round the
// book and measures. Of the job it takes thicknesses and the joint, and what is to come out.
func prove(pieces []geometry.Piece, j Job) report {
	f, faults := lay(pieces, j.Board, j.joint())
	if len(faults) > 0 {
		return report{Proof: plan.Proof{Faults: faults}}
	}
	var coverings []geometry.Piece
	var linings []foldup.Patch
	for _, p := range pieces {
		switch p.Material {
		case geometry.ChemiseCloth:
			coverings = append(coverings, p)
		case geometry.ChemiseLining:
			patches, wrong := f.lined(p, j.Lining)
			linings, faults = append(linings, patches...), append(faults, wrong...)
		}
	}
	v, wrong := f.body().Cover(coverings, func(geometry.Piece) Length { return j.Covering })
	v.Patches = append(v.Patches, linings...)
	faces, more := v.Look(coverings)
	r := report{flat: f}
	r.Faces, r.Faults = faces, append(append(faults, wrong...), more...)
	r.shut(j)
	r.show(pieces)
	return r
}

// shut closes the boards round the book and measures what comes of it.
func (r *report) shut(j Job) {
	r.closed = shut(r.flat.All, evenly(j.joint(), len(r.flat.All)), j.Board, j.Covering, j.Lining)
	c := r.closed
	if x := c.stands[0]; x < 2*c.i-foldup.Sliver {
		r.Fault(foldup.Tight, "a joint of %.2f mm does not close to a right angle: it leaves %.2f mm where %.2f mm of covering and lining lie", j.joint().MM(), x.MM(), 2*c.i.MM())
		return
	}
	for _, o := range c.overlaps(r.flat.All, j.ForeEdge) {
		r.Fault(foldup.Collision, "closed, %s", o)
	}
	room, out := plan.Size{Height: r.flat.High}, plan.Size{Height: r.flat.High + 2*j.Covering}
	room.Width, room.Thickness = c.clear(j.ForeEdge)
	out.Width, out.Thickness = c.outside(j.ForeEdge, j.BookCover)
	wanted, outside := j.room(), j.outside()
	r.CompareSize("room for the book", room, wanted)
	r.Compare("closed, height outside", out.Height, outside.Height, 0)
	r.Compare("closed, depth outside", out.Width, outside.Width, 0)
	r.Compare("closed, thickness outside", out.Thickness, outside.Thickness, 0)
	r.Clearances = []plan.Fact{plan.LeftFact("body", "in the closed chemise", room.Less(j.Book().Size()))}
	if j.ForeEdge == Hooks {
		hook, _ := c.hook()
		r.Compare("room for the book's cover in a hook", hook, j.BookCover+j.CoverPlay, 0)
		r.Clearances = append(r.Clearances, plan.Fact{Key: "hook", Name: "in a hook, beyond the book's own cover", Parts: []plan.Part{{Key: "thickness", Length: hook - j.BookCover}}})
	}
	r.Folded = []plan.Fact{
		plan.SizeFact("room", "room for the book, closed", "deep", room),
		plan.SizeFact("outside", "outside, closed", "deep", out),
	}
}
