package offset_test

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/offset"
)

// A beam with a kerf of 0.2 mm is led 0.1 mm outside the piece.
func ExampleOutward() {
	board := geometry.Rectangle(geometry.Bx(0, 0, 150, 220))
	r, err := offset.Outward(board, 0.1)
	if err != nil {
		fmt.Println(err)
		return
	}
	b := r.Path.Bounds()
	fmt.Printf("%.1f x %.1f mm\n", b.Width().MM(), b.Height().MM())
	// Output: 150.2 x 220.2 mm
}
