package box

import (
	"slices"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// model is a box in space, to be shown at each step.
type model struct {
	c            made
	small, large *trayModel
}

func (c made) model() model {
	return model{c, c.trayModel(smallName), c.trayModel(largeName)}
}

// of returns the model of a tray.
func (m model) of(w tray) *trayModel {
	if w.name == smallName {
		return m.small
	}
	return m.large
}

// view is one of a tray on the bench, its open end to the left: from the open end, from
// the fore-edge, or of the tray turned upside down.
func fromOpenEnd() stage.View {
	return stage.View{Toward: space.Vec{X: -1}, Up: space.Vec{Z: 1}, Yaw: 34, Pitch: 36}
}

func fromForeEdge() stage.View {
	return stage.View{Toward: space.Vec{X: 1}, Up: space.Vec{Z: 1}, Yaw: 32, Pitch: 30}
}

func upsideDown() stage.View {
	return stage.View{Toward: space.Vec{X: 1}, Up: space.Vec{Z: -1}, Yaw: 32, Pitch: 40}
}

// boards is the boards of a tray beside each other on the bench, each with its grain.
func (m model) boards(w tray) [][]stage.Picture {
	p := stage.Picture{View: draft.FromAbove()}
	put := func(name, label string, x, y, wide, deep Length, upright bool) {
		p.Faces = append(p.Faces, draft.Flat(name, x, y, 0, wide, deep, stage.Board))
		// A label's line ends on the side it comes from, the arrow lies on the other.
		at, word, along := stage.Vec{X: x + wide*0.3, Y: y + deep/2}, Length(0.8), stage.Vec{X: min(wide*0.2, 25)}
		if upright {
			at.X, word, along = x+wide*0.72, 0.3, stage.Vec{Y: min(deep*0.3, 25)}
		}
		p.Arrows = append(p.Arrows, stage.Arrow{Path: []stage.Vec{at.Sub(along), at.Add(along)}, Twin: true})
		p.Notes = append(p.Notes, stage.Note{Name: plan.Say(label), At: stage.Vec{X: x + wide*word, Y: y + deep/2}})
	}
	size := func(of string) (wide, high Length) {
		q, _ := geometry.Find(m.c.pieces, ofTray(w.name, of))
		return q.Size()
	}
	bw, bh := size(baseOf)
	fw, fh := size(foreWallOf)
	sw, sh := size(sideWallOf)
	gap := 0.05 * bh
	put("base", "base", 0, 0, bw, bh, true)
	x := bw + gap
	for i, label := range []string{"head wall", "tail wall"} {
		put(label, label, x, Length(i)*(sh+gap), sw, sh, false)
	}
	put("fore-edge wall", "fore-edge wall", x, 2*(sh+gap), fw, fh, false)
	p.Caption = plan.Say("the arrows show the grain: along each wall, head to tail in the base; the three walls are equally high")
	return [][]stage.Picture{{p}}
}

// glued is the tray being put together.
func (m model) glued(w tray) [][]stage.Picture {
	t := m.of(w)
	lift := stage.Vec{X: 0.22 * t.s.wide}
	walls := t.walls()
	first := stage.Picture{
		Faces: slices.Concat(t.base(), stage.Moved(walls["fore-edge wall"], lift)), View: fromOpenEnd(), Fresh: []string{"fore-edge wall"},
		Arrows:  []stage.Arrow{{Path: []stage.Vec{{X: t.s.b + lift.X*0.9, Y: t.s.long * 0.35, Z: t.s.high * 0.6}, {X: t.s.b + lift.X*0.1, Y: t.s.long * 0.35, Z: t.s.high * 0.6}}}},
		Notes:   []stage.Note{{Name: plan.Say("fore-edge wall"), Spot: "fore-edge wall"}, {Name: plan.Say("base"), Spot: "base"}},
		Caption: plan.Say("a: the fore-edge wall first"),
	}
	second := stage.Picture{
		Faces: t.bare(), View: fromOpenEnd(), Fresh: []string{"head wall", "tail wall"},
		Notes: []stage.Note{{Name: plan.Say("head wall"), Spot: "head wall"}, {Name: plan.Say("tail wall"), Spot: "tail wall"},
			{Name: plan.Say("open end"), More: plan.Say("toward the spine"), At: stage.Vec{Y: t.s.long / 2, Z: t.s.t}}},
		Caption: plan.Say("b: head and tail wall past its ends, the end at the spine stays open"),
	}
	return [][]stage.Picture{{first, second}}
}

// covering is the stages of covering a tray: round the walls and under the base, the ends,
// head and tail wall inside, the fore-edge wall.
func (m model) covering(w tray) (around, ends, inside, fore [][]stage.Picture) {
	t := m.of(w)
	if t == nil || !t.ok {
		return nil, nil, nil, nil
	}
	first, last := t.s.f.ends[0].word, t.s.f.ends[1].word
	both := func(part string) []string { return []string{first + part, last + part} }
	view, open := fromForeEdge(), fromOpenEnd()
	at := func(s turns, fresh bool) []stage.Face { return slices.Concat(t.cloth(s, fresh), t.bare()) }
	note := func(name, more, spot string) stage.Note {
		return stage.Note{Name: plan.Say(name), More: plan.Say(more), Spot: spot}
	}
	fresh := []string{"cloth"}
	going := turns{around: 0.3}
	around = [][]stage.Picture{{
		{Faces: at(going, true), View: view, Fresh: fresh, Arrows: t.swing(going, turns{around: 1}, both(" wall")...),
			Notes:   []stage.Note{note("fore-edge wall", "first, middle to middle", "fore-edge wall"), note(first, "then", first+" wall"), note(last, "last", last+" wall")},
			Caption: plan.Say("a: round the walls, drawn tight at the corners")},
	}}
	going = turns{around: 1, under: 0.5}
	turned := turns{around: 1, under: 1}
	around[0] = append(around[0], stage.Picture{
		Faces: at(going, true), View: upsideDown(), Fresh: fresh, Arrows: t.swing(going, turned, append(both(", under the base"), "fore-edge, under the base")...),
		Notes:   []stage.Note{note("under the base", "all round; the corners meet in mitres", "fore-edge, under the base")},
		Caption: plan.Say("b: turned over, the tray upside down"),
	})
	going = turns{around: 1, under: 1, ends: 0.3}
	turned = turns{around: 1, under: 1, ends: 1}
	corner := t.nearEnd()
	ends = [][]stage.Picture{{
		{Faces: at(going, true), View: open, Fresh: fresh, Focus: corner, Arrows: t.swing(going, turned, last+", end flap"),
			Notes:   []stage.Note{note("above the slit", "goes inside the wall", last+", end flap"), note("below it", "stays on the edge of the base", last+", on the base's edge")},
			Caption: plan.Say("a: round the ends of the walls")},
		{Faces: at(turned, true), View: open, Fresh: fresh, Focus: corner,
			Notes:   []stage.Note{note("edge of the base", "the rest comes under the hinge", last+", on the base's edge")},
			Caption: plan.Say("b: pinch the webs and rub them thin")},
	}}
	going = turns{around: 1, under: 1, ends: 1, inside: 0.45}
	turned = turns{around: 1, under: 1, ends: 1, inside: 1}
	inside = [][]stage.Picture{{
		{Faces: at(going, true), View: open, Fresh: fresh, Arrows: t.swing(going, turned, both(", onto the floor")...),
			Notes:   []stage.Note{note(first, "over the rim, down and onto the floor", first+", inside"), note("waits", "", "fore-edge, inside")},
			Caption: plan.Say("a: over the rim, down inside")},
		{Faces: at(turned, true), View: open, Fresh: fresh,
			Notes:   []stage.Note{note("lap", "round the corner", first+", lap"), note("onto the floor", "", last+", onto the floor")},
			Caption: plan.Say("b: onto the floor, the lap rubbed into the corner")},
	}}
	going = turns{1, 1, 1, 1, 0.45}
	turned = turns{1, 1, 1, 1, 1}
	fore = [][]stage.Picture{{
		{Faces: at(going, true), View: open, Fresh: fresh, Arrows: t.swing(going, turned, "fore-edge, onto the floor"),
			Notes:   []stage.Note{note("fore-edge", "last, over the laps", "fore-edge, inside")},
			Caption: plan.Say("a: the fore-edge last")},
		{Faces: at(turned, true), View: open, Fresh: fresh,
			Notes:   []stage.Note{note("fore-edge, inside", "", "fore-edge, inside"), {Name: plan.Say("floor"), More: plan.Say("bare: the lining comes last"), At: stage.Vec{X: t.s.b * 0.45, Y: t.s.long / 2, Z: t.s.t}}},
			Caption: plan.Say("b: covered; the floor is lined last")},
	}}
	return around, ends, inside, fore
}
