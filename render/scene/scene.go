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

// normal returns the way a face looks.
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
