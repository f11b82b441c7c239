package box

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/geometry/wording"
)

// show adds to a proof all that is told and drawn of it.
func (r *report) show(pieces []geometry.Piece) {
	c := r.closed
	r.Shows = "no board is left bare, no flap reaches past its face, the trays nest with their room at every layer, and the lid turns open without touching the small tray"
	r.Stuff, r.From = "cloth and lining", "from the board up"
	r.Means = "what is not covered is glued to the case, lies under a tray, or is a gap no broader than the cloth beside it is thick, which closes it"
	r.Tightest = "The room for the book is least where two layers of cloth lie: at the open end, in the corners at the fore-edge, and beside the hinge."
	r.Remarks = []string{"trays and case are shown apart, as they are covered; what is measured of the closed box comes from boards, joints and layers as they lie"}
	r.Sheets = plan.Sheets(pieces)
	r.Solids = append(c.small.solids(), c.large.solids()...)
	r.Solids = append(r.Solids, c.laid.Solids()...)
	for i, b := range c.laid.All {
		r.Notes = append(r.Notes, stage.Note{Name: stage.Words(b.Name), At: c.laid.At.Add(space.Vec{X: c.laid.From[i] + b.Wide/2, Y: c.laid.High * 0.4, Z: c.laid.Thick})})
	}
	spread := func(bookmark, head string, rows ...[]plan.Cell) {
		r.Spreads = append(r.Spreads, plan.Spread{Bookmark: bookmark, Head: head, Rows: rows})
	}
	r.View = stage.View{Toward: space.Vec{Y: -1}, Up: space.Vec{Z: 1}, Yaw: 16, Pitch: 48}
	for _, t := range []foldedTray{c.small, c.large} {
		r.Notes = append(r.Notes,
			stage.Note{Name: stage.Words(t.name), At: t.at.Add(space.Vec{X: t.wide * 0.6, Y: t.long * 0.45, Z: t.t})},
			stage.Note{Name: stage.Words("open end"), At: t.at.Add(space.Vec{Y: t.long * 0.5, Z: t.t})})
		f, name, away, near := t.f, wording.Capital(t.name), t.f.ends[0], t.f.ends[1]
		const seen = ", each face as you see it when you look at it"
		spread(name+", outside", "The "+t.name+" from outside"+seen, plan.Row(near.out, away.out), plan.Row(f.fore, f.under))
		spread(name+", inside", "The "+t.name+" from inside"+seen, plan.Row(near.in, away.in), plan.Row(f.foreIn, f.floor))
		spread(name+", rim", "The rim of the "+t.name+seen, plan.Row(near.rim, away.rim), plan.Row(f.foreRim))
		spread(name+", open end", "The open end of the "+t.name+seen, plan.Row(away.end, near.end), plan.Row(f.edge))
	}
	spread("Case, inside and outside", "The case laid flat, each face as you see it when you look at it", plan.Row(caseInside), plan.Row(caseOutside))
	spread("Case, edges", "The edges of the case, each as you see it when you look at it", plan.Row(caseHead), plan.Row(caseTail), plan.Row(caseFront, caseBack))
}
