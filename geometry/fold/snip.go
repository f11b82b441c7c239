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
	way := b.Sub(a).Mul((most / a.Distance(b)).MM())
	best := math.Inf(1) // as a part of the way
	for i := 1; i < len(edge); i++ {
		for _, t := range Meets(b, b.Add(way), edge[i-1], edge[i]) {
			best = min(best, t)
		}
	}
	return b.Add(way.Mul(best)), best <= 1
}
