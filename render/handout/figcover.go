package handout

import (
	"slices"

	"forel/geometry/slipcase"
	"forel/render/scene"
)

// The coverings of a case in the order they are glued.
var (
	spineCloth = covering{"spine cloth", 0, 1}
	headCloth  = covering{"head cloth", 0, 2}
	tailCloth  = covering{"tail cloth", 0, 3}
	rightPaper = covering{"side paper", 0, 4}
	leftPaper  = covering{"side paper", 1, 4}
	wrapCover  = covering{"wrap", 0, 1}
	headPanel  = covering{"head panel", 0, 2}
	tailPanel  = covering{"tail panel", 0, 3}
)

// covered gives the carcass with coverings that are on.
func (m model) covered(on ...covering) []scene.Face {
	out := m.boards(boardNames...)
	for _, c := range on {
		out = append(out, m.sheet(c, made, false)...)
	}
	return out
}

// spineFigures gives the figures of the spine cloth.
func (m model) spineFigures() (laid, flaps []panel) {
	cut, _ := m.cutOut()
	c, v := spineCloth, m.onSpine()
	up := scene.Vec{Z: m.lift()}
	w, h := m.w(), m.h()
	carcass := m.boards(boardNames...)
	sides := stage{margins: 90}
	first := stage{margins: 90, sideFlaps: 55}
	second := stage{margins: 90, sideFlaps: 90, spineFlap: 62}
	low := scene.Turned(toHead, toMouth, -36, 26)
	focus := m.endOfCloth()
	head := is(slipcase.HeadOutside)
	laid = []panel{
		{
			faces: slices.Concat(m.sheet(c, stage{}, true), scene.Moved(carcass, up)), view: v, fresh: []string{c.name},
			arrows: down(up, scene.Vec{X: w * 0.3, Y: h, Z: 0}, scene.Vec{X: w, Y: h * 0.3, Z: 0}),
			notes: []note{
				{name: "the case", more: "spine down, mouth up", spot: "head wall"},
				{name: "cloth", more: "glued face up", spot: "left margin"},
				{name: "spine flap", spot: "spine flap"},
				{name: cut, more: "cut away", at: m.wedge()},
			},
			caption: "a: the spine onto the ruled rectangle",
		},
		{
			faces: slices.Concat(m.sheet(c, sides, true), carcass), view: v, fresh: []string{c.name},
			arrows:  m.swings(c, stage{}, sides, nil, hangsOn(is(slipcase.LeftOutside), is(slipcase.SpineOutside), nil), hangsOn(is(slipcase.RightOutside), is(slipcase.SpineOutside), nil)),
			notes:   []note{{name: "margin", more: "onto a side", spot: "left margin"}, {name: "side flap", spot: "side flap"}},
			caption: "b: both margins up onto the sides",
		},
	}
	flaps = []panel{
		{
			faces: slices.Concat(m.sheet(c, first, true), carcass), view: low, fresh: []string{c.name}, focus: focus,
			arrows: m.swings(c, sides, stage{margins: 90, sideFlaps: 90}, focus,
				hangsOn(head, is(slipcase.LeftOutside), nil), hangsOn(head, is(slipcase.RightOutside), nil)),
			notes:   []note{{name: "side flaps", more: "fold first", spot: "side flap"}, {name: "spine flap", more: "waits", spot: "spine flap"}},
			caption: "a: the side flaps over the head wall",
		},
		{
			faces: slices.Concat(m.sheet(c, second, true), carcass), view: low, fresh: []string{c.name}, focus: focus,
			arrows:  m.swings(c, stage{margins: 90, sideFlaps: 90}, stage{margins: 90, sideFlaps: 90, spineFlap: 90}, focus, hangsOn(head, is(slipcase.SpineOutside), nil)),
			notes:   []note{{name: "spine flap", more: "folds last, over them", spot: "spine flap"}},
			caption: "b: the spine flap over them",
		},
	}
	return laid, flaps
}

