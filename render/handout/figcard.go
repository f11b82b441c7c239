package handout

import (
	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/onepiece"
	"forel/geometry/space"
	"forel/render/scene"
)

// cardModel is a case of card in space: spine down, X from left to right, Y from
// tail to head, Z to the mouth.
type cardModel struct {
	palette
	c    onepiece.Case
	p    geometry.Piece
	hung fold.Sheet
	w, h float64 // the spine panel
	d    float64 // a side
}

func cardModelOf(c onepiece.Case, pal palette) cardModel {
	m := cardModel{palette: pal, c: c, p: c.Pieces[0]}
	var spine, side geometry.Box
	for _, r := range m.p.Regions {
		switch r.Name {
		case "spine":
			spine = r.Room
		case "left side":
			side = r.Room
		}
	}
	m.w, m.h, m.d = spine.Width().MM(), spine.Height().MM(), side.Width().MM()
	down := space.Frame{O: space.Vec{X: -spine.Min.X, Y: -spine.Min.Y}, U: space.Vec{X: 1}, V: space.Vec{Y: 1}}
	m.hung, _ = fold.Hang(m.p, down, func(r fold.Part) float64 {
		if spine.Center().In(r.Outline) {
			return 1
		}
		return 0
	})
	return m
}

// cardStage is how far the folds of a blank are made, in degrees.
type cardStage struct{ sides, inner, spine, outer float64 }

var cardMade = cardStage{90, 90, 90, 90}

// faces gives the blank at a stage.
func (m cardModel) faces(s cardStage) []scene.Face {
	posed := m.hung.Pose(m.angle(s))
	return leaves(m.p, m.hung, posed, "card", 1, m.card, true, s == cardStage{})
}

func (m cardModel) angle(s cardStage) func(int) float64 {
	return func(i int) float64 {
		switch leafName(m.p, m.hung.Leaves[i]) {
		case "left side", "right side":
			return s.sides
		case "inner flap":
			return s.inner
		case "spine flap":
			return s.spine
		case "outer flap":
			return s.outer
		}
		return 0
	}
}

func (s cardStage) between(t cardStage, part float64) cardStage {
	mix := func(a, b float64) float64 { return a + (b-a)*part }
	return cardStage{mix(s.sides, t.sides), mix(s.inner, t.inner), mix(s.spine, t.spine), mix(s.outer, t.outer)}
}

// swing gives the arrow of the part with a name, at the head, from a stage to
// another.
func (m cardModel) swing(name string, from, to cardStage) []arrow {
	best, high := -1, geometry.Length(0)
	for i, l := range m.hung.Leaves {
		if y := geometry.Polygon(l.Outline...).Bounds().Center().Y; l.On >= 0 && leafName(m.p, l) == name && y > high {
			best, high = i, y
		}
	}
	if best < 0 {
		return nil
	}
	tip := tipOf(m.hung, best, m.angle(from), nil)
	const steps = 14
	var a arrow
	for k := range steps + 1 {
		q := m.hung.Pose(m.angle(from.between(to, 0.04+0.82*float64(k)/steps)))[best]
		v := q.At(tip)
		a.path = append(a.path, scene.Vec{X: v.X.MM(), Y: v.Y.MM(), Z: v.Z.MM()})
	}
	return []arrow{a}
}

// figures gives the figures of the blank, of its sides and flaps being folded,
// and of the finished case with its book.
func (m cardModel) figures() (blank panel, sides, flaps []panel, done panel) {
	v := scene.Turned(toHead, toMouth, -32, 36)
	low := scene.Turned(toHead, toMouth, -36, 24)
	flap := m.c.Job.Book().Thick().MM() + 4
	focus := boxCorners(scene.Vec{X: -0.12 * m.d, Y: max(0, m.h-max(1.3*flap, 0.3*m.d)), Z: -2}, scene.Vec{X: m.w + 0.12*m.d, Y: m.h + 0.8*flap, Z: m.d + 2})
	up := cardStage{sides: 90}
	inner := cardStage{sides: 90, inner: 55}
	spine := cardStage{sides: 90, inner: 90, spine: 60}
	outer := cardStage{sides: 90, inner: 90, spine: 90, outer: 50}
	blank = panel{
		faces: m.faces(cardStage{}), view: flatView(), fresh: []string{"card"},
		notes: []note{
			{name: "left side", spot: "left side"}, {name: "inner flap", spot: "inner flap"},
			{name: "spine flap", spot: "spine flap"}, {name: "spine", spot: "spine"},
			{name: "outer flap", spot: "outer flap"}, {name: "right side", spot: "right side"},
		},
	}
	sides = []panel{
		{
			faces: m.faces(cardStage{sides: 50}), view: v, fresh: []string{"card"},
			arrows: append(m.swing("left side", cardStage{sides: 45}, up), m.swing("right side", cardStage{sides: 45}, up)...),
			notes:  []note{{name: "a side", more: "folds up", spot: "left side"}, {name: "spine", spot: "spine"}}, caption: "a: both sides up from the spine",
		},
		{
			faces: m.faces(inner), view: low, fresh: []string{"card"}, focus: focus, arrows: m.swing("inner flap", up, cardStage{sides: 90, inner: 90}),
			notes: []note{{name: "inner flap", more: "folds first", spot: "inner flap"}}, caption: "b: the inner flap in, at head and tail",
		},
	}
	flaps = []panel{
		{
			faces: m.faces(spine), view: low, fresh: []string{"card"}, focus: focus, arrows: m.swing("spine flap", cardStage{sides: 90, inner: 90}, cardStage{sides: 90, inner: 90, spine: 90}),
			notes: []note{{name: "spine flap", more: "glue its inside", spot: "spine flap"}}, caption: "a: the spine flap onto the inner flap",
		},
		{
			faces: m.faces(outer), view: low, fresh: []string{"card"}, focus: focus, arrows: m.swing("outer flap", cardStage{sides: 90, inner: 90, spine: 90}, cardMade),
			notes: []note{{name: "outer flap", more: "glue its inside; last", spot: "outer flap"}}, caption: "b: the outer flap beside it",
		},
	}
	b := m.c.Job.Book()
	at := scene.Vec{X: (m.w - b.Thick().MM()) / 2, Y: (m.h - b.Height.Largest().MM()) / 2, Z: b.Width.Largest().MM() * 0.52}
	book := m.volume("book", at, b.Thick().MM(), b.Height.Largest().MM(), b.Width.Largest().MM())
	done = panel{
		faces: append(m.faces(cardMade), book...), view: scene.Turned(toMouth, toHead, 34, 22),
		notes: []note{{name: "the book", more: "spine outward", spot: "book"}, {name: "the case", spot: "right side"}},
	}
	return blank, sides, flaps, done
}
