package labelled

import (
	"forel/geometry"
	"forel/render"
)

// tape is a surface that draws nothing yet: what is drawn on it can be drawn on
// another.
type tape struct{ acts []func(render.Surface) }

func (t *tape) do(act func(render.Surface)) { t.acts = append(t.acts, act) }

// play draws all of it on a surface.
func (t *tape) play(s render.Surface) {
	for _, act := range t.acts {
		act(s)
	}
}

func (t *tape) Begin(l render.Layer) { t.do(func(s render.Surface) { s.Begin(l) }) }
func (t *tape) End()                 { t.do(func(s render.Surface) { s.End() }) }
func (t *tape) Stroke(p geometry.Path, st render.Stroke) {
	t.do(func(s render.Surface) { s.Stroke(p, st) })
}
func (t *tape) Fill(p geometry.Path, c render.Color) { t.do(func(s render.Surface) { s.Fill(p, c) }) }
func (t *tape) Text(w render.Text)                   { t.do(func(s render.Surface) { s.Text(w) }) }
