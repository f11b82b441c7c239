package scene

import (
	"forel/render"
	"forel/render/shape"
)

// Look is how a face is drawn.
type Look struct {
	Tint  render.Color
	Hatch []shape.Hatch // angles are from the direction of the face's Grain
}

// Face is a flat face with a straight-edged outline.
type Face struct {
	Object string // faces of one object share an outline
	Name   string // what can be asked for with Seen.Spot
	Points []Vec  // the outline; counterclockwise for one who sees its front
	Grain  Vec    // the direction its hatching goes by; none: the page's
	Front  Look
	Back   *Look // from behind; nil: it is the face of a block and not seen from there
	Layer  int   // of faces in one plane the higher hides the lower
	Lines  []Line
}

// Line is drawn on a face, where that is seen.
type Line struct {
	Points []Vec
	Stroke render.Stroke
}

// Block gives the faces of a block: an outline, counterclockwise for one who
// looks against depth, pushed back along depth. top is the look of the outline's
// face, bottom that of the face behind, edge that of the others.
func Block(object string, outline []Vec, depth Vec, top, bottom, edge Look) []Face {
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

// Box gives the faces of an upright block between two corners.
func Box(object string, a, b Vec, l Look) []Face {
	outline := []Vec{{a.X, a.Y, b.Z}, {b.X, a.Y, b.Z}, {b.X, b.Y, b.Z}, {a.X, b.Y, b.Z}}
	faces := Block(object, outline, Vec{Z: a.Z - b.Z}, l, l, l)
	for i := range faces {
		faces[i].Name = object
	}
	return faces
}

// Moved gives faces moved by a step.
func Moved(faces []Face, by Vec) []Face {
	shift := func(in []Vec) []Vec {
		out := make([]Vec, len(in))
		for i, p := range in {
			out[i] = p.Add(by)
		}
		return out
	}
	out := make([]Face, len(faces))
	for i, f := range faces {
		f.Points = shift(f.Points)
		lines := make([]Line, len(f.Lines))
		for k, l := range f.Lines {
			lines[k] = Line{shift(l.Points), l.Stroke}
		}
		f.Lines = lines
		out[i] = f
	}
	return out
}

// normal gives the way a face looks.
func (f Face) normal() Vec {
	var n Vec
	for i, p := range f.Points {
		n = n.Add(p.Cross(f.Points[(i+1)%len(f.Points)]))
	}
	if n.Size() == 0 {
		return Vec{}
	}
	return n.Unit()
}
