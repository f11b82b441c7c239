package slipcase_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/slipcase"
)

// A checker that passes everything is worth nothing: each of these breaks one
// pattern of a good case on purpose, as a slip of a formula would, and the
// checker named must say so. The case: a book of 220 x 150 x 30 with the
// defaults, so that the spine of the carcass lies from x = 28 to 64.3
// (32 + 2 x 2.15 wide) and from y = 28 to 254.3 on the spine cloth.
const (
	spineLeft = 28
	spineHead = 254.3
	apexHead  = spineHead + 6
)

func TestCheckersSeeBrokenPatterns(t *testing.T) {
	mutations := []struct {
		name    string
		checker string
		piece   string
		spoil   func(*geometry.Piece)
	}{
		{"wedge reaches the corner", "wedges", "spine cloth", moveVertex(spineLeft, apexHead, 0, -6)},
		{"wedge reaches into the side", "wedges", "spine cloth", moveVertex(spineLeft, apexHead, 0, -10)},
		{"apex beside the fold", "wedges", "spine cloth", moveVertex(spineLeft, apexHead, -0.5, 0)},
		{"wedges eat the spine flap", "wedges", "spine cloth", leanSpineFlap(18.2)},
		{"wedges cross", "outlines", "spine cloth", leanSpineFlap(20)},
		{"side flaps too long", "flaps", "spine cloth", lengthenSideFlaps(1)},
		{"side flap past the spine flap", "flaps", "spine cloth", lengthenSideFlaps(11)},
		{"clockwise", "outlines", "spine cloth", func(p *geometry.Piece) { slices.Reverse(p.Outline.Vertices) }},
		{"a point twice", "outlines", "side", func(p *geometry.Piece) {
			p.Outline.Vertices = append(p.Outline.Vertices, p.Outline.Vertices[3])
		}},
		{"crossed over", "outlines", "side", func(p *geometry.Piece) {
			v := p.Outline.Vertices
			v[1], v[2] = v[2], v[1]
		}},
		{"off the origin", "outlines", "head wall", func(p *geometry.Piece) { p.Outline = p.Outline.Move(geometry.Pt(0.01, 0)) }},
		{"fold past the cloth", "outlines", "head cloth", func(p *geometry.Piece) { p.Folds[2] = p.Folds[2].Move(geometry.Pt(0.01, 0)) }},
		{"fold through a wedge", "outlines", "spine cloth", func(p *geometry.Piece) { p.Folds[0].Vertices[1].Y += 1 }},
		{"slit past the cloth", "outlines", "head cloth", moveSlits(0, 1)},
		{"slit on the corner", "slits", "head cloth", moveSlits(-2.15, 0)},
		{"slit on the mouth edge", "slits", "tail cloth", startSlits(0, -0.75)},
		{"slit leans outward", "slits", "tail cloth", startSlits(10, 0)},
		{"slits meet", "slits", "tail cloth", moveSlits(14, 0)},
		{"slits stop short", "slits", "head cloth", moveSlits(0, -0.3)},
		{"one slit further in", "slits", "head cloth", func(p *geometry.Piece) { p.Slits[0] = p.Slits[0].Move(geometry.Pt(0.1, 0)) }},
		{"middle tab as wide as the cavity", "middle tab", "head cloth", uprightSlits},
		{"fold ruled again", "drawn once", "head cloth", func(p *geometry.Piece) { p.Slits = append(p.Slits, p.Folds[0]) }},
		{"turn-in on the wall", "turn-in", "side paper", resize(0, 10)},
		{"paper a little too wide", "sizes", "side paper", resize(0.001, 0)},
		{"spine wall a side too narrow", "common strip", "spine wall", resize(-0.15, 0)},
		{"left for right", "edge names", "head wall", func(p *geometry.Piece) { p.Edges[0], p.Edges[2] = renamed(p.Edges[0], p.Edges[2]) }},
		{"wrong face up", "edge names", "side", func(p *geometry.Piece) { p.Edges[0], p.Edges[2] = renamed(p.Edges[0], p.Edges[2]) }},
		{"right face for left", "regions", "head cloth", func(p *geometry.Piece) {
			p.Regions[3].Face, p.Regions[4].Face = p.Regions[4].Face, p.Regions[3].Face
		}},
		{"flaps change places", "regions", "spine cloth", func(p *geometry.Piece) {
			p.Regions[1].Face, p.Regions[2].Face = p.Regions[2].Face, p.Regions[1].Face
		}},
	}
	all := map[string]checker{"edge names": checkEdgeNames, "regions": checkRegions}
	for name, check := range invariants {
		all[name] = check
	}
	for _, m := range mutations {
		t.Run(m.name, func(t *testing.T) {
			check := all[m.checker]
			j, ps := orientedCase(t, 0.15)
			require.NoError(t, check(j, ps), "before")
			p := ps[m.piece]
			m.spoil(&p)
			ps[m.piece] = p
			assert.Error(t, check(j, ps), "after")
		})
	}
}

