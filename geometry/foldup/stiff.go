package foldup

import (
	"cmp"
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/polygon"
	"forel/geometry/space"
)

// inLayers puts the stiff parts of a wall in order from the inside out, each with the
// number of its layer, from 0.
func (r *FaceReport) inLayers() {
	deep := func(p Patch) Length { return p.Depth.Round(Sliver) }
	slices.SortStableFunc(r.Layers, func(a, b Patch) int { return cmp.Compare(deep(b), deep(a)) })
	layer := 0
	for i := range r.Layers {
		if i > 0 && r.Layers[i-1].Depth-r.Layers[i].Depth > Sliver {
			layer++
		}
		r.Layers[i].Order = layer
	}
}

// inOnePlace finds stiff parts that share room. Two that a fold joins may share what it
// squeezes.
func (c Covered) inOnePlace() []Fault {
	var out []Fault
	for i, a := range c.Patches {
		for _, b := range c.Patches[i+1:] {
			if a.on != b.leaf && b.on != a.leaf && Solid(Meet(c.within(a, b), b.Shape), Sliver) {
				out = append(out, Fault{Kind: Collision, Piece: b.Piece, What: fmt.Sprintf("the %s and the %s are in one place", a.Name(), b.Name())})
			}
		}
	}
	return out
}

// within returns what of a stiff part lies within the thickness of another, which lies
// alike or square to it, in the coordinates of the face that the other lies on.
func (c Covered) within(a, b Patch) polygon.Shape {
	on, other := c.plane(a.Plane)[0], c.plane(b.Plane)[0]
	place := func(p geometry.Point, depth Length) space.Vec { return on.Frame.At(p).Sub(on.Normal.Mul(depth)) }
	// off tells how far a place is from the middle of the other's thickness.
	off := func(v space.Vec) Length { return other.Frame.O.Sub(v).Dot(other.Normal) - b.Depth + b.Thick/2 }
	if on.Normal.Dot(other.Normal).Abs() > 0.5 {
		if off(place(geometry.Point{}, a.Depth-a.Thick/2)).Abs() > (a.Thick+b.Thick)/2-Sliver {
			return nil
		}
		return a.Shape.Moved(func(p geometry.Point) geometry.Point { return other.Frame.Flat(place(p, 0)) })
	}
	var out []polygon.Shape
	for _, area := range a.Shape {
		ring := area.Rings[0]
		for _, side := range []Length{1, -1} {
			ring = polygon.Clip(ring, func(p geometry.Point) Length { return (b.Thick-Sliver)/2 - side*off(place(p, 0)) })
		}
		var corners []geometry.Point
		for _, p := range ring {
			corners = append(corners, other.Frame.Flat(place(p, a.Depth)), other.Frame.Flat(place(p, a.Depth-a.Thick)))
		}
		if len(corners) > 0 {
			out = append(out, polygon.Box(geometry.Around(corners...)))
		}
	}
	return United(out)
}
