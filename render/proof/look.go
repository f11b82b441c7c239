package proof

import (
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/render"
)

// look is how a material or a piece is drawn. Looks differ in hatching, dash
// and weight, so that a print in black alone can be read.
type look struct {
	name  string // for the legend
	tint  render.Color
	hatch []hatch
	line  render.Stroke // of its outline
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

// How the pieces of one material differ, in the order of gluing.
var (
	clothAngles = []float64{45, -45, 90, 20, -20, 70}
	clothDashes = [][]Length{nil, {3.2, 1}, {3.2, 0.8, 0.8, 0.8}, {1.6, 0.8}, {5, 1.2}, {5, 0.8, 0.8, 0.8, 0.8, 0.8}}
	paperAngles = []float64{0, 45, -45, 90}
	paperDots   = [][]Length{{0.3, 2.1}, {1.2, 1.2}, {1.2, 1.2}, {1.2, 1.2}}
	paperDashes = [][]Length{{1.3, 0.7}, {2.6, 0.7}, {2.6, 0.6, 0.6, 0.6}, {4, 0.7}}
)

// looksOf returns the look of each piece that lies on a face: by its material,
// and within one material by the order of gluing.
func looksOf(p plan.Proof) looks {
	thin := render.Stroke{Width: 0.14, Color: render.Grey}
	out := looks{
		board: look{name: "board", tint: tint(render.Grey, 0.22), hatch: []hatch{{Angle: 45, Gap: 1.8, Stroke: thin}, {Angle: -45, Gap: 1.8, Stroke: thin}}},
		lining: look{name: "lining", tint: tint(render.BluishGreen, 0.14), hatch: []hatch{
			{Angle: 0, Gap: 2.4, Stroke: render.Stroke{Width: 0.12, Dash: []Length{2.4, 2.4}, Color: render.BluishGreen}},
		}},
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
		n := count[s.Stuff]
		count[s.Stuff]++
		l := look{name: s.Name}
		switch s.Stuff {
		case stage.Cloth:
			l.tint = tint(render.SkyBlue, 0.32)
			l.hatch = []hatch{{Angle: clothAngles[n%len(clothAngles)], Gap: 1.5, Stroke: render.Stroke{Width: 0.14, Color: render.Blue}}}
			l.line = render.Stroke{Width: 0.4, Dash: clothDashes[n%len(clothDashes)], Color: render.Blue}
		case stage.Card:
			l.tint = cardTint
			l.hatch = []hatch{{Angle: clothAngles[n%len(clothAngles)], Gap: 1.8, Stroke: render.Stroke{Width: 0.14, Color: darkOrange}}}
			l.line = render.Stroke{Width: 0.4, Dash: clothDashes[n%len(clothDashes)], Color: darkOrange}
		default:
			l.tint = tint(render.Orange, 0.3)
			l.hatch = []hatch{{Angle: paperAngles[n%len(paperAngles)], Gap: 1.5, Stroke: render.Stroke{Width: 0.3, Dash: paperDots[n%len(paperDots)], Color: darkOrange}}}
			l.line = render.Stroke{Width: 0.3, Dash: paperDashes[n%len(paperDashes)], Color: darkOrange}
		}
		out.pieces[s.Name] = l
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
