package foldup

import (
	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/polygon"
)

func shape(points []geometry.Point) geom.Geometry { return polygon.Of(points) }

// meet, without and united give what two shapes share, what the first has
// beyond the second, and all together. Where that can't be worked out, what
// stands for it is such that a fault is found rather than missed.
func meet(a, b geom.Geometry) geom.Geometry    { return or(a)(polygon.Meet(a, b)) }
func without(a, b geom.Geometry) geom.Geometry { return or(a)(polygon.Without(a, b)) }
func united(shapes []geom.Geometry) geom.Geometry {
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

// slight tells whether what two shapes share can be no broader than rounding: a
// part of a box has at most its smaller side as its mean breadth.
func slight(a, b geom.Geometry) bool {
	both := box(a).Intersect(box(b))
	return min(both.Width(), both.Height()) <= sliver
}

func area(g geom.Geometry) float64 { return g.Area() }

func parts(g geom.Geometry) []geom.Polygon { return polygon.Parts(g) }

func breadth(p geom.Polygon) Length { return polygon.MeanBreadth(p) }

func box(g geom.Geometry) geometry.Box { return polygon.Bounds(g) }
