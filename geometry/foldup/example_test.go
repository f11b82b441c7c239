package foldup_test

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/space"
)

// A board of 60 x 100 x 2 mm whose outside and right edge are to be covered, and a
// cloth that is folded up over that edge: 2 mm are enough; of 1 mm, a strip of 1 x 100 mm
// is left bare, its middle half way along the edge and 1.5 mm up.
func ExampleBody_Cover() {
	x, y, z := space.Vec{X: 1}, space.Vec{Y: 1}, space.Vec{Z: 1}
	outside := foldup.Surface{Face: "outside", Frame: space.Frame{U: x, V: y}, Normal: z.Mul(-1), Extent: geometry.Bx(0, 0, 60, 100), Plane: 0}
	edge := foldup.Surface{Face: "right edge", Frame: space.Frame{O: space.Vec{X: 60}, U: y, V: z}, Normal: x, Extent: geometry.Bx(0, 0, 100, 2), Plane: 1}
	outside.Cover, edge.Cover = outside.Outline(), edge.Outline()
	board := foldup.Body{
		Surfaces: []foldup.Surface{outside, edge},
		Corners:  map[geometry.Corner]space.Vec{"tail": {}, "head": {Y: 100}},
	}
	for _, turned := range []foldup.Length{2, 1} {
		cloth := geometry.Piece{
			Name: "cloth", Count: 1,
			Outline: geometry.Rectangle(geometry.Bx(0, 0, 60+turned, 100)),
			Folds:   []geometry.Path{geometry.Line(geometry.Pt(60, 0), geometry.Pt(60, 100))},
			Seats: []geometry.Seat{{Face: "outside", At: [2]geometry.Anchor{
				{At: geometry.Pt(0, 0), On: "tail"}, {At: geometry.Pt(0, 100), On: "head"},
			}}},
		}
		covered, faults := board.Cover([]geometry.Piece{cloth}, func(geometry.Piece) foldup.Length { return 0.35 })
		_, found := covered.Look([]geometry.Piece{cloth})
		fmt.Println(turned, "mm:", append(faults, found...))
	}
	// Output:
	// 2 mm: []
	// 1 mm: [bare: 100.0 mm² of board is left bare, right edge, about 50.0, 1.5 mm]
}
