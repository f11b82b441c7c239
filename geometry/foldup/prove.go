package foldup

import (
	"fmt"
	"slices"
	"sync"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
)

// Layer is a patch of covering on a face.
type Layer struct {
	Piece  string
	Order  int           // how many folds from the part that is laid first
	Tucked bool          // pinched or bent at a corner rather than folded
	Shape  geom.Geometry // in the face's coordinates; it may reach past the face
}

// FaceReport tells what lies on one face.
type FaceReport struct {
	Face    geometry.Face
	Extent  geometry.Box // in the face's own coordinates: X along, Y up or toward the mouth
	Inside  bool
	Layers  []Layer
	Stack   Length // the thickest pile of covering, tucks left out
	Corners Length // the thickest pile, tucks counted
}

// Report is the proof of one case: what is wrong, face by face what lies
// where, and the clearance that is left.
type Report struct {
	Carcass   Carcass
	Faces     []FaceReport
	Faults    []Fault
	Clearance Clearance
}

// Clearance is what is left between the book and all that is inside the case.
type Clearance struct {
	BodyHeight, BodyWidth, BodyThickness Length // where nothing is turned in
	MouthHeight, MouthThickness          Length // at the mouth
	MouthCorners                         Length // in height, where tabs lie over each other in the corners
}

// Sound tells whether nothing is wrong.
func (r Report) Sound() bool { return len(r.Faults) == 0 }

// Conditions are what is known of a case beside its flat pieces.
type Conditions struct {
	Edge   Length // thickness of a board as it is joined, with a lining pasted before
	Lining Length // thickness of a lining pasted in afterwards, else zero
	// What stands in the case: the tallest, the deepest, and the thickness of
	// all with the dividers between them.
	Height, Width, Thickness Length
	Compartments             int    // one or more
	Strip                    Length // thickness of the strip round a divider's mouth edge
	Layer                    map[geometry.Material]Length
	Lined                    bool   // every board is lined
	LinedShort               Length // what a lining put in afterwards stays back from the mouth
	SidesOnly                bool   // only the sides are covered, but for a border at spine, head and tail
	Border                   Length
	Divider                  Length // thickness of a divider with its linings
	HoleTabs                 Length // thickness of the tabs of a round hole, which lie on the turn-in beside it
}

// Prove folds the pieces up and looks at the result.
func Prove(pieces []geometry.Piece, k Conditions) Report {
	c, faults := Build(pieces, k.Edge)
	if len(faults) > 0 {
		return Report{Faults: faults}
	}
	surfaces := c.surfaces()
	var patches []patch
	for _, p := range pieces {
		for i, seat := range p.Seats {
			ps, fs := c.seated(p, seat, k.Layer[p.Material], surfaces)
			for n := range ps {
				ps[n].seat = i
			}
			patches = append(patches, ps...)
			faults = append(faults, fs...)
		}
	}
	r := Report{Carcass: c, Faults: faults}
	v := view{surfaces: surfaces, patches: patches, known: k}
	for _, p := range patches {
		v.closed = max(v.closed, p.thick)
	}
	for i := range surfaces {
		r.Faces = append(r.Faces, v.face(i))
		r.Faults = append(r.Faults, v.bare(i)...)
		r.Faults = append(r.Faults, v.overhang(i)...)
		r.Faults = append(r.Faults, v.collisions(i)...)
	}
	r.Faults = append(r.Faults, v.corners(pieces)...)
	r.Faults = append(r.Faults, v.against()...)
	r.Faults = append(r.Faults, v.slitsOutside(pieces)...)
	r.Faults = append(r.Faults, c.linings(pieces, k)...)
	r.clear(k)
	r.Faults = append(r.Faults, r.dividers(pieces, k)...)
	return r
}

// view is a case with its coverings on.
type view struct {
	surfaces []surface
	patches  []patch
	closed   Length // a gap of no more mean breadth is closed by the thickness beside it
	known    Conditions
}

// on gives what lies in the plane of a surface.
func (v view) on(i int) []patch {
	var out []patch
	for _, p := range v.patches {
		if p.plane == v.surfaces[i].plane {
			out = append(out, p)
		}
	}
	return out
}

// face lists the layers on a face and the thickest pile of them.
func (v view) face(i int) FaceReport {
	s := v.surfaces[i]
	r := FaceReport{Face: s.name, Extent: s.extent, Inside: s.inside}
	patches := v.on(i)
	for _, p := range patches {
		if box(p.shape).Intersect(s.extent).Grow(-sliver).Empty() {
			continue // on another edge of the mouth
		}
		r.Layers = append(r.Layers, Layer{p.piece, p.order, p.tucked, p.shape})
	}
	if s.inside {
		flat := slices.DeleteFunc(slices.Clone(patches), func(p patch) bool { return p.tucked })
		r.Stack, r.Corners = pile(flat), pile(patches)
	}
	return r
}

