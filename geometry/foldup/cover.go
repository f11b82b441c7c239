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

// Bare finds board that no covering reaches. A gap whose mean breadth is no
// more than the covering beside it is thick is closed by that thickness.
func (c Covered) Bare(i int) []Fault {
	s := c.Surfaces[i]
	left := s.Cover
	if len(left) == 0 {
		return nil
	}
	for _, p := range c.In(s.Plane) {
		left = Without(left, p.Shape)
	}
	var out []Fault
	for _, part := range left {
		if part.Breadth() > max(c.Closed, Sliver) {
			out = append(out, Fault{Kind: Bare, Face: s.Face, At: part.Bounds(),
				What: fmt.Sprintf("%.1f mm² of board is left bare", part.Size())})
		}
	}
	return out
}

// overhang finds flaps that reach past the faces in their plane; inside, past
// them is into a wall.
func (c Covered) overhang(i int) []Fault {
	s := c.Surfaces[i]
	if !c.first(i) {
		return nil // looked at with the first face of the plane
	}
	together := c.plane(s.Plane)
	whole := sync.OnceValue(func() polygon.Shape {
		var all []polygon.Shape
		for _, o := range together {
			all = append(all, o.Outline())
		}
		return United(all)
	})
	var out []Fault
	for _, p := range c.In(s.Plane) {
		if p.Tucked && !s.Inside || len(s.Shape) == 0 && s.Extent.Grow(1e-6).Contains(p.Shape.Bounds()) {
			continue
		}
		past, hair := Without(p.Shape, whole()), Sliver
		if p.Tab != nil {
			hair = c.HoleChord // its straight end is not on the edge of the hole
		}
		if !Solid(past, max(Sliver, hair)) {
			continue
		}
		f := Fault{Kind: Overhang, Piece: p.Piece, Face: s.Face, At: past.Bounds(), What: "a flap reaches past the face it lands on"}
		switch {
		case s.Inside:
			f.Kind, f.What = Collision, "a turn-in runs into a wall"
		case len(together) > 1:
			out = append(out, pastSeveral(together, f, past)...)
			continue
		}
		out = append(out, f)
	}
	return out
}

// pastSeveral names the faces of one plane that a flap reaches past: for each
// part of it beyond them the nearest.
func pastSeveral(faces []Surface, f Fault, past polygon.Shape) []Fault {
	var out []Fault
	for _, part := range past {
		if part.Breadth() <= Sliver {
			continue
		}
		f.At, f.What = part.Bounds(), "a flap reaches past "+faces[0].Together
		c, near := f.At.Center(), Length(math.Inf(1))
		for _, o := range faces {
			e := o.Extent
			in := geometry.Pt(max(e.Min.X, min(e.Max.X, c.X)), max(e.Min.Y, min(e.Max.Y, c.Y)))
			if d := c.Distance(in); d < near-1e-9 {
				f.Face, near = o.Face, d
			}
		}
		if !slices.ContainsFunc(out, func(o Fault) bool { return o.Face == f.Face }) {
			out = append(out, f)
		}
	}
	return out
}

// Collisions finds flaps of one piece on one spot that are folded at the same
// time, or tucked into corners at the same time, so that neither is meant to lie
// on the other.
func (c Covered) Collisions(i int) []Fault {
	s := c.Surfaces[i]
	if !c.first(i) {
		return nil
	}
	patches := c.In(s.Plane)
	var out []Fault
	for n, a := range patches {
		for _, b := range patches[n+1:] {
			if a.Piece != b.Piece || a.Seat != b.Seat || a.Order != b.Order || a.Turn != b.Turn || a.Tucked != b.Tucked || a.Tucked && !s.Inside {
				continue
			}
			if both := Meet(a.Shape, b.Shape); Solid(both, Sliver) {
				out = append(out, Fault{Kind: Collision, Piece: a.Piece, Face: s.Face, At: both.Bounds(), What: "two flaps folded at the same time lie on one spot"})
			}
		}
	}
	return out
}

// leastWeb is how far a cut must stay from a corner of a body for the
// covering to close over it, in mm (common practice, no source).
const leastWeb Length = 0.1

// corners sees to it that no covering that goes round a corner of the body
// is cut to the very corner.
func corners(pieces []geometry.Piece) []Fault {
	var out []Fault
	for _, p := range pieces {
		for _, corner := range foldCrossings(p) {
			for _, c := range p.Cuts() {
				if d := Distance(corner, c); d < leastWeb {
					out = append(out, Fault{Kind: Bare, Piece: p.Name, What: fmt.Sprintf("cut to the corner of the board at %.1f, %.1f mm", corner.X.MM(), corner.Y.MM())})
				}
			}
		}
	}
	return out
}

// foldCrossings returns the places where two folds of a piece meet at an angle:
// the corners of the body on it.
func foldCrossings(p geometry.Piece) []geometry.Point {
	var out []geometry.Point
	for i, a := range p.Folds {
		for _, b := range p.Folds[i+1:] {
			sa, sb := a.Segments()[0], b.Segments()[0]
			if sa.Bulge != 0 || sb.Bulge != 0 || len(a.Vertices) > 2 || len(b.Vertices) > 2 {
				continue // round a hole
			}
			d, e := sa.To.Sub(sa.From), sb.To.Sub(sb.From)
			if d.Cross(e).Abs() <= 1e-6 {
				continue // one line
			}
			var places []geometry.Point
			for _, t := range fold.Meets(sa.From, sa.To, sb.From, sb.To) {
				places = append(places, sa.From.Add(d.Mul(t)))
			}
			for _, q := range []geometry.Point{sa.From, sa.To} { // where both end
				if q.Near(sb.From) || q.Near(sb.To) {
					places = append(places, q)
				}
			}
			for _, t := range fold.Meets(sb.From, sb.To, sa.From, sa.To) { // where one ends on the other
				places = append(places, sb.From.Add(e.Mul(t)))
			}
			for _, q := range places {
				if !slices.ContainsFunc(out, q.Near) {
					out = append(out, q)
				}
			}
		}
	}
	return out
}

// Distance returns how far a point is from a path.
func Distance(p geometry.Point, path geometry.Path) Length {
	best := Length(math.Inf(1))
	for _, s := range path.Straight(0.01) {
		best = min(best, p.ToLine(s.From, s.To))
	}
	return best
}