// wedge gives a place in a wedge of the flat cloth at the head.
func (m model) wedge() scene.Vec {
	var reach float64
	for _, r := range m.pieces[spineCloth.name].Regions {
		if r.Face == slipcase.HeadOutside && r.Room.Min.X > 0 {
			reach = max(reach, r.Room.Height().MM())
		}
	}
	return scene.Vec{X: -1, Y: m.h() + 0.85*reach}
}

// endOfCloth gives what is to be seen of the head end of a case that stands on
// its spine.
func (m model) endOfCloth() []scene.Vec {
	deep := m.job.Cloth.Overlap.MM()
	flap := m.job.Cloth.TurnIn.MM()
	left := max(-6, m.w()-3*flap) // of a thick case, one corner is shown
	return boxCorners(scene.Vec{X: left, Y: max(0, m.h()-1.2*flap)}, scene.Vec{X: m.w() + 6, Y: m.h() + flap, Z: min(m.d(), deep+14)})
}

// endFigures gives the figures of the head cloth, with the tail's alike.
func (m model) endFigures() (laid, tabs []panel) {
	c := headCloth
	v := m.intoMouth(34, 36)
	base := m.covered(spineCloth)
	margins := stage{margins: 90}
	side := m.tabsGoingIn()
	last := stage{margins: 90, sideTabs: 180, middleTab: 125}
	ends := is(slipcase.HeadOutside)
	focus := m.mouthCorner()
	low := m.intoMouth(30, 28)
	if m.narrow() {
		low = m.intoMouth(14, 28)
	}
	laid = []panel{
		{
			faces: slices.Concat(base, m.sheet(c, stage{}, true)), view: v, fresh: []string{c.name},
			arrows: m.swings(c, stage{}, margins, nil, hangsOn(is(slipcase.RightOutside), ends, nil), hangsOn(is(slipcase.LeftOutside), ends, nil)),
			notes: []note{
				{name: "head cloth", more: "on the head wall", spot: "head"},
				{name: "slits", more: "at the mouth", at: m.slit()},
				{name: "spine cloth", more: "beneath", spot: "right margin"},
			},
			caption: "a: short of the spine edge by the gap",
		},
		{
			faces: slices.Concat(base, m.sheet(c, margins, true)), view: v, fresh: []string{c.name},
			notes:   []note{{name: "margin", more: "onto a side", spot: "right margin"}, {name: "tabs", more: "still flat", spot: "middle tab"}},
			caption: "b: both margins down onto the sides",
		},
	}
	tabs = []panel{
		{
			faces: slices.Concat(base, m.sheet(c, side, true)), view: low, fresh: []string{c.name}, focus: focus,
			arrows:  m.tabSwings(c, side, focus),
			notes:   []note{{name: "side tabs", more: "fold first, into the corners", spot: "side tab"}, {name: "middle tab", more: "waits", spot: "middle tab"}},
			caption: "a: side tabs round the edge and in",
		},
		{
			faces: slices.Concat(base, m.sheet(c, last, true)), view: low, fresh: []string{c.name}, focus: focus,
			arrows:  m.swings(c, stage{margins: 90, sideTabs: 180, middleTab: 60}, made, focus, hangsOn(is(slipcase.HeadInside), mouthEdge, viaRoot)),
			notes:   []note{{name: "middle tab", more: "folds last, over them", spot: "middle tab"}},
			caption: "b: the middle tab over them",
		},
	}
	return laid, tabs
}

// narrow tells whether the mouth is too narrow to show the side tabs in it.
func (m model) narrow() bool { return m.w()-2*m.s() < 1.2*m.job.Cloth.MouthTurnIn.MM() }

// tabsGoingIn is the stage at which the side tabs are shown: half way into the
// mouth, or spread before it where that is narrow.
func (m model) tabsGoingIn() stage {
	if m.narrow() {
		return stage{margins: 90, sideTabs: -24}
	}
	return stage{margins: 90, sideTabs: 130}
}

