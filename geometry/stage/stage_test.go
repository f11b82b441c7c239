package stage_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/geometry/stage"
)

// The faces of a block look outward: its volume by them is that of the block.
func TestBlockLooksOutward(t *testing.T) {
	var six float64
	for _, f := range stage.Box("box", stage.Vec{X: 1, Y: 2, Z: 3}, stage.Vec{X: 4, Y: 6, Z: 8}, stage.Board) {
		for i := 1; i+1 < len(f.Points); i++ {
			six += f.Points[0].Dot(f.Points[i].Cross(f.Points[i+1])).MM()
		}
	}
	assert.InDelta(t, 3*4*5, six/6, 1e-9)
}
