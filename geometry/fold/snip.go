package fold

import (
	"math"

	"forel/geometry"
)

// mostSnipShort is how far a snip may stop from the edge of a hole for the
// covering to give between, in mm (common practice, no source).
const mostSnipShort Length = 1

// OnArc is how far what ends on an arc may be from the chords that stand for it,
// in mm.
const OnArc Length = 0.02

// snipEnds returns the way on from the ends of each snip at a hole: to the hole's
// edge, where the covering is not cut but gives; and to the chord of the outline
// where the snip starts on an arc.
func snipEnds(p geometry.Piece) (gives, cuts []geometry.Path) {
	outline := p.Outline.Flatten(0.01)
	outline = append(outline, outline[0])
	for _, c := range p.Creases {
		if c.Kind != geometry.Round {
			continue
		}
		edge := c.Path.Flatten(0.01)
		for _, slit := range p.Slits {
			v := slit.Vertices
			n := len(v) - 1
			for _, end := range [][2]geometry.Point{{v[n-1].Point, v[n].Point}, {v[1].Point, v[0].Point}} {
				if q, ok := goesOn(end[0], end[1], edge, mostSnipShort); ok {
					gives = append(gives, geometry.Line(end[1], q))
				} else if q, ok := goesOn(end[0], end[1], outline, OnArc); ok {
					cuts = append(cuts, geometry.Line(end[1], q))
				}
			}
		}
	}
	return gives, cuts
}

// goesOn returns where a line from a past b first meets an edge, if that is no
// farther than most.
func goesOn(a, b geometry.Point, edge []geometry.Point, most Length) (geometry.Point, bool) {
	way := b.Sub(a).Mul(1 / a.Distance(b).MM())
	best := Length(math.Inf(1))
	for i := 1; i < len(edge); i++ {
		c, d := edge[i-1], edge[i].Sub(edge[i-1])
		det := way.X*d.Y - way.Y*d.X
		if det.Abs() < 1e-12 {
			continue
		}
		e := c.Sub(b)
		t, u := (e.X*d.Y-e.Y*d.X)/det, (e.X*way.Y-e.Y*way.X)/det
		if t > grid && t <= most && u > -1e-6 && u < 1+1e-6 {
			best = min(best, t)
		}
	}
	return b.Add(way.Mul(best.MM())), best <= most
}
