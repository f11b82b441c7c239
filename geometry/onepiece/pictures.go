package onepiece

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// The directions of a case: spine down, X from left to right, Y from tail to head,
// Z to the mouth.
var (
	toHead  = stage.Vec{Y: 1}
	toMouth = stage.Vec{Z: 1}
)

// model is a case in space.
type model struct {
	c    Case
	hung draft.Hung
	w, h Length // the spine panel
	d    Length // a side
}

func (c Case) model() model {
	s, blank := c.Job.scores(), c.Pieces[0]
	body := c.Job.body()
	body.Corners = map[geometry.Corner]space.Vec{scoreAtTail: {}, scoreAtHead: {Y: 2 * s.inner}} // from the spine panel's corner
	sheet, _ := body.Hang(blank, 0)
	return model{c: c, w: s.right - s.left, h: 2 * s.inner, d: s.left, hung: draft.Hung{Sheet: sheet, Piece: blank, Object: "card"}}
}

// folds is how far the folds of a blank are made, in degrees: of the sides, the inner flaps,
// the spine flaps and the outer ones.
type folds = draft.Folded

var made = folds{90, 90, 90, 90}

// faces returns the blank at a stage.
func (m model) faces(s folds) []stage.Face { return m.hung.Faces(m.angle(s), 1, false) }

func (m model) angle(s folds) draft.Angle {
	return func(leaf int) float64 {
		switch m.hung.NameOf(leaf) {
		case "left side", "right side":
			return s[0]
		case "inner flap":
			return s[1]
		case "spine flap":
			return s[2]
		case "outer flap":
			return s[3]
		}
		return 0
	}
}

// swing returns the arrow of the part with a name, at the head, from a stage to
// another.
func (m model) swing(name string, from, to folds) []stage.Arrow {
	a, ok := m.hung.Swing(from, to, m.angle, nil, func(leaf int) float64 {
		l := m.hung.Leaves[leaf]
		if l.On < 0 || m.hung.NameOf(leaf) != name {
			return 0
		}
		return geometry.Polygon(l.Outline...).Bounds().Center().Y.MM()
	})
	if !ok {
		return nil
	}
	return []stage.Arrow{a}
}

// pictures returns the pictures of the blank, of its sides and flaps being folded,
// and of the finished case with its book.
func (m model) pictures() (blank stage.Picture, sides, flaps []stage.Picture, done stage.Picture) {
	v := stage.View{Toward: toHead, Up: toMouth, Yaw: -32, Pitch: 36}
	low := stage.View{Toward: toHead, Up: toMouth, Yaw: -36, Pitch: 24}
	flap := m.c.Job.Book().Thick() + 4
	focus := draft.Corners(stage.Vec{X: -0.12 * m.d, Y: max(0, m.h-max(1.3*flap, 0.3*m.d)), Z: -2}, stage.Vec{X: m.w + 0.12*m.d, Y: m.h + 0.8*flap, Z: m.d + 2})
	up := folds{90}
	inner := folds{90, 55}
	spine := folds{90, 90, 60}
	outer := folds{90, 90, 90, 50}
	blank = stage.Picture{
		Faces: m.faces(folds{}), View: draft.FromAbove(), Fresh: []string{"card"},
		Notes: []stage.Note{
			{Name: plan.Say("left side"), Spot: "left side"}, {Name: plan.Say("inner flap"), Spot: "inner flap"},
			{Name: plan.Say("spine flap"), Spot: "spine flap"}, {Name: plan.Say("spine"), Spot: "spine"},
			{Name: plan.Say("outer flap"), Spot: "outer flap"}, {Name: plan.Say("right side"), Spot: "right side"},
		},
	}
	sides = []stage.Picture{
		{
			Faces: m.faces(folds{50}), View: v, Fresh: []string{"card"},
			Arrows: append(m.swing("left side", folds{45}, up), m.swing("right side", folds{45}, up)...),
			Notes:  []stage.Note{{Name: plan.Say("a side"), More: plan.Say("folds up"), Spot: "left side"}, {Name: plan.Say("spine"), Spot: "spine"}}, Caption: plan.Say("a: both sides up from the spine"),
		},
		{
			Faces: m.faces(inner), View: low, Fresh: []string{"card"}, Focus: focus, Arrows: m.swing("inner flap", up, folds{90, 90}),
			Notes: []stage.Note{{Name: plan.Say("inner flap"), More: plan.Say("folds first"), Spot: "inner flap"}}, Caption: plan.Say("b: the inner flap in, at head and tail"),
		},
	}
	flaps = []stage.Picture{
		{
			Faces: m.faces(spine), View: low, Fresh: []string{"card"}, Focus: focus, Arrows: m.swing("spine flap", folds{90, 90}, folds{90, 90, 90}),
			Notes: []stage.Note{{Name: plan.Say("spine flap"), More: plan.Say("glue its inside"), Spot: "spine flap"}}, Caption: plan.Say("a: the spine flap onto the inner flap"),
		},
		{
			Faces: m.faces(outer), View: low, Fresh: []string{"card"}, Focus: focus, Arrows: m.swing("outer flap", folds{90, 90, 90}, made),
			Notes: []stage.Note{{Name: plan.Say("outer flap"), More: plan.Say("glue its inside; last"), Spot: "outer flap"}}, Caption: plan.Say("b: the outer flap beside it"),
		},
	}
	b := m.c.Job.Book()
	at := stage.Vec{X: (m.w - b.Thick()) / 2, Y: (m.h - b.Height.Largest()) / 2, Z: b.Width.Largest() * 0.52}
	book := draft.Book("book", at, b.Thick(), b.Height.Largest(), b.Width.Largest())
	done = stage.Picture{
		Faces: append(m.faces(made), book...), View: stage.View{Toward: toMouth, Up: toHead, Yaw: 34, Pitch: 22},
		Notes: []stage.Note{{Name: plan.Say(m.c.Job.Whose(0)), More: plan.Say("spine at the mouth"), Spot: "book"}, {Name: plan.Say("the case"), Spot: "right side"}},
	}
	return blank, sides, flaps, done
}
