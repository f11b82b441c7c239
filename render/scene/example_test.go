package scene_test

import (
	"fmt"

	"forel/render/scene"
)

// A sheet before another: what it hides is taken out.
func ExampleSee() {
	near := scene.Face{Object: "near", Points: []scene.Vec{{Z: 20}, {X: 10, Z: 20}, {X: 10, Y: 10, Z: 20}, {Y: 10, Z: 20}}}
	far := scene.Face{Object: "far", Points: []scene.Vec{{}, {X: 20}, {X: 20, Y: 10}, {Y: 10}}}
	seen := scene.See([]scene.Face{near, far}, scene.From(scene.Vec{Z: 1}, scene.Vec{Y: 1}))
	for _, o := range seen.Objects {
		fmt.Printf("%s: %.0f mm²\n", o.Name, o.Shape.Size())
	}
	// Output:
	// near: 100 mm²
	// far: 100 mm²
}
