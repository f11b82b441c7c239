package leader

import (
	"fmt"
	"math/rand"
	"slices"
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
		var labels []Label
		for i := range 2 + rnd.Intn(9) {
			l := Label{Name: fmt.Sprint("label ", i), Size: render.BodySize}
			for range rnd.Intn(3) {
				l.Notes = append(l.Notes, "note")
			}
			l.Anchor = geometry.Pt(Length(60+rnd.Float64()*80), Length(20+rnd.Float64()*140))
			labels = append(labels, l)
		}
		left, right := TwoSides(labels)
		all := 0
		var lines [][2]geometry.Point
		for _, side := range []struct {
			Column
			labels []Label
		}{{Column{50, true, 10, 170, 3}, left}, {Column{150, false, 10, 170, 3}, right}} {
			placed := side.Arrange(side.labels)
			all += len(placed)
			low := side.Top - 1e-9
			for _, l := range placed {
				assert.GreaterOrEqual(t, l.top.MM(), low.MM())
				low = l.top + l.Height() + side.Gap - 1e-9
				assert.LessOrEqual(t, (l.top + l.Height()).MM(), side.Bottom.MM()+1e-9)
				lines = append(lines, [2]geometry.Point{l.Anchor, l.Port(side.Edge)})
				for _, text := range side.Texts(l) {
					box := typeset.Box(text)
					assert.True(t, box.Max.X <= 50 || box.Min.X >= 150, "%v", box)
				}
			}
		}
		assert.Equal(t, len(labels), all)
		for i, a := range lines {
			for _, b := range lines[i+1:] {
				assert.False(t, Cross(a[0], a[1], b[0], b[1]), "%v %v", a, b)
			}
		}
	}
}

// However little room a column has, what is kept of its labels stands within it
// and apart; the first are kept, with their notes before the names of the last are
// lost; where there is room enough nothing changes.
func TestFittedLabels(t *testing.T) {
	rnd := rand.New(rand.NewSource(3))
	for range 300 {
		var labels []Label
		for i := range 1 + rnd.Intn(12) {
			l := Label{Name: fmt.Sprint("label ", i), Size: render.BodySize, Anchor: geometry.Pt(60, Length(rnd.Float64()*140))}
			if rnd.Intn(2) == 0 {
				l.Notes = []string{"note"}
			}
			labels = append(labels, l)
		}
		c := Column{50, true, 10, 10 + Length(rnd.Float64()*120), 3}
		closer, kept := c.Fit(labels)
		needs := func(of []Label, gap Length) (tall Length) {
			for _, l := range of {
				tall += l.Height()
			}
			return tall + Length(len(of)-1)*gap
		}
		if needs(labels, c.Gap) <= c.Bottom-c.Top {
			assert.Equal(t, labels, kept)
			assert.Equal(t, c, closer)
		}
		for i, l := range kept {
			assert.Equal(t, labels[i].Name, l.Name)
			assert.True(t, len(kept) == len(labels) || l.Notes == nil, "notes before names")
		}
		if len(kept) < len(labels) {
			more := slices.Clone(labels[:len(kept)+1])
			for i := range more {
				more[i].Notes = nil
			}
			assert.Greater(t, needs(more, 0), c.Bottom-c.Top-Length(len(more))*leastGap, "one more has no room")
		}
		low := c.Top - 1e-5
		for _, l := range closer.Arrange(kept) {
			assert.GreaterOrEqual(t, l.top.MM(), low.MM())
			low = l.top + l.Height()
			assert.LessOrEqual(t, low.MM(), c.Bottom.MM()+1e-5)
		}
	}
}

// Two labels set the wrong way round change places.
func TestCrossingIsSeen(t *testing.T) {
	pt := geometry.Pt
	assert.True(t, Cross(pt(0, 0), pt(10, 10), pt(0, 10), pt(10, 0)))
	assert.False(t, Cross(pt(0, 0), pt(10, 0), pt(0, 10), pt(10, 10)))
	assert.False(t, Cross(pt(0, 0), pt(4, 4), pt(0, 10), pt(10, 0)))
}
