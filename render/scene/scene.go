package scene

import (
	"fmt"
	"math"

	"forel/geometry"
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

// touching is how near two faces count as one on the other, in mm: a rounding,
// far below any thickness.
const touching = 5e-3

// flatFace is a face as it is seen, if nothing hid it.
type flatFace struct {
	Face
	shape   Region
	corners []geometry.Point
	convex  convex // nil where it has inward corners
	box     geometry.Box
	a, b, c float64 // how near the viewer it is: a + b*x + c*y
	plane   string
	look    Look
	light   float64
}

// nearer gives how much nearer the viewer g is than f, at a place on the page.
func (f *flatFace) nearer(g *flatFace, p geometry.Point) float64 {
	return g.a - f.a + (g.b-f.b)*float64(p.X) + (g.c-f.c)*float64(p.Y)
}

// nearest gives the least and the most of nearer at some points.
func (f *flatFace) nearest(g *flatFace, points []geometry.Point) (least, most float64) {
	least, most = math.Inf(1), math.Inf(-1)
	for _, p := range points {
		d := f.nearer(g, p)
		least, most = min(least, d), max(most, d)
	}
	return least, most
}

// seenFlat projects a face; ok is false where it is not seen.
func (v View) seenFlat(f Face) (flatFace, bool) {
	n := f.normal()
	facing := n.Dot(v.toward)
	look := f.Front
	if facing < 0 {
		if f.Back == nil {
			return flatFace{}, false
		}
		look = *f.Back
	}
	if math.Abs(facing) < 1e-3 {
		return flatFace{}, false
	}
	pts := make([]geometry.Point, len(f.Points))
	for i, p := range f.Points {
		pts[i] = v.Flat(p)
	}
	s := polygonOf(pts)
	if s == nil {
		return flatFace{}, false
	}
	d := n.Dot(f.Points[0])
	side := 1.0
	if facing < 0 {
		side = -1
	}
	return flatFace{
		Face: f, shape: s, corners: pts, convex: convexOf(pts), box: s.Bounds(), look: look,
		a: d / facing, b: -n.Dot(v.right) / facing, c: -n.Dot(v.up) / facing,
		plane: fmt.Sprintf("%.3f %.3f %.3f %.2f", side*n.X+0, side*n.Y+0, side*n.Z+0, side*d+0),
		light: v.light(n.Mul(side)),
	}, true
}

// light gives how bright a face is, from 0 to 1: what looks up is brightest,
// what looks to the right of the page darkest.
func (v View) light(n Vec) float64 {
	up, right := n.Dot(v.up), n.Dot(v.right)
	return max(0, min(1, 0.62+0.38*up-0.42*right))
}

// hidden gives what hides a part of f behind g, in the plane of the view: a shape,
// and its outline where that is convex.
func (s *Seen) hidden(f, g *flatFace) (Region, convex, bool) {
	both := f.box.Intersect(g.box)
	if both.Empty() || f.convex != nil && g.convex != nil && f.convex.apart(g.convex) {
		return nil, nil, false
	}
	least, most := f.nearest(g, []geometry.Point{both.Min, {X: both.Max.X, Y: both.Min.Y}, both.Max, {X: both.Min.X, Y: both.Max.Y}})
	switch {
	case most <= touching && least >= -touching: // one lies on the other
		return g.shape, g.convex, g.Layer > f.Layer
	case most <= touching:
		return nil, nil, false
	case least > touching:
		return g.shape, g.convex, true
	}
	before := func(p geometry.Point) float64 { return f.nearer(g, p) - touching }
	if g.convex != nil {
		part := clipped(g.convex, before)
		if len(part) < 3 || f.convex != nil && f.convex.apart(part) {
			return nil, nil, false
		}
		return polygonOf(part), part, true
	}
	half := clipped(geometry.Rectangle(both.Grow(1)).Flatten(1), before)
	if len(half) < 3 {
		return nil, nil, false
	}
	part, ok := meet(g.shape, polygonOf(half))
	if !ok {
		s.unworked++
	}
	return part, nil, ok
}
