package plan

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/job"
	"forel/geometry/space"
	"forel/geometry/stage"
)

// Proof is a case folded up from its pieces: what is wrong, what lies where, and
// what is left. It is all that a renderer needs to tell and draw of it.
type Proof struct {
	Faults  []foldup.Fault
	Shows   string // what a proof without faults shows, for a sentence: "no board is left bare"
	Means   string // what a covering of less than 100 % means in a proof without faults; empty where there is none
	Stuff   string // what layers are of: "covering"
	From    string // how layers are listed: "from the board up"
	Layers  string // what is to be known of the count of layers, a sentence; may be empty
	Remarks []string
	Sheets  []Sheet // what lies on the faces, in the order it is glued

	Faces      []foldup.FaceReport
	Solids     []Solid
	Clearances []Fact // what is left between the contents and the case; their parts of one key, a word, stand in one column
	Tightest   string // what is to be known of the clearances, a sentence; may be empty
	Folded     []Fact // what the case measures as it is folded

	Spreads []Spread
	View    stage.View   // from where the whole is seen best
	Notes   []stage.Note // what is to be named on it
	Closeup *Closeup     // what is drawn larger; nil for nothing
}

// Sheet is a sort of piece that lies on faces.
type Sheet struct {
	Name  string
	Stuff stage.Stuff
}

// Sheets returns those of cloth and lining among some pieces.
func Sheets(pieces []geometry.Piece) (sheets []Sheet) {
	stuffs := map[geometry.Material]stage.Stuff{geometry.Cloth: stage.Cloth, geometry.Lining: stage.Lining}
	for _, p := range pieces {
		if stuff, ok := stuffs[p.Material.Like()]; ok {
			sheets = append(sheets, Sheet{p.Name, stuff})
		}
	}
	return sheets
}

// Solid is a board as it stands: an outline in a plane, counterclockwise for one who
// sees the plane's normal come toward them, and how thick it is behind the plane.
type Solid struct {
	Name    string
	Stuff   stage.Stuff // of what is seen of it beside its faces
	Frame   space.Frame
	Outline []geometry.Point
	Thick   Length
}

// Block returns the faces of a solid, as an object of a picture, the one of its outline
// first.
func (s Solid) Block(object string) []stage.Face {
	return stage.Block(object, geometry.Each(s.Outline, s.Frame.At), s.Frame.Normal().Mul(-s.Thick), s.Stuff, s.Stuff, s.Stuff)
}

// Spread is a page of faces drawn flat, row by row.
type Spread struct {
	Bookmark string // "Inside"
	Head     string // "The inside, each face as you see it when you look at it"
	Rows     [][]Cell
}

// Cell is a face in a row, with the part of the row's width that it has.
type Cell struct {
	Face geometry.Face
	Part Length
}

// Row returns a row of faces, all as broad.
func Row(faces ...geometry.Face) (row []Cell) {
	for _, f := range faces {
		row = append(row, Cell{f, 1 / Length(len(faces))})
	}
	return row
}

// Closeup is a corner that is drawn larger.
type Closeup struct {
	Title, Where string    // "Corner of the mouth", "left and tail"
	At           space.Vec // the corner, at the lower left of what is drawn
	Up           space.Vec // as high up as it must be in sight
	Along        space.Vec // the other end of the edge that goes to the right from it
	Note         string    // what it is called in the picture of the whole: "this corner"
}

// Sound tells whether nothing is wrong.
func (p Proof) Sound() bool { return len(p.Faults) == 0 }

// Fault notes what is wrong.
func (p *Proof) Fault(kind foldup.Kind, what string, args ...any) {
	p.Faults = append(p.Faults, foldup.Fault{Kind: kind, What: fmt.Sprintf(what, args...)})
}

// Compare notes a length that is less than it should be, or more than that and some play.
func (p *Proof) Compare(what string, is, want, play Length) {
	switch {
	case is < want-foldup.Sliver:
		p.Fault(foldup.Tight, "%s: %.3f mm is %.3f mm too little", what, is.MM(), (want - is).MM())
	case is > want+play+foldup.Sliver:
		p.Fault(foldup.Misfit, "%s: %.3f mm is %.3f mm too much", what, is.MM(), (is - want - play).MM())
	}
}

// CompareSize compares the three lengths of a size.
func (p *Proof) CompareSize(what string, is, want Size) {
	p.Compare(what+", height", is.Height, want.Height, 0)
	p.Compare(what+", width", is.Width, want.Width, 0)
	p.Compare(what+", thickness", is.Thickness, want.Thickness, 0)
}

// Problems returns what was found wrong. Job.Check names what a maker can change before
// it comes to this.
func (p Proof) Problems() (all job.Problems) {
	for _, f := range p.Faults {
		all = append(all, job.Problem{Key: "proof", Reason: f.String(), Fix: "change the lengths of the piece it names"})
	}
	return all
}

// Box returns the solid of an upright block between two corners.
func Box(name string, stuff stage.Stuff, a, b space.Vec) Solid {
	return Solid{
		Name:    name,
		Stuff:   stuff,
		Frame:   space.Frame{O: space.Vec{X: a.X, Y: a.Y, Z: b.Z}, U: space.Vec{X: 1}, V: space.Vec{Y: 1}},
		Outline: geometry.Rectangle(geometry.Bx(0, 0, b.X-a.X, b.Y-a.Y)).Flatten(1),
		Thick:   b.Z - a.Z,
	}
}

// Corners returns the corners of a solid.
func (s Solid) Corners() []space.Vec {
	var out []space.Vec
	back := s.Frame.Normal().Mul(-s.Thick)
	for _, q := range s.Outline {
		v := s.Frame.At(q)
		out = append(out, v, v.Add(back))
	}
	return out
}
