package chemise

import (
	"fmt"
	"forel/geometry/laidflat"
	"slices"

	"forel/geometry"
	"forel/geometry/plan"
)

// closed is the chemise shut round its book, cut across from spine to fore-edge:
// X runs from the inner face of the spine's board to the fore-edge, Y from the
// middle of the spine through the covers, the front cover at the top. It is put
// together from the sizes of the boards and the joint as they are cut, without
// the formulas that made them.
type closed struct {
	boards map[string]slab
	stands []Length // of each joint, from the end of one board to the inner face of the one across it
	b      Length   // a board
	i, k   Length   // layers: inside under the lining, outside
}

// slab is a board in the section.
type slab struct {
	geometry.Box
	along, inner geometry.Point // unit steps: away from the spine, and toward the inside
}

// crosses tells whether a board lies across the covers: such a board stands past
// the ends of those beside it.
func crosses(name string) bool {
	return name == spineName || name == frontWallName || name == backWallName
}

// evenly returns the joints between so many boards, all alike.
func evenly(joint Length, boards int) []Length { return slices.Repeat([]Length{joint}, boards-1) }

// shut closes the boards, from the spine outward, each joint by a right angle.
func shut(ps []laidflat.Board, joints []Length, board, covering, lining Length) closed {
	c := closed{boards: map[string]slab{}, b: board, i: covering + lining, k: covering}
	for _, j := range joints {
		c.stands = append(c.stands, j-c.b-2*c.i)
	}
	spine := boardAt(ps, spineName)
	half := ps[spine].Wide / 2
	c.boards[spineName] = slab{Box: geometry.Bx(-c.b, -half, 0, half), inner: geometry.Pt(1, 0)}
	for _, way := range []int{-1, +1} {
		last := c.boards[spineName]
		last.along = geometry.Pt(0, -1) // the back cover
		if way < 0 {
			last.along = geometry.Pt(0, 1)
		}
		for n := spine + way; n >= 0 && n < len(ps); n += way {
			last = c.turn(last, ps[n], c.stands[min(n, n-way)])
			c.boards[ps[n].Name] = last
		}
	}
	return c
}

// turn lays the next board at a right angle to the last, x from where it ends or
// from the inner face it stands on.
func (c closed) turn(last slab, p laidflat.Board, x Length) slab {
	next := slab{along: last.inner, inner: last.along.Mul(-1)}
	end, face := reach(last.Box, last.along), reach(last.Box, last.inner)
	var from, in Length // along next.along; of its inner face, along last.along
	if crosses(p.Name) {
		from, in = face-c.b+2*c.i, end+x
	} else {
		from, in = face+x, end+2*c.i-c.b
	}
	at := func(a, l Length) geometry.Point { return next.along.Mul(float64(a)).Add(last.along.Mul(float64(l))) }
	p1, p2 := at(from, in), at(from+p.Wide, in+c.b)
	next.Box = geometry.Around(p1, p2)
	return next
}

// reach returns how far a box goes in a direction along an axis.
func reach(b geometry.Box, way geometry.Point) Length {
	return max(b.Min.X*way.X+b.Min.Y*way.Y, b.Max.X*way.X+b.Max.Y*way.Y)
}

// dressed returns a board with its layers: the covering outside and on its ends,
// turn-in and lining inside.
func (c closed) dressed(name string) geometry.Box {
	s := c.boards[name]
	box := s.Grow(c.k)
	in := s.inner.Mul(float64(c.i - c.k))
	return geometry.Bx(box.Min.X+min(0, in.X), box.Min.Y+min(0, in.Y), box.Max.X+max(0, in.X), box.Max.Y+max(0, in.Y))
}

// extent returns the outside: from the spine to the fore-edge, and through the
// covers.
func (c closed) extent() (width, thickness Length) {
	whole := c.dressed(spineName)
	for name := range c.boards {
		d := c.dressed(name)
		whole = geometry.Around(whole.Min, whole.Max, d.Min, d.Max)
	}
	return whole.Width(), whole.Height()
}

// clear returns the room left for the book between the linings: from the spine to
// the fore-edge, and between the back cover and what lies over the book.
func (c closed) clear(foreEdge string) (width, thickness Length) {
	width = c.boards[backCoverName].Max.X
	if _, ok := c.boards[backWallName]; ok {
		width = c.dressed(backWallName).Min.X
	}
	over := frontCoverName
	if foreEdge == Lapped {
		over = backFlapName
	}
	return width - c.i, c.dressed(over).Min.Y - c.dressed(backCoverName).Max.Y
}

// room returns the room for the book; its height is not seen in the section. In
// hooks it is as thick as the spine leaves.
func (c closed) room(k conditions) plan.Size {
	w, t := c.clear(k.ForeEdge)
	return plan.Size{Width: w, Thickness: t}
}

// outside returns the closed chemise at its thickest, its height left out. Hooks
// hold the covers apart: each has one of the book's own in it, and between them
// lies the rest of the book.
func (c closed) outside(k conditions) plan.Size {
	w, t := c.extent()
	if k.ForeEdge == Hooks {
		_, hook := c.hook()
		_, spine := c.clear(k.ForeEdge)
		t = max(c.dressed(frontCoverName).Max.Y-c.dressed(backCoverName).Min.Y, 2*hook+spine-2*k.OwnCover)
	}
	return plan.Size{Width: w, Thickness: t}
}

// hook returns the room for the book's own cover in a hook, and how thick the hook
// is with it, from the chemise's cover to its flap.
func (c closed) hook() (room, thickness Length) {
	cover, flap := c.dressed(backCoverName), c.dressed(backFlapName)
	return flap.Min.Y - cover.Max.Y, flap.Max.Y - cover.Min.Y
}

// overlaps lists boards that would stand in one place with their layers on. Boards
// that share a joint touch there by design and are left out. Hooks hold the covers
// apart with what is between them, so only boards of one hook are looked at.
func (c closed) overlaps(ps []laidflat.Board, foreEdge string) []string {
	var out []string
	hooked := foreEdge == Hooks
	for a := range ps {
		for b := a + 2; b < len(ps); b++ {
			if hooked && a < len(ps)/2 && b > len(ps)/2 {
				continue
			}
			both := c.dressed(ps[a].Name).Intersect(c.dressed(ps[b].Name))
			if both.Width() > 1e-6 && both.Height() > 1e-6 {
				out = append(out, fmt.Sprintf("%s and %s overlap by %.2f mm", ps[a].Name, ps[b].Name, min(both.Width(), both.Height()).MM()))
			}
		}
	}
	return out
}
