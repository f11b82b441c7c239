package proof

import (
	"math"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
	"forel/geometry/slipcase"
)

// prism is a board as it stands in the case: a rectangle in the plane of a side
// (X toward the mouth, Y toward the head), from one X of the case to another.
// A side may lack a thumb hole at the mouth.
type prism struct {
	rect     geometry.Box
	from, to Length
	hole     []geometry.Point // convex; nil for none
}

// boardsOf gives the five boards of a case, the sides first.
func boardsOf(c foldup.Carcass) []prism {
	s, w, h, d := c.Lined, c.Width, c.Height, c.Depth
	side := geometry.Bx(0, 0, d, h)
	hole := holeOf(c)
	return []prism{
		{side, 0, s, hole},
		{side, w - s, w, hole},
		{geometry.Bx(0, 0, s, h), s, w - s, nil},
		{geometry.Bx(s, h-s, d, h), s, w - s, nil},
		{geometry.Bx(s, 0, d, s), s, w - s, nil},
	}
}

// blocksOf gives the boards of a case with its dividers after them.
func blocksOf(r foldup.Report) []prism {
	out := boardsOf(r.Carcass)
	for _, d := range r.Dividers {
		out = append(out, prism{geometry.Bx(d.Min.Z, d.Min.Y, d.Max.Z, d.Max.Y), d.Min.X, d.Max.X, nil})
	}
	return out
}

// holeOf gives the outline of the thumb hole, as a part of a side, nil where
// there is none.
func holeOf(c foldup.Carcass) []geometry.Point {
	if len(c.Side) <= 4 {
		return nil
	}
	cut := solid(without(polygon.Box(geometry.Bx(0, 0, c.Depth, c.Height)), sideShape(c)))
	for _, a := range areasOf(cut) {
		return a.Rings[0]
	}
	return nil
}

// sideShape gives the outline of a side.
func sideShape(c foldup.Carcass) geom.Geometry {
	if len(c.Side) < 3 {
		return polygon.Box(geometry.Bx(0, 0, c.Depth, c.Height))
	}
	return polygon.Of(c.Side)
}

// seen takes from a shape in the plane of the view what is hidden. The shape is
// that of a flat part which goes through a place of the case and looks along
// normal, one of the axes; the boards before its plane hide it.
func (sc scene) seen(g geom.Geometry, boards []prism, through, normal foldup.Vec) geom.Geometry {
	for _, b := range boards {
		b = b.before(through, normal)
		if b.to-b.from > sliver && b.rect.Width() > sliver && b.rect.Height() > sliver {
			g = without(g, sc.shadow(b))
		}
	}
	return g
}

// before gives the part of a board in front of a plane across an axis.
func (b prism) before(through, normal foldup.Vec) prism {
	switch {
	case normal.X > 0:
		b.from = max(b.from, through.X)
	case normal.X < 0:
		b.to = min(b.to, through.X)
	case normal.Y > 0:
		b.rect.Min.Y = max(b.rect.Min.Y, through.Y)
	case normal.Y < 0:
		b.rect.Max.Y = min(b.rect.Max.Y, through.Y)
	case normal.Z > 0:
		b.rect.Min.X = max(b.rect.Min.X, through.Z)
	case normal.Z < 0:
		b.rect.Max.X = min(b.rect.Max.X, through.Z)
	}
	return b
}

// flat gives where a point of the plane of a side is seen at one X of the case.
func (sc scene) flat(x Length, points []geometry.Point) []geometry.Point {
	out := make([]geometry.Point, len(points))
	for i, p := range points {
		out[i] = sc.view.flat(foldup.Vec{X: x, Y: p.Y, Z: p.X})
	}
	return out
}

// shadow gives what a board hides: the outline of a block, but for where one
// sees through its hole.
func (sc scene) shadow(b prism) geom.Geometry {
	corners := geometry.Rectangle(b.rect).Flatten(1)
	all := append(sc.flat(b.from, corners), sc.flat(b.to, corners)...)
	whole := polygon.Of(polygon.Hull(all))
	if b.hole == nil {
		return whole
	}
	return without(whole, sc.through(b))
}

// through gives where one sees through the hole of a side. The hole is convex
// and open at the mouth: a line of sight goes through if it comes in on the
// left face within the hole, and goes out within it on the right face or at
// the mouth.
func (sc scene) through(b prism) geom.Geometry {
	return meet(polygon.Of(sc.flat(b.from, b.hole)), sc.into(b))
}

// into gives where one looks into the hole of a side, from the right or from
// the mouth.
func (sc scene) into(b prism) geom.Geometry {
	lo, hi := Length(math.Inf(1)), Length(math.Inf(-1))
	for _, p := range b.hole {
		if p.X.Near(b.rect.Max.X) {
			lo, hi = min(lo, p.Y), max(hi, p.Y)
		}
	}
	mouth := []geometry.Point{geometry.Pt(b.rect.Max.X, lo), geometry.Pt(b.rect.Max.X, hi)}
	near, far := sc.flat(b.to, mouth), sc.flat(b.from, mouth)
	return union([]geom.Geometry{
		polygon.Of(sc.flat(b.to, b.hole)),
		polygon.Of([]geometry.Point{near[0], near[1], far[1], far[0]}),
	})
}

// seeRims gives what is seen of the thickness of the sides in their thumb
// holes: where one looks into a hole and not through it, and nothing to the
// right of the side is in the way. The boards are the five of the case, then the
// dividers: all are to the right of the left side, and none of the right side.
func (sc scene) seeRims(boards []prism) geom.Geometry {
	var out []geom.Geometry
	for i, side := range boards[:2] {
		if side.hole == nil {
			continue
		}
		rim := without(sc.into(side), sc.through(side))
		if i == 0 {
			for _, b := range boards[1:] {
				rim = without(rim, sc.shadow(b))
			}
		}
		out = append(out, solid(rim))
	}
	return union(out)
}

// faceShape gives the outline of a face in its own coordinates: the whole of
// its extent but for a thumb hole.
func faceShape(c foldup.Carcass, hole []geometry.Point, f foldup.FaceReport) geom.Geometry {
	whole := polygon.Box(f.Extent)
	if hole == nil {
		return whole
	}
	switch f.Face {
	case slipcase.LeftOutside, slipcase.RightOutside, slipcase.LeftInside, slipcase.RightInside:
		return solid(without(whole, polygon.Of(hole)))
	case slipcase.LeftMouth, slipcase.RightMouth:
		gap := f.Extent
		gap.Min.Y, gap.Max.Y = gap.Max.Y, gap.Min.Y
		for _, p := range hole {
			if p.X.Near(c.Depth) {
				gap.Min.Y, gap.Max.Y = min(gap.Min.Y, p.Y), max(gap.Max.Y, p.Y)
			}
		}
		return solid(without(whole, polygon.Box(gap)))
	}
	return whole
}
