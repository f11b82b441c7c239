package labelled

import (
	"cmp"
	"iter"
	"slices"
	"sync"

	"forel/geometry"
	"forel/render/shape"
)

// White kept round a label.
const (
	offLines  geometry.Length = 0.7 // to the nearest line
	offLabels geometry.Length = 1.8 // to the nearest other label
)

// placer finds room for labels: within a safe box, off every line of the
// template and off what has been placed before. All is in page coordinates.
type placer struct {
	safe geometry.Box
	shape.Taken
}

// near returns the placer of boxes that all lie in a room: what is not near it is
// left out. What it takes is not taken from p.
func (p *placer) near(room geometry.Box) placer {
	return placer{p.safe, p.Near(room, offLabels, offLines)}
}

// free tells whether a box can be used.
func (p *placer) free(b geometry.Box) bool {
	return p.safe.Contains(b) && p.Free(b, offLabels, offLines)
}

// first returns the first box that is free, and takes it.
func (p *placer) first(boxes iter.Seq[geometry.Box]) (geometry.Box, bool) {
	for b := range boxes {
		if p.free(b) {
			p.Boxes = append(p.Boxes, b)
			return b, true
		}
	}
	return geometry.Box{}, false
}

// spread is a grid of places about a middle, the most central first, each
// coordinate from -1 to 1.
var spread = sync.OnceValue(func() []geometry.Point {
	const steps = 12 // each way
	var at [][2]int
	for i := -steps; i <= steps; i++ {
		for k := -steps; k <= steps; k++ {
			at = append(at, [2]int{i, k})
		}
	}
	slices.SortStableFunc(at, func(a, b [2]int) int {
		return cmp.Compare(a[0]*a[0]+a[1]*a[1], b[0]*b[0]+b[1]*b[1])
	})
	points := make([]geometry.Point, len(at))
	for i, a := range at {
		points[i] = geometry.Pt(geometry.Length(a[0])/steps, geometry.Length(a[1])/steps)
	}
	return points
})

// within returns boxes of a size spread over a room, the most central first.
func within(room geometry.Box, w, h geometry.Length) iter.Seq[geometry.Box] {
	slackX, slackY := (room.Width()-w)/2, (room.Height()-h)/2
	c := room.Center()
	return func(yield func(geometry.Box) bool) {
		if slackX < 0 || slackY < 0 {
			return
		}
		for _, p := range spread() {
			if !yield(around(geometry.Pt(c.X+p.X*slackX, c.Y+p.Y*slackY), w, h)) {
				return
			}
		}
	}
}

// around returns the box of a size about a middle.
func around(m geometry.Point, w, h geometry.Length) geometry.Box {
	return geometry.Bx(m.X-w/2, m.Y-h/2, m.X+w/2, m.Y+h/2)
}

// beside returns boxes of a size just outside a piece, near a target: left and
// right of it at the target's height, above and below it at its place.
func beside(piece geometry.Box, target geometry.Point, w, h geometry.Length) iter.Seq[geometry.Box] {
	const gap = 2
	return func(yield func(geometry.Box) bool) {
		for _, slide := range [...]geometry.Length{0, 8, -8, 16, -16, 30, -30} {
			for _, far := range [...]geometry.Length{gap, gap + 4, gap + 8} {
				if !yield(around(geometry.Pt(piece.Max.X+far+w/2, target.Y+slide), w, h)) ||
					!yield(around(geometry.Pt(piece.Min.X-far-w/2, target.Y+slide), w, h)) ||
					!yield(around(geometry.Pt(target.X+slide, piece.Min.Y-far-h/2), w, h)) ||
					!yield(around(geometry.Pt(target.X+slide, piece.Max.Y+far+h/2), w, h)) {
					return
				}
			}
		}
	}
}

// about returns boxes of a size round a target, off it, the nearest first.
func about(target geometry.Point, w, h geometry.Length) iter.Seq[geometry.Box] {
	return func(yield func(geometry.Box) bool) {
		for _, off := range [...]geometry.Length{3, 5, 8, 12, 17, 23, 30} {
			for _, slide := range [...]geometry.Length{0, 1, -1, 2, -2} {
				for _, side := range [...]geometry.Length{-1, 1} {
					if !yield(around(target.Add(geometry.Pt(slide*w/2, side*(off+h/2))), w, h)) ||
						!yield(around(target.Add(geometry.Pt(side*(off+w/2), slide*h*2)), w, h)) {
						return
					}
				}
			}
		}
	}
}
