// Package draft has what the stages of several kinds of case share: books, sheets
// and boards on a bench, pieces that are being folded, and the arrows of what
// moves.
package draft

import "forel/geometry/stage"

// FromAbove looks straight down on a bench: X to the right, Y away, Z up.
func FromAbove() stage.View { return stage.View{Toward: stage.Vec{Z: 1}, Up: stage.Vec{Y: 1}} }

// OnBench looks down at a bench at an angle, from before it and a pitch in degrees
// above: X to the right, Y away, Z up.
func OnBench(pitch float64) stage.View {
	return stage.View{Toward: stage.Vec{Y: -1}, Up: stage.Vec{Z: 1}, Yaw: 22, Pitch: pitch}
}

// Slab returns a block on a bench.
func Slab(object string, x, y, z, wide, deep, thick Length, s stage.Stuff) []stage.Face {
	return stage.Box(object, stage.Vec{X: x, Y: y, Z: z}, stage.Vec{X: x + wide, Y: y + deep, Z: z + thick}, s)
}

// Flat returns a flat sheet on a bench, of one stuff on both sides.
func Flat(object string, x, y, z, wide, deep Length, s stage.Stuff) stage.Face {
	return stage.Face{Object: object, Name: object, Front: s, Back: s, Grain: stage.Vec{Y: 1}, Points: []stage.Vec{
		{X: x, Y: y, Z: z}, {X: x + wide, Y: y, Z: z}, {X: x + wide, Y: y + deep, Z: z}, {X: x, Y: y + deep, Z: z},
	}}
}

// Corners returns the corners of an upright box between two of them.
func Corners(a, b stage.Vec) []stage.Vec {
	var out []stage.Vec
	for _, x := range []Length{a.X, b.X} {
		for _, y := range []Length{a.Y, b.Y} {
			for _, z := range []Length{a.Z, b.Z} {
				out = append(out, stage.Vec{X: x, Y: y, Z: z})
			}
		}
	}
	return out
}

// Down returns an arrow for each place, from a lift away onto it.
func Down(lift stage.Vec, places ...stage.Vec) []stage.Arrow {
	var out []stage.Arrow
	for _, p := range places {
		out = append(out, stage.Arrow{Path: []stage.Vec{p.Add(lift.Mul(0.85)), p.Add(lift.Mul(0.12))}})
	}
	return out
}
