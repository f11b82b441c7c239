package box

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/space"
)

// laid is the case as it lies flat, inside up: front board, spine, back board, a joint
// between each two. X runs from left to right, Y from tail to head, Z up from the
// outside.
type laid struct {
	board, joint      Length
	wide, spine, high Length
	at                space.Vec
	plane             int
}

// layCase lays the boards of the case side by side and tells what does not meet.
func layCase(pieces []geometry.Piece, board, joint Length) (laid, []foldup.Fault) {
	c := laid{board: board, joint: joint}
	var faults []foldup.Fault
	b, ok := geometry.Find(pieces, caseBoardName)
	s, has := geometry.Find(pieces, spineName)
	if !ok || !has || b.Count != 2 {
		return c, []foldup.Fault{{Kind: foldup.Misfit, What: "two case boards and a spine are not there"}}
	}
	c.wide, c.high = b.Size()
	var high Length
	if c.spine, high = s.Size(); (high - c.high).Abs() > foldup.Sliver {
		faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: spineName, What: fmt.Sprintf("%.3f mm high where the case boards are %.3f mm", high.MM(), c.high.MM())})
	}
	return c, faults
}

// across returns boards and joints together.
func (c laid) across() Length { return 2*c.wide + 2*c.joint + c.spine }

// from returns where front board, spine and back board begin.
func (c laid) from() [3]Length { return [3]Length{0, c.wide + c.joint, c.wide + 2*c.joint + c.spine} }

// widths returns their widths.
func (c laid) widths() [3]Length { return [3]Length{c.wide, c.spine, c.wide} }

// underTray is how far under a tray the case is covered (common practice, no source).
const underTray Length = 3

// body returns the faces of the case. Joints are part of a face's plane, since the cloth
// and what is turned in go on over them; there is no board in them to cover. What the
// trays stand on is bare but for a border.
func (c laid) body(small, large plan.Size) foldup.Body {
	x, y, z := space.Vec{X: 1}, space.Vec{Y: 1}, space.Vec{Z: 1}
	at := func(px, py, pz Length) space.Vec { return c.at.Add(space.Vec{X: px, Y: py, Z: pz}) }
	full := geometry.Bx(0, 0, c.across(), c.high)
	over, ending := geometry.Bx(0, 0, c.across(), c.board), geometry.Bx(0, 0, c.high, c.board)
	sides := func(left, right, top, bottom string) foldup.Beyond {
		return foldup.Beyond{Left: left, Right: right, Top: top, Bottom: bottom}
	}
	n := 0
	face := func(name geometry.Face, board string, o, u, v space.Vec, extent geometry.Box, beyond foldup.Beyond) foldup.Surface {
		n++
		return foldup.Surface{Face: name, Board: board, Frame: space.Frame{O: o, U: u, V: v}, Normal: u.Cross(v), Extent: extent,
			Cover: polygon.Box(extent), Plane: c.plane + n - 1, Edge: n > 2, Beyond: beyond, Ground: bareBoard}
	}
	boards := func(high Length) polygon.Shape {
		var all []polygon.Shape
		for i, from := range c.from() {
			all = append(all, polygon.Box(geometry.Bx(from, 0, from+c.widths()[i], high)))
		}
		return foldup.United(all)
	}
	const front, back = "front fore-edge", "back fore-edge"
	inside := face(caseInside, "the case", at(0, 0, c.board), x, y, full, sides(front, back, "head", "tail"))
	inside.Cover = boards(c.high)
	for i, t := range []plan.Size{large, small} { // on the front board, on the back board
		low := (c.high-t.Height)/2 + underTray
		foot := geometry.Bx(c.wide-t.Width+underTray, low, c.wide, c.high-low)
		if from := c.from()[2]; i == 1 {
			foot.Min.X, foot.Max.X = from, from+t.Width-underTray
		}
		inside.Cover = foldup.Without(inside.Cover, polygon.Box(foot))
	}
	outside := face(caseOutside, "the case", at(c.across(), 0, 0), x.Mul(-1), y, full, sides(back, front, "head", "tail"))
	head := face(caseHead, "the case", at(c.across(), c.high, 0), x.Mul(-1), z, over, sides(back, front, "inside", "outside"))
	tail := face(caseTail, "the case", at(0, 0, 0), x, z, over, sides(front, back, "inside", "outside"))
	return foldup.Body{
		Surfaces: []foldup.Surface{
			inside, outside, head, tail,
			face(caseFront, frontBoard, at(0, c.high, 0), y.Mul(-1), z, ending, sides("head", "tail", "inside", "outside")),
			face(caseBack, backBoard, at(c.across(), 0, 0), y, z, ending, sides("tail", "head", "inside", "outside")),
		},
		Corners: map[geometry.Corner]space.Vec{caseTailLeft: at(0, 0, 0), caseTailRight: at(c.across(), 0, 0)},
	}
}