// pile gives the greatest thickness that lies anywhere.
func pile(patches []patch) Length {
	type cell struct {
		shape geom.Geometry
		thick Length
	}
	var cells []cell
	for _, p := range patches {
		s := p.shape
		for _, c := range cells { // those there before; what is added lies on top
			if both := meet(c.shape, s); solid(both, sliver) {
				cells = append(cells, cell{both, c.thick + p.thick})
			}
		}
		cells = append(cells, cell{s, p.thick})
	}
	var most Length
	for _, c := range cells {
		most = max(most, c.thick)
	}
	return most
}

// sliver is how broad a strip must be to count as more than rounding.
const sliver Length = 1e-3

// solid tells whether a shape has a part broader than a limit.
func solid(g geom.Geometry, limit Length) bool {
	return slices.ContainsFunc(parts(g), func(p geom.Polygon) bool { return breadth(p) > limit })
}

// toCover gives what of an outside face is to be covered, if anything.
func (v view) toCover(s surface) (geom.Geometry, bool) {
	if !v.known.SidesOnly {
		return s.shape, true
	}
	inner := s.extent
	b := v.known.Border
	inner.Min.Y, inner.Max.Y = inner.Min.Y+b, inner.Max.Y-b
	switch s.name {
	case geometry.LeftOutside, geometry.RightOutside:
		inner.Min.X += b // at the spine
	case geometry.LeftMouth, geometry.RightMouth:
	default:
		return geom.Geometry{}, false
	}
	return meet(s.shape, shape(corners(inner))), true
}

// bare finds board that no covering reaches. A gap whose mean breadth is no
// more than the covering beside it is thick is closed by that thickness.
func (v view) bare(i int) []Fault {
	s := v.surfaces[i]
	if s.inside {
		return nil // lined, or left bare on purpose
	}
	left, ok := v.toCover(s)
	if !ok {
		return nil
	}
	for _, p := range v.on(i) {
		left = without(left, p.shape)
	}
	var out []Fault
	for _, part := range parts(left) {
		if breadth(part) > max(v.closed, sliver) {
			out = append(out, Fault{Kind: Bare, Face: s.name, At: box(part.AsGeometry()),
				What: fmt.Sprintf("%.1f mm² of board is left bare", part.Area())})
		}
	}
	return out
}

// overhang finds flaps that reach past the faces in their plane; inside, past
// them is into a wall.
func (v view) overhang(i int) []Fault {
	s := v.surfaces[i]
	if i > 0 && v.surfaces[i-1].plane == s.plane {
		return nil // looked at with the first face of the plane
	}
	var faces []geom.Geometry
	for _, o := range v.surfaces {
		if o.plane == s.plane {
			faces = append(faces, o.shape)
		}
	}
	whole := sync.OnceValue(func() geom.Geometry { return united(faces) })
	var out []Fault
	for _, p := range v.on(i) {
		if p.tucked || s.plain && s.extent.Grow(1e-6).Contains(box(p.shape)) {
			continue
		}
		past := without(p.shape, whole())
		if !solid(past, sliver) {
			continue
		}
		f := Fault{Kind: Overhang, Piece: p.piece, Face: s.name, At: box(past), What: "a flap reaches past the face it lands on"}
		switch {
		case s.inside:
			f.Kind, f.What = Collision, "a turn-in runs into a wall"
		case len(faces) > 1:
			f.Face, f.What = "", "a flap reaches past the edges of the boards at the mouth"
		}
		out = append(out, f)
	}
	return out
}

// collisions finds flaps of one piece on one spot that are folded at the same
// time, so that neither is meant to lie on the other.
func (v view) collisions(i int) []Fault {
	if i > 0 && v.surfaces[i-1].plane == v.surfaces[i].plane {
		return nil
	}
	patches := v.on(i)
	var out []Fault
	for n, a := range patches {
		for _, b := range patches[n+1:] {
			if a.piece != b.piece || a.seat != b.seat || a.order != b.order || a.tucked || b.tucked {
				continue
			}
			if both := meet(a.shape, b.shape); solid(both, sliver) {
				out = append(out, Fault{Kind: Collision, Piece: a.piece, Face: v.surfaces[i].name, At: box(both), What: "two flaps folded at the same time lie on one spot"})
			}
		}
	}
	return out
}

// leastWeb is how far a cut must stay from a corner of the carcass for the
// covering to close over it, in mm (common practice, no source).
const leastWeb Length = 0.1

