package box

import (
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
)

// closed is the box shut, measured from the boards and the layers that lie on them as
// they were folded, without the formulas that made them. X runs from the open edges of
// the trays to the fore-edge, Z up from the inner face of the back board.
type closed struct {
	small, large foldedTray
	laid         laid
	k, q         Length // cloth of the case, hinge
}

// foldedTray is a tray with its covering on.
type foldedTray struct {
	standing
	foldup.Covered
	piles map[geometry.Face]Length // the thickest on each face
}

// folded returns a tray with what lies on it.
func folded(s standing, v foldup.Covered) foldedTray {
	t := foldedTray{standing: s, Covered: v, piles: map[geometry.Face]Length{}}
	for _, f := range v.Surfaces {
		t.piles[f.Face] = t.within(f.Face, f.Extent)
	}
	return t
}

// heaps returns what lies on a face within a box of it, heap by heap. A web pinched over
// a corner of a board, no larger than what cuts keep off it, is rubbed down and not
// counted.
func (t foldedTray) heaps(face geometry.Face, in geometry.Box) []foldup.Heap {
	return slices.DeleteFunc(foldup.Heaps(within(t.On(face), in)), func(h foldup.Heap) bool {
		b := h.Shape.Bounds()
		return max(b.Width(), b.Height()) <= t.web()
	})
}

// within returns what of patches lies in a box. Of those wholly in it nothing is cut off.
func within(patches []foldup.Patch, in geometry.Box) []foldup.Patch {
	var whole, rest []foldup.Patch
	for _, p := range patches {
		switch b := p.Shape.Bounds(); {
		case in.Grow(foldup.Sliver).Contains(b):
			whole = append(whole, p)
		case !b.Intersect(in).Empty():
			rest = append(rest, p)
		}
	}
	return append(whole, foldup.Within(rest, in)...)
}

// web returns how large a web over a corner can be: what cuts keep off it.
func (t standing) web() Length { return min(1, t.t/3) + foldup.Sliver }

// within returns the thickest pile on a face within a box of it.
func (t foldedTray) within(face geometry.Face, in geometry.Box) (most Length) {
	for _, h := range t.heaps(face, in) {
		most = max(most, h.Thick)
	}
	return most
}

// most returns the thickest pile on a face.
func (t foldedTray) most(face geometry.Face) Length { return t.piles[face] }

// inside returns what is left between what lies on the walls at the thickest: from head
// to tail, and from the open edge to the fore-edge.
func (t foldedTray) inside() (high, wide Length) {
	return t.l - t.most(t.f.ends[0].in) - t.most(t.f.ends[1].in), t.b - t.most(t.f.foreIn)
}

// outside returns what the covered tray measures: from head to tail, from the open edge to
// the fore-edge, and from the bench to the rim.
func (t foldedTray) outside() plan.Size {
	return plan.Size{
		Height:    t.long + t.most(t.f.ends[0].out) + t.most(t.f.ends[1].out),
		Width:     t.wide + t.most(t.f.fore),
		Thickness: t.high + t.most(t.f.under) + t.rim(),
	}
}

// rim returns what lies on the rim at the thickest.
func (t foldedTray) rim() Length {
	return max(t.most(t.f.foreRim), t.most(t.f.ends[0].rim), t.most(t.f.ends[1].rim))
}

// floor returns how high what lies on the floor is above the bench, at the most.
func (t foldedTray) floor() Length { return t.most(t.f.under) + t.t + t.most(t.f.floor) }

// room returns what is left between the trays at the tightest: from head to tail, at the
// fore-edge, and between the rim of the small tray and the floor of the large one. The
// large tray stands on its rim beside the small one.
func (c closed) room() plan.Size {
	high, wide := c.large.inside()
	s := c.small.outside()
	return plan.Size{Height: high - s.Height, Width: wide - s.Width, Thickness: c.overRim()}
}

// overRim returns the room between the small tray's rim and what lies on the large
// tray's floor above it: above its fore-edge wall and above head and tail wall, which
// the hinge lies between.
func (c closed) overRim() Length {
	side := (c.large.l - c.small.long) / 2 // from the wall of the large tray to the small tray's board
	t := c.small.t
	f := func(x0, y0, x1, y1 Length) Length {
		return c.large.within(c.large.f.floor, geometry.Bx(x0, y0, x1, y1))
	}
	over := max(f(c.small.b, side, c.small.wide, c.large.l-side), f(0, side, c.small.wide, side+t), f(0, c.large.l-side-t, c.small.wide, c.large.l-side))
	return c.large.rim() + c.large.d - over - c.small.outside().Thickness
}

// forBook returns what is left for the book at the tightest: between what lies on head
// and tail wall, before what lies on the fore-edge wall, and between what lies on the two
// floors.
func (c closed) forBook() plan.Size {
	high, wide := c.small.inside()
	return plan.Size{Height: high, Width: wide, Thickness: c.large.outside().Thickness - c.large.floor() - c.small.floor()}
}

// squares returns what the case stands out at head and tail, and at the fore-edge.
func (c closed) squares() (atEnds, atForeEdge Length) {
	l := c.large.outside()
	return (c.laid.High - l.Height) / 2, c.laid.wide() - l.Width
}

// between returns what lies between the case boards: the large tray with the turn-in under
// it and the turn-in that its rim stands on.
func (c closed) between() Length { return c.large.outside().Thickness + 2*c.k }

// overJoints returns what the boards and the trays measure over the joints at the spine:
// two boards, what is between them, less what is folded in twice on each side.
func (c closed) overJoints() Length { return c.between() + 2*c.laid.Thick - 4*max(c.k, c.q) }

// stand returns what a joint leaves between the trays' open ends and the spine's board.
func (c closed) stand() Length { return c.laid.Joint - c.laid.Thick - 2*max(c.k, c.q) }

// offSpine returns what is left between the spine and the ends of the walls, negative
// where it presses on them: the web of a wall's end is pleated there, three layers with
// the end flap, beside the spine's turn-in; in the middle lie the tab, the hinge on it,
// and hinge and turn-in on the spine.
func (c closed) offSpine() Length {
	least := c.stand()
	for _, t := range []foldedTray{c.small, c.large} {
		cloth := t.most(t.f.fore)
		for _, e := range t.f.ends {
			ends := t.most(e.end)
			least = min(least, c.stand()-ends-2*cloth-c.k)
		}
		least = min(least, c.stand()-t.most(t.f.edge)-c.q-c.k)
	}
	return least
}

// outside returns the closed box.
func (c closed) outside() plan.Size {
	return plan.Size{Height: c.laid.High + 2*c.k, Width: c.laid.wide() + c.stand() + c.laid.Thick + 2*c.k, Thickness: c.between() + 2*c.laid.Thick + 2*c.k}
}
