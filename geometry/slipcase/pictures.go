package slipcase

import (
	"slices"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// The directions of a case.
var (
	toRight = stage.Vec{X: 1}
	toHead  = stage.Vec{Y: 1}
	toTail  = stage.Vec{Y: -1}
	toMouth = stage.Vec{Z: 1}
)

// onBench is the view of a case that lies on its right side: head away, mouth to
// the right, as the template of a side lies.
func (m model) onBench() stage.View {
	pitch := 40.0
	if m.w() > 0.4*m.d() {
		pitch = 52
	}
	return stage.View{Toward: toTail, Up: toRight.Mul(-1), Yaw: 24, Pitch: pitch}
}

// onSpine is the view of a case that stands on its spine, head toward the viewer.
func (m model) onSpine() stage.View {
	return stage.View{Toward: toHead, Up: toMouth, Yaw: -36, Pitch: 42}
}

// intoMouth is the view of a case that stands on its tail, mouth toward the
// viewer, who stands yaw degrees to the right and pitch above it.
func (m model) intoMouth(yaw, pitch float64) stage.View {
	return stage.View{Toward: toMouth, Up: toHead, Yaw: yaw, Pitch: pitch}
}

// lift is how far what is laid on is held above its place.
func (m model) lift() Length { return max(18, 0.24*max(m.d(), m.h()*0.6)) }

// joining returns the figures of the boards being joined, in their order.
func (m model) joining() (spine, walls, close []stage.Picture) {
	v, s, w, h, d := m.onBench(), m.s(), m.w(), m.h(), m.d()
	up := stage.Vec{X: -m.lift() - (w - 2*s)}
	ruled := m.ruled(m.board("right side"))
	spine = []stage.Picture{
		{
			Faces: slices.Concat(ruled, stage.Moved(m.board("spine wall"), up)), View: v, Fresh: []string{"spine wall"},
			Arrows: draft.Down(up, stage.Vec{X: w - s, Y: h * 0.25, Z: s / 2}, stage.Vec{X: w - s, Y: h * 0.75, Z: s / 2}),
			Notes: []stage.Note{
				{Name: plan.Say("spine wall"), More: plan.Say(m.insideWord() + " to the right"), Spot: "spine wall"},
				{Name: plan.Say("a side"), More: plan.Say(m.insideWord() + " up"), Spot: "right side"},
			},
			Caption: plan.Say("a: glue the long edge of the spine wall"),
		},
		{
			Faces: slices.Concat(ruled, m.board("spine wall")), View: v, Fresh: []string{"spine wall"},
			Notes: []stage.Note{
				{Name: plan.Say("head"), At: stage.Vec{X: w - s, Y: h, Z: d / 2}},
				{Name: plan.Say("mouth"), More: plan.Say("stays open"), At: stage.Vec{X: w - s, Y: h / 2, Z: d}},
				{Name: plan.Say("tail"), At: stage.Vec{X: w - s, Y: 0, Z: d / 2}},
			},
			Caption: plan.Say("b: upright, flush with the edge of the side"),
		},
	}
	base := slices.Concat(ruled, m.board("spine wall"))
	walls = []stage.Picture{
		{
			Faces: slices.Concat(base, stage.Moved(m.boards("head wall", "tail wall"), up)), View: v, Fresh: []string{"head wall", "tail wall"},
			Arrows:  draft.Down(up, stage.Vec{X: w - s, Y: h - s/2, Z: d * 0.6}, stage.Vec{X: w - s, Y: s / 2, Z: d * 0.6}),
			Notes:   []stage.Note{{Name: plan.Say("head wall"), Spot: "head wall"}, {Name: plan.Say("tail wall"), Spot: "tail wall"}},
			Caption: plan.Say("a: glue one long edge and the short edge that meets the spine wall"),
		},
		{
			Faces: slices.Concat(base, m.boards("head wall", "tail wall")), View: v, Fresh: []string{"head wall", "tail wall"},
			Notes: []stage.Note{
				{Name: plan.Say("butts"), More: plan.Say("against the spine wall"), At: stage.Vec{X: s, Y: h - s/2, Z: s}},
				{Name: plan.Say("flush"), More: plan.Say("with the mouth edge"), At: stage.Vec{X: (w) / 2, Y: s / 2, Z: d}},
			},
			Caption: plan.Say("b: upright on the ruled lines"),
		},
	}
	all := slices.Concat(base, m.boards("head wall", "tail wall"), m.dividersIn())
	lid := stage.Vec{X: -m.lift() * 1.2}
	close = []stage.Picture{
		{
			Faces: slices.Concat(all, stage.Moved(m.board("left side"), lid)), View: v, Fresh: []string{"left side"},
			Arrows:  draft.Down(lid, stage.Vec{X: 0, Y: s / 2, Z: d * 0.9}, stage.Vec{X: 0, Y: h * 0.5, Z: s / 2}),
			Notes:   []stage.Note{{Name: plan.Say("the other side"), More: plan.Say(m.insideWord() + " down"), Spot: "left side"}, {Name: plan.Say("glue"), More: plan.Say("on the edges of all three walls"), At: stage.Vec{X: s, Y: s / 2, Z: d * 0.7}}},
			Caption: plan.Say("a: lower it straight down"),
		},
		{
			Faces: slices.Concat(all, m.board("left side")), View: v,
			Notes:   []stage.Note{{Name: plan.Say("mouth"), More: plan.Say("the open side"), At: stage.Vec{X: w / 2, Y: h * 0.4, Z: d}}},
			Caption: plan.Say("b: flush all round; weight along the walls only"),
		},
	}
	return spine, walls, close
}

// insideWord names the face of a board that comes inside.
func (m model) insideWord() string {
	if m.lined {
		return "lined face"
	}
	return "inside"
}

// ruled draws on the right side the lines on which the walls stand.
func (m model) ruled(faces []stage.Face) []stage.Face {
	x := m.w() - m.s()
	for _, g := range m.pieces["side"].Guides {
		v := g.Path.Vertices
		at := func(p geometry.Point) stage.Vec { return stage.Vec{X: x, Y: p.Y, Z: p.X} }
		faces[0].Lines = append(faces[0].Lines, stage.Line{Points: []stage.Vec{at(v[0].Point), at(v[1].Point)}, Kind: stage.Fold})
	}
	return faces
}

// hangsOn returns a pick for swings: the largest leaf in a face that hangs on one
// of another face.
func hangsOn(face, on func(geometry.Face) bool, also func(fold.Sheet, int) bool) func(fold.Sheet, int) float64 {
	return func(hung fold.Sheet, i int) float64 {
		l := hung.Leaves[i]
		if l.On < 0 || !face(l.Face) || !on(hung.Leaves[l.On].Face) || also != nil && !also(hung, i) {
			return 0
		}
		return geometry.Polygon(l.Outline...).SignedArea()
	}
}

func is(faces ...geometry.Face) func(geometry.Face) bool {
	return func(f geometry.Face) bool { return slices.Contains(faces, f) }
}

// swings returns the arrows that the tips of leaves move along from one stage of their
// covering to another, for the picks that there are; see draft.Hung.Swing.
func (m model) swings(c covering, from, to folds, near []stage.Vec, picks ...func(fold.Sheet, int) float64) (out []stage.Arrow) {
	hung := m.hang(c)
	for _, pick := range picks {
		if a, ok := hung.Swing(from, to, func(s folds) draft.Angle { return angle(hung.Sheet, s) }, near,
			func(leaf int) float64 { return pick(hung.Sheet, leaf) }); ok {
			out = append(out, a)
		}
	}
	return out
}
