package foldup_test

import (
	"math"

	"forel/geometry"
	"forel/geometry/slipcase"
)

// unfolded is a case with its coverings as they lie flat, in the symbols of the
// design: outside h high, d deep, w thick, s a board as it is joined.
type unfolded struct {
	job        slipcase.Job
	h, d, w, s float64
	pieces     []geometry.Piece
	flat       map[string][]geometry.Point
}

func unfold(c slipcase.Case) unfolded {
	j := c.Job
	u := unfolded{job: j, pieces: c.Pieces, flat: map[string][]geometry.Point{},
		h: c.Stands.Outside().Height.MM(), d: c.Stands.Outside().Width.MM(), w: c.Stands.Outside().Thickness.MM(), s: j.Board.Thickness.MM()}
	if j.Lining.Order == slipcase.LinedBefore {
		u.s += j.Lining.Thickness.MM()
	}
	for _, p := range c.Pieces {
		u.flat[p.Name] = p.Outline.Flatten(0.001)
	}
	return u
}

// layers counts what of each piece lies on a place of a face. A face has X from
// the left, or from the spine on sides; Y from the tail, or from the spine on
// head and tail.
func (u unfolded) layers(face geometry.Face, at [2]float64) map[string]int {
	x, y, z := at[0], at[1], 0.0 // from left, tail and spine
	switch face {
	case slipcase.LeftOutside, slipcase.LeftInside, slipcase.RightOutside, slipcase.RightInside:
		x, z = 0, at[0]
	case slipcase.HeadOutside, slipcase.HeadInside, slipcase.TailOutside, slipcase.TailInside:
		y, z = 0, at[1]
	}
	n := map[string]int{}
	for _, p := range u.pieces {
		count := 0
		switch p.Name {
		case "spine cloth":
			count = u.spineCloth(p, face, x, y, z)
		case "head cloth", "tail cloth":
			count = u.endCloth(p, face, x, y, z)
		case "side paper":
			count = u.sidePaper(p, face, x, y, z)
		case "wrap":
			count = u.wrap(p, face, x, y, z)
		case "head panel", "tail panel":
			count = u.endPanel(p, face, x, y, z)
		}
		if count > 0 {
			n[p.Name] = count
		}
	}
	return n
}

// has counts a place of a flat piece, if it is one.
func (u unfolded) has(p geometry.Piece, x, y float64) int {
	if inRing(x, y, u.flat[p.Name]) {
		return 1
	}
	return 0
}

// spineCloth: back up, head at the top, the left side at the left; it starts
// the overlap left of the spine's left edge. The side flaps are folded over the
// head wall with the sides they hang on.
func (u unfolded) spineCloth(p geometry.Piece, face geometry.Face, x, y, z float64) int {
	_, height := p.Size()
	left := u.job.Cloth.Overlap.MM()
	right := left + u.w
	tail := (height.MM() - u.h) / 2
	head := tail + u.h
	switch face {
	case slipcase.SpineOutside:
		return u.has(p, left+x, tail+y)
	case slipcase.LeftOutside:
		return u.has(p, left-z, tail+y)
	case slipcase.RightOutside:
		return u.has(p, right+z, tail+y)
	case slipcase.HeadOutside:
		return u.has(p, left+x, head+z) + u.has(p, left-z, head+x) + u.has(p, right+z, head+u.w-x)
	case slipcase.TailOutside:
		return u.has(p, left+x, tail-z) + u.has(p, left-z, tail-x) + u.has(p, right+z, tail-u.w+x)
	}
	return 0
}

