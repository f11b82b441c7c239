package chemise

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
)

// conditions are what is known of a chemise beside its flat pieces.
type conditions struct {
	Board, Joint, Covering, Lining Length
	ForeEdge                       string
	Book, Room                     plan.Size // as measured, and what is to be left for it
	OwnCover, Hook                 Length    // hooks: the book's own cover, and the room for it
	Outside                        plan.Size // closed, at its thickest
}

func (j Job) conditions() conditions {
	c := conditions{
		Board: j.Board, Joint: j.joint(), Covering: j.Covering, Lining: j.Lining, ForeEdge: j.ForeEdge,
		Book: j.Book().Size(), Room: j.room(), Outside: j.outside(),
	}
	if j.ForeEdge == Hooks {
		c.OwnCover, c.Hook = j.BookCover, j.BookCover+j.CoverPlay
	}
	return c
}

// report is the proof of a chemise, with what it closes to.
type report struct {
	plan.Proof
	flat   flat
	closed closed
}

// prove folds the covering over the boards as they lie flat, knowing the pieces by
// their outlines, cuts, folds and seats alone; then it shuts the boards round the
// book and measures.
func prove(pieces []geometry.Piece, k conditions) report {
	f, faults := lay(pieces, k.Board, k.Joint)
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
			patches, wrong := f.lined(p, k.Lining)
			linings, faults = append(linings, patches...), append(faults, wrong...)
		}
	}
	v, wrong := f.body().Cover(coverings, func(geometry.Piece) Length { return k.Covering })
	v.Patches = append(v.Patches, linings...)
	faces, more := v.Look(coverings)
	r := report{flat: f}
	r.Faces, r.Faults = faces, append(append(faults, wrong...), more...)
	r.shut(k)
	r.show(pieces)
	return r
}

// shut closes the boards round the book and measures what comes of it.
func (r *report) shut(k conditions) {
	fault := func(kind foldup.Kind, what string, args ...any) {
		r.Faults = append(r.Faults, foldup.Fault{Kind: kind, What: fmt.Sprintf(what, args...)})
	}
	r.closed = shut(r.flat.All, evenly(k.Joint, len(r.flat.All)), k.Board, k.Covering, k.Lining)
	c := r.closed
	if x := c.stands[0]; x < 2*c.i-foldup.Sliver {
		fault(foldup.Tight, "a joint of %.2f mm does not close to a right angle: it leaves %.2f mm where %.2f mm of covering and lining lie", k.Joint.MM(), x.MM(), 2*c.i.MM())
		return
	}
	for _, o := range c.overlaps(r.flat.All, k.ForeEdge) {
		fault(foldup.Collision, "closed, %s", o)
	}
	compare := func(what string, is, want Length) {
		switch {
		case is < want-foldup.Sliver:
			fault(foldup.Tight, "%s: %.2f mm is %.3f mm too little", what, is.MM(), (want - is).MM())
		case is > want+foldup.Sliver:
			fault(foldup.Misfit, "%s: %.2f mm is %.3f mm too much", what, is.MM(), (is - want).MM())
		}
	}
	room := c.room(k)
	room.Height = r.flat.High
	out := c.outside(k)
	out.Height = r.flat.High + 2*k.Covering
	compare("room for the book, height", room.Height, k.Room.Height)
	compare("room for the book, width", room.Width, k.Room.Width)
	compare("room for the book, thickness", room.Thickness, k.Room.Thickness)
	compare("closed, height outside", out.Height, k.Outside.Height)
	compare("closed, depth outside", out.Width, k.Outside.Width)
	compare("closed, thickness outside", out.Thickness, k.Outside.Thickness)
	left := plan.Fact{Key: "body", Name: "in the closed chemise", Parts: []plan.Part{
		{Key: "height", Length: room.Height - k.Book.Height},
		{Key: "depth", Length: room.Width - k.Book.Width},
		{Key: "thickness", Length: room.Thickness - k.Book.Thickness},
	}}
	r.Clearances = []plan.Fact{left}
	if k.ForeEdge == Hooks {
		hook, _ := c.hook()
		compare("room for the book's cover in a hook", hook, k.Hook)
		r.Clearances = append(r.Clearances, plan.Fact{Key: "hook", Name: "in a hook, beyond the book's own cover", Parts: []plan.Part{{Key: "thickness", Length: hook - k.OwnCover}}})
	}
	r.Folded = []plan.Fact{
		plan.SizeFact("room", "room for the book, closed", "deep", room),
		plan.SizeFact("outside", "outside, closed", "deep", out),
	}
}
