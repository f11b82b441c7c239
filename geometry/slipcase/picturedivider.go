package slipcase

import (
	"slices"

	"forel/geometry/plan"
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
	at, name := m.dividerPlaces()[i], dividerName(i)
	faces := m.bareDivider(name, at[0])
	_, long := m.pieces[dividerStrip].Size()
	_, tall := m.pieces["divider"].Size()
	for _, y := range []Length{0, tall - long}[:len(m.pieces[dividerStrip].Seats)] {
		faces = append(faces, m.stripOn(name, at[0], y, long)...)
	}
	return faces
}

// bareDivider returns a divider without its strips, its left face at x. The edge of its
// thumb hole is covered.
func (m model) bareDivider(name string, x Length) []stage.Face {
	p := m.pieces["divider"]
	w, h := p.Size()
	flat := p.Outline.Flatten(0.1)
	outline := make([]stage.Vec, len(flat))
	for i, q := range flat {
		outline[i] = stage.Vec{X: x, Y: m.s() + q.Y, Z: m.s() + q.X}
	}
	look := stage.Board
	if m.job.Lining.Thickness > 0 {
		look = stage.Lining
	}
	faces := stage.Block(name, outline, stage.Vec{X: m.job.dividerThickness()}, look, look, stage.Board)
	for i, a := range flat {
		b := flat[(i+1)%len(flat)]
		if on := (a.X+b.X)/2 < w-1e-6 && (a.X+b.X)/2 > 1e-6 && (a.Y+b.Y)/2 > 1e-6 && (a.Y+b.Y)/2 < h-1e-6; on {
			faces[2+i].Front = stage.Cloth
		}
	}
	return faces
}

// stripOn returns the strip of cloth round the mouth edge of a divider, its left face at
// x, from a height over the tail wall on.
func (m model) stripOn(name string, x, y, long Length) []stage.Face {
	p := m.pieces["divider"]
	w, _ := p.Size()
	t, lap := m.job.dividerThickness(), m.job.Divider.Lap
	y, z := m.s()+y, m.s()+w
	face := func(points ...stage.Vec) stage.Face {
		return stage.Face{Object: name + " strip", Name: name + " strip", Points: points, Front: stage.Cloth, Grain: stage.Vec{Y: 1}, Layer: 5}
	}
	v := func(x, y, z Length) stage.Vec { return stage.Vec{X: x, Y: y, Z: z} }
	return []stage.Face{
		face(v(x, y, z-lap), v(x, y, z), v(x, y+long, z), v(x, y+long, z-lap)),
		face(v(x+t, y, z), v(x+t, y, z-lap), v(x+t, y+long, z-lap), v(x+t, y+long, z)),
		face(v(x, y, z), v(x+t, y, z), v(x+t, y+long, z), v(x, y+long, z)),
	}
}

// stripFigure returns the figure of the strips being folded round the mouth edge of a
// divider.
func (m model) stripFigure() stage.Picture {
	board, strip := m.pieces["divider"], m.pieces[dividerStrip]
	w, h := board.Size()
	faces := stage.Moved(m.bareDivider("divider", 0), stage.Vec{Y: -m.s(), Z: -m.s()})
	body := standingAlone(board, m.job.dividerThickness(), seenArc).body(m.job)
	p := stage.Picture{View: m.intoMouth(48, 24), Fresh: []string{dividerStrip}}
	for i := range strip.Seats {
		sheet, _ := body.Hang(strip, i)
		hung := draft.Hung{Sheet: sheet, Piece: strip, Object: dividerStrip}
		faces = append(faces, hung.Faces(func(int) float64 { return 40 }, 5, false)...)
	}
	p.Faces = faces
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
