package scene_test

import (
	"fmt"

	"forel/render/scene"
)

// A block before another: what it hides is taken out.
func ExampleSee() {
	near := scene.Box("near", scene.Vec{X: 0, Y: 0, Z: 20}, scene.Vec{X: 10, Y: 10, Z: 30}, scene.Look{})
	far := scene.Box("far", scene.Vec{}, scene.Vec{X: 20, Y: 10, Z: 10}, scene.Look{})
	seen := scene.See(append(near, far...), scene.From(scene.Vec{Z: 1}, scene.Vec{Y: 1}))
	for _, o := range seen.Objects {
		fmt.Printf("%s: %.0f mm²\n", o.Name, o.Shape.Size())
	}
	// Output:
	// near: 100 mm²
	// far: 100 mm²
}
