package geometry_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"forel/geometry"
)

// A line crosses a box where one of many places along it lies in the box, and
// does not where none does and it stays clear.
func TestCrossed(t *testing.T) {
	box := geometry.Bx(0, 0, 10, 6)
	rapid.Check(t, func(t *rapid.T) {
		at := func(name string) geometry.Point {
			return geometry.Pt(geometry.Length(rapid.Float64Range(-20, 30).Draw(t, name)), geometry.Length(rapid.Float64Range(-20, 30).Draw(t, name)))
		}
		p, q := at("from"), at("to")
		in := func(b geometry.Box) bool {
			for k := range 2001 {
				m := p.Add(q.Sub(p).Mul(float64(k) / 2000))
				if b.Contains(geometry.Box{Min: m, Max: m}) {
					return true
				}
			}
			return false
		}
		if in(box.Grow(-0.1)) {
			assert.True(t, box.Crossed(p, q))
		}
		if !in(box.Grow(0.1)) {
			assert.False(t, box.Crossed(p, q))
		}
	})
}
