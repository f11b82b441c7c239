package foldup_test

import (
	"fmt"
	"math"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
)

// checkOutline is invariant 1, judged by an independent implementation of the
// OpenGIS Simple Features standard: the outline is simple, closed,
// counterclockwise, of positive area, from the origin, with no repeated point;
// slits, folds and guides lie in it, to hair.
func checkOutline(p geometry.Piece, hair float64) error {
	points := p.Outline.Flatten(0.001)
	for n, q := range points {
		if next := points[(n+1)%len(points)]; q.Near(next) {
			return fmt.Errorf("%s: point %v is repeated", p.Name, q)
		}
	}
	outline := geom.NewPolygon([]geom.LineString{judgedLine(append(points, points[0])...)})
	if err := outline.Validate(); err != nil {
		return fmt.Errorf("%s: %w", p.Name, err)
	}
	if !p.Outline.Closed || !outline.IsCCW() || outline.Area() <= 0 {
		return fmt.Errorf("%s: outline encloses %v mm2, counterclockwise %v", p.Name, outline.Area(), outline.IsCCW())
	}
	if low, ok := outline.Envelope().Min().XY(); !ok || math.Abs(low.X) > 1e-9 || math.Abs(low.Y) > 1e-9 {
		return fmt.Errorf("%s: outline starts at %v", p.Name, low)
	}
	inside := map[string][]geometry.Path{"slit": p.Slits, "fold": p.Folds}
	for _, g := range p.Guides {
		inside["guide"] = append(inside["guide"], g.Path)
	}
	for what, paths := range inside {
		for _, path := range paths {
			if err := liesIn(path, outline, hair); err != nil {
				return fmt.Errorf("%s: a %s %w", p.Name, what, err)
			}
		}
	}
	return nil
}

// liesIn tells whether a path leaves an outline: every point along it is in or
// within a hair.
func liesIn(path geometry.Path, outline geom.Polygon, hair float64) error {
	points := path.Flatten(0.001)
	if path.Closed {
		points = append(points, points[0])
	}
	for n := 1; n < len(points); n++ {
		for i := range 9 {
			q := points[n-1].Add(points[n].Sub(points[n-1]).Mul(float64(i) / 8))
			place := geom.XY{X: q.X.MM(), Y: q.Y.MM()}.AsPoint().AsGeometry()
			if d, ok := geom.Distance(place, outline.AsGeometry()); !ok || d > hair {
				return fmt.Errorf("leaves the outline by %v mm at %v", d, q)
			}
		}
	}
	return nil
}

func judgedLine(points ...geometry.Point) geom.LineString {
	var flat []float64
	for _, p := range points {
		flat = append(flat, p.X.MM(), p.Y.MM())
	}
	return geom.NewLineString(geom.NewSequence(flat, geom.DimXY))
}