// corners sees to it that no covering that goes round a corner of the carcass
// is cut to the very corner.
func (v view) corners(pieces []geometry.Piece) []Fault {
	var out []Fault
	for _, p := range pieces {
		for _, corner := range foldCrossings(p) {
			for _, c := range p.Cuts() {
				if d := distance(corner, c); d < leastWeb {
					out = append(out, Fault{Kind: Bare, Piece: p.Name, What: fmt.Sprintf("cut to the corner of the board at %.1f, %.1f mm", corner.X.MM(), corner.Y.MM())})
				}
			}
		}
	}
	return out
}

// foldCrossings gives the places where two folds of a piece meet at an angle:
// the corners of the carcass on it.
func foldCrossings(p geometry.Piece) []geometry.Point {
	var out []geometry.Point
	for i, a := range p.Folds {
		for _, b := range p.Folds[i+1:] {
			sa, sb := a.Segments()[0], b.Segments()[0]
			if sa.Bulge != 0 || sb.Bulge != 0 || len(a.Vertices) > 2 || len(b.Vertices) > 2 {
				continue // round a hole
			}
			for _, t := range meets(sa.From, sa.To, sb.From, sb.To) {
				q := sa.From.Add(sa.To.Sub(sa.From).Mul(t))
				d, e := sa.To.Sub(sa.From), sb.To.Sub(sb.From)
				if (d.X*e.Y-d.Y*e.X).Abs() > 1e-6 && !slices.ContainsFunc(out, q.Near) {
					out = append(out, q)
				}
			}
			// Two folds that end in one place, and one that ends on another.
			for _, q := range []geometry.Point{sa.From, sa.To} {
				if (q.Near(sb.From) || q.Near(sb.To)) && !slices.ContainsFunc(out, q.Near) {
					d, e := sa.To.Sub(sa.From), sb.To.Sub(sb.From)
					if (d.X*e.Y - d.Y*e.X).Abs() > 1e-6 {
						out = append(out, q)
					}
				}
			}
			for _, t := range meets(sb.From, sb.To, sa.From, sa.To) {
				q := sb.From.Add(sb.To.Sub(sb.From).Mul(t))
				d, e := sa.To.Sub(sa.From), sb.To.Sub(sb.From)
				if (d.X*e.Y-d.Y*e.X).Abs() > 1e-6 && !slices.ContainsFunc(out, q.Near) {
					out = append(out, q)
				}
			}
		}
	}
	return out
}

// distance gives how far a point is from a path.
func distance(p geometry.Point, path geometry.Path) Length {
	pts := path.Flatten(0.01)
	if path.Closed {
		pts = append(pts, pts[0])
	}
	best := p.Distance(pts[0])
	for i := 1; i < len(pts); i++ {
		best = min(best, p.ToLine(pts[i-1], pts[i]))
	}
	return best
}

// clear works out the clearance from the boards and what lies inside.
func (r *Report) clear(known Conditions) {
	c := r.Carcass
	on := map[geometry.Face]FaceReport{}
	for _, f := range r.Faces {
		on[f.Face] = f
	}
	l := known.Lining
	k := &r.Clearance
	k.BodyHeight = c.Height - 2*c.Lined - 2*l - known.Height
	k.BodyWidth = c.Depth - c.Lined - l - known.Width
	k.BodyThickness = (c.Width - 2*c.Lined - 2*l - known.Thickness) / Length(known.Compartments)
	k.MouthHeight = k.BodyHeight - on[geometry.HeadInside].Stack - on[geometry.TailInside].Stack
	k.MouthCorners = k.BodyHeight - on[geometry.HeadInside].Corners - on[geometry.TailInside].Corners
	tabs := 2 * known.HoleTabs
	left, right := max(on[geometry.LeftInside].Stack, tabs), max(on[geometry.RightInside].Stack, tabs)
	switch known.Compartments {
	case 1:
		k.MouthThickness = k.BodyThickness - left - right
	case 2:
		k.MouthThickness = k.BodyThickness - max(left, right) - known.Strip
	default:
		k.MouthThickness = k.BodyThickness - max(left, right, known.Strip) - known.Strip
	}
	tight := func(what string, l Length, least bool) {
		if l < -1e-9 || !least && l <= 0 {
			r.Faults = append(r.Faults, Fault{Kind: Tight, What: fmt.Sprintf("%s: %.2f mm is left", what, l.MM())})
		}
	}
	tight("depth", k.BodyWidth, true)
	tight("height at the mouth", k.MouthHeight, known.SidesOnly)
	tight("thickness at the mouth", k.MouthThickness, false)
}
