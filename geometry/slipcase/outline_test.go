package slipcase_test

import (
	"errors"
	"fmt"
	"math"

	"forel/geometry"
	"forel/geometry/slipcase"
)

// checkOutlines: every outline is simple, closed, counterclockwise, of
// positive area, without a repeated point, from the origin; folds, slits,
// guides and the room for names lie in it.
func checkOutlines(_ slipcase.Job, ps pieces) error {
	for name, p := range ps {
		if err := errors.Join(checkOutline(p), checkLines(p)); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	return nil
}

func checkOutline(p geometry.Piece) error {
	if !p.Outline.Closed {
		return errors.New("outline is open")
	}
	points := p.Outline.Flatten(0.001)
	for n, q := range points {
		if next := points[(n+1)%len(points)]; q.Distance(next) <= eps {
			return fmt.Errorf("point %v is repeated", q)
		}
	}
	judged := judgedPolygon(p.Outline)
	if err := judged.Validate(); err != nil {
		return err
	}
	if !judged.ExteriorRing().IsSimple() {
		return errors.New("outline is not simple")
	}
	if !judged.IsCCW() || judged.Area() <= 0 || p.Outline.SignedArea() <= 0 {
		return fmt.Errorf("outline encloses %v mm2, counterclockwise %v", judged.Area(), judged.IsCCW())
	}
	if !same(judged.Area(), p.Outline.SignedArea()) && math.Abs(judged.Area()/p.Outline.SignedArea()-1) > 1e-9 {
		return fmt.Errorf("area is %v, not %v", p.Outline.SignedArea(), judged.Area())
	}
	if low, ok := judged.Envelope().Min().XY(); !ok || low.X != 0 || low.Y != 0 {
		return fmt.Errorf("outline starts at %v", low)
	}
	return nil
}

func checkLines(p geometry.Piece) error {
	straight := map[string][]geometry.Path{"fold": p.Folds, "slit": p.Slits}
	for what, paths := range straight {
		for _, path := range paths {
			from, to, ok := ends(path)
			if !ok || from.Distance(to) <= eps {
				return fmt.Errorf("a %s is not one straight line: %v", what, path)
			}
			if !within(judgedLine(from, to), p.Outline) {
				return fmt.Errorf("a %s leaves the outline: %v to %v", what, from, to)
			}
		}
	}
	for _, g := range p.Guides {
		points := g.Path.Flatten(0.001)
		if g.Path.Closed {
			points = append(points, points[0])
		}
		if !within(judgedLine(points...), p.Outline) {
			return fmt.Errorf("guide %q leaves the outline", g.Name)
		}
	}
	for _, r := range p.Regions {
		if r.Room.Empty() || !within(judgedBox(r.Room), p.Outline) {
			return fmt.Errorf("room for %q is %v", r.Name, r.Room)
		}
	}
	return nil
}

// checkDrawnOnce: no stretch of outline, slits, folds and ruled lines is drawn
// a second time.
func checkDrawnOnce(_ slipcase.Job, ps pieces) error {
	for name, p := range ps {
		var drawn []geometry.Segment
		for _, paths := range [][]geometry.Path{p.Cuts(), p.Folds, p.Rulings()} {
			for _, path := range paths {
				drawn = append(drawn, path.Segments()...)
			}
		}
		for n, a := range drawn {
			for _, b := range drawn[n+1:] {
				if shared := overlap(a, b); shared > eps {
					return fmt.Errorf("%s: %v mm of %v and %v are one line", name, shared, a, b)
				}
			}
		}
	}
	return nil
}

// overlap gives the length of the stretch that two straight segments share.
func overlap(a, b geometry.Segment) float64 {
	const hair = 1e-9 // far below what is drawn, above the noise of float64
	ux, uy := float64(a.To.X-a.From.X), float64(a.To.Y-a.From.Y)
	n := math.Hypot(ux, uy)
	ux, uy = ux/n, uy/n
	along := func(p geometry.Point) (float64, float64) {
		dx, dy := float64(p.X-a.From.X), float64(p.Y-a.From.Y)
		return dx*ux + dy*uy, math.Abs(dy*ux - dx*uy)
	}
	t0, off0 := along(b.From)
	t1, off1 := along(b.To)
	if off0 > hair || off1 > hair {
		return 0
	}
	return min(n, max(t0, t1)) - max(0, min(t0, t1))
}
