package slipcase

import (
	"math"
	"slices"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
	"forel/geometry/wording"
	"forel/geometry/work"
)

// design is the printed design of a stock: of what covers the case, or of its linings.
type design struct {
	Pattern
	of []geometry.Piece // the drawings of pieces that are cut by it
}

// designs returns those of the covering and of the linings.
func (c Case) designs() (covering, lining design) {
	covering.Pattern, lining.Pattern = c.Job.Pattern, c.Job.LiningPattern
	for _, f := range c.Faces {
		if f.Material == geometry.Lining {
			lining.of = append(lining.of, f)
		} else {
			covering.of = append(covering.of, f)
		}
	}
	return covering, lining
}

// designed names the pieces that are cut by a printed design, as they are spoken of; empty
// where there are none.
func (c Case) designed(d design) string {
	var names []string
	for _, p := range c.Pieces {
		if !slices.ContainsFunc(d.of, func(f geometry.Piece) bool { return f.FaceOf == p.Name }) {
			continue
		}
		name := p.Name
		if p.Count > 1 {
			name += "s"
		}
		names = append(names, name)
	}
	return wording.And(names)
}

// designStep returns the step of cutting pieces by a printed design, none where there is
// none to be minded.
func (m model) designStep(d design) []plan.Step {
	faces := d.of
	if len(faces) == 0 {
		return nil
	}
	ofLinings := faces[0].Material == geometry.Lining
	var names, rough []string
	var sizes []Length
	for _, f := range faces {
		names = append(names, f.Name)
	}
	for _, p := range m.whole.Pieces {
		if p.Extra == (geometry.Point{}) || p.Material != faces[0].Material {
			continue
		}
		w, h := p.Rough()
		rough, sizes = append(rough, p.Name+" %s × %s"), append(sizes, w, h)
	}
	stock := "paper"
	if faces[0].Material == geometry.Cloth {
		stock = "cloth"
	}
	s := plan.Step{Title: "Cut the " + m.whole.designed(d) + " by the printed design", Short: d.short()}
	if len(rough) > 0 {
		s.Text = append(s.Text, plan.Say("Cut each roughly first, with the extra that the cut list says: "+wording.And(rough)+".", sizes...))
	}
	lay := "the lines of the printed design along its edges"
	if d.matches() {
		lay = "its marks on lines of the printed design"
	}
	if d.Direction == OneWay {
		lay += ", the top of the design at its head"
	}
	s.Text = append(s.Text, plan.Say("Cut the drawing named face out of its print. With the face of the "+stock+" up, lay the drawing on it, "+lay+". Draw round it and cut. The drawings: "+wording.And(names)+"."))
	mark := "Mark the head of each on its back"
	switch {
	case ofLinings:
		mark = "The two side linings are not alike: mark every lining on its back with its name, right or left, and which edge is at the head, or of head and tail at the spine"
	case m.has("side paper"):
		mark = "The two side papers are not alike: mark each on its back, right or left, and its head"
	}
	s.Text = append(s.Text, plan.Say(mark+", before you paste."))
	s.Pictures = [][]stage.Picture{{m.designFigure(faces[0])}}
	s.Spells = []work.Spell{work.Do(work.CutFace, work.Counted(faces, func(geometry.Piece) bool { return true }))}
	return []plan.Step{s}
}

// short says how pieces of patterned stock are cut, in a sentence.
func (d design) short() stage.Say {
	if !d.matches() {
		return plan.Say("Lay the lines of the pattern along the edges of the pieces; the drawings named face show them as the pattern is seen.")
	}
	return plan.Say("Cut patterned pieces roughly first; then lay their drawing named face on the pattern, its marks on lines, and cut along it.")
}

// leastLines is how near, in mm, lines of a design are drawn in a figure; of
// finer ones some are left out.
const leastLines Length = 5

// designFigure returns the figure of a face drawing that lies on the printed
// design, seen from above.
func (m model) designFigure(f geometry.Piece) stage.Picture {
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
	face, _ := draft.Sides(f.Material)
	stock := draft.Flat("stock", sheet.Min.X, sheet.Min.Y, 0, sheet.Width(), sheet.Height(), face)
	stock.Plain = true
	xs, ys := r.Lines(sheet.Grow(-0.5))
	for _, x := range xs {
		stock.Lines = append(stock.Lines, stage.Line{Kind: stage.Thin, Points: []stage.Vec{{X: x, Y: sheet.Min.Y}, {X: x, Y: sheet.Max.Y}}})
	}
	for _, y := range ys {
		stock.Lines = append(stock.Lines, stage.Line{Kind: stage.Thin, Points: []stage.Vec{{X: sheet.Min.X, Y: y}, {X: sheet.Max.X, Y: y}}})
	}
	flat := func(p geometry.Path) []stage.Vec {
		var out []stage.Vec
		for _, q := range p.Flatten(0.1) {
			out = append(out, stage.Vec{X: q.X, Y: q.Y})
		}
		return out
	}
	drawing := stage.Face{Object: f.Name, Name: f.Name, Front: stage.Blank, Back: stage.Blank, Points: flat(f.Outline), Layer: 1}
	for _, g := range f.Guides {
		drawing.Lines = append(drawing.Lines, stage.Line{Points: flat(g.Path), Kind: stage.Slit})
	}
	p := stage.Picture{
		Faces: []stage.Face{stock, drawing}, View: draft.FromAbove(), Fresh: []string{f.Name},
		Notes: []stage.Note{
			{Name: plan.Say("drawing"), More: plan.Say(f.Name), At: stage.Vec{X: w * 0.75, Y: h * 0.4}},
			{Name: plan.Say("printed design"), More: plan.Say("its face up"), At: stage.Vec{X: sheet.Min.X / 2, Y: h * 0.3}},
			{Name: plan.Say("head"), At: stage.Vec{X: w * 0.75, Y: h}},
		},
	}
	if r.OneWay {
		x := w * 0.5
		p.Arrows = []stage.Arrow{{Path: []stage.Vec{{X: x, Y: h * 0.35}, {X: x, Y: h * 0.75}}}}
		p.Notes = append(p.Notes, stage.Note{Name: plan.Say("top"), More: plan.Say("of the design"), At: stage.Vec{X: x, Y: h * 0.72}})
	}
	return p
}
