package handout

import (
	"slices"
	"strings"

	"forel/geometry/slipcase"
	"forel/render/scene"
)

// wrapFigures gives the figures of a wrap.
func (m model) wrapFigures() (laid, flaps, mouth []panel) {
	c, v := wrapCover, m.onSpine()
	up := scene.Vec{Z: m.lift() * 1.2}
	w, h, d := m.w(), m.h(), m.d()
	carcass := m.boards(boardNames...)
	half := stage{margins: 48}
	first := stage{margins: 90, sideFlaps: 55}
	second := stage{margins: 90, sideFlaps: 90, spineFlap: 50}
	head := is(slipcase.HeadOutside)
	turn := stage{margins: 90, sideFlaps: 90, spineFlap: 90, sideTabs: 60}
	laid = []panel{
		{
			faces: slices.Concat(m.sheet(c, stage{}, true), scene.Moved(carcass, up)), view: v, fresh: []string{c.name},
			arrows: down(up, scene.Vec{X: w * 0.5, Y: h, Z: 0}, scene.Vec{X: 0, Y: h * 0.35, Z: 0}),
			notes: []note{
				{name: "the case", more: "spine down, mouth up", spot: "head wall"},
				{name: "wrap", more: "glued face up", spot: "left side"},
				{name: "side flap", spot: "side flap"},
			},
			caption: "a: the spine onto the ruled rectangle",
		},
		{
			faces: slices.Concat(m.sheet(c, half, true), carcass), view: v, fresh: []string{c.name},
			arrows:  m.swings(c, half, stage{margins: 90}, nil, hangsOn(is(slipcase.LeftOutside), is(slipcase.SpineOutside), nil), hangsOn(is(slipcase.RightOutside), is(slipcase.SpineOutside), nil)),
			notes:   []note{{name: "one side", spot: "left side"}, {name: "turn-in", more: "past the mouth", spot: "turn-in"}},
			caption: "b: first one side up, then the other",
		},
	}
	flaps = []panel{
		{
			faces: slices.Concat(m.sheet(c, first, true), carcass), view: v, fresh: []string{c.name},
			arrows:  m.swings(c, stage{margins: 90}, second, nil, hangsOn(head, is(slipcase.LeftOutside), nil), hangsOn(head, is(slipcase.RightOutside), nil)),
			notes:   []note{{name: "side flaps", more: "fold first", spot: "side flap"}, {name: "spine flap", more: "waits", spot: "spine flap"}},
			caption: "a: the side flaps over the head wall",
		},
		{
			faces: slices.Concat(m.sheet(c, second, true), carcass), view: v, fresh: []string{c.name},
			arrows:  m.swings(c, stage{margins: 90, sideFlaps: 90, spineFlap: 12}, made, nil, hangsOn(head, is(slipcase.SpineOutside), nil)),
			notes:   []note{{name: "spine flap", more: "folds last, over them", spot: "spine flap"}},
			caption: "b: the spine flap over them",
		},
	}
	p := headPanel
	mv := m.intoMouth(40, 30)
	on := slices.Concat(carcass, m.sheet(c, made, false))
	away := scene.Vec{Y: m.lift()}
	mouth = []panel{
		{
			faces: slices.Concat(m.sheet(c, turn, true), carcass), view: mv, fresh: []string{c.name},
			arrows:  m.swings(c, stage{margins: 90, sideFlaps: 90, spineFlap: 90, sideTabs: 20}, made, nil, hangsOn(is(slipcase.RightInside), mouthEdge, nil)),
			notes:   []note{{name: "turn-in", more: "round the edge, into the case", spot: "turn-in"}},
			caption: "a: turn the ends in at the mouth",
		},
		{
			faces: slices.Concat(on, scene.Moved(m.sheet(p, stage{middleTab: 30}, true), away)), view: mv, fresh: []string{p.name},
			arrows:  down(away, scene.Vec{X: w * 0.5, Y: h, Z: d * 0.98}),
			notes:   []note{{name: "head panel", more: "over the flaps, between the outer faces", spot: "head"}, {name: "its turn-in", spot: "turn-in"}},
			caption: "b: the panel over the flaps, turned in",
		},
	}
	return laid, flaps, mouth
}

// holeFigure gives the figure of a covering at the thumb hole.
func (m model) holeFigure(c covering, base []scene.Face) panel {
	r := 0.0
	for _, q := range m.c.Side {
		if q.X < m.c.Depth-0.001 && q.X > 0.001 {
			r = max(r, m.d()-q.X.MM())
		}
	}
	at := made
	at.holeTabs = 30
	var focus []scene.Vec
	for _, y := range []float64{m.h()/2 - 2*r, m.h()/2 + 2*r} {
		for _, z := range []float64{m.d() - 2.1*r, m.d() + r*0.3} {
			focus = append(focus, scene.Vec{X: m.w(), Y: y, Z: z})
		}
	}
	return panel{
		faces: slices.Concat(base, m.sheet(c, at, true)), view: m.intoMouth(60, 14), focus: focus,
		notes: []note{
			{name: "tabs", more: "over the edge of the hole, into the case", at: scene.Vec{X: m.w(), Y: m.h()/2 + r*0.45, Z: m.d() - r*0.75}},
			{name: "turn-in", more: "already in, above and below", at: scene.Vec{X: m.w() - m.s()/2, Y: m.h()/2 - 1.5*r, Z: m.d()}},
		},
	}
}