// moveVertex moves the corner of the outline at (x, y).
func moveVertex(x, y, dx, dy slipcase.Length) func(*geometry.Piece) {
	return func(p *geometry.Piece) {
		for n := range p.Outline.Vertices {
			if v := &p.Outline.Vertices[n]; v.Near(geometry.Pt(x, y)) {
				v.Point = v.Add(geometry.Pt(dx, dy))
				return
			}
		}
		panic("no such corner")
	}
}

// leanSpineFlap sets how far in the edges of the spine flap have come at its
// ends.
func leanSpineFlap(by slipcase.Length) func(*geometry.Piece) {
	return func(p *geometry.Piece) {
		w, h := p.Size()
		for n := range p.Outline.Vertices {
			if v := &p.Outline.Vertices[n]; v.Y == 0 || v.Y == h {
				if v.X < w/2 {
					v.X = spineLeft + by
				} else {
					v.X = w - spineLeft - by
				}
			}
		}
	}
}

// lengthenSideFlaps moves the ends of the side flaps outward.
func lengthenSideFlaps(by slipcase.Length) func(*geometry.Piece) {
	return func(p *geometry.Piece) {
		w, h := p.Size()
		for n := range p.Outline.Vertices {
			if v := &p.Outline.Vertices[n]; v.X < spineLeft || v.X > w-spineLeft {
				if v.Y > h/2 {
					v.Y += by
				} else {
					v.Y -= by
				}
			}
		}
	}
}

// moveSlits moves both slits, dx toward the middle.
func moveSlits(dx, dy slipcase.Length) func(*geometry.Piece) {
	return func(p *geometry.Piece) {
		p.Slits = []geometry.Path{p.Slits[0].Move(geometry.Pt(dx, dy)), p.Slits[1].Move(geometry.Pt(-dx, dy))}
	}
}

// startSlits moves the starts of both slits, dx toward the middle.
func startSlits(dx, dy slipcase.Length) func(*geometry.Piece) {
	return func(p *geometry.Piece) {
		for n, toward := range []slipcase.Length{dx, -dx} {
			v := &p.Slits[n].Vertices[0]
			v.Point = v.Add(geometry.Pt(toward, dy))
		}
	}
}

func uprightSlits(p *geometry.Piece) {
	for _, s := range p.Slits {
		s.Vertices[1].X = s.Vertices[0].X
	}
}

// resize makes a rectangular piece larger.
func resize(dx, dy slipcase.Length) func(*geometry.Piece) {
	return func(p *geometry.Piece) {
		w, h := p.Size()
		p.Outline = geometry.Rectangle(geometry.Bx(0, 0, w+dx, h+dy))
	}
}

// renamed gives two edges with each other's names.
func renamed(a, b geometry.Edge) (geometry.Edge, geometry.Edge) {
	a.Name, b.Name = b.Name, a.Name
	a.Meets, b.Meets = b.Meets, a.Meets
	return a, b
}
