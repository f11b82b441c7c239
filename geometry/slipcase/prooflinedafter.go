package slipcase

import (
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
)

// overlap is how far boxes that are taken from a face reach over their edges, in
// mm: where edges lie on each other the library errs.
const overlap Length = 0.005

// linedAfter lays the linings that are put in when the case is covered, in the
// order of the pieces. Each must lie within its face, end clear of all that lies
// on the walls beside it, linings put in before it among that, and leave no
// board bare but at the mouth, where it stays back.
func (c Carcass) linedAfter(v foldup.Covered, pieces []geometry.Piece, thick Length) []foldup.Fault {
	var out []foldup.Fault
	for _, p := range pieces {
		if p.Material != geometry.Lining || p.Over == "divider" {
			continue
		}
		var laid []foldup.Patch
		for n, seat := range p.Seats {
			i := v.Find(seat.Face)
			if i < 0 || !v.Surfaces[i].Inside {
				out = append(out, foldup.Fault{Kind: foldup.Misfit, Piece: p.Name, What: "lies on no face inside"})
				continue
			}
			ps, fs := v.Seated(p, n, thick)
			out, laid = append(out, fs...), append(laid, ps...)
			for _, l := range ps {
				out = append(out, c.lies(v, v.Surfaces[i], l)...)
			}
		}
		if len(p.Seats) != p.Count {
			out = append(out, foldup.Fault{Kind: foldup.Misfit, Piece: p.Name, What: fmt.Sprintf("%d are cut for %d faces", p.Count, len(p.Seats))})
		}
		v.Patches = append(slices.Clip(v.Patches), laid...)
	}
	return out
}

// lies holds one lining against its face and the walls beside it.
func (c Carcass) lies(v foldup.Covered, s foldup.Surface, l foldup.Patch) []foldup.Fault {
	const sliver = foldup.Sliver
	fault := func(kind foldup.Kind, at geometry.Box, what string, args ...any) foldup.Fault {
		return foldup.Fault{Kind: kind, Piece: l.Piece, Face: s.Face, At: at, What: fmt.Sprintf(what, args...)}
	}
	var out []foldup.Fault
	if past := foldup.Without(l.Shape, s.Outline()); foldup.Solid(past, sliver) {
		out = append(out, fault(foldup.Collision, past.Bounds(), "it is larger than its face"))
	}
	left := foldup.Without(s.Outline(), l.Shape)
	for _, p := range v.In(s.Plane) {
		left = foldup.Without(left, p.Shape)
	}
	for _, w := range v.Surfaces {
		if !foldup.Square(s, w) {
			continue
		}
		at := foldup.MeetingOf(s, w)
		lies := foldup.Pile(v.In(s.Plane)) + l.Thick
		if lies <= sliver {
			continue // too thin to run into anything
		}
		// What it hardly touches it may keep clear of, or not.
		touched := polygon.Box(at.Strip(lies))
		for _, cell := range foldup.Heaps(foldup.Within(v.In(w.Plane), at.Strip(lies+2*sliver))) {
			from, to := at.Reach(cell.Shape.Bounds())
			part := foldup.Meet(l.Shape, polygon.Box(at.Between(s.Extent, from+sliver, to-sliver)))
			if gap := at.ToWall(part.Bounds()); len(part) > 0 && gap < cell.Thick-1e-4 && foldup.Solid(foldup.Meet(cell.Shape, touched), sliver) {
				out = append(out, fault(foldup.Collision, part.Bounds(), "it ends %.2f mm from %s, where %.2f mm lies", gap.MM(), w.Face, cell.Thick.MM()))
			}
			taken := at.End(at.Between(s.Extent, from-liningStep, to), cell.Thick)
			left = foldup.Without(left, polygon.Box(taken.Grow(overlap)))
		}
	}
	if open := mouthEnd(s, linedShort); !open.Empty() {
		left = foldup.Without(left, polygon.Box(open.Grow(overlap)))
	}
	for _, part := range left {
		if part.Breadth() <= max(v.Closed, l.Thick, sliver) || c.atHole(part.Rings[0], linedShort) {
			continue
		}
		out = append(out, fault(foldup.Bare, part.Bounds(), "%.1f mm² of board is not lined", part.Size()))
	}
	return out
}

// mouthEnd returns the part of a face inside as near to the mouth as short says;
// none of the spine wall.
func mouthEnd(s foldup.Surface, short Length) geometry.Box {
	switch {
	case s.Frame.U.Z == 1:
		return foldup.EndOf(s.Extent, 0, true, short)
	case s.Frame.V.Z == 1:
		return foldup.EndOf(s.Extent, 1, true, short)
	}
	return geometry.Box{}
}
