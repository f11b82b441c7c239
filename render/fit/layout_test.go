package fit_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/geometry"
	"forel/render"
	renderfit "forel/render/fit"
	"forel/render/typeset"
)

// Words lie within what a printer reaches, not on other words, and no line runs
// through them but the hatching of a zone, which has none.
func TestWordsStandClear(t *testing.T) {
	for _, s := range subjects() {
		for n, p := range s.pages() {
			where := fmt.Sprintf("%s, page %d", s.name, n+1)
			room := s.Setup.Printable(p.Width > p.Height).Grow(0.01)
			assert.NotEmpty(t, p.Texts, where)
			for i, a := range p.Texts {
				box := typeset.Box(a.Text)
				assert.True(t, room.Contains(box), "%s: %q leaves the page", where, a.String)
				for _, c := range a.String {
					assert.True(t, typeset.Has(c), "%s: no glyph for %q", where, c)
				}
				for _, b := range p.Texts[:i] {
					assert.False(t, typeset.Box(b.Text).Grow(-0.01).Overlaps(box), "%s: %q on %q", where, a.String, b.String)
				}
				for _, l := range p.Strokes {
					assert.False(t, crosses(l.Path, inked(a.Text)), "%s: a line through %q", where, a.String)
				}
			}
			for _, l := range p.Strokes {
				assert.True(t, room.Contains(l.Path.Bounds()), "%s: a line leaves the page: %v", where, l.Path.Bounds())
			}
		}
	}
}

// inked is where the letters of a text without descenders are.
func inked(t render.Text) geometry.Box {
	b := typeset.Box(t)
	b.Max.Y -= typeset.Descent(t.Size) * 0.7
	return b.Grow(-0.05)
}

// crosses tells whether a path of straight lines enters a box.
func crosses(p geometry.Path, box geometry.Box) bool {
	points := p.Flatten(0.1)
	if p.Closed {
		points = append(points, points[0])
	}
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		if max(a.X, b.X) < box.Min.X || min(a.X, b.X) > box.Max.X || max(a.Y, b.Y) < box.Min.Y || min(a.Y, b.Y) > box.Max.Y {
			continue
		}
		const steps = 400
		for k := range steps + 1 {
			at := a.Add(b.Sub(a).Mul(float64(k) / steps))
			if at.X > box.Min.X && at.X < box.Max.X && at.Y > box.Min.Y && at.Y < box.Max.Y {
				return true
			}
		}
	}
	return false
}

// The same input gives the same bytes.
func TestSameEachTime(t *testing.T) {
	for _, s := range subjects()[:2] {
		one, err := renderfit.Document(s.report, s.Options).PDF()
		assert.NoError(t, err)
		two, err := renderfit.Document(s.report, s.Options).PDF()
		assert.NoError(t, err)
		assert.Equal(t, one, two)
		assert.Equal(t, renderfit.Plots(s.report, s.Options), renderfit.Plots(s.report, s.Options))
	}
}
