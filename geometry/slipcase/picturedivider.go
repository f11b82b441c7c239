package slipcase

import (
	"slices"

	"forel/geometry/plan"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// dividersIn returns the dividers where they stand.
func (m model) dividersIn() []stage.Face {
	var out []stage.Face
	for i := range m.dividerPlaces() {
		out = append(out, m.divider(i)...)
	}
	return out
}

// dividerName names a divider in a scene, from 0.
func dividerName(i int) string { return numbered("divider", i) }

// divider returns a divider where it stands, with its strips on, a scene's object.
func (m model) divider(i int) []stage.Face {
	name, strip := dividerName(i), dividerName(i)+" strip"
	strips := m.strips(strip, 90)
	for n := range strips {
		strips[n].Name = strip
	}
	return stage.Moved(append(m.bareDivider(name), strips...), stage.Vec{X: m.dividerPlaces()[i][0], Y: m.s(), Z: m.s()})
}

// bareDivider returns a divider by itself without its strips. The edge of its thumb hole is
// covered.
func (m model) bareDivider(name string) []stage.Face {
	p := m.pieces["divider"]
	box := p.Outline.Bounds()
	board := plan.Solid{Stuff: stage.Board, Frame: space.Frame{U: toMouth, V: toHead}, Outline: p.Outline.Flatten(seenArc), Thick: m.job.dividerThickness()}
	faces := board.Block(name)
	if m.job.Lining.Thickness > 0 {
		faces[0].Front, faces[1].Front = stage.Lining, stage.Lining
	}
	for i, a := range board.Outline {
		if !along(a, board.Outline[(i+1)%len(board.Outline)], box) {
			faces[2+i].Front = stage.Cloth
		}
	}
	return faces
}

// strips returns the strips of cloth round the mouth edge of a divider by itself, folded by
// so many degrees.
func (m model) strips(object string, angle float64) (faces []stage.Face) {
	strip := m.pieces[dividerStrip]
	body := standingAlone(m.pieces["divider"], m.job.dividerThickness(), seenArc).body(m.job)
	for i := range strip.Seats {
		sheet, _ := body.Hang(strip, i)
		hung := draft.Hung{Sheet: sheet, Piece: strip, Object: object}
		faces = append(faces, hung.Faces(func(int) float64 { return angle }, 5, false)...)
	}
	return faces
}

// stripFigure returns the figure of the strips being folded round the mouth edge of a
// divider.
func (m model) stripFigure() stage.Picture {
	w, h := m.pieces["divider"].Size()
	p := stage.Picture{Faces: append(m.bareDivider("divider"), m.strips(dividerStrip, 40)...), View: m.intoMouth(48, 24), Fresh: []string{dividerStrip}}
	lap, low := m.job.Divider.Lap, h/2-2*m.job.hole()
	if !m.job.dividerHole() {
		low = h - 6*lap
	}
	p.Focus = draft.Corners(stage.Vec{X: -lap, Y: max(0, low), Z: w - 5*lap}, stage.Vec{X: m.job.dividerThickness() + lap, Y: h + 3, Z: w + lap})
	p.Notes = []stage.Note{
		{Name: plan.Say("strip"), More: plan.Say("its middle on the mouth edge"), Spot: "right lap"},
		{Name: plan.Say("divider"), More: plan.Say("with both linings on"), Spot: "divider"},
		{Name: plan.Say("head"), At: stage.Vec{X: 0, Y: h, Z: w - 3*lap}},
	}
	if m.job.Lining.Thickness == 0 {
		p.Notes[1].More = plan.Say("")
	}
	if m.job.dividerHole() {
		r := m.job.hole() - m.job.Divider.SetBack
		p.Notes = append(p.Notes, stage.Note{Name: plan.Say("thumb hole"), More: plan.Say("its edge is wrapped first"), At: stage.Vec{X: m.job.dividerThickness(), Y: h / 2, Z: w - r}})
	}
	return p
}

// dividerFigures returns the figures of the dividers going in from above.
func (m model) dividerFigures() []stage.Picture {
	n := m.job.Dividers()
	last := n - 1 // the first that goes in, on the volume at the right
	up := stage.Vec{X: -m.lift() - m.dividerPlaces()[last][0]}
	under := slices.Concat(m.onFirstSide(), m.bookOnBench(n))
	at := func(y Length) stage.Vec { return stage.Vec{X: m.dividerPlaces()[last][0], Y: y, Z: m.d() * 0.6} }
	name := dividerName(last)
	all := slices.Concat(m.onFirstSide(), m.dividersIn())
	out := []stage.Picture{{
		Faces: slices.Concat(under, stage.Moved(m.divider(last), up)), View: m.onBench(), Fresh: []string{name, name + " strip"},
		Arrows: draft.Down(up, at(m.s()), at(m.h()-m.s())),
		Notes: []stage.Note{
			{Name: plan.Say("divider"), More: plan.Say("glue on its three edges"), Spot: name},
			{Name: plan.Say("strip"), More: plan.Say("at the mouth"), Spot: name + " strip"},
			{Name: plan.Say(escaped(m.job.Whose(n))), More: plan.Say("with packing on it"), Spot: bookName(n)},
		},
		Caption: plan.Say("a: lower it onto the volume at the right"),
	}}
	seen := stage.Picture{Faces: all, View: m.onBench(), Fresh: []string{"divider", "divider strip"}, Caption: plan.Say("b: all in their places (volumes and packing left out)")}
	if n == 1 {
		seen.Caption = plan.Say("b: in its place (volume and packing left out)")
	}
	seen.Notes = []stage.Note{
		{Name: plan.Say("tight"), More: plan.Say("to all three walls"), At: stage.Vec{X: m.dividerPlaces()[0][0], Y: m.h() - m.s(), Z: m.d() * 0.5}},
	}
	return append(out, seen)
}
