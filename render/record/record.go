// Package record is a surface that keeps what is drawn on it: to draw it again
// elsewhere, to measure it, and for tests to read.
package record

import (
	"forel/geometry"
	"forel/render"
)

// Stroked is a path as it was drawn. Nth counts all that was done on the surface
// before it.
type Stroked struct {
	Layer  render.Layer
	Path   geometry.Path
	Stroke render.Stroke
	Nth    int
}

// Written is a line of text as it was set. Nth counts as in Stroked.
type Written struct {
	Layer render.Layer
	render.Text
	Nth int
}

// Surface keeps everything drawn on it; it is a render.Surface.
type Surface struct {
	Strokes []Stroked
	Fills   []Stroked
	Texts   []Written
	layer   render.Layer
	begun   []render.Layer
	order   []step
}

// step is what was done on a surface.
type step byte

const (
	began step = iota
	ended
	stroked
	filled
	wrote
)

// Begin opens a layer.
func (s *Surface) Begin(l render.Layer) {
	s.layer = l
	s.begun = append(s.begun, l)
	s.order = append(s.order, began)
}

// End closes the layer.
func (s *Surface) End() {
	s.layer = ""
	s.order = append(s.order, ended)
}

// Stroke keeps a path.
func (s *Surface) Stroke(p geometry.Path, st render.Stroke) {
	s.Strokes = append(s.Strokes, Stroked{s.layer, p, st, len(s.order)})
	s.order = append(s.order, stroked)
}

// Fill keeps a filled path.
func (s *Surface) Fill(p geometry.Path, c render.Color) {
	s.Fills = append(s.Fills, Stroked{s.layer, p, render.Stroke{Color: c}, len(s.order)})
	s.order = append(s.order, filled)
}

// Text keeps a line of text.
func (s *Surface) Text(t render.Text) {
	s.Texts = append(s.Texts, Written{s.layer, t, len(s.order)})
	s.order = append(s.order, wrote)
}

// Play draws on another surface what was drawn on this one, in the same order,
// moved by an offset.
func (s *Surface) Play(on render.Surface, off geometry.Point) {
	var begun, strokes, fills, texts int
	move := func(p geometry.Path) geometry.Path {
		if off == (geometry.Point{}) {
			return p
		}
		return p.Move(off)
	}
	for _, what := range s.order {
		switch what {
		case began:
			on.Begin(s.begun[begun])
			begun++
		case ended:
			on.End()
		case stroked:
			on.Stroke(move(s.Strokes[strokes].Path), s.Strokes[strokes].Stroke)
			strokes++
		case filled:
			on.Fill(move(s.Fills[fills].Path), s.Fills[fills].Stroke.Color)
			fills++
		case wrote:
			t := s.Texts[texts].Text
			t.At = t.At.Add(off)
			on.Text(t)
			texts++
		}
	}
}
