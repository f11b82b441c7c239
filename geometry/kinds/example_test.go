package kinds_test

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
)

// The boards of an invented book of 221 x 148.5 x 32 mm. A lined board is 2 + 0.15 mm
// thick and the room is 2, 1 and 2 mm, so that a side is 148.5 + 1 + 2.15 mm by
// 221 + 2 + 2 x 2.15 mm.
func ExampleFind() {
	kind, _ := kinds.Find("slipcase", "boards")
	j := kind.New(geometry.MM)
	j.Shared().Books = []job.Book{{Height: job.Readings{221}, Width: job.Readings{148.5}, Thickness: job.Readings{32}}}
	sound, refused, _ := j.Check()
	if len(refused) > 0 {
		fmt.Println(refused)
		return
	}
	p, err := sound.Make()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, piece := range p.Pieces {
		if piece.Material == geometry.Board {
			w, h := piece.Size()
			fmt.Printf("%d %s: %.2f x %.2f mm\n", piece.Count, piece.Name, w, h)
		}
	}
	// Output:
	// 2 side: 151.65 x 227.30 mm
	// 1 spine wall: 34.00 x 227.30 mm
	// 1 head wall: 149.50 x 34.00 mm
	// 1 tail wall: 149.50 x 34.00 mm
}
