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
	card draft.Folding
	w, h Length // the spine panel
	d    Length // a side
}

func (c Case) model() model {
	s, blank := c.Job.scores(), c.Pieces[0]
	body := c.Job.body()
	body.Corners = map[geometry.Corner]space.Vec{scoreAtTail: {}, scoreAtHead: {Y: 2 * s.inner}} // from the spine panel's corner
	sheet, _ := body.Hang(blank, 0)
	hung := draft.Hung{Sheet: sheet, Piece: blank, Object: "card"}
	return model{c: c, w: s.right - s.left, h: 2 * s.inner, d: s.left, card: hung.Grouped(others+1, func(leaf int) int {
		switch hung.NameOf(leaf) {
		case "left side", "right side":
			return bothSides
		case "inner flap":
			return innerFlap
		case "spine flap":
			return spineFlap
		case "outer flap":
			return outerFlap
		}
		return others
	})}
}

// The groups of a blank's folds.
const (
	bothSides = iota
	innerFlap
	spineFlap
	outerFlap
	others // what is not folded
)

// made is all folds made, in degrees.
var made = draft.Folded{90, 90, 90, 90}

// pictures returns the pictures of the blank, of its sides and flaps being folded,
// and of the finished case with its book.
func (m model) pictures() (blank stage.Picture, sides, flaps []stage.Picture, done stage.Picture) {
	v := stage.View{Toward: toHead, Up: toMouth, Yaw: -32, Pitch: 36}
	low := stage.View{Toward: toHead, Up: toMouth, Yaw: -36, Pitch: 24}
	flap := m.c.Job.Book().Thick() + 4
	focus := draft.Corners(stage.Vec{X: -0.12 * m.d, Y: max(0, m.h-max(1.3*flap, 0.3*m.d)), Z: -2}, stage.Vec{X: m.w + 0.12*m.d, Y: m.h + 0.8*flap, Z: m.d + 2})
	up := draft.Folded{bothSides: 90}
	inner := draft.Folded{bothSides: 90, innerFlap: 55}
	spine := draft.Folded{bothSides: 90, innerFlap: 90, spineFlap: 60}
	outer := draft.Folded{bothSides: 90, innerFlap: 90, spineFlap: 90, outerFlap: 50}
	blank = stage.Picture{
		Faces: m.card.At(draft.Folded{}, false), View: draft.FromAbove(), Fresh: []string{"card"},
		Notes: []stage.Note{
			{Name: plan.Say("left side"), Spot: "left side"}, {Name: plan.Say("inner flap"), Spot: "inner flap"},
			{Name: plan.Say("spine flap"), Spot: "spine flap"}, {Name: plan.Say("spine"), Spot: "spine"},
			{Name: plan.Say("outer flap"), Spot: "outer flap"}, {Name: plan.Say("right side"), Spot: "right side"},
		},
	}
	sides = []stage.Picture{
		{
			Faces: m.card.At(draft.Folded{bothSides: 50}, false), View: v, Fresh: []string{"card"},
			Arrows: m.card.Swings(draft.Folded{bothSides: 45}, up, "left side", "right side"),
			Notes:  []stage.Note{{Name: plan.Say("a side"), More: plan.Say("folds up"), Spot: "left side"}, {Name: plan.Say("spine"), Spot: "spine"}}, Caption: plan.Say("a: both sides up from the spine"),
		},
		{
			Faces: m.card.At(inner, false), View: low, Fresh: []string{"card"}, Focus: focus, Arrows: m.card.Swings(up, draft.Folded{bothSides: 90, innerFlap: 90}, "inner flap"),
			Notes: []stage.Note{{Name: plan.Say("inner flap"), More: plan.Say("folds first"), Spot: "inner flap"}}, Caption: plan.Say("b: the inner flap in, at head and tail"),
		},
	}
	flaps = []stage.Picture{
		{
			Faces: m.card.At(spine, false), View: low, Fresh: []string{"card"}, Focus: focus, Arrows: m.card.Swings(draft.Folded{bothSides: 90, innerFlap: 90}, draft.Folded{bothSides: 90, innerFlap: 90, spineFlap: 90}, "spine flap"),
			Notes: []stage.Note{{Name: plan.Say("spine flap"), More: plan.Say("glue its inside"), Spot: "spine flap"}}, Caption: plan.Say("a: the spine flap onto the inner flap"),
		},
		{
			Faces: m.card.At(outer, false), View: low, Fresh: []string{"card"}, Focus: focus, Arrows: m.card.Swings(draft.Folded{bothSides: 90, innerFlap: 90, spineFlap: 90}, made, "outer flap"),
			Notes: []stage.Note{{Name: plan.Say("outer flap"), More: plan.Say("glue its inside; last"), Spot: "outer flap"}}, Caption: plan.Say("b: the outer flap beside it"),
		},
	}
	b := m.c.Job.Book()
	at := stage.Vec{X: (m.w - b.Thick()) / 2, Y: (m.h - b.Height.Largest()) / 2, Z: b.Width.Largest() * 0.52}
	book := draft.Book("book", at, b.Thick(), b.Height.Largest(), b.Width.Largest())
	done = stage.Picture{
		Faces: append(m.card.At(made, false), book...), View: stage.View{Toward: toMouth, Up: toHead, Yaw: 34, Pitch: 22},
		Notes: []stage.Note{{Name: plan.Say(m.c.Job.Whose(0)), More: plan.Say("spine at the mouth"), Spot: "book"}, {Name: plan.Say("the case"), Spot: "right side"}},
	}
	return blank, sides, flaps, done
}