// tabSwings gives the arrows of the side tabs, as far as the way in is seen.
func (m model) tabSwings(c covering, from stage, focus []scene.Vec) []arrow {
	left, right := hangsOn(is(slipcase.LeftInside), mouthEdge, nil), hangsOn(is(slipcase.RightInside), mouthEdge, nil)
	to := stage{margins: 90, sideTabs: 142}
	if m.narrow() {
		to.sideTabs = 16
		return m.swings(c, from, to, focus, left, right)
	}
	from.sideTabs = 98
	return append(m.swings(c, from, stage{margins: 90, sideTabs: 180}, focus, left), m.swings(c, from, to, focus, right)...)
}

// slit gives the middle of a slit of the flat head cloth.
func (m model) slit() scene.Vec {
	p := m.pieces[headCloth.name]
	hung, ok := m.hang(headCloth)
	if !ok || len(p.Slits) == 0 {
		return scene.Vec{X: m.w(), Y: m.h(), Z: m.d()}
	}
	v := p.Slits[0].Vertices
	q := hung.Pose(stage{}.angle(hung))[0].At(v[0].Add(v[1].Point).Mul(0.5))
	return scene.Vec{X: q.X.MM(), Y: q.Y.MM(), Z: q.Z.MM()}
}

// mouthCorner gives what is to be seen of the head end of the mouth.
func (m model) mouthCorner() []scene.Vec {
	t := m.job.Cloth.MouthTurnIn.MM()
	tall := min(m.h(), 1.9*t)
	left := max(-2, m.w()-3.4*t) // of a thick case, one corner is shown
	wide := 0.0
	if m.narrow() { // tabs are shown before the mouth
		wide = 0.6 * t
	}
	return boxCorners(scene.Vec{X: left - wide, Y: m.h() - tall, Z: max(0, m.d()-1.2*t)}, scene.Vec{X: m.w() + 2 + wide, Y: m.h() + 0.4*t, Z: m.d() + 0.5*t + wide})
}

// paperCorner gives what is to be seen of the right side where head and mouth
// meet.
func (m model) paperCorner() []scene.Vec {
	r := 3.2 * max(m.job.SidePaper.TurnIn.MM(), m.job.SidePaper.Inset.MM())
	return boxCorners(scene.Vec{X: max(0, m.w()-r*0.5), Y: m.h() - 1.5*r, Z: m.d() - 1.3*r}, scene.Vec{X: m.w(), Y: m.h() + 2, Z: m.d() + r*0.25})
}

// paperFigures gives the figures of the side papers.
func (m model) paperFigures(beneath ...covering) []panel {
	c := rightPaper
	base := m.covered(beneath...)
	v := m.intoMouth(46, 20)
	away := scene.Vec{X: m.lift() * 1.3}
	flat := m.sheet(c, stage{}, true)
	bent := stage{middleTab: 75}
	d, h, w := m.d(), m.h(), m.w()
	i := m.job.SidePaper.Inset.MM()
	return []panel{
		{
			faces: slices.Concat(base, scene.Moved(flat, away)), view: v, fresh: []string{c.object()},
			arrows: []arrow{
				{path: []scene.Vec{{X: w + away.X*0.85, Y: h * 0.8, Z: d * 0.25}, {X: w + away.X*0.12, Y: h * 0.8, Z: d * 0.25}}},
				{path: []scene.Vec{{X: w + away.X*0.85, Y: h * 0.2, Z: d * 0.6}, {X: w + away.X*0.12, Y: h * 0.2, Z: d * 0.6}}},
			},
			notes: []note{
				{name: "side paper", more: "glued face to the case", spot: "side"},
				{name: "past the mouth", more: "to be turned in", spot: "turn-in"},
			},
			caption: "a: the same border at spine, head and tail",
		},
		{
			faces: slices.Concat(base, m.sheet(c, bent, true)), view: v, fresh: []string{c.object()}, focus: m.paperCorner(),
			arrows:  m.swings(c, stage{middleTab: 40}, made, m.paperCorner(), hangsOn(is(slipcase.RightInside), mouthEdge, nil)),
			notes:   []note{{name: "border", at: scene.Vec{X: w, Y: h - i/2, Z: d - 20}}, {name: "turn-in", more: "round the edge, into the case", spot: "turn-in"}},
			caption: "b: rub it down, then turn in at the mouth",
		},
	}
}
