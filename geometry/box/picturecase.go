package box

import (
	"math"
	"slices"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// The names of things in pictures.
const (
	smallObject = "small"
	largeObject = "large"
	caseObject  = "case"
)

// still returns a place as it is.
func still(v space.Vec) space.Vec { return v }

// lift is how far what is laid on is held above its place.
func (m model) lift() Length { return max(25, 0.3*m.large.s.wide) }

// over returns where the large tray lies over the small one, turned over, so much above
// it, the open ends of both at X 0.
func (m model) over(up Length) func(space.Vec) space.Vec {
	s := m.large.s
	return func(v space.Vec) space.Vec { return space.Vec{X: v.X, Y: s.long - v.Y, Z: up + s.high - v.Z} }
}

// within returns where the small tray stands under it.
func (m model) within(v space.Vec) space.Vec {
	return v.Add(space.Vec{Y: (m.large.s.long - m.small.s.long) / 2})
}

// measured is the covered small tray with what is measured of it.
func (m model) measured() stage.Picture {
	s := m.small.s
	off := 0.06 * s.long
	j := m.c.stands // as it is, where it was measured
	size := j.covered(j.small())
	arrow := func(a, b stage.Vec) stage.Arrow { return stage.Arrow{Path: []stage.Vec{a, b}, Twin: true} }
	return stage.Picture{
		Faces: m.small.whole(smallObject, still), View: fromOpenEnd(), Fresh: []string{smallObject},
		Arrows: []stage.Arrow{
			arrow(stage.Vec{X: -off}, stage.Vec{X: -off, Y: s.long}),
			arrow(stage.Vec{Y: -off}, stage.Vec{X: s.wide, Y: -off}),
			arrow(stage.Vec{X: s.wide + off, Y: -off / 2}, stage.Vec{X: s.wide + off, Y: -off / 2, Z: s.high}),
		},
		Notes: []stage.Note{
			{Name: plan.Say("head to tail"), More: plan.Say("here %s; at three places", size.Height), At: stage.Vec{X: -off, Y: s.long * 0.6}},
			{Name: plan.Say("open edge to fore-edge"), More: plan.Say("here %s; at three places", size.Width), At: stage.Vec{X: s.wide * 0.4, Y: -off}},
			{Name: plan.Say("bench to rim"), More: plan.Say("here %s; at each corner", size.Thickness), At: stage.Vec{X: s.wide + off, Y: -off / 2, Z: s.high * 0.6}},
		},
		Caption: plan.Say("measured over the cloth, without pressing it"),
	}
}

// tried is the bare boards of the large tray over the covered small one.
func (m model) tried() stage.Picture {
	l := m.large.s
	up := 0.5 * m.lift()
	return stage.Picture{
		Faces: slices.Concat(m.small.whole(smallObject, m.within), placed(m.large.bare(), largeObject, m.over(up))), View: fromOpenEnd(), Fresh: []string{largeObject},
		Arrows: draft.Down(stage.Vec{Z: up}, stage.Vec{X: 0, Y: l.t / 2}, stage.Vec{X: 0, Y: l.long - l.t/2}),
		Notes: []stage.Note{{Name: plan.Say("large tray"), More: plan.Say("bare boards, held by hand"), At: stage.Vec{X: l.wide * 0.5, Y: l.long * 0.5, Z: up + l.high}},
			{Name: plan.Say("small tray"), More: plan.Say("covered"), At: stage.Vec{X: 0, Y: m.within(stage.Vec{}).Y + m.small.s.t/2, Z: m.small.s.high * 0.3}}},
		Caption: plan.Say("tried dry over the covered small tray: there is room for its cloth"),
	}
}

// nested is the large tray over the small one.
func (m model) nested() []stage.Picture {
	up := m.lift()
	l := m.large.s
	return []stage.Picture{
		{
			Faces: slices.Concat(m.small.whole(smallObject, m.within), m.large.whole(largeObject, m.over(up))), View: fromOpenEnd(), Fresh: []string{largeObject},
			Arrows:  draft.Down(stage.Vec{Z: up}, stage.Vec{X: l.wide * 0.5, Z: 0}, stage.Vec{X: 0, Y: l.long * 0.5, Z: 0}),
			Notes:   []stage.Note{{Name: plan.Say("large tray"), More: plan.Say("turned over, open end to open end"), At: stage.Vec{X: l.wide * 0.5, Y: l.long * 0.6, Z: up + l.high}}, {Name: plan.Say("small tray"), At: stage.Vec{X: l.wide * 0.2, Y: m.within(stage.Vec{}).Y, Z: m.small.s.high * 0.4}}},
			Caption: plan.Say("a: turned over and let down"),
		},
		{
			Faces: slices.Concat(m.small.whole(smallObject, m.within), m.large.whole(largeObject, m.over(0))), View: fromOpenEnd(), Fresh: []string{largeObject},
			Notes:   []stage.Note{{Name: plan.Say("play"), More: plan.Say("from head to tail"), At: stage.Vec{X: 0, Y: m.within(stage.Vec{}).Y, Z: m.small.s.high * 0.5}}, {Name: plan.Say("rim"), More: plan.Say("on the bench all round"), At: stage.Vec{X: l.wide * 0.6, Y: 0}}},
			Caption: plan.Say("b: its rim on the bench, nothing sticks"),
		},
	}
}

// laid returns the case as it lies flat.
func (m model) laid() laid { return m.c.proof.closed.laid }

// onCase returns where the trays stand on the case as it lies open, inside up: the small
// one on the back board at the right, the large one on the front board at the left.
func (m model) smallOnCase(v space.Vec) space.Vec {
	c := m.laid()
	return space.Vec{X: c.From[2] + v.X, Y: (c.High-m.small.s.long)/2 + v.Y, Z: c.Thick + v.Z}
}

func (m model) largeOnCase(v space.Vec) space.Vec {
	c := m.laid()
	return space.Vec{X: c.wide() - v.X, Y: (c.High+m.large.s.long)/2 - v.Y, Z: c.Thick + v.Z}
}

// flatCase returns the covered case as it lies open: boards in their cloth, and the cloth
// of the joints.
func (m model) flatCase() []stage.Face {
	c := m.laid()
	var out []stage.Face
	for i, from := range c.From {
		out = append(out, draft.Slab(caseObject, from, 0, 0, c.All[i].Wide, c.High, c.Thick, stage.Cloth)...)
		if i > 0 {
			f := draft.Flat(caseObject, from-c.Joint, 0, 0, c.Joint, c.High, stage.Cloth)
			f.Name = "joint"
			out = append(out, f)
		}
	}
	return out
}

// caseOnPair is a case board on the nested trays.
func (m model) caseOnPair() stage.Picture {
	c, l, sq := m.laid(), m.large.s, m.c.stands.Square
	up := 0.45 * m.lift()
	board := func(z Length) []stage.Face {
		return draft.Slab("case board", 0, -sq, z, c.wide(), c.High, c.Thick, stage.Board)
	}
	pair := slices.Concat(m.small.whole(smallObject, m.within), m.large.whole(largeObject, m.over(0)))
	return stage.Picture{
		Faces: slices.Concat(pair, board(l.high+up)), View: fromForeEdge(), Fresh: []string{"case board"},
		Arrows:  draft.Down(stage.Vec{Z: up}, stage.Vec{X: l.wide, Y: l.long * 0.2, Z: l.high}, stage.Vec{X: l.wide, Y: l.long * 0.8, Z: l.high}),
		Notes:   []stage.Note{{Name: plan.Say("case board"), More: plan.Say("stands out by the square, %s", sq), Spot: "case board"}, {Name: plan.Say("nested trays"), At: stage.Vec{X: l.wide, Y: l.long * 0.5, Z: l.high * 0.4}}},
		Caption: plan.Say("flush with the trays at the spine, the square at head, tail and fore-edge"),
	}
}

// caseCovered is the case being covered.
func (m model) caseCovered() []stage.Picture {
	c := m.laid()
	lift := 0.3 * c.High
	above, names := c.Slabs(lift)
	on, _ := c.Slabs(0)
	c.At = space.Vec{}
	p, _ := geometry.Find(m.c.pieces, caseClothName)
	cloth := c.Hung(p, "cloth")
	stages := []draft.Folded{{}, {120}, {180}, {180, 120}, {180, 180}} // head and tail, the fore-edges
	view := draft.OnBench(42)
	return []stage.Picture{
		{
			Faces: slices.Concat(cloth.At(stages[0], false), above), View: view, Fresh: []string{"cloth"},
			Arrows:  draft.Down(stage.Vec{Z: lift}, stage.Vec{X: c.Across * 0.2, Y: c.High * 0.12, Z: c.Thick}, stage.Vec{X: c.Across * 0.8, Y: c.High * 0.12, Z: c.Thick}),
			Notes:   append(names, stage.Note{Name: plan.Say("case cloth"), More: plan.Say("glued face up"), Spot: "head turn-in"}),
			Caption: plan.Say("a: front board, spine, back board, a joint between each two"),
		},
		{
			Faces: slices.Concat(cloth.At(stages[1], false), on), View: view, Fresh: []string{"cloth"}, Arrows: cloth.Swings(stages[1], stages[2], "head turn-in", "tail turn-in"),
			Notes:   []stage.Note{{Name: plan.Say("head and tail"), More: plan.Say("first, down into the joints"), Spot: "head turn-in"}},
			Caption: plan.Say("b: head and tail first"),
		},
		{
			Faces: slices.Concat(cloth.At(stages[3], false), on), View: view, Fresh: []string{"cloth"}, Arrows: cloth.Swings(stages[3], stages[4], frontForeEdge+" turn-in", backForeEdge+" turn-in"),
			Notes:   []stage.Note{{Name: plan.Say("fore-edges"), More: plan.Say("last, over them"), Spot: "front fore-edge turn-in"}},
			Caption: plan.Say("c: then the fore-edges"),
		},
	}
}

// lidAt returns where things lie that stand on the front board when the box is closed and
// the lid then opened by so many degrees: about the joint at the front board. In the
// closed box X runs from the open edges to the fore-edge, Z up from the underside.
func (m model) lidAt(degrees float64) func(space.Vec) space.Vec {
	k := m.c.proof.closed
	x, z := -k.stand(), m.top()
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return func(v space.Vec) space.Vec {
		dx, dz := v.X-x, v.Z-z
		return space.Vec{X: x + dx*Length(cos) - dz*Length(sin), Y: v.Y, Z: z + dx*Length(sin) + dz*Length(cos)}
	}
}

// top returns how high the inner face of the front board lies in the closed box.
func (m model) top() Length { return m.laid().Thick + m.large.s.high }

// shut returns the box with its lid opened by so many degrees: the small tray on the back
// board, the spine upright, the large tray over it. The large tray turns with the front
// board once it is glued to it.
func (m model) shut(degrees float64, turns bool) []stage.Face {
	c, k := m.laid(), m.c.proof.closed
	sq := (c.High - m.large.s.long) / 2
	out := draft.Slab(caseObject, 0, 0, 0, c.wide(), c.High, c.Thick, stage.Cloth)
	x := -k.stand()
	out = append(out, stage.Box(caseObject, stage.Vec{X: x - c.Thick}, stage.Vec{X: x, Y: c.High, Z: m.top() + c.Thick}, stage.Cloth)...)
	out = append(out, m.small.whole(smallObject, func(v space.Vec) space.Vec {
		return space.Vec{X: v.X, Y: v.Y + (c.High-m.small.s.long)/2, Z: v.Z + c.Thick}
	})...)
	lid := m.lidAt(degrees)
	out = append(out, stage.Placed(draft.Slab(caseObject, 0, 0, m.top(), c.wide(), c.High, c.Thick, stage.Cloth), lid)...)
	return append(out, m.large.whole(largeObject, func(v space.Vec) space.Vec {
		q := m.over(c.Thick)(v)
		if turns {
			q = lid(q)
		}
		return q.Add(stage.Vec{Y: sq})
	})...)
}

// casedIn is the trays being glued to the case.
func (m model) casedIn() []stage.Picture {
	c := m.laid()
	up := 0.5 * m.lift()
	raised := func(v space.Vec) space.Vec { return m.smallOnCase(v).Add(stage.Vec{Z: up}) }
	s := m.small.s
	return []stage.Picture{
		{
			Faces: slices.Concat(m.flatCase(), m.small.whole(smallObject, raised)), View: draft.OnBench(38), Fresh: []string{smallObject},
			Arrows:  draft.Down(stage.Vec{Z: up}, m.smallOnCase(stage.Vec{}), m.smallOnCase(stage.Vec{X: s.wide})),
			Notes:   []stage.Note{{Name: plan.Say("small tray"), More: plan.Say("on the back board, open edge at its spine edge"), At: raised(stage.Vec{X: s.wide * 0.5, Y: s.long * 0.4, Z: s.t})}, {Name: plan.Say("front board"), At: stage.Vec{X: c.wide() * 0.4, Y: c.High * 0.3, Z: c.Thick}}},
			Caption: plan.Say("a: the small tray on the back board"),
		},
		{
			Faces: m.shut(38, false), View: stage.View{Toward: space.Vec{Y: -1}, Up: space.Vec{Z: 1}, Yaw: 24, Pitch: 24}, Fresh: []string{caseObject},
			Notes:   []stage.Note{{Name: plan.Say("large tray"), More: plan.Say("over the small one, its base glued"), At: stage.Vec{X: c.wide() * 0.5, Y: (c.High - m.large.s.long) / 2, Z: c.Thick + m.large.s.high*0.5}}, {Name: plan.Say("front board"), More: plan.Say("closed down onto it"), At: m.lidAt(38)(stage.Vec{X: c.wide(), Y: c.High * 0.3, Z: m.top()})}},
			Caption: plan.Say("b: the case closed onto the large tray"),
		},
	}
}

// openBox returns the box as it lies open, both trays on their boards.
func (m model) openBox() []stage.Face {
	return slices.Concat(m.flatCase(), m.small.whole(smallObject, m.smallOnCase), m.large.whole(largeObject, m.largeOnCase))
}

// hinged is the hinge going in.
func (m model) hinged() []stage.Picture {
	c, w := m.laid(), m.c.stands.hinge()
	p, _ := geometry.Find(m.c.pieces, hingeName)
	wide, high := p.Size()
	up := 0.35 * m.lift()
	floor := c.Thick + m.small.s.t
	flat := draft.Flat("hinge", c.Across/2-wide/2+(c.All[0].Wide-c.All[2].Wide)/2, (c.High-high)/2, floor+m.small.s.high+up, wide, high, stage.Cloth)
	c.At, c.Plane = space.Vec{}, 0
	sheet, _ := c.way(m.small.s.t, 0, m.small.s, m.large.s).Hang(p, 0)
	in := draft.Hung{Sheet: sheet, Piece: p, Object: "hinge"}
	return []stage.Picture{
		{
			Faces: append(m.openBox(), flat), View: draft.OnBench(44), Fresh: []string{"hinge"},
			Arrows:  draft.Down(stage.Vec{Z: m.small.s.high + up}, stage.Vec{X: c.Across / 2, Y: (c.High - high) / 2, Z: floor}),
			Notes:   []stage.Note{{Name: plan.Say("hinge"), More: plan.Say("from floor to floor"), Spot: "hinge"}, {Name: plan.Say("large tray"), At: m.largeOnCase(stage.Vec{X: m.large.s.wide * 0.6, Y: m.large.s.long * 0.4, Z: m.large.s.t})}, {Name: plan.Say("small tray"), At: m.smallOnCase(stage.Vec{X: m.small.s.wide * 0.6, Y: m.small.s.long * 0.4, Z: m.small.s.t})}},
			Caption: plan.Say("a: onto the spine first, then down into the joints"),
		},
		{
			Faces: slices.Concat(m.openBox(), in.Faces(func(int) float64 { return 90 }, 20, false)), View: draft.OnBench(44), Fresh: []string{"hinge"},
			Notes:   []stage.Note{{Name: plan.Say("on the floor"), More: plan.Say("%s", w), Spot: "small floor"}, {Name: plan.Say("spine"), Spot: "spine"}},
			Caption: plan.Say("b: up each edge and onto the floor"),
		},
	}
}

// lined is the linings going in, and the finished box.
func (m model) lined() [][]stage.Picture {
	c, j := m.laid(), m.c.stands
	up := 0.4 * m.lift()
	var sheets []stage.Face
	for _, t := range []struct {
		name string
		w    tray
		at   func(space.Vec) space.Vec
		s    standing
	}{{smallLining, j.small(), m.smallOnCase, m.small.s}, {largeLining, j.large(), m.largeOnCase, m.large.s}} {
		wide, high := j.lining(t.w)
		low := (t.s.long - high) / 2
		box := func(x, y Length) stage.Vec { return t.at(stage.Vec{X: x, Y: y, Z: t.s.high + up}) }
		sheets = append(sheets, stage.Face{Object: "lining", Name: t.name, Front: stage.Lining, Back: stage.Lining, Grain: stage.Vec{Y: 1},
			Points: []stage.Vec{box(j.LiningEdge, low), box(j.LiningEdge+wide, low), box(j.LiningEdge+wide, low+high), box(j.LiningEdge, low+high)}})
	}
	b := j.Book().Size()
	book := draft.LyingBook("book", m.smallOnCase(stage.Vec{Y: (m.small.s.long - b.Height) / 2, Z: m.small.s.t}), b)
	return append(large(
		stage.Picture{
			Faces: append(m.openBox(), sheets...), View: draft.OnBench(44), Fresh: []string{"lining"},
			Arrows:  draft.Down(stage.Vec{Z: m.small.s.high + up}, m.smallOnCase(stage.Vec{X: m.small.s.wide * 0.5, Y: m.small.s.t, Z: m.small.s.t}), m.largeOnCase(stage.Vec{X: m.large.s.wide * 0.5, Y: m.large.s.long - m.large.s.t, Z: m.large.s.t})),
			Notes:   []stage.Note{{Name: plan.Say("linings"), More: plan.Say("over the hinge"), Spot: smallLining}},
			Caption: plan.Say("a: the linings last, over the hinge"),
		},
		stage.Picture{
			Faces: slices.Concat(m.openBox(), book), View: draft.OnBench(38), Fresh: []string{"book"},
			Notes:   []stage.Note{{Name: plan.Say(m.c.job.Whose(0)), More: plan.Say("spine to the spine"), Spot: "book"}, {Name: plan.Say("large tray"), More: plan.Say("turns over it"), At: m.largeOnCase(stage.Vec{X: m.large.s.wide * 0.6, Y: m.large.s.long * 0.6, Z: m.large.s.t})}},
			Caption: plan.Say("b: the box open, with its book"),
		}),
		[]stage.Picture{{
			Faces: m.shut(65, true), View: stage.View{Toward: space.Vec{Y: -1}, Up: space.Vec{Z: 1}, Yaw: 24, Pitch: 24}, Fresh: []string{largeObject},
			Notes:   []stage.Note{{Name: plan.Say("lid"), More: plan.Say("turns about the joint"), At: m.lidAt(65)(stage.Vec{X: c.wide(), Y: c.High * 0.3, Z: m.top()})}},
			Caption: plan.Say("c: closing"),
		}, {
			Faces: m.shut(0, true), View: stage.View{Toward: space.Vec{Y: -1}, Up: space.Vec{Z: 1}, Yaw: 24, Pitch: 24},
			Notes:   []stage.Note{{Name: plan.Say("closed"), More: plan.Say("rim on the case: no light is seen"), At: stage.Vec{X: c.wide() * 0.6, Y: 0, Z: c.Thick}}},
			Caption: plan.Say("d: closed"),
		}})
}
