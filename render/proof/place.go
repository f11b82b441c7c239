package proof

import (
	"strings"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
)

// place is where a face lies in the case, and how it is seen by someone who
// looks straight at it.
type place struct {
	face         geometry.Face
	origin       foldup.Vec
	along, up    foldup.Vec // X and Y of the face's own coordinates
	normal       foldup.Vec // out of the board
	flipX, flipY bool       // seen from in front, X runs left or Y runs down
	// What lies beyond each edge as it is seen.
	left, right, top, bottom string
}

// placesOf lists the faces of a case. The case stands on its tail: X from left
// to right, Y from tail to head, Z from spine to mouth.
func placesOf(c foldup.Carcass) []place {
	s, w, h, d := c.Lined, c.Width, c.Height, c.Depth
	x, y, z := foldup.Vec{X: 1}, foldup.Vec{Y: 1}, foldup.Vec{Z: 1}
	neg := func(v foldup.Vec) foldup.Vec { return foldup.Vec{X: -v.X, Y: -v.Y, Z: -v.Z} }
	mouth := foldup.Vec{Z: d}
	return []place{
		{geometry.LeftOutside, foldup.Vec{}, z, y, neg(x), false, false, "spine", "mouth", "head", "tail"},
		{geometry.RightOutside, foldup.Vec{X: w}, z, y, x, true, false, "mouth", "spine", "head", "tail"},
		{geometry.SpineOutside, foldup.Vec{}, x, y, neg(z), true, false, "right side", "left side", "head", "tail"},
		{geometry.HeadOutside, foldup.Vec{Y: h}, x, z, y, false, true, "left side", "right side", "spine", "mouth"},
		{geometry.TailOutside, foldup.Vec{}, x, z, neg(y), false, false, "left side", "right side", "mouth", "spine"},
		{geometry.LeftMouth, mouth, x, y, z, false, false, "outside", "inside", "head", "tail"},
		{geometry.RightMouth, mouth, x, y, z, false, false, "inside", "outside", "head", "tail"},
		{geometry.HeadMouth, mouth, x, y, z, false, false, "left side", "right side", "outside", "inside"},
		{geometry.TailMouth, mouth, x, y, z, false, false, "left side", "right side", "inside", "outside"},
		{geometry.LeftInside, foldup.Vec{X: s}, z, y, x, true, false, "mouth", "spine", "head", "tail"},
		{geometry.RightInside, foldup.Vec{X: w - s}, z, y, neg(x), false, false, "spine", "mouth", "head", "tail"},
		{geometry.SpineInside, foldup.Vec{Z: s}, x, y, z, false, false, "left side", "right side", "head", "tail"},
		{geometry.HeadInside, foldup.Vec{Y: h - s}, x, z, neg(y), false, false, "left side", "right side", "mouth", "spine"},
		{geometry.TailInside, foldup.Vec{Y: s}, x, z, y, false, true, "left side", "right side", "spine", "mouth"},
	}
}

// placeOf gives the place of one face; ok is false for a face no case has.
func placeOf(c foldup.Carcass, face geometry.Face) (place, bool) {
	for _, p := range placesOf(c) {
		if p.face == face {
			return p, true
		}
	}
	return place{}, false
}

// at gives where a point of the face lies in the case.
func (p place) at(q geometry.Point) foldup.Vec {
	return foldup.Vec{
		X: p.origin.X + p.along.X*q.X + p.up.X*q.Y,
		Y: p.origin.Y + p.along.Y*q.X + p.up.Y*q.Y,
		Z: p.origin.Z + p.along.Z*q.X + p.up.Z*q.Y,
	}
}

// board names the board a face belongs to: "the left side", "the head wall".
func board(f geometry.Face) string {
	_, name, ok := strings.Cut(string(f), " of ")
	if !ok {
		return string(f)
	}
	return name
}

// mouthEdge tells whether a face is an edge of board at the mouth.
func mouthEdge(f geometry.Face) bool {
	switch f {
	case geometry.LeftMouth, geometry.RightMouth, geometry.HeadMouth, geometry.TailMouth:
		return true
	}
	return false
}

// reach gives how far a layer on an inside face reaches into the case from the
// mouth, and whether it comes from there: on the faces beside the mouth one
// axis runs from spine to mouth.
func (f face) reach(l foldup.Layer) (Length, bool) {
	if !f.Inside {
		return 0, false
	}
	b := polygon.Bounds(l.Shape)
	switch {
	case f.place.along.Z == 1:
		return f.Extent.Max.X - b.Min.X, true
	case f.place.up.Z == 1:
		return f.Extent.Max.Y - b.Min.Y, true
	}
	return 0, false
}
