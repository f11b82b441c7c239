package onepiece

import (
	"slices"

	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/geometry/walled"
)

// show adds to a proof all that is told and drawn of it.
func (r *Report) show(v foldup.Covered, j Job) {
	card := j.Card
	r.Shows = "the blank folds to the room that was asked for, every wall is closed, and no two parts lie in one place"
	r.Stuff, r.From = card.name(), "from the inside out"
	r.Layers = "Between parts stand the reliefs."
	r.Means = "the rest is reliefs between parts, and at the ends of a wall the edges of the " + card.name() + " that is folded over it"
	for _, f := range r.Faces {
		for i, l := range f.Layers {
			if len(l.Parts) == 0 {
				continue
			}
			sheet := plan.Sheet{Name: l.Parts[0].Name, Stuff: stage.Card}
			f.Layers[i].Piece = sheet.Name
			if !slices.Contains(r.Sheets, sheet) {
				r.Sheets = append(r.Sheets, sheet)
			}
		}
	}
	for _, p := range v.Patches {
		r.Solids = append(r.Solids, solid(v.Surfaces[p.Plane], p))
	}
	r.Folded = []plan.Fact{plan.SizeFact("cavity", "room inside, as folded", "deep", r.Cavity), plan.SizeFact("outside", "outside, as folded", "deep", r.Outside)}
	half, third := Length(1./2), Length(1./3)
	r.Spreads = []plan.Spread{{Bookmark: "Walls", Head: "The walls, each as you see it from outside", Rows: [][]plan.Cell{
		{{Face: walled.LeftOutside, Part: half}, {Face: walled.RightOutside, Part: half}},
		{{Face: walled.SpineOutside, Part: third}, {Face: walled.HeadOutside, Part: third}, {Face: walled.TailOutside, Part: third}},
	}}}
	r.View = stage.View{Toward: space.Vec{Z: 1}, Up: space.Vec{Y: 1}, Yaw: 32, Pitch: 22}
	w, h, d := r.Outside.Thickness, r.Outside.Height, r.Outside.Width
	note := func(name, more string, x, y, z Length) stage.Note {
		return stage.Note{Name: stage.Words(name), More: stage.Words(more), At: space.Vec{X: x, Y: y, Z: z}}
	}
	r.Notes = []stage.Note{
		{Name: stage.Words("head"), More: stage.Words("flaps, in two layers"), Spot: string(walled.HeadOutside)},
		{Name: stage.Words("right side"), More: stage.Words("one layer"), Spot: string(walled.RightOutside)},
		note("spine", "behind, round this edge", w, h*0.45, 0),
		note("left side", "its edge at the mouth", card.Thickness/2, h*0.85, d),
		note("tail", "its edges at the mouth", w*0.6, card.Thickness, d),
		note("mouth", "the open side", w/2, h*0.74, d),
	}
}

// solid returns a part as it stands in from the outside of a wall.
func solid(on foldup.Surface, p foldup.Patch) plan.Solid {
	front := p.Depth // of its two sides the one that the frame's normal comes from
	if on.Frame.Normal().Dot(on.Normal) > 0 {
		front -= p.Thick
	}
	on.Frame.O = on.Frame.O.Sub(on.Normal.Mul(front))
	return plan.Solid{Name: p.Name(), Stuff: stage.Card, Frame: on.Frame, Outline: p.Shape[0].Rings[0], Thick: p.Thick}
}
