package bed_test

import (
	"context"
	"fmt"

	"forel/geometry"
	"forel/paper/bed"
	"forel/paper/pack"
)

func ExampleLay() {
	side := geometry.Piece{Name: "side", Material: geometry.Board, Count: 2, Grain: geometry.GrainHeight,
		Outline: geometry.Rectangle(geometry.Bx(0, 0, 150, 220))}
	s := bed.Default()
	s.Width, s.Height, s.Kerf = 600, 300, 0.2
	beds, err := bed.Lay(context.Background(), s, []bed.Job{{Pieces: []geometry.Piece{side}}}, pack.Effort{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range beds[0].Parts {
		b := p.Cut.Bounds()
		fmt.Printf("%s: %.1f x %.1f mm\n", p.Name(), b.Width().MM(), b.Height().MM())
	}
	// Output:
	// side 1 of 2: 150.2 x 220.2 mm
	// side 2 of 2: 150.2 x 220.2 mm
}
