// Package walled has the five walls of a case that is open at its mouth: their faces, and
// how they stand. X runs from left to right, Y from tail to head, Z from spine to mouth.
package walled

import (
	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/space"
)

// The faces of the five walls. Left and right are as seen by someone looking into
// the mouth with the head up.
const (
	LeftOutside  geometry.Face = "outside of the left side"
	RightOutside geometry.Face = "outside of the right side"
	SpineOutside geometry.Face = "outside of the spine wall"
	HeadOutside  geometry.Face = "outside of the head wall"
	TailOutside  geometry.Face = "outside of the tail wall"
	LeftInside   geometry.Face = "inside of the left side"
	RightInside  geometry.Face = "inside of the right side"
	SpineInside  geometry.Face = "inside of the spine wall"
	HeadInside   geometry.Face = "inside of the head wall"
	TailInside   geometry.Face = "inside of the tail wall"
)

// What lies beyond the edges of a side, seen from the left and from the right.
var (
	SideFromLeft  = foldup.Beyond{Left: "spine", Right: "mouth", Top: "head", Bottom: "tail"}
	SideFromRight = foldup.Beyond{Left: "mouth", Right: "spine", Top: "head", Bottom: "tail"}
)

// Outside returns the outsides of the walls of a case between two corners: that at left,
// tail and spine, and the one across from it.
func Outside(low, high space.Vec) []foldup.Surface {
	x, y, z := space.Vec{X: 1}, space.Vec{Y: 1}, space.Vec{Z: 1}
	wall := func(face geometry.Face, board string, o, u, v, n space.Vec, beyond foldup.Beyond) foldup.Surface {
		return foldup.Surface{Face: face, Board: board, Frame: space.Frame{O: o, U: u, V: v}, Normal: n,
			Extent: geometry.Bx(low.Dot(u), low.Dot(v), high.Dot(u), high.Dot(v)), Beyond: beyond}
	}
	level := foldup.Beyond{Left: "left side", Right: "right side", Top: "spine", Bottom: "mouth"}
	out := []foldup.Surface{
		wall(LeftOutside, "left side", space.Vec{X: low.X}, z, y, x.Mul(-1), SideFromLeft),
		wall(RightOutside, "right side", space.Vec{X: high.X}, z, y, x, SideFromRight),
		wall(SpineOutside, "spine wall", space.Vec{Z: low.Z}, x, y, z.Mul(-1), foldup.Beyond{Left: "right side", Right: "left side", Top: "head", Bottom: "tail"}),
		wall(HeadOutside, "head wall", space.Vec{Y: high.Y}, x, z, y, level),
		wall(TailOutside, "tail wall", space.Vec{Y: low.Y}, x, z, y.Mul(-1), turned(level)),
	}
	for i := range out {
		out[i].Plane = i
	}
	return out
}

// Inside returns the insides of the walls about a room between two corners.
func Inside(low, high space.Vec) []foldup.Surface {
	out := Outside(low, high)
	for i, face := range []geometry.Face{LeftInside, RightInside, SpineInside, HeadInside, TailInside} {
		s := &out[i]
		s.Face, s.Normal, s.Inside = face, s.Normal.Mul(-1), true
		s.Beyond = turned(s.Beyond)
	}
	return out
}

// turned returns what lies beyond the edges of a face seen from its other side: a level
// one by somebody who has gone round it, with left and right where they were.
func turned(b foldup.Beyond) foldup.Beyond {
	if b.Top == "head" {
		b.Left, b.Right = b.Right, b.Left
	} else {
		b.Top, b.Bottom = b.Bottom, b.Top
	}
	return b
}
