package foldup

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/polygon"
	"forel/geometry/space"
)

// Patch is a region of a piece where it ends up: in the plane of a face of the
// body.
type Patch struct {
	Piece  string
	Seat   int
	Order  int  // how many folds from the part that is laid first
	Turn   int  // of those equally far the lower is turned first, and lies beneath
	Tucked bool // it gets where it is by a crease at a corner, not by a fold
	Thick  Length
	Plane  int              // it lies in
	Shape  polygon.Shape    // in the plane's coordinates; it may reach past the face
	Tab    *TabEnd          // of a tab turned over the edge of a hole
	flat   []geometry.Point // in the piece's coordinates
}

// Hang hangs the parts of a piece on the body at one of its seats, by number; ok is
// false where the piece does not fit there.
func (b Body) Hang(p geometry.Piece, seat int) (s fold.Sheet, ok bool) {
	if seat >= len(p.Seats) {
		return s, false
	}
	root, ok := b.Place(p.Seats[seat])
	if !ok {
		return s, false
	}
	s, _ = hang(p, root, b.Surfaces[b.Find(p.Seats[seat].Face)])
	for i, q := range s.Folded() {
		if on := b.landing(q.Frame); on >= 0 && !q.Web && !q.Tab {
			s.Leaves[i].Face = b.Surfaces[on].Face
		}
	}
	return s, true
}

// hang hangs a piece on the part that lies most on a surface.
func hang(p geometry.Piece, root space.Frame, home Surface) (s fold.Sheet, ok bool) {
	return fold.Hang(p, root, func(r fold.Part) float64 {
		return Meet(shape(project(root, r.Outline, home)), home.Outline()).Size()
	})
}

// Seated lays a piece on one of its seats and folds it up, part by part, each
// hanging on its longest fold. thick is how thick a layer of it is.
func (b Body) Seated(p geometry.Piece, seat int, thick Length) ([]Patch, []Fault) {
	var faults []Fault
	fault := func(kind Kind, what string, args ...any) {
		faults = append(faults, Fault{Kind: kind, Piece: p.Name, What: fmt.Sprintf(what, args...)})
	}
	root, ok := b.Place(p.Seats[seat])
	if !ok {
		fault(Misfit, "its place does not fit: the ruled lines and the boards differ")
		return nil, faults
	}
	s, ok := hang(p, root, b.Surfaces[b.Find(p.Seats[seat].Face)])
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
	var patches []Patch
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
			ps, fs := b.turnedTab(p, q, posed[q.On].Frame, thick)
			for n := range ps {
				ps[n].Seat, ps[n].Order = seat, order+2 // it is turned when all else is
			}
			patches, faults = append(patches, ps...), append(faults, fs...)
			continue
		}
		on := b.landing(q.Frame)
		if on < 0 {
			if !tucked {
				fault(Overhang, "the part at %s lands on no face", where(q.Outline))
			}
			continue
		}
		patches = append(patches, Patch{
			Piece: p.Name, Seat: seat, Order: order, Turn: turn(p, q.Outline), Tucked: tucked, Thick: thick,
			Plane: b.Surfaces[on].Plane, flat: q.Outline, Shape: shape(project(q.Frame, q.Outline, b.Surfaces[on])),
		})
	}
	return patches, faults
}

// turn returns when a part is turned, by the regions of the piece that lie in it.
func turn(p geometry.Piece, outline []geometry.Point) (n int) {
	for _, r := range p.Regions {
		if r.Turn > n && r.Room.Center().In(outline) {
			n = r.Turn
		}
	}
	return n
}

// Place returns the frame of a piece that lies on its seat; ok is false where the
// ruled distance is not that of the corners, or the body lacks what it names.
func (b Body) Place(seat geometry.Seat) (f space.Frame, ok bool) {
	on := b.Find(seat.Face)
	from, to := seat.At[0], seat.At[1]
	va, okA := b.Corners[from.On]
	vb, okB := b.Corners[to.On]
	if on < 0 || !okA || !okB {
		return space.Frame{}, false
	}
	d, v := to.At.Sub(from.At), vb.Sub(va)
	long := from.At.Distance(to.At)
	if (v.Dot(v) - long*long).Abs() > 1e-4*(1+long) {
		return space.Frame{}, false
	}
	n := b.Surfaces[on].Normal.Mul(-1) // the back looks at the board
	if seat.Shown {
		n = b.Surfaces[on].Normal
	}
	e := v.Unit()
	across := n.Cross(e) // e, across, n are right-handed
	ex, ey := d.X/long, d.Y/long
	// The plane's X is ex along e and -ey along across; its Y is ey and ex.
	u := e.Mul(ex).Sub(across.Mul(ey))
	w := e.Mul(ey).Add(across.Mul(ex))
	return space.Frame{O: va.Sub(u.Mul(from.At.X)).Sub(w.Mul(from.At.Y)), U: u, V: w}, true
}

// landing returns a surface in whose plane a region lies with its back to the
// board, or else on another layer of covering where it is pleated; -1 for none.
func (b Body) landing(f space.Frame) int {
	n := f.Normal()
	for _, back := range []Length{-1, 1} {
		for i, s := range b.Surfaces {
			if n.Dot(s.Normal)*back > 1-1e-9 && f.O.Sub(s.Frame.O).Dot(s.Normal).Abs() < 1e-4 {
				return i
			}
		}
	}
	return -1
}

// project returns a region's outline in a surface's coordinates.
func project(f space.Frame, outline []geometry.Point, s Surface) []geometry.Point {
	out := make([]geometry.Point, len(outline))
	for i, p := range outline {
		out[i] = s.Frame.Flat(f.At(p))
	}
	return out
}

// where names the middle of a region in the piece's coordinates.
func where(outline []geometry.Point) string {
	c := geometry.Polygon(outline...).Bounds().Center()
	return fmt.Sprintf("%.1f, %.1f mm", c.X.MM(), c.Y.MM())
}
