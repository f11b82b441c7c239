package onepiece_test

import (
	"slices"

	"forel/geometry"
)

// scored is a blank with the places of its scores read off its folds.
type scored struct {
	geometry.Piece
	left, right          geometry.Length // the spine scores
	innerHead, innerTail geometry.Length // the scores of the left side
	outerHead, outerTail geometry.Length // the scores of spine and right side
}

// partsOf reads a blank's folds: two run from tail to head, the others across;
// those that begin at the left edge belong to the left side.
func partsOf(p geometry.Piece) scored {
	b := scored{Piece: p}
	var up, inner, outer []geometry.Length
	width, _ := p.Size()
	for _, f := range p.Folds {
		from, to := f.Vertices[0], f.Vertices[1]
		switch {
		case from.X.Near(to.X):
			up = append(up, from.X)
		case min(from.X, to.X).Near(0):
			inner = append(inner, from.Y)
		case max(from.X, to.X).Near(width):
			outer = append(outer, from.Y)
		}
	}
	b.left, b.right = slices.Min(up), slices.Max(up)
	b.innerTail, b.innerHead = slices.Min(inner), slices.Max(inner)
	b.outerTail, b.outerHead = slices.Min(outer), slices.Max(outer)
	return b
}

// pointsIn gives the corners of the outline that lie in a box.
func (b scored) pointsIn(box geometry.Box) []geometry.Point {
	var out []geometry.Point
	for _, v := range b.Outline.Vertices {
		if box.Contains(geometry.Box{Min: v.Point, Max: v.Point}) {
			out = append(out, v.Point)
		}
	}
	return out
}

// outerTip gives how high the outer flap at the head reaches.
func (b scored) outerTip() geometry.Length {
	var top geometry.Length
	for _, v := range b.Outline.Vertices {
		if v.X > b.right {
			top = max(top, v.Y)
		}
	}
	return top
}

// moved gives the blank with every corner and every end of a fold or slit put
// where to says.
func (b scored) moved(to func(geometry.Point) geometry.Point) geometry.Piece {
	p := b.Piece
	path := func(q geometry.Path) geometry.Path {
		q.Vertices = slices.Clone(q.Vertices)
		for i := range q.Vertices {
			q.Vertices[i].Point = to(q.Vertices[i].Point)
		}
		return q
	}
	paths := func(qs []geometry.Path) []geometry.Path {
		var out []geometry.Path
		for _, q := range qs {
			out = append(out, path(q))
		}
		return out
	}
	p.Outline, p.Slits, p.Folds = path(p.Outline), paths(p.Slits), paths(p.Folds)
	return p
}
