package foldup

import (
	"fmt"
	"math"
	"slices"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/polygon"
)

// reach gives how far a tab goes beyond the edge it is turned over, where it
// goes least.
func reach(r fold.Part) Length {
	least := Length(math.Inf(1))
	for _, p := range r.Outline {
		if slices.ContainsFunc(r.Joins, func(j fold.Join) bool { return j.Kind == fold.Give && (p.Near(j.From) || p.Near(j.At)) }) {
			continue // at a web
		}
		near := Length(math.Inf(1))
		for _, j := range r.Joins {
			if j.Kind == fold.Give {
				continue
			}
			near = min(near, distance(p, geometry.Line(j.From, j.At)))
		}
		if near > 1e-3 { // not on the edge itself
			least = min(least, near)
		}
	}
	return least
}

// tabEnd is the straight end of a tab, about which it is turned, in the
// coordinates of the face outside that it hangs on.
type tabEnd struct {
	plane    int
	from, to geometry.Point
}

// turned turns a tab over the edge of a hole: a stiff part that is turned about
// its straight end onto the thickness of the board, and about a line as far from
// it as the board is thick onto the face inside. order is how many folds the tab
// hangs on; it is turned when all else is.
func (c Carcass) turned(p geometry.Piece, r fold.Posed, host Frame, order int, k Conditions, surfaces []surface) ([]patch, []Fault) {
	bare := func(what string, args ...any) []Fault {
		return []Fault{{Kind: Bare, Piece: p.Name, What: fmt.Sprintf("the tab at %s ", where(r.Outline)) + fmt.Sprintf(what, args...)}}
	}
	outside := landing(host, surfaces)
	_, hinge, off, ok := r.Chord()
	if !ok || outside < 0 {
		return nil, []Fault{{Kind: Misfit, Piece: p.Name, What: fmt.Sprintf("the tab at %s is not turned over one edge", where(r.Outline))}}
	}
	var faults []Fault
	if off > k.HoleChord+fold.OnArc {
		faults = append(faults, bare("has a straight end that leaves the edge of the hole by %.2f mm", off.MM())...)
	}
	if d := reach(r.Part); d < c.Lined {
		return nil, append(faults, bare("reaches %.2f mm, not round the edge of the board", d.MM())...)
	}
	from, to := hinge.At, hinge.From // the tab on the left
	long := hinge.Length()
	along := to.Sub(from).Mul(1 / long.MM())
	in := geometry.Pt(-along.Y, along.X)
	edge := from.Add(in.Mul(c.Lined.MM()))
	lo, hi := Length(math.Inf(1)), Length(math.Inf(-1)) // of the tab where it leaves the edge
	for _, q := range crossings(r.Outline, edge, along) {
		lo, hi = min(lo, q), max(hi, q)
	}
	if gap := max(lo, long-hi); gap > k.HoleGap/2+fold.OnArc {
		faults = append(faults, bare("is narrower than its edge by %.2f mm on one side where it is round the board", gap.MM())...)
	}
	f := host.Turned(hinge, 90)
	f = f.Turned(fold.Join{From: edge.Add(along), At: edge, Kind: fold.Fold}, 90)
	on := landing(f, surfaces)
	inner := polygon.Clip(r.Outline, func(p geometry.Point) Length { return side(p, edge, along) })
	if on < 0 || len(inner) < 3 {
		return nil, append(faults, Fault{Kind: Overhang, Piece: p.Name, What: fmt.Sprintf("the tab at %s lands on no face", where(r.Outline))})
	}
	flat := func(q geometry.Point) geometry.Point { return surfaces[outside].frame.Flat(host.At(q)) }
	return []patch{{
		piece: p.Name, order: order, thick: k.Layer[p.Material],
		plane: surfaces[on].plane, flat: inner, shape: shape(project(f, inner, surfaces[on])),
		tab: &tabEnd{surfaces[outside].plane, flat(from), flat(to)},
	}}, faults
}

// crossings gives where an outline crosses a line, as distances along it.
func crossings(outline []geometry.Point, on, along geometry.Point) []Length {
	var out []Length
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		da, db := side(a, on, along), side(b, on, along)
		if (da > 0) == (db > 0) {
			continue
		}
		q := a.Add(b.Sub(a).Mul((da / (da - db)).MM())).Sub(on)
		out = append(out, q.X*along.X+q.Y*along.Y)
	}
	return out
}

// side gives how far left of a line a point is.
func side(p, on, along geometry.Point) Length {
	d := p.Sub(on)
	return along.X*d.Y - along.Y*d.X
}

// rims finds where the edge of a thumb hole has no tab turned over it.
func (v view) rims(c Carcass) []Fault {
	if len(c.Side) <= 4 {
		return nil
	}
	var out []Fault
	for _, name := range []geometry.Face{geometry.LeftOutside, geometry.RightOutside} {
		plane := v.surfaces[index(v.surfaces, name)].plane
		var ends []tabEnd
		for _, p := range v.patches {
			if p.tab != nil && p.tab.plane == plane {
				ends = append(ends, *p.tab)
			}
		}
		var bare []geometry.Point
		for _, q := range c.holeEdge() {
			if !slices.ContainsFunc(ends, func(e tabEnd) bool { return q.ToLine(e.from, e.to) <= v.known.HoleChord+fold.OnArc }) {
				bare = append(bare, q)
			}
		}
		if len(bare) > 0 {
			out = append(out, Fault{Kind: Bare, Face: name, At: geometry.Polygon(bare...).Bounds().Grow(0.1), What: "no tab is turned over the edge of the hole"})
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
		if distance(q, path) > short+fold.OnArc {
			return false
		}
	}
	return true
}

// holeEdge gives places along the edge of the thumb hole in a side.
func (c Carcass) holeEdge() []geometry.Point {
	var out []geometry.Point
	for i, a := range c.Side {
		b := c.Side[(i+1)%len(c.Side)]
		straight := func(l, m, border Length) bool { return l.Near(border) && m.Near(border) }
		if straight(a.X, b.X, 0) || straight(a.X, b.X, c.Depth) || straight(a.Y, b.Y, 0) || straight(a.Y, b.Y, c.Height) {
			continue
		}
		const steps = 4
		for n := range steps + 1 {
			out = append(out, a.Add(b.Sub(a).Mul(float64(n)/steps)))
		}
	}
	return out
}