// turnedIn returns how far the case cloth reaches in over the spine at the least, from
// head and tail.
func (c laid) turnedIn(covered foldup.Covered) Length {
	middle := c.from()[1] + c.spine/2
	reach := c.high
	for _, low := range []bool{true, false} {
		in := Length(0)
		for _, p := range covered.On(caseInside) {
			b := p.Shape.Bounds()
			switch {
			case b.Min.X > middle || b.Max.X < middle:
			case low && b.Min.Y < foldup.Sliver:
				in = max(in, b.Max.Y)
			case !low && b.Max.Y > c.high-foldup.Sliver:
				in = max(in, c.high-b.Min.Y)
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
	at := func(px, pz Length) space.Vec { return c.at.Add(space.Vec{X: px, Z: pz}) }
	from, floor := c.from(), c.board+up
	right := from[2]
	face := func(name geometry.Face, plane int, o, u, v space.Vec, extent geometry.Box, covered bool) foldup.Surface {
		s := foldup.Surface{Face: name, Board: "the case", Frame: space.Frame{O: o, U: u, V: v}, Normal: u.Cross(v), Extent: extent,
			Plane: c.plane + plane, Ground: bareBoard, Beyond: foldup.Beyond{Left: "front board", Right: "back board", Top: "head", Bottom: "tail"}}
		if covered {
			e := extent
			e.Min.Y, e.Max.Y = turnedIn, c.high-turnedIn
			if u != x { // a face that stands: its X runs from tail to head, or back
				e = extent
				e.Min.X, e.Max.X = turnedIn, c.high-turnedIn
				e.Max.Y = c.board
			}
			s.Cover = polygon.Box(e)
		}
		return s
	}
	floors := func(t standing, from Length) geometry.Box {
		low := (c.high - t.l) / 2
		return geometry.Bx(from, low, from+t.b, c.high-low)
	}
	return foldup.Body{
		Surfaces: []foldup.Surface{
			face(wayLargeFloor, 0, at(0, floor), x, y, floors(large, c.wide-large.b), false),
			face(wayLargeDown, 1, at(c.wide, 0), y, z, geometry.Bx(0, 0, c.high, floor), true),
			face(wayLargeJoint, 2, at(0, 0), x, y, geometry.Bx(c.wide, 0, from[1], c.high), true),
			face(wayLargeUp, 3, at(from[1], 0).Add(y.Mul(c.high)), y.Mul(-1), z, geometry.Bx(0, 0, c.high, c.board), true),
			face(waySpine, 4, at(0, c.board), x, y, geometry.Bx(from[1], 0, from[1]+c.spine, c.high), true),
			face(waySmallUp, 5, at(from[1]+c.spine, 0), y, z, geometry.Bx(0, 0, c.high, c.board), true),
			face(waySmallJoint, 2, at(0, 0), x, y, geometry.Bx(from[1]+c.spine, 0, right, c.high), true),
			face(waySmallDown, 6, at(right, 0).Add(y.Mul(c.high)), y.Mul(-1), z, geometry.Bx(0, 0, c.high, floor), true),
			face(waySmallFloor, 0, at(0, floor), x, y, floors(small, right), false),
		},
		Corners: map[geometry.Corner]space.Vec{
			wayHeadLeft: at(from[1], c.board).Add(y.Mul(c.high)), wayHeadRight: at(from[1]+c.spine, c.board).Add(y.Mul(c.high)),
		},
	}
}
