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
func (m model) boards(w tray) stage.Picture {
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
	return p
}

// glued is the tray being put together.
func (m model) glued(w tray) []stage.Picture {
	t := m.of(w)
	lift := stage.Vec{X: 0.22 * t.s.wide}
	return []stage.Picture{{
		Faces: slices.Concat(t.boards("base"), stage.Moved(t.boards("fore-edge wall"), lift)), View: fromOpenEnd(), Fresh: []string{"fore-edge wall"},
		Arrows:  []stage.Arrow{{Path: []stage.Vec{{X: t.s.b + lift.X*0.9, Y: t.s.long * 0.35, Z: t.s.high * 0.6}, {X: t.s.b + lift.X*0.1, Y: t.s.long * 0.35, Z: t.s.high * 0.6}}}},
		Notes:   []stage.Note{{Name: plan.Say("fore-edge wall"), Spot: "fore-edge wall"}, {Name: plan.Say("base"), Spot: "base"}},
		Caption: plan.Say("a: the fore-edge wall first"),
	}, {
		Faces: t.bare(), View: fromOpenEnd(), Fresh: []string{"head wall", "tail wall"},
		Notes: []stage.Note{{Name: plan.Say("head wall"), Spot: "head wall"}, {Name: plan.Say("tail wall"), Spot: "tail wall"},
			{Name: plan.Say("open end"), More: plan.Say("toward the spine"), At: stage.Vec{Y: t.s.long / 2, Z: t.s.t}}},
		Caption: plan.Say("b: head and tail wall past its ends, the end at the spine stays open"),
	}}
}

// covering is the stages of covering a tray: round the walls and under the base, the ends,
// head and tail wall inside, the fore-edge wall.
func (m model) covering(w tray) (around, ends, inside, fore []stage.Picture) {
	t := m.of(w)
	first, last := t.s.f.ends[0].word, t.s.f.ends[1].word
	both := func(part string) []string { return []string{first + part, last + part} }
	note := func(name, more, spot string) stage.Note {
		return stage.Note{Name: plan.Say(name), More: plan.Say(more), Spot: spot}
	}
	at := func(now draft.Folded, from stage.View, caption string, notes ...stage.Note) stage.Picture {
		return stage.Picture{Faces: slices.Concat(t.cloth.At(now, false), t.bare()), View: from, Fresh: []string{"cloth"}, Notes: notes, Caption: plan.Say(caption)}
	}
	going := func(now, then draft.Folded, parts []string, from stage.View, caption string, notes ...stage.Note) stage.Picture {
		p := at(now, from, caption, notes...)
		p.Arrows = t.cloth.Swings(now, then, parts...)
		return p
	}
	open := fromOpenEnd()
	around = []stage.Picture{
		going(draft.Folded{27}, draft.Folded{90}, both(" wall"), fromForeEdge(), "a: round the walls, drawn tight at the corners",
			note("fore-edge wall", "first, middle to middle", "fore-edge wall"), note(first, "then", first+" wall"), note(last, "last", last+" wall")),
		going(draft.Folded{90, 45}, draft.Folded{90, 90}, append(both(", under the base"), "fore-edge, under the base"), upsideDown(), "b: turned over, the tray upside down",
			note("under the base", "all round; the corners meet in mitres", "fore-edge, under the base")),
	}
	ends = []stage.Picture{
		going(draft.Folded{90, 90, 54}, draft.Folded{90, 90, 180}, []string{last + ", end flap"}, open, "a: round the ends of the walls",
			note("above the slit", "goes inside the wall", last+", end flap"), note("below it", "stays on the edge of the base", last+", on the base's edge")),
		at(draft.Folded{90, 90, 180}, open, "b: pinch the webs and rub them thin",
			note("edge of the base", "the rest comes under the hinge", last+", on the base's edge")),
	}
	for i := range ends {
		ends[i].Focus = t.nearEnd()
	}
	inside = []stage.Picture{
		going(draft.Folded{90, 90, 180, 121.5}, draft.Folded{90, 90, 180, 270}, both(", onto the floor"), open, "a: over the rim, down inside",
			note(first, "over the rim, down and onto the floor", first+", inside"), note("waits", "", "fore-edge, inside")),
		at(draft.Folded{90, 90, 180, 270}, open, "b: onto the floor, the lap rubbed into the corner",
			note("lap", "round the corner", first+", lap"), note("onto the floor", "", last+", onto the floor")),
	}
	fore = []stage.Picture{
		going(draft.Folded{90, 90, 180, 270, 121.5}, covered, []string{"fore-edge, onto the floor"}, open, "a: the fore-edge last",
			note("fore-edge", "last, over the laps", "fore-edge, inside")),
		at(covered, open, "b: covered; the floor is lined last",
			note("fore-edge, inside", "", "fore-edge, inside"),
			stage.Note{Name: plan.Say("floor"), More: plan.Say("bare: the lining comes last"), At: stage.Vec{X: t.s.b * 0.45, Y: t.s.long / 2, Z: t.s.t}}),
	}
	return around, ends, inside, fore
}
