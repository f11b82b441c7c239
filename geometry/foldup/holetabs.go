package foldup

import (
	"fmt"
	"math"
	"slices"

	"forel/geometry"
	"forel/geometry/space"
)

// mostSnipShort is how far a snip may stop from the edge of a hole for the
// covering to give between, in mm (common practice, no source).
const mostSnipShort Length = 1

// OnArc is how far what ends on an arc may be from the chords that stand for it,
// in mm.
const OnArc Length = 0.02

// snipEnds gives the way on from the ends of each snip at a hole: to the hole's
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

// goesOn gives where a line from a past b first meets an edge, if that is no
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

// tab tells whether a region is turned over the edge of a hole; webs may be
// pinched at its ends.
func (r region) tab() bool {
	return slices.ContainsFunc(r.joins, func(j join) bool { return j.kind == round }) &&
		!slices.ContainsFunc(r.joins, func(j join) bool { return j.kind != round && j.kind != give })
}

// host gives the region that a tab hangs on.
func (r region) host() int {
	return r.joins[slices.IndexFunc(r.joins, func(j join) bool { return j.kind == round })].to
}

// reach gives how far a tab goes beyond the edge it is turned over, where it
// goes least.
func (r region) reach() Length {
	least := Length(math.Inf(1))
	for _, p := range r.outline {
		if slices.ContainsFunc(r.joins, func(j join) bool { return j.kind == give && (p.Near(j.from) || p.Near(j.at)) }) {
			continue // at a web
		}
		near := Length(math.Inf(1))
		for _, j := range r.joins {
			if j.kind == give {
				continue
			}
			near = min(near, Distance(p, geometry.Line(j.from, j.at)))
		}
		if near > 1e-3 { // not on the edge itself
			least = min(least, near)
		}
	}
	return least
}

// TabEnd is the straight end of a tab, about which it is turned, in the
// coordinates of the face outside that it hangs on.
type TabEnd struct {
	Plane    int
	From, To geometry.Point
}

// chord gives the straight end of a tab, from one end of the edge it is turned
// over to the other, the tab on the left, and how far that edge leaves it.
func (r region) chord() (from, to geometry.Point, off Length, ok bool) {
	var starts, ends int
	for _, j := range r.joins {
		if j.kind != round {
			continue
		}
		touches := func(at func(join) geometry.Point, p geometry.Point) bool {
			return slices.ContainsFunc(r.joins, func(o join) bool { return o.kind == round && at(o).Near(p) })
		}
		if !touches(func(o join) geometry.Point { return o.at }, j.from) {
			from, starts = j.from, starts+1
		}
		if !touches(func(o join) geometry.Point { return o.from }, j.at) {
			to, ends = j.at, ends+1
		}
	}
	if starts != 1 || ends != 1 {
		return from, to, 0, false
	}
	for _, j := range r.joins {
		if j.kind == round {
			off = max(off, j.from.ToLine(from, to))
		}
	}
	return from, to, off, true
}

// turnedTab turns a tab over the edge of a hole: a stiff part that is turned about
// its straight end onto the thickness of the board, and about a line as far from
// it as the board is thick onto the face inside.
func (b Body) turnedTab(p geometry.Piece, r region, host space.Frame, thick Length) ([]Patch, []Fault) {
	bare := func(what string, args ...any) []Fault {
		return []Fault{{Kind: Bare, Piece: p.Name, What: fmt.Sprintf("the tab at %s ", where(r.outline)) + fmt.Sprintf(what, args...)}}
	}
	outside := b.landing(host)
	from, to, off, ok := r.chord()
	if !ok || outside < 0 {
		return nil, []Fault{{Kind: Misfit, Piece: p.Name, What: fmt.Sprintf("the tab at %s is not turned over one edge", where(r.outline))}}
	}
	var faults []Fault
	if off > b.HoleChord+OnArc {
		faults = append(faults, bare("has a straight end that leaves the edge of the hole by %.2f mm", off.MM())...)
	}
	if d := r.reach(); d < b.Edge {
		return nil, append(faults, bare("reaches %.2f mm, not round the edge of the board", d.MM())...)
	}
	long := from.Distance(to)
	along := to.Sub(from).Mul(1 / long.MM())
	in := geometry.Pt(-along.Y, along.X)
	edge := from.Add(in.Mul(b.Edge.MM()))
	lo, hi := Length(math.Inf(1)), Length(math.Inf(-1)) // of the tab where it leaves the edge
	for _, q := range crossings(r.outline, edge, along) {
		lo, hi = min(lo, q), max(hi, q)
	}
	if gap := max(lo, long-hi); gap > b.HoleGap/2+OnArc {
		faults = append(faults, bare("is narrower than its edge by %.2f mm on one side where it is round the board", gap.MM())...)
	}
	f := hinged(host, from, along, in, fold)
	f = hinged(f, edge, along, in, fold)
	on := b.landing(f)
	inner := beyondLine(r.outline, edge, in)
	if on < 0 || len(inner) < 3 {
		return nil, append(faults, Fault{Kind: Overhang, Piece: p.Name, What: fmt.Sprintf("the tab at %s lands on no face", where(r.outline))})
	}
	flat := func(q geometry.Point) geometry.Point { return b.Surfaces[outside].Frame.Flat(host.At(q)) }
	return []Patch{{
		Piece: p.Name, Thick: thick,
		Plane: b.Surfaces[on].Plane, flat: inner, Shape: shape(project(f, inner, b.Surfaces[on])),
		Tab: &TabEnd{b.Surfaces[outside].Plane, flat(from), flat(to)},
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

// beyondLine gives the part of an outline on the side of a line that in points
// to.
func beyondLine(outline []geometry.Point, on, in geometry.Point) []geometry.Point {
	along := geometry.Pt(in.Y, -in.X)
	var out []geometry.Point
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		da, db := side(a, on, along), side(b, on, along)
		if da >= 0 {
			out = append(out, a)
		}
		if (da > 0) != (db > 0) && da != 0 && db != 0 {
			out = append(out, a.Add(b.Sub(a).Mul((da / (da - db)).MM())))
		}
	}
	return out
}
