package layout_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/geometry"
	"forel/render"
	"forel/render/layout"
	"forel/render/record"
	"forel/render/typeset"
)

const text = "Brush paste on the back of a lining, from the middle outward, and lay the board into its middle."

// What is set lies within its box, one line clear of the other, and is as tall as
// it is said to be.
func TestParagraphAndSteps(t *testing.T) {
	box := geometry.Bx(20, 30, 70, 250)
	for name, set := range map[string]func(render.Surface) (end, height geometry.Length){
		"paragraph": func(s render.Surface) (geometry.Length, geometry.Length) {
			return layout.Paragraph(s, box, box.Min.Y, text, render.BodySize, false), layout.ParagraphHeight(text, render.BodySize, false, box.Width())
		},
		"steps": func(s render.Surface) (geometry.Length, geometry.Length) {
			return layout.Steps(s, box, "Order of work", []string{text, text}), layout.StepsHeight("Order of work", []string{text, text}, box.Width())
		},
		"points": func(s render.Surface) (geometry.Length, geometry.Length) {
			return layout.Points(s, box, "", []string{text, text, text}), layout.StepsHeight("", []string{text, text, text}, box.Width())
		},
	} {
		on := &record.Surface{}
		end, height := set(on)
		assert.InDelta(t, height.MM(), (end - box.Min.Y).MM(), 1e-9, name)
		assert.NotEmpty(t, on.Texts, name)
		for i, a := range on.Texts {
			b := typeset.Box(a.Text)
			assert.True(t, box.Contains(b) && b.Max.Y <= end+1e-9, "%s: %q", name, a.String)
			for _, o := range on.Texts[:i] {
				assert.False(t, b.Grow(-1e-6).Overlaps(typeset.Box(o.Text)), "%s: %q on %q", name, a.String, o.String)
			}
		}
	}
}

// Text that is set upward ends at the bottom of its box.
func TestParagraphUp(t *testing.T) {
	box := geometry.Bx(20, 30, 70, 250)
	on := &record.Surface{}
	top := layout.ParagraphUp(on, box, text, render.NoteSize)
	last := on.Texts[len(on.Texts)-1]
	assert.InDelta(t, box.Max.Y.MM(), typeset.Box(last.Text).Max.Y.MM(), 0.3)
	assert.Greater(t, typeset.Box(on.Texts[0].Text).Min.Y, top)
}
