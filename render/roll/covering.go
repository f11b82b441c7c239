package roll

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/render"
)

// The tints of the picture: board as it is, cloth, paper; the dark of the inside, and
// what stands in it.
var (
	boardTint = render.Color{R: 0xDE, G: 0xD6, B: 0xC8}
	clothTint = render.Color{R: 0xA9, G: 0xCC, B: 0xE6}
	paperTint = render.Color{R: 0xF8, G: 0xE2, B: 0xB3}
	dark      = render.Color{R: 89, G: 89, B: 89}
	white     = render.Color{R: 255, G: 255, B: 255}
)

// covering is what a case looks like from outside.
type covering struct {
	head, side, paper render.Color
	hole              bool                                          // a thumb hole in the sides
	outline           func(whole []geometry.Point) []geometry.Point // of the right side, from the spine edge and the tail
	panel             func(side []geometry.Point) []geometry.Point  // of the paper on it; nil: none
}

// coveringOf tells by its pieces what a case looks like. A paper on a side is shown
// as far from its edges as it is narrower.
func coveringOf(p plan.Plan) covering {
	c := covering{head: boardTint, side: boardTint, paper: paperTint, outline: func(whole []geometry.Point) []geometry.Point { return whole }}
	for _, q := range p.Pieces {
		switch {
		case q.Name == "side":
			if points := q.Outline.Flatten(0.3); len(points) > 4 {
				c.hole = true
				c.outline = func([]geometry.Point) []geometry.Point { return points }
			}
		case q.Name == "side paper":
			_, h := q.Size()
			in := max(0, (p.Outside.Height-h)/2)
			c.panel = func(side []geometry.Point) []geometry.Point {
				out := make([]geometry.Point, len(side))
				for i, s := range side {
					out[i] = geometry.Pt(max(s.X, in), max(in, min(p.Outside.Height-in, s.Y)))
				}
				return out
			}
		case q.Material == geometry.Cloth:
			c.head, c.side = clothTint, clothTint
		case q.Material == geometry.Paper:
			c.head, c.side = paperTint, paperTint
		}
	}
	return c
}

// describe says what the picture shows, for who can't see it.
func describe(p plan.Plan) string {
	c := coveringOf(p)
	name := map[render.Color]string{boardTint: "bare board", clothTint: "cloth", paperTint: "paper"}
	out := "The case seen from its mouth: " + name[c.side]
	if c.panel != nil {
		out += ", paper on the sides"
	}
	if c.hole {
		out += ", a thumb hole"
	}
	return out
}
