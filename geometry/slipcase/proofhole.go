package slipcase

import (
	"slices"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/foldup"
)

// rims finds where the edge of a thumb hole has no tab turned over it.
func (c Carcass) rims(v foldup.Covered) []foldup.Fault {
	if !c.hole() {
		return nil
	}
	var out []foldup.Fault
	for _, name := range []geometry.Face{LeftOutside, RightOutside} {
		plane := v.Surfaces[v.Find(name)].Plane
		var ends []foldup.TabEnd
		for _, p := range v.Patches {
			if p.Tab != nil && p.Tab.Plane == plane {
				ends = append(ends, *p.Tab)
			}
		}
		var bare []geometry.Point
		for _, q := range c.holeEdge() {
			if !slices.ContainsFunc(ends, func(e foldup.TabEnd) bool { return q.ToLine(e.From, e.To) <= v.HoleChord+fold.OnArc }) {
				bare = append(bare, q)
			}
		}
		if len(bare) > 0 {
			out = append(out, foldup.Fault{Kind: foldup.Bare, Face: name, At: geometry.Polygon(bare...).Bounds().Grow(0.1), What: "no tab is turned over the edge of the hole"})
		}
	}
	return out
}

// atHole tells whether a shape lies no farther from the edge of a thumb hole than
// short says.
func (c Carcass) atHole(ring []geometry.Point, short Length) bool {
	edge := c.holeEdge()
	if len(edge) == 0 {
		return false
	}
	path := geometry.Line(edge...)
	for _, q := range ring {
		if foldup.Distance(q, path) > short+fold.OnArc {
			return false
		}
	}
	return true
}

// holeEdge returns places along the edge of the thumb hole in a side.
func (c Carcass) holeEdge() []geometry.Point {
	var out []geometry.Point
	for i, a := range c.Side {
		b := c.Side[(i+1)%len(c.Side)]
		const steps = 4
		for n := 0; n <= steps && !along(a, b, geometry.Bx(0, 0, c.Depth, c.Height)); n++ {
			out = append(out, a.Add(b.Sub(a).Mul(float64(n)/steps)))
		}
	}
	return out
}

// along tells whether a line lies on an edge of a box.
func along(a, b geometry.Point, box geometry.Box) bool {
	on := func(p, q, low, high Length) bool { return p.Near(q) && (p.Near(low) || p.Near(high)) }
	return on(a.X, b.X, box.Min.X, box.Max.X) || on(a.Y, b.Y, box.Min.Y, box.Max.Y)
}
