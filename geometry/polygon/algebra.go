package polygon

import (
	"math"

	"github.com/peterstace/simplefeatures/geom"
)

// Meet gives what two shapes share.
func Meet(a, b Shape) (Shape, error) {
	if apart(a, b) {
		return Shape{}, nil
	}
	if g, ok := quickMeet(a, b); ok {
		return g, nil
	}
	return worked([]Shape{a, b}, operation{
		do:    func(s []Shape) (Shape, error) { return geom.Intersection(s[0], s[1]) },
		keeps: func(in []bool) bool { return in[0] && in[1] },
		most:  min(a.Area(), b.Area()),
	})
}

// Without gives what the first shape has beyond the second.
func Without(a, b Shape) (Shape, error) {
	if apart(a, b) {
		return a, nil
	}
	if isBox(b) && Bounds(b).Contains(Bounds(a)) {
		return Shape{}, nil
	}
	return worked([]Shape{a, b}, operation{
		do:    func(s []Shape) (Shape, error) { return geom.Difference(s[0], s[1]) },
		keeps: func(in []bool) bool { return in[0] && !in[1] },
		least: a.Area() - b.Area(), most: a.Area(),
	})
}

// Union gives all of several shapes together.
func Union(shapes []Shape) (Shape, error) {
	if len(shapes) == 1 {
		return shapes[0], nil
	}
	o := operation{do: geom.UnionMany, keeps: func(in []bool) bool {
		for _, i := range in {
			if i {
				return true
			}
		}
		return false
	}}
	for _, s := range shapes {
		o.least, o.most = max(o.least, s.Area()), o.most+s.Area()
	}
	return worked(shapes, o)
}

// apart tells quickly of most shapes that share nothing, lines among them.
func apart(a, b Shape) bool {
	p, q := Bounds(a), Bounds(b)
	return p.Max.X < q.Min.X || q.Max.X < p.Min.X || p.Max.Y < q.Min.Y || q.Max.Y < p.Min.Y
}

// operation is what is done with shapes, and what must be true of the result.
type operation struct {
	do          func([]Shape) (Shape, error)
	keeps       func(in []bool) bool // whether a place is in the result, by the shapes that it is in
	least, most float64              // bounds of the area
}

// worked works shapes out, on ever coarser grids until the result can be right.
func worked(shapes []Shape, o operation) (Shape, error) {
	p, on := probesOf(shapes), make([]Shape, len(shapes))
	right := func(g Shape, decimals int) bool {
		// A grid moves each edge by a step of it at most.
		step := math.Pow10(-decimals)
		n, slack := g.Area(), p.around*step
		return n >= o.least-slack && n <= o.most+slack && p.agree(g, o.keeps, step)
	}
	for i, s := range shapes {
		if on[i] = s; p.signed(i) {
			on[i] = positive(s)
		}
	}
	if g, err := o.do(on); err == nil && right(g, Finest) {
		return g, nil
	}
	for decimals := Finest; decimals >= coarsest; decimals-- {
		for i, s := range shapes {
			on[i] = positive(s.SnapToGrid(decimals))
		}
		if g, err := o.do(on); err == nil && right(g, decimals) {
			return g, nil
		}
	}
	return Shape{}, errUnworked
}

// positive gives a shape without -0 among its coordinates.
func positive(s Shape) Shape {
	return s.TransformXY(func(q geom.XY) geom.XY { return geom.XY{X: plain(q.X), Y: plain(q.Y)} })
}