// endCloth: mouth at the top, the left side at the left on head cloth and at
// the right on tail cloth; it starts the gap from the spine. The part over a
// side goes round its mouth edge into the case, its rest past the inner face
// of the side is bent onto the head wall. Beside a slit the cloth over the
// edge of the side is pleated.
func (u unfolded) endCloth(p geometry.Piece, face geometry.Face, x, y, z float64) int {
	outside, inside, atLeft, atRight := slipcase.HeadOutside, slipcase.HeadInside, slipcase.LeftOutside, slipcase.RightOutside
	inLeft, inRight := slipcase.LeftInside, slipcase.RightInside
	across, off := x, u.h-y // from the side at the left; from the end
	if p.Name == "tail cloth" {
		outside, inside, atLeft, atRight = slipcase.TailOutside, slipcase.TailInside, atRight, atLeft
		inLeft, inRight = inRight, inLeft
		across, off = u.w-x, y
	}
	gap := u.job.Cloth.SpineGap.MM()
	left := u.job.Cloth.Overlap.MM()
	right := left + u.w
	mouth := u.d - gap
	in := mouth + u.s + u.d - z // of a place inside
	middle := func(fx, fy float64) int {
		if at := u.slit(p, left, mouth, fy); fx > at && fx < left+right-at {
			return u.has(p, fx, fy)
		}
		return 0
	}
	// A place between the side's line and the slit, given from the left.
	corner := func(from, line, fy float64) int {
		if at := u.slit(p, left, mouth, fy); from > line && from < at {
			return u.has(p, from, fy)
		}
		return 0
	}
	switch face {
	case outside:
		return u.has(p, left+across, z-gap)
	case atLeft:
		return u.has(p, left-off, z-gap)
	case atRight:
		return u.has(p, right+off, z-gap)
	case inLeft:
		return u.has(p, left-off, in)
	case inRight:
		return u.has(p, right+off, in)
	case inside:
		return middle(left+across, in) +
			corner(left+across-2*u.s, left-u.s, in) +
			corner(left+(u.w-across)-2*u.s, left-u.s, in)
	case slipcase.LeftMouth, slipcase.RightMouth, slipcase.HeadMouth, slipcase.TailMouth:
		n := 0
		if off < u.s {
			n += middle(left+across, mouth+off)
		}
		if across < u.s {
			n += u.has(p, left-off, mouth+across) + corner(left+off, left, mouth+across)
		}
		if far := u.w - across; far < u.s {
			n += u.has(p, right+off, mouth+far) + corner(left+off, left, mouth+far)
		}
		return n
	}
	return 0
}

// slit gives where the left slit is at a distance from the spine end: from the
// corner of the mouth straight to its start, then along it, then straight on.
func (u unfolded) slit(p geometry.Piece, left, mouth, y float64) float64 {
	for _, s := range p.Slits {
		a, b := s.Vertices[0], s.Vertices[1]
		if width, _ := p.Size(); a.X > width/2 {
			continue
		}
		switch ax, ay, bx, by := a.X.MM(), a.Y.MM(), b.X.MM(), b.Y.MM(); {
		case y < ay:
			return left + (ax-left)*(y-mouth)/(ay-mouth)
		case y < by:
			return ax + (bx-ax)*(y-ay)/(by-ay)
		default:
			return bx
		}
	}
	return math.NaN()
}

// sidePaper: as drawn on the right side, back up, mouth at the right; on the
// left side turned end for end.
func (u unfolded) sidePaper(p geometry.Piece, face geometry.Face, x, y, z float64) int {
	inset := u.job.SidePaper.Inset.MM()
	up, mouth := y-inset, u.d-inset
	across := u.w - x // from the outer face of the side
	left := face == slipcase.LeftOutside || face == slipcase.LeftInside
	onMouth := face == slipcase.LeftMouth || face == slipcase.RightMouth || face == slipcase.HeadMouth || face == slipcase.TailMouth
	at := func(fx float64) int {
		if u.turnedRoundHole(mouth-fx, y-u.h/2) {
			return 0
		}
		return u.has(p, fx, up)
	}
	if left {
		up = u.h - y - inset
	}
	switch {
	case face == slipcase.LeftOutside, face == slipcase.RightOutside:
		return at(z - inset)
	case face == slipcase.LeftInside, face == slipcase.RightInside:
		return at(mouth+u.s+u.d-z) + u.holeTabs(len(p.Slits)+1, u.d-z, y-u.h/2, func(back, off float64) int {
			if left {
				off = -off
			}
			return u.has(p, mouth-back, u.h/2+off-inset)
		})
	case onMouth:
		n := 0
		if across < u.s {
			n += at(mouth + across)
		}
		if up = u.h - y - inset; x < u.s {
			n += at(mouth + x)
		}
		return n
	}
	return 0
}

// turnedRoundHole tells whether a place of a covering is turned over the edge
// of the thumb hole: back from the mouth line and off its middle.
func (u unfolded) turnedRoundHole(back, off float64) bool {
	r := u.holeRadius()
	switch {
	case back < 0:
		return false
	case u.job.ThumbHole.Shape == slipcase.Triangle:
		return back+math.Abs(off) < r
	}
	return math.Hypot(back, off) < r
}

