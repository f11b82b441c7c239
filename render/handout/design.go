package handout

import (
	"fmt"
	"math"
	"slices"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/scene"
)

// designed gives the pieces that are cut by the printed design of their stock,
// as they are spoken of; empty where there are none.
func (b *book) designed() string {
	var names []string
	for _, f := range b.plan.Faces {
		name := f.FaceOf
		if p, ok := pieceOf(b.plan.Pieces, name); ok && p.Count > 1 {
			name += "s"
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return wording.And(names)
}

// designStep gives the step of cutting pieces by the printed design of their
// stock, none where it has no design to be minded.
func (b *book) designStep(m model) []step {
	if len(b.plan.Faces) == 0 {
		return nil
	}
	var faces, rough []string
	matched := false
	for _, f := range b.plan.Faces {
		faces = append(faces, f.Name)
		matched = matched || f.Pattern.AtX || f.Pattern.AtY
	}
	for _, p := range b.plan.Pieces {
		if p.Extra == (geometry.Point{}) {
			continue
		}
		w, h := p.Rough()
		rough = append(rough, fmt.Sprintf("%s %s × %s", p.Name, b.Round.PrettyNumber(w), b.Round.Pretty(h)))
	}
	stock := "paper"
	if m.job.Covering == slipcase.AllCloth {
		stock = "cloth"
	}
	s := step{title: "Cut the " + b.designed() + " by the printed design"}
	if len(rough) > 0 {
		s.text = append(s.text, "Cut each roughly first, with the extra that the cut list says: "+wording.And(rough)+".")
	}
	lay := "the lines of the printed design along its edges"
	if matched {
		lay = "its marks on lines of the printed design"
	}
	if m.job.Pattern.Direction == slipcase.OneWay {
		lay += ", the top of the design at its head"
	}
	s.text = append(s.text, fmt.Sprintf("Cut the drawing named face out of its print. With the face of the %s up, lay the drawing on it, %s. Draw round it and cut. The drawings: %s.", stock, lay, wording.And(faces)))
	mark := "Mark the head of each on its back"
	if m.has("side paper") {
		mark = "The two side papers are not alike: mark each on its back, right or left, and its head"
	}
	s.text = append(s.text, mark+", before you paste.")
	s.rows = [][]panel{{m.designFigure(b.plan.Faces[0])}}
	return []step{s}
}

// leastLines is how near, in mm, lines of a design are drawn in a figure; of
// finer ones some are left out.
const leastLines Length = 5

// designFigure gives the figure of a face drawing that lies on the printed
// design, seen from above.
func (m model) designFigure(f geometry.Piece) panel {
	w, h := f.Size()
	r := f.Pattern
	side := Length(0.08) * max(w, h)
	off := geometry.Pt(max(side, r.Across/2), max(side, r.Along/2))
	if !r.AtX && !r.AtY { // lines along the edges
		r.First = geometry.Point{}
		r.AtX, r.AtY = r.Across > 0, r.Along > 0
	}
	for _, step := range []*Length{&r.Across, &r.Along} {
		if *step > 0 {
			*step *= Length(math.Ceil(float64(leastLines / *step) - 1e-9))
		}
	}
	sheet := geometry.Bx(-off.X, -off.Y, w+off.X, h+off.Y)
	stock := sheetOn("stock", sheet.Min.X.MM(), sheet.Min.Y.MM(), 0, sheet.Width().MM(), sheet.Height().MM(), plain(m.look(f.Material).face))
	xs, ys := r.Lines(sheet.Grow(-0.5))
	thin := render.Stroke{Width: 0.2, Color: grey(110)}
	for _, x := range xs {
		stock.Lines = append(stock.Lines, scene.Line{Stroke: thin, Points: []scene.Vec{{X: x.MM(), Y: sheet.Min.Y.MM()}, {X: x.MM(), Y: sheet.Max.Y.MM()}}})
	}
	for _, y := range ys {
		stock.Lines = append(stock.Lines, scene.Line{Stroke: thin, Points: []scene.Vec{{X: sheet.Min.X.MM(), Y: y.MM()}, {X: sheet.Max.X.MM(), Y: y.MM()}}})
	}
	flat := func(p geometry.Path) []scene.Vec {
		var out []scene.Vec
		for _, q := range p.Flatten(0.1) {
			out = append(out, scene.Vec{X: q.X.MM(), Y: q.Y.MM()})
		}
		return out
	}
	look := scene.Look{Tint: white}
	drawing := scene.Face{Object: f.Name, Name: f.Name, Front: look, Back: &look, Points: flat(f.Outline), Layer: 1}
	for _, g := range f.Guides {
		drawing.Lines = append(drawing.Lines, scene.Line{Points: flat(g.Path), Stroke: slitLine})
	}
	p := panel{
		faces: []scene.Face{stock, drawing}, view: flatView(), fresh: []string{f.Name},
		notes: []note{
			{name: "drawing", more: f.Name, at: scene.Vec{X: w.MM() * 0.75, Y: h.MM() * 0.4}},
			{name: "printed design", more: "its face up", at: scene.Vec{X: (sheet.Min.X / 2).MM(), Y: h.MM() * 0.3}},
			{name: "head", at: scene.Vec{X: w.MM() * 0.75, Y: h.MM()}},
		},
	}
	if r.OneWay {
		x := w.MM() * 0.5
		p.arrows = []arrow{{path: []scene.Vec{{X: x, Y: h.MM() * 0.35}, {X: x, Y: h.MM() * 0.75}}}}
		p.notes = append(p.notes, note{name: "top", more: "of the design", at: scene.Vec{X: x, Y: h.MM() * 0.72}})
	}
	return p
}
