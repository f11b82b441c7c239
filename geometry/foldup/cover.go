package foldup

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/polygon"
)

// toCover gives what of an outside face is to be covered, if anything.
func (v view) toCover(s surface) (polygon.Shape, bool) {
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
		return nil, false
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
	for _, part := range left {
		if part.Breadth() > max(v.closed, sliver) {
			out = append(out, Fault{Kind: Bare, Face: s.name, At: part.Bounds(),
				What: fmt.Sprintf("%.1f mm² of board is left bare", part.Size())})
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
	var faces []polygon.Shape
	for _, o := range v.surfaces {
		if o.plane == s.plane {
			faces = append(faces, o.shape)
		}
	}
	whole := sync.OnceValue(func() polygon.Shape { return united(faces) })
	var out []Fault
	for _, p := range v.on(i) {
		if p.tucked && !s.inside || s.plain && s.extent.Grow(1e-6).Contains(p.shape.Bounds()) {
			continue
		}
		past, hair := without(p.shape, whole()), sliver
		if p.tab != nil {
			hair = v.known.HoleChord // its straight end is not on the edge of the hole
		}
		if !solid(past, max(sliver, hair)) {
			continue
		}
		f := Fault{Kind: Overhang, Piece: p.piece, Face: s.name, At: past.Bounds(), What: "a flap reaches past the face it lands on"}
		switch {
		case s.inside:
			f.Kind, f.What = Collision, "a turn-in runs into a wall"
		case len(faces) > 1:
			out = append(out, v.pastMouth(s.plane, f, past)...)
			continue
		}
		out = append(out, f)
	}
	return out
}

// pastMouth names the edges of the boards at the mouth that a flap reaches past:
// for each part of it beyond them the nearest.
func (v view) pastMouth(plane int, f Fault, past polygon.Shape) []Fault {
	var out []Fault
	for _, part := range past {
		if part.Breadth() <= sliver {
			continue
		}
		f.At, f.What = part.Bounds(), "a flap reaches past the edges of the boards at the mouth"
		c, near := f.At.Center(), Length(math.Inf(1))
		for _, o := range v.surfaces {
			if o.plane != plane {
				continue
			}
			e := o.extent
			in := geometry.Pt(max(e.Min.X, min(e.Max.X, c.X)), max(e.Min.Y, min(e.Max.Y, c.Y)))
			if d := c.Distance(in); d < near-1e-9 {
				f.Face, near = o.name, d
			}
		}
		if !slices.ContainsFunc(out, func(o Fault) bool { return o.Face == f.Face }) {
			out = append(out, f)
		}
	}
	return out
}

// collisions finds flaps of one piece on one spot that are folded at the same
// time, or tucked into corners at the same time, so that neither is meant to lie
// on the other.
func (v view) collisions(i int) []Fault {
	if i > 0 && v.surfaces[i-1].plane == v.surfaces[i].plane {
		return nil
	}
	patches := v.on(i)
	var out []Fault
	for n, a := range patches {
		for _, b := range patches[n+1:] {
			if a.piece != b.piece || a.seat != b.seat || a.order != b.order || a.tucked != b.tucked || a.tucked && !v.surfaces[i].inside {
				continue
			}
			if both := meet(a.shape, b.shape); solid(both, sliver) {
				out = append(out, Fault{Kind: Collision, Piece: a.piece, Face: v.surfaces[i].name, At: both.Bounds(), What: "two flaps folded at the same time lie on one spot"})
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
			for _, t := range fold.Meets(sa.From, sa.To, sb.From, sb.To) {
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
			for _, t := range fold.Meets(sb.From, sb.To, sa.From, sa.To) {
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
