package box

import (
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/space"
	"forel/geometry/stage"
)

// show adds to a proof all that is told and drawn of it.
func (r *report) show(pieces []geometry.Piece) {
	c := r.closed
	r.Shows = "no board is left bare, no flap reaches past its face, the trays nest with their room at every layer, and the lid turns open without touching the small tray"
	r.Stuff, r.From = "cloth and lining", "from the board up"
	r.Means = "what is not covered is glued to the case, lies under a tray, or is a gap no broader than the cloth beside it is thick, which closes it"
	r.Tightest = "The room for the book is least where two layers of cloth lie: at the open end, in the corners at the fore-edge, and beside the hinge."
	r.Remarks = []string{"trays and case are shown apart, as they are covered; what is measured of the closed box comes from boards, joints and layers as they lie"}
	for _, p := range pieces {
		switch p.Material.Like() {
		case geometry.Cloth:
			r.Sheets = append(r.Sheets, plan.Sheet{Name: p.Name, Stuff: stage.Cloth})
		case geometry.Lining:
			r.Sheets = append(r.Sheets, plan.Sheet{Name: p.Name, Stuff: stage.Lining})
		}
	}
	r.Solids = append(c.small.solids(), c.large.solids()...)
	r.Solids = append(r.Solids, c.laid.Solids()...)
	for i, b := range c.laid.All {
		r.Notes = append(r.Notes, stage.Note{Name: stage.Words(b.Name), At: c.laid.At.Add(space.Vec{X: c.laid.From[i] + b.Wide/2, Y: c.laid.High * 0.4, Z: c.laid.Thick})})
	}
	for _, t := range []foldedTray{c.small, c.large} {
		r.Notes = append(r.Notes,
			stage.Note{Name: stage.Words(t.name), At: t.at.Add(space.Vec{X: t.wide * 0.6, Y: t.long * 0.45, Z: t.t})},
			stage.Note{Name: stage.Words("open end"), At: t.at.Add(space.Vec{Y: t.long * 0.5, Z: t.t})})
	}
	r.View = stage.View{Toward: space.Vec{Y: -1}, Up: space.Vec{Z: 1}, Yaw: 16, Pitch: 48}
	for _, t := range []foldedTray{c.small, c.large} {
		f := t.f
		name := strings.ToUpper(t.name[:1]) + t.name[1:]
		away, near := f.ends[0], f.ends[1]
		r.Spreads = append(r.Spreads,
			plan.Spread{Bookmark: name + ", outside", Head: "The " + t.name + " from outside, each face as you see it when you look at it",
				Rows: [][]plan.Cell{{{Face: near.out, Part: 0.5}, {Face: away.out, Part: 0.5}}, {{Face: f.fore, Part: 0.5}, {Face: f.under, Part: 0.5}}}},
			plan.Spread{Bookmark: name + ", inside", Head: "The " + t.name + " from inside, each face as you see it when you look at it",
				Rows: [][]plan.Cell{{{Face: near.in, Part: 0.5}, {Face: away.in, Part: 0.5}}, {{Face: f.foreIn, Part: 0.5}, {Face: f.floor, Part: 0.5}}}},
			plan.Spread{Bookmark: name + ", rim", Head: "The rim of the " + t.name + ", each face as you see it when you look at it",
				Rows: [][]plan.Cell{{{Face: near.rim, Part: 0.5}, {Face: away.rim, Part: 0.5}}, {{Face: f.foreRim, Part: 1}}}},
			plan.Spread{Bookmark: name + ", open end", Head: "The open end of the " + t.name + ", each face as you see it when you look at it",
				Rows: [][]plan.Cell{{{Face: away.end, Part: 0.5}, {Face: near.end, Part: 0.5}}, {{Face: f.edge, Part: 1}}}},
		)
	}
	whole := func(face geometry.Face) []plan.Cell { return []plan.Cell{{Face: face, Part: 1}} }
	r.Spreads = append(r.Spreads,
		plan.Spread{Bookmark: "Case, inside and outside", Head: "The case laid flat, each face as you see it when you look at it", Rows: [][]plan.Cell{whole(caseInside), whole(caseOutside)}},
		plan.Spread{Bookmark: "Case, edges", Head: "The edges of the case, each as you see it when you look at it",
			Rows: [][]plan.Cell{whole(caseHead), whole(caseTail), {{Face: caseFront, Part: 0.5}, {Face: caseBack, Part: 0.5}}}},
	)
}
