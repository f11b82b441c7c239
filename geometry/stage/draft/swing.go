package draft

import (
	"math"

	"forel/geometry"
	"forel/geometry/polygon"
	"forel/geometry/stage"
)

// Swing returns the arrow that the tip of a leaf moves along from one stage of the
// piece to another; angle tells how the leaves are turned at a stage. The leaf is the one
// that counts most; ok is false where none counts. With places the arrow is to be near, it
// stands there; else in the middle.
func (h Hung) Swing(from, to Folded, angle func(Folded) Angle, near []stage.Vec, count func(leaf int) float64) (a stage.Arrow, ok bool) {
	best, most := -1, 0.0
	for i := range h.Leaves {
		if n := count(i); n > most {
			best, most = i, n
		}
	}
	if best < 0 {
		return stage.Arrow{}, false
	}
	tip := h.tip(best, angle(from), near)
	const steps = 14
	for k := range steps + 1 {
		part, now := 0.04+0.82*float64(k)/steps, from
		for i := range now {
			now[i] += (to[i] - from[i]) * part
		}
		a.Path = append(a.Path, h.Pose(angle(now))[best].At(tip))
	}
	return a, true
}

// tip returns the middle of the edge of a leaf that is farthest from its hinge.
// With places that it is to be near, it is the place on that edge, as the piece is
// posed, nearest their middle.
func (h Hung) tip(leaf int, angle Angle, near []stage.Vec) geometry.Point {
	l := h.Leaves[leaf]
	off := polygon.Left(l.Hinge())
	far := Length(0)
	for _, p := range l.Outline {
		far = max(far, off(p).Abs())
	}
	var edge []geometry.Point
	for _, p := range l.Outline {
		if off(p).Abs() > far-0.01 {
			edge = append(edge, p)
		}
	}
	var sum geometry.Point
	for _, p := range edge {
		sum = sum.Add(p)
	}
	best := sum.Mul(1 / float64(len(edge)))
	if near == nil || len(edge) < 2 {
		return best
	}
	var want stage.Vec
	for _, q := range near {
		want = want.Add(q.Mul(1 / Length(len(near))))
	}
	posed := h.Pose(angle)[leaf]
	least := Length(math.Inf(1))
	const samples = 20
	a, b := edge[0], edge[len(edge)-1]
	for k := 2; k <= samples-2; k++ {
		p := a.Add(b.Sub(a).Mul(float64(k) / samples))
		if d := posed.At(p).Sub(want).Size(); d < least {
			best, least = p, d
		}
	}
	return best
}
