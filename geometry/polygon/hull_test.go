package polygon_test

import (
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/polygon"
)

// The hull is as large as the library's, of points on a lattice, where that has
// no trouble with rounding, and holds every point.
func TestHull(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var points []geometry.Point
		var all []geom.Point
		for range rapid.IntRange(3, 20).Draw(t, "points") {
			x, y := rapid.IntRange(-9, 9).Draw(t, "x"), rapid.IntRange(-9, 9).Draw(t, "y")
			points = append(points, geometry.Pt(polygon.Length(x), polygon.Length(y)))
			all = append(all, geom.XY{X: float64(x), Y: float64(y)}.AsPoint())
		}
		hull := polygon.Hull(points)
		want := geom.NewMultiPoint(all).AsGeometry().ConvexHull()
		if want.Area() == 0 {
			assert.Less(t, len(hull), 3)
			return
		}
		assert.InDelta(t, want.Area(), geometry.Polygon(hull...).SignedArea(), 1e-9)
		assert.Len(t, hull, want.DumpCoordinates().Length()-1)
	})
}

// A sliver whose corners are apart by rounding has a hull.
func TestHullOfASliver(t *testing.T) {
	hull := polygon.Hull([]geometry.Point{
		{X: 30.049703, Y: 2.9702969999999995}, {X: 30.049703000000002, Y: 2.970297}, {X: 30.05, Y: 3}, {X: 30.049703, Y: 2.970297}, {X: 33, Y: 3},
	})
	assert.GreaterOrEqual(t, len(hull), 3)
	// A triangle of base 2.95 and height 0.0297.
	assert.InDelta(t, 0.0438, geometry.Polygon(hull...).SignedArea(), 1e-3)
}
