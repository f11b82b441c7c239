package proof

import (
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/scene"
)

// look is how a material or a piece is drawn. Looks differ in hatching, dash
// and weight, so that a print in black alone can be read.
type look struct {
	scene.Look
	name string        // for the legend
	line render.Stroke // of its outline
}

// looks are those of one case.
type looks struct {
	board, lining look
	pieces        map[string]look
	order         []string // names of the pieces, as they are glued
}

// Lines of the pictures.
var (
	outerEdge = render.Stroke{Width: 0.6, Color: render.Black}
	innerEdge = render.Stroke{Width: 0.25, Color: render.Black}
	faultLine = render.Stroke{Width: 1, Color: render.Vermilion}
)

// tuckDash is the dash of what is tucked: dots.
var tuckDash = []Length{0.5, 0.7}

// cardTint is that of card.
var cardTint = tint(render.Orange, 0.22)

// darkOrange is orange, dark enough for a thin line.
var darkOrange = render.Color{R: 0xA0, G: 0x5A, B: 0x00}

// style is how the pieces of one material are drawn, and how they differ, in the order of
// gluing: in the angle and the dash of their hatching, and in the dash of their outline.
type style struct {
	tint, color render.Color
	gap, width  Length // of the hatching
	angles      []float64
	dots        [][]Length
	outline     Length
	dashes      [][]Length
}

var (
	angles = []float64{45, -45, 90, 20, -20, 70}
	dashes = [][]Length{nil, {3.2, 1}, {3.2, 0.8, 0.8, 0.8}, {1.6, 0.8}, {5, 1.2}, {5, 0.8, 0.8, 0.8, 0.8, 0.8}}
	solid  = [][]Length{nil}
	styles = map[stage.Stuff]style{
		stage.Cloth: {tint: tint(render.SkyBlue, 0.32), color: render.Blue, gap: 1.5, width: 0.14, angles: angles, dots: solid, outline: 0.4, dashes: dashes},
		stage.Card:  {tint: cardTint, color: darkOrange, gap: 1.8, width: 0.14, angles: angles, dots: solid, outline: 0.4, dashes: dashes},
		stage.Paper: {tint: tint(render.Orange, 0.3), color: darkOrange, gap: 1.5, width: 0.3,
			angles: []float64{0, 45, -45, 90}, dots: [][]Length{{0.3, 2.1}, {1.2, 1.2}, {1.2, 1.2}, {1.2, 1.2}},
			outline: 0.3, dashes: [][]Length{{1.3, 0.7}, {2.6, 0.7}, {2.6, 0.6, 0.6, 0.6}, {4, 0.7}}},
	}
)

// look returns the look of the nth piece of a material.
func (s style) look(name string, n int) look {
	hatching := render.Stroke{Width: s.width, Dash: s.dots[n%len(s.dots)], Color: s.color}
	return look{
		scene.Look{Tint: s.tint, Hatch: []hatch{{Angle: s.angles[n%len(s.angles)], Gap: s.gap, Stroke: hatching}}},
		name, render.Stroke{Width: s.outline, Dash: s.dashes[n%len(s.dashes)], Color: s.color},
	}
}

// looksOf returns the look of each piece that lies on a face: by its material,
// and within one material by the order of gluing.
func looksOf(p plan.Proof) looks {
	thin := render.Stroke{Width: 0.14, Color: render.Grey}
	out := looks{
		board: look{name: "board", Look: scene.Look{Tint: tint(render.Grey, 0.22), Hatch: []hatch{{Angle: 45, Gap: 1.8, Stroke: thin}, {Angle: -45, Gap: 1.8, Stroke: thin}}}},
		lining: look{name: "lining", Look: scene.Look{Tint: tint(render.BluishGreen, 0.14), Hatch: []hatch{
			{Angle: 0, Gap: 2.4, Stroke: render.Stroke{Width: 0.12, Dash: []Length{2.4, 2.4}, Color: render.BluishGreen}},
		}}},
		pieces: map[string]look{},
	}
	used := map[string]bool{}
	for _, f := range p.Faces {
		for _, l := range f.Layers {
			used[l.Piece] = true
		}
	}
	count := map[stage.Stuff]int{}
	for _, s := range p.Sheets {
		if !used[s.Name] {
			continue
		}
		of, ok := styles[s.Stuff]
		if !ok {
			of = styles[stage.Paper]
		}
		out.pieces[s.Name] = of.look(s.Name, count[s.Stuff])
		count[s.Stuff]++
		out.order = append(out.order, s.Name)
	}
	return out
}

// ground returns the look of a face where no layer lies.
func (l looks) ground(g foldup.Ground) look {
	k := l.board
	if g.Stuff == stage.Lining {
		k = l.lining
	}
	k.name = g.Name
	return k
}

// piece returns a piece's look; one that isn't known is drawn as board.
func (l looks) piece(name string) look {
	if p, ok := l.pieces[name]; ok {
		return p
	}
	p := l.board
	p.name, p.line = name, innerEdge
	return p
}

// outline returns the line round a layer.
func (l look) outline(tucked bool) render.Stroke {
	s := l.line
	if tucked {
		s.Dash = tuckDash
	}
	return s
}

// tint thins a colour with white to the given part.
func tint(c render.Color, part float64) render.Color {
	mix := func(v uint8) uint8 { return uint8(255 - (255-float64(v))*part + 0.5) }
	return render.Color{R: mix(c.R), G: mix(c.G), B: mix(c.B)}
}
