package geometry_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"forel/geometry"
)

// Stripes every 18 mm, one of them 5 mm from the left edge.
func ExampleRepeat_Lines() {
	r := geometry.Repeat{Across: 18, First: geometry.Pt(5, 0), AtX: true}
	xs, _ := r.Lines(geometry.Bx(0, 0, 50, 80))
	fmt.Println(xs)
	// Output: [5 23 41]
}

// Lines are a repeat apart, none is missed, and all are whole repeats from the
// first.
func TestRepeatLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.Float64Range(0.5, 300).Draw(t, "step")
		first := rapid.Float64Range(-2000, 2000).Draw(t, "first")
		wide := rapid.Float64Range(1, 500).Draw(t, "wide")
		r := geometry.Repeat{Along: geometry.Length(step), First: geometry.Pt(0, geometry.Length(first)), AtY: true}
		xs, ys := r.Lines(geometry.Bx(0, 0, 10, geometry.Length(wide)))
		assert.Empty(t, xs)
		assert.InDelta(t, wide/step, float64(len(ys)), 1)
		for i, y := range ys {
			assert.True(t, y >= 0 && y.MM() <= wide+1e-9)
			assert.InDelta(t, 0, math.Remainder(y.MM()-first, step), 1e-6)
			if i > 0 {
				assert.InDelta(t, step, (y - ys[i-1]).MM(), 1e-9)
			}
		}
		assert.Equal(t, geometry.Pt(0, geometry.Length(step)), r.Extra())
	})
}
