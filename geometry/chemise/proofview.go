package chemise

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/space"
	"forel/geometry/stage"
)

// show adds to a proof all that is told and drawn of it.
func (r *report) show(pieces []geometry.Piece) {
	f := r.flat
	r.Shows = "no board is left bare, no flap reaches too far, and the chemise closes round the book"
	r.Stuff, r.From = "covering and lining", "from the board up"
	r.Means = "there is no board in the joints; elsewhere the gap that is left is no broader than the covering beside it is thick, which closes it"
	r.Remarks = []string{"the boards are shown as they lie flat, inside up, head away; what is measured of the closed chemise comes from the sizes of boards, joints and layers"}
	for _, p := range pieces {
		switch p.Material {
		case geometry.ChemiseCloth:
			r.Sheets = append(r.Sheets, plan.Sheet{Name: p.Name, Stuff: stage.Cloth})
		case geometry.ChemiseLining:
			r.Sheets = append(r.Sheets, plan.Sheet{Name: p.Name, Stuff: stage.Lining})
		}
	}
	r.Solids = f.Solids()
	r.View = stage.View{Toward: space.Vec{Y: -1}, Up: space.Vec{Z: 1}, Yaw: 18, Pitch: 50}
	for n, p := range f.All {
		r.Notes = append(r.Notes, stage.Note{Name: stage.Words(p.Name), At: space.Vec{X: f.From[n] + p.Wide/2, Y: f.High * (0.75 - 0.4*Length(n%2)), Z: f.Thick}})
	}
	whole := func(face geometry.Face) []plan.Cell { return []plan.Cell{{Face: face, Part: 1}} }
	ends := []plan.Cell{{Face: LeftEdge, Part: 0.5}, {Face: RightEdge, Part: 0.5}}
	r.Spreads = []plan.Spread{
		{Bookmark: "Inside and outside", Head: "The boards laid flat, each face as you see it when you look at it", Rows: [][]plan.Cell{whole(Inside), whole(Outside)}},
		{Bookmark: "Edges", Head: "The edges of the boards, each as you see it when you look at it", Rows: [][]plan.Cell{whole(HeadEdge), whole(TailEdge), ends}},
	}
}
