package slipcase

import (
	"slices"

	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
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

// covered returns the carcass with coverings that are on.
func (m model) covered(on ...covering) []stage.Face {
	out := append(m.boards(boardNames...), m.dividersIn()...)
	for _, c := range on {
		out = append(out, m.sheet(c, made, false)...)
	}
	return out
}

// spineFigures returns the figures of the spine cloth.
func (m model) spineFigures() (laid, flaps []stage.Picture) {
	cut, _ := m.job.cutOut()
	c, v := spineCloth, m.onSpine()
	up := stage.Vec{Z: m.lift()}
	w, h := m.w(), m.h()
	carcass := m.covered()
	sides := folds{margins: 90}
	low := stage.View{Toward: toHead, Up: toMouth, Yaw: -36, Pitch: 26}
	laid = []stage.Picture{
		{
			Faces: slices.Concat(m.sheet(c, folds{}, true), stage.Moved(carcass, up)), View: v, Fresh: []string{c.name},
			Arrows: draft.Down(up, stage.Vec{X: w * 0.3, Y: h, Z: 0}, stage.Vec{X: w, Y: h * 0.3, Z: 0}),
			Notes: []stage.Note{
				{Name: plan.Say("the case"), More: plan.Say("spine down, mouth up"), Spot: "head wall"},
				{Name: plan.Say("cloth"), More: plan.Say("glued face up"), Spot: "left margin"},
				{Name: plan.Say("spine flap"), Spot: "spine flap"},
				{Name: plan.Say(cut), More: plan.Say("cut away"), At: m.wedge()},
			},
			Caption: plan.Say("a: the spine onto the ruled rectangle"),
		},
		{
			Faces: slices.Concat(m.sheet(c, sides, true), carcass), View: v, Fresh: []string{c.name},
			Arrows:  m.swings(c, folds{}, sides, nil, hangsOn(is(LeftOutside), is(SpineOutside), nil), hangsOn(is(RightOutside), is(SpineOutside), nil)),
			Notes:   []stage.Note{{Name: plan.Say("margin"), More: plan.Say("onto a side"), Spot: "left margin"}, {Name: plan.Say("side flap"), Spot: "side flap"}},
			Caption: plan.Say("b: both margins up onto the sides"),
		},
	}
	return laid, m.flapFigures(c, low, m.endOfCloth(), 0, 62)
}

// flapFigures returns the figures of the flaps at the head of what lies on the spine: the
// side flaps, then the spine flap, half way at an angle and its arrow from another, in degrees.
func (m model) flapFigures(c covering, v stage.View, focus []stage.Vec, from, at float64) []stage.Picture {
	head, carcass := is(HeadOutside), m.covered()
	laid, sides := folds{margins: 90}, folds{margins: 90, sideFlaps: 90}
	half, low, spine := laid, sides, sides
	half[sideFlaps], low[spineFlap], spine[spineFlap] = 55, from, at
	return []stage.Picture{
		{
			Faces: slices.Concat(m.sheet(c, half, true), carcass), View: v, Fresh: []string{c.name}, Focus: focus,
			Arrows:  m.swings(c, laid, sides, focus, hangsOn(head, is(LeftOutside), nil), hangsOn(head, is(RightOutside), nil)),
			Notes:   []stage.Note{{Name: plan.Say("side flaps"), More: plan.Say("fold first"), Spot: "side flap"}, {Name: plan.Say("spine flap"), More: plan.Say("waits"), Spot: "spine flap"}},
			Caption: plan.Say("a: the side flaps over the head wall"),
		},
		{
			Faces: slices.Concat(m.sheet(c, spine, true), carcass), View: v, Fresh: []string{c.name}, Focus: focus,
			Arrows:  m.swings(c, low, made, focus, hangsOn(head, is(SpineOutside), nil)),
			Notes:   []stage.Note{{Name: plan.Say("spine flap"), More: plan.Say("folds last, over them"), Spot: "spine flap"}},
			Caption: plan.Say("b: the spine flap over them"),
		},
	}
}

// wedge returns a place in a wedge of the flat cloth at the head.
func (m model) wedge() stage.Vec {
	var reach Length
	for _, r := range m.pieces[spineCloth.name].Regions {
		if r.Face == HeadOutside && r.Room.Min.X > 0 {
			reach = max(reach, r.Room.Height())
		}
	}
	return stage.Vec{X: -1, Y: m.h() + 0.85*reach}
}

// endOfCloth returns what is to be seen of the head end of a case that stands on
// its spine.
func (m model) endOfCloth() []stage.Vec {
	deep := m.job.Cloth.Overlap
	flap := m.job.Cloth.TurnIn
	left := max(-6, m.w()-3*flap) // of a thick case, one corner is shown
	return draft.Corners(stage.Vec{X: left, Y: max(0, m.h()-1.2*flap)}, stage.Vec{X: m.w() + 6, Y: m.h() + flap, Z: min(m.d(), deep+14)})
}

// endFigures returns the figures of the head cloth, with the tail's alike.
func (m model) endFigures() (laid, tabs []stage.Picture) {
	c := headCloth
	v := m.intoMouth(34, 36)
	base := m.covered(spineCloth)
	onSides := folds{margins: 90}
	side := m.tabsGoingIn()
	last := folds{margins: 90, sideTabs: 180, middleTab: 125}
	ends := is(HeadOutside)
	focus := m.mouthCorner()
	low := m.intoMouth(30, 28)
	if m.narrow() {
		low = m.intoMouth(14, 28)
	}
	laid = []stage.Picture{
		{
			Faces: slices.Concat(base, m.sheet(c, folds{}, true)), View: v, Fresh: []string{c.name},
			Arrows: m.swings(c, folds{}, onSides, nil, hangsOn(is(RightOutside), ends, nil), hangsOn(is(LeftOutside), ends, nil)),
			Notes: []stage.Note{
				{Name: plan.Say("head cloth"), More: plan.Say("on the head wall"), Spot: "head"},
				{Name: plan.Say("slits"), More: plan.Say("at the mouth"), At: m.slit()},
				{Name: plan.Say("spine cloth"), More: plan.Say("beneath"), Spot: "right margin"},
			},
			Caption: plan.Say("a: short of the spine edge by the gap"),
		},
		{
			Faces: slices.Concat(base, m.sheet(c, onSides, true)), View: v, Fresh: []string{c.name},
			Notes:   []stage.Note{{Name: plan.Say("margin"), More: plan.Say("onto a side"), Spot: "right margin"}, {Name: plan.Say("tabs"), More: plan.Say("still flat"), Spot: "middle tab"}},
			Caption: plan.Say("b: both margins down onto the sides"),
		},
	}
	tabs = []stage.Picture{
		{
			Faces: slices.Concat(base, m.sheet(c, side, true)), View: low, Fresh: []string{c.name}, Focus: focus,
			Arrows:  m.tabSwings(c, side, focus),
			Notes:   []stage.Note{{Name: plan.Say("side tabs"), More: plan.Say("fold first, to the corners"), Spot: "side tab"}, {Name: plan.Say("middle tab"), More: plan.Say("waits"), Spot: "middle tab"}},
			Caption: plan.Say("a: side tabs round the edge and in"),
		},
		{
			Faces: slices.Concat(base, m.sheet(c, last, true)), View: low, Fresh: []string{c.name}, Focus: focus,
			Arrows:  m.swings(c, folds{margins: 90, sideTabs: 180, middleTab: 60}, made, focus, hangsOn(is(HeadInside), mouthEdge, viaRoot)),
			Notes:   []stage.Note{{Name: plan.Say("middle tab"), More: plan.Say("folds last, between them"), Spot: "middle tab"}},
			Caption: plan.Say("b: the middle tab between them"),
		},
	}
	return laid, tabs
}

// narrow tells whether the mouth is too narrow to show the side tabs in it.
func (m model) narrow() bool { return m.w()-2*m.s() < 1.2*m.job.Cloth.MouthTurnIn }

// tabsGoingIn is the stage at which the side tabs are shown: half way into the
// mouth, or spread before it where that is narrow.
func (m model) tabsGoingIn() folds {
	if m.narrow() {
		return folds{margins: 90, sideTabs: -24}
	}
	return folds{margins: 90, sideTabs: 130}
}

// tabSwings returns the arrows of the side tabs, as far as the way in is seen.
func (m model) tabSwings(c covering, from folds, focus []stage.Vec) []stage.Arrow {
	left, right := hangsOn(is(LeftInside), mouthEdge, nil), hangsOn(is(RightInside), mouthEdge, nil)
	to := folds{margins: 90, sideTabs: 142}
	if m.narrow() {
		to[sideTabs] = 16
		return m.swings(c, from, to, focus, left, right)
	}
	from[sideTabs] = 98
	return append(m.swings(c, from, folds{margins: 90, sideTabs: 180}, focus, left), m.swings(c, from, to, focus, right)...)
}

// slit returns the middle of a slit of the flat head cloth.
func (m model) slit() stage.Vec {
	hung, v := m.hang(headCloth), m.pieces[headCloth.name].Slits[0].Vertices
	return hung.Pose(angle(hung.Sheet, folds{}))[0].At(v[0].Add(v[1].Point).Mul(0.5))
}

// mouthCorner returns what is to be seen of the head end of the mouth.
func (m model) mouthCorner() []stage.Vec {
	t := m.job.Cloth.MouthTurnIn
	tall := min(m.h(), 1.9*t)
	left := max(-2, m.w()-3.4*t) // of a thick case, one corner is shown
	wide := Length(0)
	if m.narrow() { // tabs are shown before the mouth
		wide = 0.6 * t
	}
	return draft.Corners(stage.Vec{X: left - wide, Y: m.h() - tall, Z: max(0, m.d()-1.2*t)}, stage.Vec{X: m.w() + 2 + wide, Y: m.h() + 0.4*t, Z: m.d() + 0.5*t + wide})
}

// paperCorner returns what is to be seen of the right side where head and mouth
// meet.
func (m model) paperCorner() []stage.Vec {
	r := 3.2 * max(m.job.SidePaper.TurnIn, m.job.SidePaper.Inset)
	return draft.Corners(stage.Vec{X: max(0, m.w()-r*0.5), Y: m.h() - 1.5*r, Z: m.d() - 1.3*r}, stage.Vec{X: m.w(), Y: m.h() + 2, Z: m.d() + r*0.25})
}

// paperFigures returns the figures of the side papers.
func (m model) paperFigures(beneath ...covering) []stage.Picture {
	c := rightPaper
	base := m.covered(beneath...)
	v := m.intoMouth(46, 20)
	away := stage.Vec{X: m.lift() * 1.3}
	flat := m.sheet(c, folds{}, true)
	bent := folds{middleTab: 75}
	d, h, w := m.d(), m.h(), m.w()
	i := m.job.SidePaper.Inset
	return []stage.Picture{
		{
			Faces: slices.Concat(base, stage.Moved(flat, away)), View: v, Fresh: []string{c.object()},
			Arrows: []stage.Arrow{
				{Path: []stage.Vec{{X: w + away.X*0.85, Y: h * 0.8, Z: d * 0.25}, {X: w + away.X*0.12, Y: h * 0.8, Z: d * 0.25}}},
				{Path: []stage.Vec{{X: w + away.X*0.85, Y: h * 0.2, Z: d * 0.6}, {X: w + away.X*0.12, Y: h * 0.2, Z: d * 0.6}}},
			},
			Notes: []stage.Note{
				{Name: plan.Say("side paper"), More: plan.Say("glued face to the case"), Spot: "side"},
				{Name: plan.Say("past the mouth"), More: plan.Say("to be turned in"), Spot: "turn-in"},
			},
			Caption: plan.Say("a: the same border at spine, head and tail"),
		},
		{
			Faces: slices.Concat(base, m.sheet(c, bent, true)), View: v, Fresh: []string{c.object()}, Focus: m.paperCorner(),
			Arrows:  m.swings(c, folds{middleTab: 40}, made, m.paperCorner(), hangsOn(is(RightInside), mouthEdge, nil)),
			Notes:   []stage.Note{{Name: plan.Say("border"), At: stage.Vec{X: w, Y: h - i/2, Z: d - 20}}, {Name: plan.Say("turn-in"), More: plan.Say("round the edge, into the case"), Spot: "turn-in"}},
			Caption: plan.Say("b: rub it down, then turn in at the mouth"),
		},
	}
}
