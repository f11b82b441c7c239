package foldup

import (
	"fmt"
	"slices"

	"forel/geometry"
)

// overlap is how far boxes that are taken from a face reach over their edges, in
// mm: where edges lie on each other the library errs.
const overlap Length = 0.005

// linedAfter lays the linings that are put in when the case is covered, in the
// order of the pieces. Each must lie within its face, end clear of all that lies
// on the walls beside it, linings put in before it among that, and leave no
// board bare but at the mouth, where it stays back.
func (v view) linedAfter(c Carcass, pieces []geometry.Piece) []Fault {
	var out []Fault
	known := v.known
	known.Layer = map[geometry.Material]Length{geometry.Lining: known.Lining}
	for _, p := range pieces {
		if p.Material != geometry.Lining || p.Over == "divider" {
			continue
		}
		var laid []patch
		for _, seat := range p.Seats {
			i := index(v.surfaces, seat.Face)
			if i < 0 || !v.surfaces[i].inside {
				out = append(out, Fault{Kind: Misfit, Piece: p.Name, What: "lies on no face inside"})
				continue
			}
			ps, fs := c.seated(p, seat, known, v.surfaces)
			out, laid = append(out, fs...), append(laid, ps...)
			for _, l := range ps {
				out = append(out, v.lies(c, i, l)...)
			}
		}
		if len(p.Seats) != p.Count {
			out = append(out, Fault{Kind: Misfit, Piece: p.Name, What: fmt.Sprintf("%d are cut for %d faces", p.Count, len(p.Seats))})
		}
		v.patches = append(slices.Clip(v.patches), laid...)
	}
	return out
}

// lies holds one lining against its face and the walls beside it.
func (v view) lies(c Carcass, i int, l patch) []Fault {
	s := v.surfaces[i]
	fault := func(kind Kind, at geometry.Box, what string, args ...any) Fault {
		return Fault{Kind: kind, Piece: l.piece, Face: s.name, At: at, What: fmt.Sprintf(what, args...)}
	}
	var out []Fault
	if past := without(l.shape, s.shape); solid(past, sliver) {
		out = append(out, fault(Collision, past.Bounds(), "it is larger than its face"))
	}
	left := without(s.shape, l.shape)
	for _, p := range v.on(i) {
		left = without(left, p.shape)
	}
	for _, w := range v.surfaces {
		if !w.inside || w.normal.Dot(s.normal).Abs() > 1e-9 {
			continue
		}
		edge := s.toward(w)
		lies := pile(v.on(i)) + l.thick
		if lies <= sliver {
			continue // too thin to run into anything
		}
		strip := edge.strip(w, lies)
		var there []patch
		for _, p := range v.on(index(v.surfaces, w.name)) {
			if p.shape = meet(p.shape, shape(corners(strip))); solid(p.shape, sliver) {
				there = append(there, p)
			}
		}
		for _, cell := range piles(there) {
			from, to := edge.reach(cell.shape.Bounds())
			beside := edge.between(s.extent, from+sliver, to-sliver)
			part := meet(l.shape, shape(corners(beside)))
			if gap := toEnd(part.Bounds(), s.extent, edge.along, edge.far); len(part) > 0 && gap < cell.thick-1e-4 {
				out = append(out, fault(Collision, part.Bounds(), "it ends %.2f mm from %s, where %.2f mm lies", gap.MM(), w.name, cell.thick.MM()))
			}
			taken := edge.end(edge.between(s.extent, from-v.known.LinedStep, to), cell.thick)
			left = without(left, shape(corners(taken.Grow(overlap))))
		}
	}
	if open := s.mouth(v.known.LinedShort); !open.Empty() {
		left = without(left, shape(corners(open.Grow(overlap))))
	}
	for _, part := range left {
		if part.Breadth() <= max(v.closed, l.thick, sliver) || c.atHole(part.Rings[0], v.known.LinedShort) {
			continue
		}
		out = append(out, fault(Bare, part.Bounds(), "%.1f mm² of board is not lined", part.Size()))
	}
	return out
}

// besideWall is the end of a face inside where a wall stands: of its X (along 0)
// or its Y, at the low or at the far end. The two faces share the other axis.
type besideWall struct {
	along     int
	far       bool
	wallAlong int // the same of the wall, where this face stands
	wallFar   bool
}

// toward gives where on a face a wall stands.
func (s surface) toward(w surface) besideWall {
	end := func(f Frame, normal Vec) (int, bool) { // the wall is where its normal comes from
		if d := f.U.Dot(normal); d.Abs() > 0.5 {
			return 0, d < 0
		}
		return 1, f.V.Dot(normal) < 0
	}
	var e besideWall
	e.along, e.far = end(s.frame, w.normal)
	e.wallAlong, e.wallFar = end(w.frame, s.normal)
	return e
}

// strip gives the part of the wall as far from the face as wide says.
func (e besideWall) strip(w surface, wide Length) geometry.Box {
	return endOf(w.extent, e.wallAlong, e.wallFar, wide)
}

// end gives the part of a box of the face as far from the wall as wide says.
func (e besideWall) end(b geometry.Box, wide Length) geometry.Box {
	return endOf(b, e.along, e.far, wide)
}

// reach gives from where to where a box of the wall reaches on the shared axis.
func (e besideWall) reach(b geometry.Box) (from, to Length) {
	if e.wallAlong == 0 {
		return b.Min.Y, b.Max.Y
	}
	return b.Min.X, b.Max.X
}

// between gives the part of a box of the face between two places of the shared
// axis.
func (e besideWall) between(b geometry.Box, from, to Length) geometry.Box {
	if e.along == 0 {
		b.Min.Y, b.Max.Y = max(b.Min.Y, from), min(b.Max.Y, to)
	} else {
		b.Min.X, b.Max.X = max(b.Min.X, from), min(b.Max.X, to)
	}
	return b
}

func endOf(b geometry.Box, along int, far bool, wide Length) geometry.Box {
	switch {
	case along == 0 && far:
		b.Min.X = b.Max.X - wide
	case along == 0:
		b.Max.X = b.Min.X + wide
	case far:
		b.Min.Y = b.Max.Y - wide
	default:
		b.Max.Y = b.Min.Y + wide
	}
	return b
}

// mouth gives the part of a face inside as near to the mouth as short says; none
// of the spine wall.
func (s surface) mouth(short Length) geometry.Box {
	switch {
	case s.frame.U.Z == 1:
		return endOf(s.extent, 0, true, short)
	case s.frame.V.Z == 1:
		return endOf(s.extent, 1, true, short)
	}
	return geometry.Box{}
}
