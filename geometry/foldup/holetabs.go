package foldup

import (
	"fmt"
	"math"
	"slices"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/polygon"
	"forel/geometry/space"
)

// reach returns how far a tab goes beyond the edge it is turned over, where it
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
			near = min(near, Distance(p, geometry.Line(j.From, j.At)))
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

// turnedTab turns a tab over the edge of a hole: a stiff part that is turned about
// its straight end onto the thickness of the board, and about a line as far from
// it as the board is thick onto the face inside.
func (b Body) turnedTab(p geometry.Piece, r fold.Posed, host space.Frame, thick Length) ([]Patch, []Fault) {
	bare := func(what string, args ...any) []Fault {
		return []Fault{{Kind: Bare, Piece: p.Name, What: fmt.Sprintf("the tab at %s ", where(r.Outline)) + fmt.Sprintf(what, args...)}}
	}
	outside := b.landing(host)
	_, hinge, off, ok := r.Chord()
	if !ok || outside < 0 {
		return nil, []Fault{{Kind: Misfit, Piece: p.Name, What: fmt.Sprintf("the tab at %s is not turned over one edge", where(r.Outline))}}
	}
	var faults []Fault
	if off > b.HoleChord+fold.OnArc {
		faults = append(faults, bare("has a straight end that leaves the edge of the hole by %.2f mm", off.MM())...)
	}
	if d := reach(r.Part); d < b.Edge {
		return nil, append(faults, bare("reaches %.2f mm, not round the edge of the board", d.MM())...)
	}
	from, to := hinge.At, hinge.From // the tab on the left
	long := hinge.Length()
	along := to.Sub(from).Mul(1 / long.MM())
	in := geometry.Pt(-along.Y, along.X)
	edge := from.Add(in.Mul(b.Edge.MM()))
	past := polygon.Left(edge, edge.Add(along))
	inner := polygon.Clip(r.Outline, past)
	lo, hi := Length(math.Inf(1)), Length(math.Inf(-1)) // of the tab where it leaves the edge
	for _, q := range inner {
		if past(q) < 1e-9 {
			lo, hi = min(lo, q.Sub(edge).Dot(along)), max(hi, q.Sub(edge).Dot(along))
		}
	}
	// A chord that leaves the arc by a little leans, and a tab longer than it is wide with it.
	lean := fold.OnArc * max(1, b.Edge/long)
	if gap := max(lo, long-hi); gap > b.HoleGap/2+lean {
		faults = append(faults, bare("is narrower than its edge by %.2f mm on one side where it is round the board", gap.MM())...)
	}
	f := fold.Turned(host, hinge, 90)
	f = fold.Turned(f, fold.Join{From: edge.Add(along), At: edge, Kind: fold.Fold}, 90)
	on := b.landing(f)
	if on < 0 || len(inner) < 3 {
		return nil, append(faults, Fault{Kind: Overhang, Piece: p.Name, What: fmt.Sprintf("the tab at %s lands on no face", where(r.Outline))})
	}
	flat := func(q geometry.Point) geometry.Point { return b.Surfaces[outside].Frame.Flat(host.At(q)) }
	return []Patch{{
		Piece: p.Name, Thick: thick,
		Plane: b.Surfaces[on].Plane, flat: inner, Shape: polygon.Of(project(f, inner, b.Surfaces[on])),
		Tab: &TabEnd{b.Surfaces[outside].Plane, flat(from), flat(to)},
	}}, faults
}
