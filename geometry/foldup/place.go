package foldup

import (
	"fmt"
	"slices"
	"strings"

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
	Plane  int               // it lies in
	Depth  Length            // of a stiff part: how far in from the face its inner side lies
	Shape  polygon.Shape     // in the plane's coordinates; it may reach past the face
	Tab    *TabEnd           // of a tab turned over the edge of a hole
	Parts  []geometry.Region // the regions of the piece that lie in it
	flat   []geometry.Point  // in the piece's coordinates
	leaf   int               // of the piece
	on     int               // the leaf it hangs on
}

// Name returns what a part is called, by its regions, each with the face it is for;
// where there are none, its place.
func (p Patch) Name() string {
	if len(p.Parts) == 0 {
		return "part at " + where(p.flat)
	}
	var names []string
	for _, r := range p.Parts {
		names = append(names, r.Name+" ("+string(r.Face)+")")
	}
	return strings.Join(names, " with ")
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
	s, _ = b.hang(p, root, b.Surfaces[b.Find(p.Seats[seat].Face)])
	for i, q := range s.Folded() {
		if on := b.landing(q.Frame); on >= 0 && !q.Web && !q.Tab {
			s.Leaves[i].Face = b.Surfaces[on].Face
		}
	}
	return s, true
}

// hang hangs a piece on the part that lies most on a surface; a stiff one on what of it
// is to be covered, since at its edges lie those of other walls.
func (b Body) hang(p geometry.Piece, root space.Frame, home Surface) (s fold.Sheet, ok bool) {
	on := home.Outline()
	if b.Stiff {
		on = home.Cover
	}
	return fold.Hang(p, root, func(r fold.Part) float64 {
		return Meet(polygon.Of(project(root, r.Outline, home)), on).Size()
	})
}

// Seated lays a piece on one of its seats and folds it up, part by part, each
// hanging on its longest fold. thick is how thick a layer of it is.
func (b Body) Seated(p geometry.Piece, seat int, thick Length) ([]Patch, []Fault) {
	var faults []Fault
	fault := func(kind Kind, what string, args ...any) {
		faults = append(faults, Fault{Kind: kind, Piece: p.Name, What: fmt.Sprintf(what, args...)})
	}
	if err := polygon.Of(p.Outline.Flatten(Sliver)).Validate(); err != nil {
		fault(Misfit, "its outline is not simple: %v", err)
		return nil, faults
	}
	root, ok := b.Place(p.Seats[seat])
	if !ok {
		fault(Misfit, "its place does not fit: the ruled lines and the boards differ")
		return nil, faults
	}
	s, ok := b.hang(p, root, b.Surfaces[b.Find(p.Seats[seat].Face)])
	if !ok {
		fault(Misfit, "does not reach the face it is laid on")
		return nil, faults
	}
	posed := s.Folded()
	for _, what := range append(idle(p, s), torn(posed)...) {
		fault(Misfit, "%s", what)
	}
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
		n := Patch{
			Piece: p.Name, Seat: seat, Order: order, Tucked: tucked, Thick: thick, flat: q.Outline, leaf: i, on: q.On,
			Plane: b.Surfaces[on].Plane, Shape: polygon.Of(project(q.Frame, q.Outline, b.Surfaces[on])),
		}
		if b.Stiff {
			n.Depth = b.Surfaces[on].Frame.O.Sub(q.O).Dot(b.Surfaces[on].Normal) + b.Bend
		}
		for _, r := range p.Regions {
			if q.Holds(r.Room.Center()) {
				n.Parts, n.Turn = append(n.Parts, r), max(n.Turn, r.Turn)
			}
		}
		patches = append(patches, n)
	}
	return patches, faults
}

// idle tells of the folds of a piece that have no two parts on their sides.
func idle(p geometry.Piece, s fold.Sheet) (wrong []string) {
	for _, path := range p.Folds {
		for _, f := range path.Straight(0.01) {
			on := func(j fold.Join) bool { return j.From.Add(j.At).Mul(0.5).ToLine(f.From, f.To) < Sliver }
			ends := slices.ContainsFunc(s.Leaves, func(l fold.Leaf) bool { return slices.ContainsFunc(l.Idle, on) })
			if ends || !slices.ContainsFunc(s.Leaves, func(l fold.Leaf) bool { return slices.ContainsFunc(l.Joins, on) }) {
				wrong = append(wrong, fmt.Sprintf("the fold from %s to %s does not part what it should: it ends short, or a slit beside it is missing or too short",
					place(f.From), place(f.To)))
			}
		}
	}
	return wrong
}

// torn tells of parts that two folds pull two ways.
func torn(posed []fold.Posed) (wrong []string) {
	for i, q := range posed {
		for _, j := range q.Joins {
			if o := posed[j.To]; j.To > i && j.Kind == fold.Fold && !near(fold.Turned(q.Frame, j, 90), o.Frame) {
				wrong = append(wrong, fmt.Sprintf("two folds pull the parts at %s and at %s two ways: a slit or a wedge between flaps is missing or too short", where(q.Outline), where(o.Outline)))
			}
		}
	}
	return wrong
}

// near tells whether two planes lie alike.
func near(f, g space.Frame) bool {
	return max(f.O.Sub(g.O).Size(), f.U.Sub(g.U).Size(), f.V.Sub(g.V).Size()) < Sliver
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
	if b.Stiff {
		return slices.IndexFunc(b.Surfaces, func(s Surface) bool { return n.Dot(s.Normal) < 1e-9-1 })
	}
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
func where(outline []geometry.Point) string { return place(geometry.Around(outline...).Center()) }

func place(p geometry.Point) string { return fmt.Sprintf("%.1f, %.1f mm", p.X.MM(), p.Y.MM()) }
