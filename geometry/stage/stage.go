// Package stage describes a moment of the work: boards, sheets and books as they
// lie in space, where they are seen from, and what is to be noticed. A kind of
// case makes stages; a renderer draws them and decides only how a stuff looks.
package stage

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/space"
	"forel/geometry/wording"
)

// Vec is a place or a step in space, in millimetres.
type Vec = space.Vec

// Stuff is what a surface is made of, so that a renderer can choose its look.
type Stuff string

// The stuffs of surfaces. Back is the side of a covering that is glued.
const (
	None       Stuff = "" // not seen from there
	Board      Stuff = "board"
	Lining     Stuff = "lining"
	Cloth      Stuff = "cloth"
	ClothBack  Stuff = "back of cloth"
	Paper      Stuff = "paper"
	PaperBack  Stuff = "back of paper"
	Card       Stuff = "card, outside"
	CardInside Stuff = "card, inside"
	Cover      Stuff = "cover of a book"
	Pages      Stuff = "pages of a book"
	Blank      Stuff = "blank" // release paper, a template
)

// Face is a flat face with a straight-edged outline.
type Face struct {
	Object string // faces of one object share an outline
	Name   string // what a note can point at
	Points []Vec  // the outline; counterclockwise for one who sees its front
	Grain  Vec    // the direction its hatching runs in; zero: the page's
	Front  Stuff
	Back   Stuff // from behind; None: it is the face of a block and not seen from there
	Plain  bool  // it is not what the picture is about, and is drawn without hatching
	Layer  int   // of faces in one plane the higher hides the lower
	Lines  []Line
}

// LineKind tells what a line on a face is.
type LineKind int

// Kinds of lines on faces.
const (
	Fold LineKind = iota // a fold not made yet, or a ruled line: dashed
	Slit                 // a cut
	Thin                 // a line of a printed design
)

// Line is drawn on a face, where that is seen.
type Line struct {
	Points []Vec
	Kind   LineKind
}

// View is where a stage is seen from: Toward is the way from what is seen to
// the viewer before they move, Up what stands upright for them. They then stand
// Yaw degrees to the right and Pitch degrees above.
type View struct {
	Toward, Up Vec
	Yaw, Pitch float64
}

// Say is a sentence or a label with lengths in it, each at a %s; a percent sign
// of its own is doubled.
type Say struct {
	Text    string
	Lengths []space.Length
}

// Sentence returns the words with a capital and a full stop.
func (s Say) Sentence() Say {
	s.Text = wording.Sentence(s.Text)
	return s
}

// In returns the words with every length as round writes it.
func (s Say) In(round func(space.Length) string) string {
	args := make([]any, len(s.Lengths))
	for i, l := range s.Lengths {
		args[i] = round(l)
	}
	return fmt.Sprintf(s.Text, args...)
}

// Words returns a Say.
func Words(text string, lengths ...space.Length) Say { return Say{text, lengths} }

// Note is words with a line to a place: one in space, or where most is seen of
// the faces with a name.
type Note struct {
	Name, More Say
	Spot       string
	At         Vec
}

// Arrow shows a movement.
type Arrow struct {
	Path []Vec
	Twin bool // a head at both ends: a measure
}

// Picture is one picture of a step.
type Picture struct {
	Faces   []Face
	View    View
	Fresh   []string // objects to be noticed
	Focus   []Vec    // what must be seen; nil: everything
	Notes   []Note
	Arrows  []Arrow
	Caption Say
}

// Block returns the faces of a block: an outline, counterclockwise for one who
// looks against depth, pushed back along depth. top is the stuff of the
// outline's face, bottom that of the face behind, edge that of the others.
func Block(object string, outline []Vec, depth Vec, top, bottom, edge Stuff) []Face {
	n := len(outline)
	front, back := Face{Object: object, Name: object, Points: outline, Front: top}, Face{Object: object, Name: object, Front: bottom}
	for i := range outline {
		back.Points = append(back.Points, outline[n-1-i].Add(depth))
	}
	faces := []Face{front, back}
	for i, p := range outline {
		q := outline[(i+1)%n]
		faces = append(faces, Face{Object: object, Name: object + ", edge", Points: []Vec{q, p, p.Add(depth), q.Add(depth)}, Front: edge})
	}
	return faces
}

// Box returns the faces of an upright block between two corners.
func Box(object string, a, b Vec, s Stuff) []Face {
	outline := []Vec{{X: a.X, Y: a.Y, Z: b.Z}, {X: b.X, Y: a.Y, Z: b.Z}, {X: b.X, Y: b.Y, Z: b.Z}, {X: a.X, Y: b.Y, Z: b.Z}}
	faces := Block(object, outline, Vec{Z: a.Z - b.Z}, s, s, s)
	for i := range faces {
		faces[i].Name = object
	}
	return faces
}

// Placed returns faces elsewhere: at tells where a place comes to lie. It must not mirror.
func Placed(faces []Face, at func(Vec) Vec) []Face {
	return geometry.Each(faces, func(f Face) Face {
		f.Points = geometry.Each(f.Points, at)
		f.Lines = geometry.Each(f.Lines, func(l Line) Line { return Line{geometry.Each(l.Points, at), l.Kind} })
		if f.Grain != (Vec{}) {
			f.Grain = at(f.Grain).Sub(at(Vec{}))
		}
		return f
	})
}

// Moved returns faces moved by a step.
func Moved(faces []Face, by Vec) []Face { return Placed(faces, by.Add) }
