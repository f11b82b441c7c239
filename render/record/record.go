// Package record is a surface that keeps what is drawn on it, for tests to
// read.
package record

import (
	"forel/geometry"
	"forel/render"
)

// Stroked is a path as it was drawn.
type Stroked struct {
	Layer  render.Layer
	Path   geometry.Path
	Stroke render.Stroke
}

// Written is a line of text as it was set.
type Written struct {
	Layer render.Layer
	render.Text
}

// Surface keeps everything drawn on it; it is a render.Surface.
type Surface struct {
	Strokes []Stroked
	Fills   []Stroked
	Texts   []Written
	layer   render.Layer
}

// Begin opens a layer.
func (s *Surface) Begin(l render.Layer) { s.layer = l }

// End closes the layer.
func (s *Surface) End() { s.layer = "" }

// Stroke keeps a path.
func (s *Surface) Stroke(p geometry.Path, st render.Stroke) {
	s.Strokes = append(s.Strokes, Stroked{s.layer, p, st})
}

// Fill keeps a filled path.
func (s *Surface) Fill(p geometry.Path, c render.Color) {
	s.Fills = append(s.Fills, Stroked{s.layer, p, render.Stroke{Color: c}})
}

// Text keeps a line of text.
func (s *Surface) Text(t render.Text) { s.Texts = append(s.Texts, Written{s.layer, t}) }
