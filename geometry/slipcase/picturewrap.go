package slipcase

import (
	"slices"

	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// wrapFigures returns the figures of a wrap.
func (m model) wrapFigures() (laid, flaps, mouth []stage.Picture) {
	c, v := wrapCover, m.onSpine()
	up := stage.Vec{Z: m.lift() * 1.2}
	w, h, d := m.w(), m.h(), m.d()
	carcass := m.covered()
	half := folds{margins: 48}
	turn := folds{margins: 90, sideFlaps: 90, spineFlap: 90, sideTabs: 60}
	laid = []stage.Picture{
		{
			Faces: slices.Concat(m.sheet(c, folds{}, true), stage.Moved(carcass, up)), View: v, Fresh: []string{c.name},
			Arrows: draft.Down(up, stage.Vec{X: w * 0.5, Y: h, Z: 0}, stage.Vec{X: 0, Y: h * 0.35, Z: 0}),
			Notes: []stage.Note{
				{Name: plan.Say("the case"), More: plan.Say("spine down, mouth up"), Spot: "head wall"},
				{Name: plan.Say("wrap"), More: plan.Say("glued face up"), Spot: "left side"},
				{Name: plan.Say("side flap"), Spot: "side flap"},
			},
			Caption: plan.Say("a: the spine onto the ruled rectangle"),
		},
		{
			Faces: slices.Concat(m.sheet(c, half, true), carcass), View: v, Fresh: []string{c.name},
			Arrows:  m.swings(c, half, folds{margins: 90}, nil, hangsOn(is(LeftOutside), is(SpineOutside), nil), hangsOn(is(RightOutside), is(SpineOutside), nil)),
			Notes:   []stage.Note{{Name: plan.Say("one side"), Spot: "left side"}, {Name: plan.Say("turn-in"), More: plan.Say("past the mouth"), Spot: "turn-in"}},
			Caption: plan.Say("b: first one side up, then the other"),
		},
	}
	flaps = m.flapFigures(c, v, nil, 12, 50)
	p := headPanel
	mv := m.intoMouth(40, 30)
	on := slices.Concat(carcass, m.sheet(c, made, false))
	away := stage.Vec{Y: m.lift()}
	mouth = []stage.Picture{
		{
			Faces: slices.Concat(m.sheet(c, turn, true), carcass), View: mv, Fresh: []string{c.name},
			Arrows:  m.swings(c, folds{margins: 90, sideFlaps: 90, spineFlap: 90, sideTabs: 20}, made, nil, hangsOn(is(RightInside), mouthEdge, nil)),
			Notes:   []stage.Note{{Name: plan.Say("turn-in"), More: plan.Say("round the edge, into the case"), Spot: "turn-in"}},
			Caption: plan.Say("a: turn the ends in at the mouth"),
		},
		{
			Faces: slices.Concat(on, stage.Moved(m.sheet(p, folds{middleTab: 30}, true), away)), View: mv, Fresh: []string{p.name},
			Arrows:  draft.Down(away, stage.Vec{X: w * 0.5, Y: h, Z: d * 0.98}),
			Notes:   []stage.Note{{Name: plan.Say("head panel"), More: plan.Say("over the flaps, between the outer faces"), Spot: "head"}, {Name: plan.Say("its turn-in"), Spot: "turn-in"}},
			Caption: plan.Say("b: the panel over the flaps, turned in"),
		},
	}
	return laid, flaps, mouth
}

// holeFigure returns the figure of a covering at the thumb hole.
func (m model) holeFigure(c covering, base []stage.Face) stage.Picture {
	r, at := m.c.holeDepth(), made
	at[holeTabs] = 30
	var focus []stage.Vec
	for _, y := range []Length{m.h()/2 - 2*r, m.h()/2 + 2*r} {
		for _, z := range []Length{m.d() - 2.1*r, m.d() + r*0.3} {
			focus = append(focus, stage.Vec{X: m.w(), Y: y, Z: z})
		}
	}
	return stage.Picture{
		Faces: slices.Concat(base, m.sheet(c, at, true)), View: m.intoMouth(60, 14), Focus: focus,
		Notes: []stage.Note{
			{Name: plan.Say("tabs"), More: plan.Say("over the edge of the hole, into the case"), At: stage.Vec{X: m.w(), Y: m.h()/2 + r*0.45, Z: m.d() - r*0.75}},
			{Name: plan.Say("turn-in"), More: plan.Say("already in, above and below"), At: stage.Vec{X: m.w() - m.s()/2, Y: m.h()/2 - 1.5*r, Z: m.d()}},
		},
	}
}

// liningsInFigures returns the figures of linings that go in last.
func (m model) liningsInFigures(base []stage.Face) []stage.Picture {
	w, h, d := m.w(), m.h(), m.d()
	put := func(object, name string, seat int, out Length) stage.Face {
		f := m.sheet(covering{name, seat, 9}, folds{}, true)[0]
		f.Object, f.Name, f.Front, f.Back = object, object, f.Back, f.Front // it is drawn face up
		return stage.Moved([]stage.Face{f}, stage.Vec{Z: out})[0]
	}
	sides := func(out Length) []stage.Face {
		return []stage.Face{put("lining, left", "side lining", 1, out), put("lining, right", "side lining", 0, out)}
	}
	ends := func(out Length) []stage.Face {
		return []stage.Face{put("lining, head", "head lining", 0, out), put("lining, tail", "tail lining", 0, out)}
	}
	spine := put("lining, spine", "spine lining", 0, 0)
	out := d * 0.75
	pull := func(x, y Length) stage.Arrow {
		return stage.Arrow{Path: []stage.Vec{{X: x, Y: y, Z: d + out*0.75}, {X: x, Y: y, Z: d + out*0.15}}}
	}
	return []stage.Picture{
		{
			Faces: slices.Concat(base, sides(out)), View: m.mouthView(), Fresh: []string{"lining, left", "lining, right"},
			Arrows:  []stage.Arrow{pull(w/2, h*0.3)},
			Notes:   []stage.Note{{Name: plan.Say("side linings"), More: plan.Say("face to the middle"), Spot: "lining, right"}, {Name: plan.Say("short of the mouth"), More: plan.Say("so that the turn-in shows"), At: stage.Vec{X: w, Y: h * 0.1, Z: d}}},
			Caption: plan.Say("a: the sides first, then the spine"),
		},
		{
			Faces: slices.Concat(base, sides(0), []stage.Face{spine}, ends(out)), View: m.mouthView(), Fresh: []string{"lining, head", "lining, tail"},
			Arrows:  []stage.Arrow{pull(w/2, h*0.5)},
			Notes:   []stage.Note{{Name: plan.Say("head lining"), Spot: "lining, head"}, {Name: plan.Say("tail lining"), Spot: "lining, tail"}},
			Caption: plan.Say("b: head and tail last"),
		},
	}
}
