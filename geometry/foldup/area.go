package foldup

import (
	"slices"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/polygon"
)

func shape(points []geometry.Point) geom.Geometry { return polygon.Of(points) }

// Meet, Without and United return what two shapes share, what the first has
// beyond the second, and all together. Where that can't be worked out, what
// stands for it is such that a fault is found rather than missed.
func Meet(a, b geom.Geometry) geom.Geometry { return or(a)(polygon.Meet(a, b)) }

// Without: see Meet.
func Without(a, b geom.Geometry) geom.Geometry { return or(a)(polygon.Without(a, b)) }

// United: see Meet.
func United(shapes []geom.Geometry) geom.Geometry {
	return or(geom.Geometry{})(polygon.Union(shapes))
}

func or(instead geom.Geometry) func(geom.Geometry, error) geom.Geometry {
	return func(g geom.Geometry, err error) geom.Geometry {
		if err != nil {
			return instead
		}
		return g
	}
}

// Sliver is how broad a strip must be to count as more than rounding, in mm.
const Sliver Length = 1e-3

// Solid tells whether a shape has a part broader than a limit.
func Solid(g geom.Geometry, limit Length) bool {
	return slices.ContainsFunc(polygon.Parts(g), func(p geom.Polygon) bool { return polygon.MeanBreadth(p) > limit })
}

// slight tells whether what two shapes share can be no broader than rounding: a
// part of a box has at most its smaller side as its mean breadth.
func slight(a, b geom.Geometry) bool {
	both := box(a).Intersect(box(b))
	return min(both.Width(), both.Height()) <= Sliver
}

func area(g geom.Geometry) float64 { return g.Area() }

func parts(g geom.Geometry) []geom.Polygon { return polygon.Parts(g) }

func breadth(p geom.Polygon) Length { return polygon.MeanBreadth(p) }

func box(g geom.Geometry) geometry.Box { return polygon.Bounds(g) }
