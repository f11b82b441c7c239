package geometry_test

import (
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"forel/geometry"
)

// A point lies in an outline and outside its hole where the library has it so, which
// knows the OpenGIS Simple Features standard; points on an edge are left out.
func TestIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		star := func(name string, least, most float64) (ring []geometry.Point, line geom.LineString) {
			var coords []float64
			for _, way := range [][2]float64{{1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, -1}, {1, -1}} {
				far := rapid.Float64Range(least, most).Draw(t, name)
				ring = append(ring, geometry.Pt(geometry.Length(far*way[0]), geometry.Length(far*way[1])))
				coords = append(coords, far*way[0], far*way[1])
			}
			return ring, geom.NewLineString(geom.NewSequence(append(coords, coords[:2]...), geom.DimXY))
		}
		outline, outer := star("outline", 9, 40)
		hole, inner := star("hole", 1, 6)
		x, y := rapid.Float64Range(-40, 40).Draw(t, "x"), rapid.Float64Range(-40, 40).Draw(t, "y")
		at := geom.XY{X: x, Y: y}.AsPoint().AsGeometry()
		shape := geom.NewPolygon([]geom.LineString{outer, inner})
		if d, _ := geom.Distance(at, shape.Boundary().AsGeometry()); d < 1e-9 {
			return
		}
		assert.Equal(t, geom.Intersects(at, shape.AsGeometry()), geometry.Pt(geometry.Length(x), geometry.Length(y)).In(outline, hole))
	})
}
