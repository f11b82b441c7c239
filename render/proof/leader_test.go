package proof

import (
	"fmt"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// However the places lie, no two lines cross, labels stand apart and within
// their column, and none is lost.
func TestArrangedLabelsDoNotCross(t *testing.T) {
	rnd := rand.New(rand.NewSource(7))
	for range 300 {
		var labels []label
		for i := range 2 + rnd.Intn(9) {
			l := label{name: fmt.Sprint("label ", i), size: render.BodySize}
			for range rnd.Intn(3) {
				l.notes = append(l.notes, "note")
			}
			l.anchor = geometry.Pt(Length(60+rnd.Float64()*80), Length(20+rnd.Float64()*140))
			labels = append(labels, l)
		}
		left, right := twoSides(labels)
		all := 0
		var lines [][2]geometry.Point
		for _, side := range []struct {
			column
			labels []label
		}{{column{50, true, 10, 170, 3}, left}, {column{150, false, 10, 170, 3}, right}} {
			placed := side.arrange(side.labels)
			all += len(placed)
			low := side.top - 1e-9
			for _, l := range placed {
				assert.GreaterOrEqual(t, l.top.MM(), low.MM())
				low = l.top + l.height() + side.gap - 1e-9
				assert.LessOrEqual(t, (l.top + l.height()).MM(), side.bottom.MM()+1e-9)
				lines = append(lines, [2]geometry.Point{l.anchor, l.port(side.edge)})
				for _, text := range side.texts(l) {
					box := typeset.Box(text)
					assert.True(t, box.Max.X <= 50 || box.Min.X >= 150, "%v", box)
				}
			}
		}
		assert.Equal(t, len(labels), all)
		for i, a := range lines {
			for _, b := range lines[i+1:] {
				assert.False(t, linesCross(a[0], a[1], b[0], b[1]), "%v %v", a, b)
			}
		}
	}
}

// Two labels set the wrong way round change places.
func TestCrossingIsSeen(t *testing.T) {
	pt := geometry.Pt
	assert.True(t, linesCross(pt(0, 0), pt(10, 10), pt(0, 10), pt(10, 0)))
	assert.False(t, linesCross(pt(0, 0), pt(10, 0), pt(0, 10), pt(10, 10)))
	assert.False(t, linesCross(pt(0, 0), pt(4, 4), pt(0, 10), pt(10, 0)))
}
