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
// Most shapes are rectangles, for which that is soon told.
func meet(a, b geom.Geometry) geom.Geometry {
	p, q := box(a), box(b)
	switch {
	case rectangle(b) && q.Contains(p):
		return a
	case rectangle(a) && p.Contains(q):
		return b
	case rectangle(a) && rectangle(b):
		if both := p.Intersect(q); !both.Empty() {
			return polygon.Box(both)
		}
		return geom.Geometry{}
	}
	return or(a)(polygon.Meet(a, b))
}

func without(a, b geom.Geometry) geom.Geometry {
	if rectangle(b) && box(b).Contains(box(a)) {
		return geom.Geometry{}
	}
	return or(a)(polygon.Without(a, b))
}

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

// rectangle tells whether a shape fills the box around it.
func rectangle(g geom.Geometry) bool {
	p, ok := g.AsPolygon()
	if !ok || p.NumInteriorRings() > 0 {
		return false
	}
	ring, b := p.ExteriorRing().Coordinates(), box(g)
	if ring.Length() != 5 || b.Empty() {
		return false
	}
	for i := range 4 {
		from, to := ring.GetXY(i), ring.GetXY(i+1)
		if from.X != to.X && from.Y != to.Y {
			return false
		}
	}
	return true
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