// liningsInFigures gives the figures of linings that go in last.
func (m model) liningsInFigures(base []scene.Face) []panel {
	s, w, h, d := m.s(), m.w(), m.h(), m.d()
	size := func(name string) (float64, float64) {
		a, b := m.pieces[name].Size()
		return a.MM(), b.MM()
	}
	look := m.lining
	back := scene.Look{Tint: white}
	put := func(object string, o, u, v scene.Vec) scene.Face {
		return scene.Face{Object: object, Name: object, Front: look, Back: &back, Grain: v, Layer: 100,
			Points: []scene.Vec{o, o.Add(u), o.Add(u).Add(v), o.Add(v)}}
	}
	pw, ph := size("spine lining")
	ew, eh := size("head lining")
	sides := func(out float64) []scene.Face {
		left := scene.Face{Object: "lining, left", Name: "lining, left", Front: look, Back: &back, Grain: scene.Vec{Y: 1}, Layer: 100}
		right := left
		right.Object, right.Name = "lining, right", "lining, right"
		for _, q := range m.pieces["side lining"].Outline.Flatten(0.1) {
			left.Points = append(left.Points, scene.Vec{X: s, Y: s + q.Y.MM(), Z: s + q.X.MM() + out})
			right.Points = append(right.Points, scene.Vec{X: w - s, Y: s + q.Y.MM(), Z: s + q.X.MM() + out})
		}
		slices.Reverse(left.Points) // seen from the right
		return []scene.Face{left, right}
	}
	ends := func(out float64) []scene.Face {
		x := (w - eh) / 2
		return []scene.Face{
			put("lining, head", scene.Vec{X: x, Y: h - s, Z: s + out}, scene.Vec{X: eh}, scene.Vec{Z: ew}),
			put("lining, tail", scene.Vec{X: x, Y: s, Z: s + ew + out}, scene.Vec{X: eh}, scene.Vec{Z: -ew}),
		}
	}
	spine := put("lining, spine", scene.Vec{X: (w - pw) / 2, Y: s, Z: s}, scene.Vec{X: pw}, scene.Vec{Y: ph})
	out := d * 0.75
	pull := func(x, y float64) arrow {
		return arrow{path: []scene.Vec{{X: x, Y: y, Z: d + out*0.75}, {X: x, Y: y, Z: d + out*0.15}}}
	}
	return []panel{
		{
			faces: slices.Concat(base, sides(out)), view: m.mouthView(), fresh: []string{"lining, left", "lining, right"},
			arrows:  []arrow{pull(w/2, h*0.3)},
			notes:   []note{{name: "side linings", more: "face to the middle", spot: "lining, right"}, {name: "short of the mouth", more: "so that the turn-in shows", at: scene.Vec{X: w, Y: h * 0.1, Z: d}}},
			caption: "a: the sides first, then the spine",
		},
		{
			faces: slices.Concat(base, sides(0), []scene.Face{spine}, ends(out)), view: m.mouthView(), fresh: []string{"lining, head", "lining, tail"},
			arrows:  []arrow{pull(w/2, h*0.5)},
			notes:   []note{{name: "head lining", spot: "lining, head"}, {name: "tail lining", spot: "lining, tail"}},
			caption: "b: head and tail last",
		},
	}
}

// dividerFigures gives the figures of the dividers.
func (m model) dividerFigures(base []scene.Face) []panel {
	out := m.d() * 0.7
	var fresh []string
	faces := m.dividersIn(out)
	for _, f := range faces {
		if !slices.Contains(fresh, f.Object) {
			fresh = append(fresh, f.Object)
		}
	}
	at := m.dividerPlaces()
	x := (at[0][0] + at[0][1]) / 2
	last := faces[len(faces)-1].Object
	last = strings.TrimSuffix(last, " strip")
	return []panel{{
		faces: slices.Concat(base, faces), view: m.mouthView(), fresh: fresh,
		arrows: []arrow{{path: []scene.Vec{{X: x, Y: m.h() + 4, Z: m.d() + out*0.8}, {X: x, Y: m.h() + 4, Z: m.d() + out*0.1}}}},
		notes:  []note{{name: "divider", more: "lined on both faces", spot: last}, {name: "strip", more: "of cloth round its mouth edge", spot: last + " strip"}},
	}}
}
