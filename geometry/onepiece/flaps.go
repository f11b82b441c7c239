package onepiece

import (
	"forel/geometry"
	"forel/geometry/polygon"
)

// steepest is how much a flap may taper on a side, per length: the rule is
// Flaps.Taper at its end, less where so short a flap would become a point.
const steepest Length = 1.0 / 8

// flap is one flap at the head. It lies as the blank does, from the mouth edge
// of the left side and from the middle of its height.
type flap struct {
	outline []geometry.Point // convex, counterclockwise; first the left and the right end of its score
	length  Length
	room    geometry.Box // lies in it
}

// flaps are the flaps at the head. Those at the tail mirror them.
type flaps struct {
	inner, spine, outer flap
	slot                Length // what is cut away of the inner flap beside the left spine score
	nick                Length // what is cut away on each side of the right spine score
	lean                Length // what the inner flap is narrower at its end
}

// flaps works out the flaps. With bend b = k*c, relief r, thickness c:
//
//   - The inner flap runs from the mouth to r short of the spine's inside, which
//     is b + r from the score, and ends r short of the right side's inside. On the
//     spine side it tapers; its mouth edge stays flush with the sides.
//   - The outer flap lies on it and ends r short of the left side's outer face, or
//     in a point where the book is thicker than wide. It tapers at the mouth.
//   - The spine flap lies on it too, beside the outer one. It tapers beside
//     the slit, and ends r short of the mouth where the book is thicker than wide.
//   - Outer flap and spine flap meet in a mitre of 45 degrees from the end of the
//     right spine score; each begins r/2 from it, measured along the scores. Each
//     keeps r/2 clear of the inside of the panel the other hangs on, too: there a
//     nick, b + r/2 to each side, is cut square before the mitre begins.
//
// A taper leans no more than 1 in 8.
func (j Job) flaps() flaps {
	in, s := j.Cavity(), j.scores()
	b, c, r := j.Card.bend(), j.Card.Thickness, j.Flaps.Relief
	pt := geometry.Pt
	f := flaps{slot: b + r, nick: b + r/2}

	length := in.Thickness + b - r
	f.lean = j.taper(length)
	base, end := s.left-f.slot, s.inner+length
	f.inner = flap{
		outline: geometry.Distinct(pt(0, s.inner), pt(base, s.inner), pt(base-f.lean, end), pt(0, end)),
		length:  length,
		room:    geometry.Bx(0, s.inner, base-f.lean, end),
	}

	length = min(in.Width+b-r, s.right-s.left-r/2)
	lean, half := j.taper(length), (s.left+s.right)/2
	outline := rectangle(geometry.Bx(s.left, s.outer, s.right-f.nick, s.outer+length))
	outline = clip(outline, pt(s.right-r/2, s.outer), pt(-1, 1))
	outline = clip(outline, pt(s.left+lean, s.outer+length), pt(-lean, -length))
	f.spine = flap{outline, length, geometry.Bx(s.left+lean, s.outer, half, s.outer+min(length, s.right-r/2-half))}

	length = min(in.Thickness+b+c-r, s.left-r/2)
	lean, half = j.taper(length), min(length+r/2, s.left/2)
	outline = rectangle(geometry.Bx(s.right+f.nick, s.outer, s.width, s.outer+length))
	outline = clip(outline, pt(s.right+r/2, s.outer), pt(-1, -1))
	outline = clip(outline, pt(s.width, s.outer), pt(-lean, length))
	f.outer = flap{outline, length, geometry.Bx(s.right+half, s.outer, s.width-lean, s.outer+half-r/2)}
	return f
}

// taper returns what a flap of a length is narrower at its end.
func (j Job) taper(length Length) Length { return min(j.Flaps.Taper, length*steepest) }

func rectangle(b geometry.Box) []geometry.Point { return geometry.Rectangle(b).Flatten(1) }

// clip keeps what of a convex outline lies left of a line through a point in
// a direction. The order of its points is kept.
func clip(outline []geometry.Point, on, along geometry.Point) []geometry.Point {
	left := polygon.Left(on, on.Add(along))
	return geometry.Distinct(polygon.Clip(outline, func(p geometry.Point) Length {
		if d := left(p); d.Abs() > hair {
			return d
		}
		return 0
	})...)
}

// hair is what two places may differ by and still be one, in mm.
const hair Length = 1e-6