// holeTabs counts the tabs of a thumb hole on a place inside, so far back from the
// mouth line and off its middle. A tab is turned as one part about a chord of the
// edge, two right angles a board apart: a place so far outward of the chord was
// as far inward of it, and a board more.
func (u unfolded) holeTabs(tabs int, back, off float64, has func(back, off float64) int) int {
	r := u.holeRadius()
	if r == 0 {
		return 0
	}
	n := 0
	for i := range tabs {
		from, to := math.Pi*float64(i)/float64(tabs), math.Pi*float64(i+1)/float64(tabs)
		outX, outY := math.Sin((from+to)/2), math.Cos((from+to)/2)
		past := back*outX + off*outY - r*math.Cos((to-from)/2)
		if past <= 0 {
			continue
		}
		x, y := back-(2*past+u.s)*outX, off-(2*past+u.s)*outY
		if angle := math.Atan2(x, y); x > 0 && angle > from && angle < to {
			n += has(x, y)
		}
	}
	return n
}

// holeRadius gives half of how wide a thumb hole is at the mouth, zero for none.
func (u unfolded) holeRadius() float64 {
	var r float64
	for _, p := range u.pieces {
		if p.Name == "side" { // the hole is in its mouth edge
			for _, v := range p.Outline.Vertices {
				if w, _ := p.Size(); v.X.Near(w) && v.Y > 0 && v.Y.MM() < u.h/2-1e-6 {
					r = u.h/2 - v.Y.MM()
				}
			}
		}
	}
	return r
}

// wrap: back up, head at the top, the left side at the left. At head and tail
// it is folded like spine cloth, at both ends into the mouth.
func (u unfolded) wrap(p geometry.Piece, face geometry.Face, x, y, z float64) int {
	width, height := p.Size()
	left := (width.MM() - u.w) / 2
	right := left + u.w
	tail := (height.MM() - u.h) / 2
	head := tail + u.h
	hole := func(n int) int {
		if u.turnedRoundHole(u.d-z, y-u.h/2) {
			return 0
		}
		return n
	}
	// A flap ends at the mouth line; past it is the web, pinched.
	flap := func(fx, fy float64) int {
		if fx < left-u.d || fx > right+u.d {
			return 0
		}
		return u.has(p, fx, fy)
	}
	switch face {
	case slipcase.SpineOutside:
		return u.has(p, left+x, tail+y)
	case slipcase.LeftOutside:
		return hole(u.has(p, left-z, tail+y))
	case slipcase.RightOutside:
		return hole(u.has(p, right+z, tail+y))
	case slipcase.HeadOutside:
		return flap(left+x, head+z) + flap(left-z, head+x) + flap(right+z, head+u.w-x)
	case slipcase.TailOutside:
		return flap(left+x, tail-z) + flap(left-z, tail-x) + flap(right+z, tail-u.w+x)
	case slipcase.LeftInside:
		return u.has(p, left-u.d-u.s-(u.d-z), tail+y) + u.holeTabs(len(p.Slits)/2+1, u.d-z, y-u.h/2, func(back, off float64) int {
			return u.has(p, left-u.d+back, tail+u.h/2+off)
		})
	case slipcase.RightInside:
		return u.has(p, right+u.d+u.s+(u.d-z), tail+y) + u.holeTabs(len(p.Slits)/2+1, u.d-z, y-u.h/2, func(back, off float64) int {
			return u.has(p, right+u.d-back, tail+u.h/2+off)
		})
	case slipcase.LeftMouth, slipcase.RightMouth, slipcase.HeadMouth, slipcase.TailMouth:
		n := 0
		if x < u.s {
			n += u.has(p, left-u.d-x, tail+y)
		}
		if u.w-x < u.s {
			n += u.has(p, right+u.d+(u.w-x), tail+y)
		}
		return n
	}
	return 0
}

// endPanel: mouth at the top, as wide as the head wall, the left side at the
// left at the head and at the right at the tail.
func (u unfolded) endPanel(p geometry.Piece, face geometry.Face, x, y, z float64) int {
	outside, inside, across, off := slipcase.HeadOutside, slipcase.HeadInside, x-u.s, u.h-y
	if p.Name == "tail panel" {
		outside, inside, across, off = slipcase.TailOutside, slipcase.TailInside, u.w-u.s-x, y
	}
	gap := u.job.Cloth.SpineGap.MM()
	switch face {
	case outside:
		return u.has(p, across, z-gap)
	case inside:
		return u.has(p, across, u.d-gap+u.s+u.d-z)
	case slipcase.LeftMouth, slipcase.RightMouth, slipcase.HeadMouth, slipcase.TailMouth:
		if off < u.s {
			return u.has(p, across, u.d-gap+off)
		}
	}
	return 0
}
