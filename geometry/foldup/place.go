// Package foldup folds the flat pieces of a case up, in numbers, and looks at
// what comes of it: board left bare, flaps that reach too far or run into
// something, and how many layers lie where. It knows the pieces only by their
// outlines, cuts, folds and seats, not by the formulas that made them.
package foldup

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/polygon"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Vec is a place or a step in the case: X from left to right, Y from tail to
// head, Z from spine to mouth, from the outer corner at left, tail and spine.
type Vec = fold.Vec

// Frame lays a plane in the case. The normal of a covering drawn back up is the
// side of the carcass.
type Frame = fold.Frame

// patch is a region of a piece where it ends up: on a face of the carcass, in
// that face's own coordinates.
type patch struct {
	piece  string
	seat   int
	order  int  // how many folds from the part that is laid first
	tucked bool // it gets where it is by a crease at a corner, not by a fold
	thick  Length
	plane  int              // it lies in
	flat   []geometry.Point // in the piece's coordinates
	shape  polygon.Shape    // in the plane's coordinates
	tab    *tabEnd          // of a tab turned over the edge of a hole
}

// Hang hangs the parts of a piece on the carcass at one of its seats, by number;
// ok is false where the piece does not fit there.
func (c Carcass) Hang(p geometry.Piece, seat int) (s fold.Sheet, ok bool) {
	if seat >= len(p.Seats) {
		return s, false
	}
	surfaces := c.surfaces()
	root, ok := c.lay(p.Seats[seat], surfaces)
	if !ok {
		return s, false
	}
	s, _ = hang(p, root, surfaces[index(surfaces, p.Seats[seat].Face)])
	for i, q := range s.Folded() {
		if on := landing(q.Frame, surfaces); on >= 0 && !q.Web && !q.Tab {
			s.Leaves[i].Face = surfaces[on].name
		}
	}
	return s, true
}

// hang hangs a piece on the part that lies most on a surface.
func hang(p geometry.Piece, root Frame, home surface) (s fold.Sheet, ok bool) {
	return fold.Hang(p, root, func(r fold.Part) float64 {
		return meet(shape(project(root, r.Outline, home)), home.shape).Size()
	})
}

// seated lays a piece on its seat and folds it up, part by part, each hanging on its
// longest fold.
func (c Carcass) seated(p geometry.Piece, seat geometry.Seat, k Conditions, surfaces []surface) ([]patch, []Fault) {
	var faults []Fault
	fault := func(kind Kind, what string, args ...any) {
		faults = append(faults, Fault{Kind: kind, Piece: p.Name, What: fmt.Sprintf(what, args...)})
	}
	root, ok := c.lay(seat, surfaces)
	if !ok {
		fault(Misfit, "its place does not fit the carcass: the ruled lines and the boards differ")
		return nil, faults
	}
	s, ok := hang(p, root, surfaces[index(surfaces, seat.Face)])
	if !ok {
		fault(Misfit, "does not reach the face it is laid on")
		return nil, faults
	}
	posed := s.Folded()
	// How many folds a part is from the first, and whether it gets where it is by a
	// crease at a corner.
	var hangs func(i int) (order int, tucked bool)
	hangs = func(i int) (order int, tucked bool) {
		if i == s.First {
			return 0, false
		}
		order, tucked = hangs(s.Leaves[i].On)
		return order + 1, tucked || !s.Leaves[i].Folded
	}
	var patches []patch
	for i, q := range posed {
		switch {
		case i != s.First && q.On < 0 && q.Web:
			continue
		case i != s.First && q.On < 0 && q.Tab:
			fault(Misfit, "the tab at %s is not turned over one edge", where(q.Outline))
			continue
		case i != s.First && q.On < 0:
			fault(Misfit, "a part at %s hangs on nothing", where(q.Outline))
			continue
		}
		order, tucked := hangs(i)
		if q.Tab {
			ps, fs := c.turned(p, q, posed[q.On].Frame, order+2, k, surfaces)
			patches, faults = append(patches, ps...), append(faults, fs...)
			continue
		}
		on := landing(q.Frame, surfaces)
		if on < 0 {
			if !tucked {
				fault(Overhang, "the part at %s lands on no face", where(q.Outline))
			}
			continue
		}
		patches = append(patches, patch{
			piece: p.Name, order: order, tucked: tucked, thick: k.Layer[p.Material],
			plane: surfaces[on].plane, flat: q.Outline, shape: shape(project(q.Frame, q.Outline, surfaces[on])),
		})
	}
	return patches, faults
}

// lay gives the frame of a piece whose back lies on its seat.
func (c Carcass) lay(seat geometry.Seat, surfaces []surface) (Frame, bool) {
	a, b := seat.At[0], seat.At[1]
	va, vb := c.corner(a.On), c.corner(b.On)
	face := surfaces[index(surfaces, seat.Face)]
	if face.inside {
		va, vb = c.within(va), c.within(vb)
	}
	d, v := b.At.Sub(a.At), vb.Sub(va)
	long := a.At.Distance(b.At)
	// The ruled distance must be that of the corners.
	if (v.Dot(v) - long*long).Abs() > 1e-4*(1+long) {
		return Frame{}, false
	}
	n := face.normal.Mul(-1) // the back looks at the board
	if seat.Shown {
		n = face.normal
	}
	e := v.Unit()
	f := n.Cross(e) // e, f, n are right-handed
	ex, ey := d.X/long, d.Y/long
	// The plane's X is ex along e and -ey along f; its Y is ey and ex.
	u := e.Mul(ex).Sub(f.Mul(ey))
	w := e.Mul(ey).Add(f.Mul(ex))
	return Frame{O: va.Sub(u.Mul(a.At.X)).Sub(w.Mul(a.At.Y)), U: u, V: w}, true
}

func index(surfaces []surface, name geometry.Face) int {
	for i, s := range surfaces {
		if s.name == name {
			return i
		}
	}
	return -1
}

// landing gives a surface in whose plane a region lies with its back to the
// board, or on another layer of covering where it is pleated.
func landing(f Frame, surfaces []surface) int {
	n := f.Normal()
	for i, s := range surfaces {
		if n.Dot(s.normal).Abs() > 1-1e-9 && f.O.Sub(s.frame.O).Dot(s.normal).Abs() < 1e-4 {
			return i
		}
	}
	return -1
}

// project gives a region's outline in a surface's coordinates.
func project(f Frame, outline []geometry.Point, s surface) []geometry.Point {
	out := make([]geometry.Point, len(outline))
	for i, p := range outline {
		out[i] = s.frame.Flat(f.At(p))
	}
	return out
}

func corners(b geometry.Box) []geometry.Point { return geometry.Rectangle(b).Flatten(1) }

// where names the middle of a region in the piece's coordinates.
func where(outline []geometry.Point) string {
	c := geometry.Polygon(outline...).Bounds().Center()
	return fmt.Sprintf("%.1f, %.1f mm", c.X.MM(), c.Y.MM())
}
