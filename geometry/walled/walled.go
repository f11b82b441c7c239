// Package walled has the five walls of a case that is open at its mouth: their faces, and
// how their outsides stand.
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

// Outside returns the outsides of the walls of a case, each in a plane of its own. X runs
// from left to right, Y from tail to head, Z from spine to mouth, from the outer corner at
// left, tail and spine; to is the corner across from it.
func Outside(to space.Vec) []foldup.Surface {
	x, y, z := space.Vec{X: 1}, space.Vec{Y: 1}, space.Vec{Z: 1}
	wall := func(face geometry.Face, board string, o, u, v, n space.Vec, beyond foldup.Beyond) foldup.Surface {
		return foldup.Surface{Face: face, Board: board, Frame: space.Frame{O: o, U: u, V: v}, Normal: n,
			Extent: geometry.Bx(0, 0, to.Dot(u), to.Dot(v)), Beyond: beyond}
	}
	out := []foldup.Surface{
		wall(LeftOutside, "left side", space.Vec{}, z, y, x.Mul(-1), SideFromLeft),
		wall(RightOutside, "right side", space.Vec{X: to.X}, z, y, x, SideFromRight),
		wall(SpineOutside, "spine wall", space.Vec{}, x, y, z.Mul(-1), foldup.Beyond{Left: "right side", Right: "left side", Top: "head", Bottom: "tail"}),
		wall(HeadOutside, "head wall", space.Vec{Y: to.Y}, x, z, y, foldup.Beyond{Left: "left side", Right: "right side", Top: "spine", Bottom: "mouth"}),
		wall(TailOutside, "tail wall", space.Vec{}, x, z, y.Mul(-1), foldup.Beyond{Left: "left side", Right: "right side", Top: "mouth", Bottom: "spine"}),
	}
	for i := range out {
		out[i].Plane = i
	}
	return out
}
