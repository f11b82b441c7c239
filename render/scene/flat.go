package scene

import (
	"fmt"
	"math"
	"slices"

	"forel/geometry"
	"forel/geometry/polygon"
)

// touching is how near two faces count as one on the other, in mm: a rounding,
// far below any thickness.
const touching = 5e-3

// thin is how far a corner must stand out to be one, in mm, and speck how broad a part
// must be on average to be drawn.
const (
	thin  Length = 1e-3
	speck Length = 0.02
)

// flatFace is a face as it is seen, if nothing hid it.
type flatFace struct {
	Face
	shape   polygon.Shape
	corners []geometry.Point // counterclockwise
	convex  bool
	box     geometry.Box
	a       Length // how near the viewer it is: a + b*x + c*y
	b, c    Length
	plane   string
	look    Look
	light   float64
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
	if facing.Abs() < 1e-3 {
		return flatFace{}, false
	}
	pts := make([]geometry.Point, len(f.Points))
	for i, p := range f.Points {
		pts[i] = v.Flat(p)
	}
	s := polygon.Of(pts)
	if len(s) == 0 {
		return flatFace{}, false
	}
	d := n.Dot(f.Points[0])
	side := Length(1)
	if facing < 0 {
		side = -1
	}
	return flatFace{
		Face: f, shape: s, corners: s[0].Rings[0], convex: polygon.Surrounds(s[0].Rings[0], s[0].Rings[0], thin), box: s.Bounds(), look: look,
		a: d / facing, b: -n.Dot(v.right) / facing, c: -n.Dot(v.up) / facing,
		plane: fmt.Sprintf("%.3f %.3f %.3f %.2f", side*n.X+0, side*n.Y+0, side*n.Z+0, side*d+0),
		light: v.light(n.Mul(side)),
	}, true
}

// light returns how bright a face is, from 0 to 1: what looks up is brightest,
// what looks to the right of the page darkest.
func (v View) light(n Vec) float64 {
	up, right := n.Dot(v.up), n.Dot(v.right)
	return max(0, min(1, 0.62+0.38*up.MM()-0.42*right.MM()))
}

// nearest returns the least and the most that g is nearer the viewer than f at some
// points.
func (f *flatFace) nearest(g *flatFace, points []geometry.Point) (least, most Length) {
	least, most = Length(math.Inf(1)), Length(math.Inf(-1))
	for _, p := range points {
		d := f.nearer(g, p)
		least, most = min(least, d), max(most, d)
	}
	return least, most
}

func (f *flatFace) nearer(g *flatFace, p geometry.Point) Length {
	return g.a - f.a + (g.b-f.b)*p.X + (g.c-f.c)*p.Y
}

// behindOne tells whether one other face hides all of a face.
func (f *flatFace) behindOne(others []*flatFace) bool {
	return slices.ContainsFunc(others, func(g *flatFace) bool {
		if g == f || !g.convex || !g.box.Contains(f.box) {
			return false
		}
		least, _ := f.nearest(g, f.corners)
		return least > touching && polygon.Surrounds(g.corners, f.corners, 0)
	})
}

// behind returns what is seen of a face in a window behind others; ok is false where
// that can't be worked out.
func (f *flatFace) behind(others []*flatFace, window geometry.Box) (rest polygon.Shape, ok bool) {
	rest, ok = f.shape, true
	if !window.Contains(f.box) {
		var err error
		rest, err = polygon.Meet(rest, polygon.Box(window))
		ok = err == nil
	}
	var before []polygon.Shape
	for _, g := range others {
		h, err := f.hider(g)
		before, ok = append(before, h), ok && err == nil
	}
	rest, err := polygon.Without(rest, before...)
	return rest.Broader(speck), ok && err == nil
}

// hider returns the part of a face that is before another and may hide a part of it.
func (f *flatFace) hider(g *flatFace) (polygon.Shape, error) {
	both := f.box.Intersect(g.box)
	if g == f || both.Empty() || polygon.Apart(f.corners, g.corners, thin) {
		return nil, nil
	}
	least, most := f.nearest(g, geometry.Rectangle(both).Flatten(1))
	switch {
	case most <= touching && least >= -touching: // one lies on the other
		if g.Layer <= f.Layer {
			return nil, nil
		}
		return g.shape, nil
	case most <= touching:
		return nil, nil
	case least > touching:
		return g.shape, nil
	}
	before := func(p geometry.Point) Length { return f.nearer(g, p) - touching }
	if g.convex {
		part := polygon.Clip(g.corners, before)
		if len(part) < 3 || polygon.Apart(f.corners, part, thin) {
			return nil, nil
		}
		return polygon.Of(part), nil
	}
	half := polygon.Clip(geometry.Rectangle(both.Grow(1)).Flatten(1), before)
	if len(half) < 3 {
		return nil, nil
	}
	return polygon.Meet(g.shape, polygon.Of(half))
}
