package box

import (
	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/laidflat"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/space"
)

// names are those of the case's boards and their faces.
var names = laidflat.Names{
	Whole: "the case", LeftEnd: frontForeEdge, RightEnd: backForeEdge,
	Outside: caseOutside, Inside: caseInside, Head: caseHead, Tail: caseTail, Left: caseFront, Right: caseBack,
	TailLeft: caseTailLeft, TailRight: caseTailRight,
}

// laid is the case as it lies flat, inside up: front board, spine, back board.
type laid struct{ laidflat.Boards }

func (c laid) wide() Length  { return c.All[0].Wide } // of a case board
func (c laid) spine() Length { return c.All[1].Wide }

// layCase lays the boards of the case side by side and tells what does not meet.
func layCase(pieces []geometry.Piece, board, joint Length) (laid, []foldup.Fault) {
	front, ok := geometry.Find(pieces, caseBoardName)
	spine, has := geometry.Find(pieces, spineName)
	if !ok || !has || front.Count != 2 {
		return laid{}, []foldup.Fault{{Kind: foldup.Misfit, What: "two case boards and a spine are not there"}}
	}
	back := front
	front.Name, spine.Name, back.Name = frontBoard, "spine", backBoard
	c, faults := names.Lay(joint, board, front, spine, back)
	return laid{c}, faults
}

// underTray is how far under a tray the case is covered (common practice, no source).
const underTray Length = 3

// body returns the faces of the case. What the trays stand on is bare but for a border.
func (c laid) body(small, large plan.Size) foldup.Body {
	b := c.Body()
	inside := &b.Surfaces[b.Find(caseInside)]
	for i, t := range []plan.Size{large, small} { // on the front board, on the back board
		low := (c.High-t.Height)/2 + underTray
		foot := geometry.Bx(c.wide()-t.Width+underTray, low, c.wide(), c.High-low)
		if from := c.From[2]; i == 1 {
			foot.Min.X, foot.Max.X = from, from+t.Width-underTray
		}
		inside.Cover = foldup.Without(inside.Cover, polygon.Box(foot))
	}
	return b
}

// turnedIn returns how far the case cloth reaches in over the spine at the least, from
// head and tail.
func (c laid) turnedIn(covered foldup.Covered) Length {
	middle := c.From[1] + c.spine()/2
	reach := c.High
	for _, low := range []bool{true, false} {
		in := Length(0)
		for _, p := range covered.On(caseInside) {
			b := p.Shape.Bounds()
			switch {
			case b.Min.X > middle || b.Max.X < middle:
			case low && b.Min.Y < foldup.Sliver:
				in = max(in, b.Max.Y)
			case !low && b.Max.Y > c.High-foldup.Sliver:
				in = max(in, c.High-b.Min.Y)
			}
		}
		reach = min(reach, in)
	}
	return reach
}

// way returns the faces that the hinge lies on as the box lies open: from the floor of
// the large tray, so high above its board, down into the joint, over the spine, and up to
// the floor of the small tray. Where the case is turned in from head and tail it need not
// reach.
func (c laid) way(up, turnedIn Length, small, large standing) foldup.Body {
	x, y, z := space.Vec{X: 1}, space.Vec{Y: 1}, space.Vec{Z: 1}
	at := func(px, pz Length) space.Vec { return c.At.Add(space.Vec{X: px, Z: pz}) }
	from, floor := c.From, c.Thick+up
	right := from[2]
	face := func(name geometry.Face, plane int, o, u, v space.Vec, extent geometry.Box, covered bool) foldup.Surface {
		s := foldup.Surface{Face: name, Board: "the case", Frame: space.Frame{O: o, U: u, V: v}, Normal: u.Cross(v), Extent: extent,
			Plane: c.Plane + plane, Ground: laidflat.Bare, Beyond: foldup.Beyond{Left: "front board", Right: "back board", Top: "head", Bottom: "tail"}}
		if covered {
			e := extent
			e.Min.Y, e.Max.Y = turnedIn, c.High-turnedIn
			if u != x { // a face that stands: its X runs from tail to head, or back
				e = extent
				e.Min.X, e.Max.X = turnedIn, c.High-turnedIn
				e.Max.Y = c.Thick
			}
			s.Cover = polygon.Box(e)
		}
		return s
	}
	floors := func(t standing, from Length) geometry.Box {
		low := (c.High - t.l) / 2
		return geometry.Bx(from, low, from+t.b, c.High-low)
	}
	return foldup.Body{
		Surfaces: []foldup.Surface{
			face(wayLargeFloor, 0, at(0, floor), x, y, floors(large, c.wide()-large.b), false),
			face(wayLargeDown, 1, at(c.wide(), 0), y, z, geometry.Bx(0, 0, c.High, floor), true),
			face(wayLargeJoint, 2, at(0, 0), x, y, geometry.Bx(c.wide(), 0, from[1], c.High), true),
			face(wayLargeUp, 3, at(from[1], 0).Add(y.Mul(c.High)), y.Mul(-1), z, geometry.Bx(0, 0, c.High, c.Thick), true),
			face(waySpine, 4, at(0, c.Thick), x, y, geometry.Bx(from[1], 0, from[1]+c.spine(), c.High), true),
			face(waySmallUp, 5, at(from[1]+c.spine(), 0), y, z, geometry.Bx(0, 0, c.High, c.Thick), true),
			face(waySmallJoint, 2, at(0, 0), x, y, geometry.Bx(from[1]+c.spine(), 0, right, c.High), true),
			face(waySmallDown, 6, at(right, 0).Add(y.Mul(c.High)), y.Mul(-1), z, geometry.Bx(0, 0, c.High, floor), true),
			face(waySmallFloor, 0, at(0, floor), x, y, floors(small, right), false),
		},
		Corners: map[geometry.Corner]space.Vec{
			wayHeadLeft: at(from[1], c.Thick).Add(y.Mul(c.High)), wayHeadRight: at(from[1]+c.spine(), c.Thick).Add(y.Mul(c.High)),
		},
	}
}
