package shape

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/render"
)

// A square of 20 mm with a hole of 8 mm, and a box to keep free.
var holed = Area{Rings: [][]geometry.Point{
	geometry.Rectangle(geometry.Bx(0, 0, 20, 20)).Flatten(1),
	{{X: 6, Y: 6}, {X: 6, Y: 14}, {X: 14, Y: 14}, {X: 14, Y: 6}},
}}

// Hatching fills an area evenly: its length by its distance is the area, what
// is kept free taken away, and no line leaves the area or enters the box.
func TestHatchFillsTheArea(t *testing.T) {
	keep := []geometry.Box{geometry.Bx(15, 2, 19, 5)}
	for _, angle := range []float64{0, 45, -45, 90, 20, 70} {
		h := Hatch{angle, 0.05, render.Stroke{Width: 0.1}}
		lines := h.Lines(holed, keep)
		require.NotEmpty(t, lines)
		var long Length
		for _, l := range lines {
			a, b := l.Path.Vertices[0].Point, l.Path.Vertices[1].Point
			long += a.Distance(b)
			m := a.Add(b).Mul(0.5)
			assert.True(t, holed.Holds(m) || holed.Clear(m) < 1e-9, "%v", m)
			assert.False(t, keep[0].Grow(-1e-6).Contains(geometry.Box{Min: m, Max: m}), "%v", m)
		}
		assert.InEpsilon(t, 400-64-12, float64(long*h.Gap), 0.02, "%g degrees", angle)
	}
}

// The dashes of one line stay in step on both sides of what is kept free.
func TestHatchDashesStayInStep(t *testing.T) {
	h := Hatch{0, 3, render.Stroke{Width: 0.1, Dash: []Length{1, 2}}}
	square := Area{Rings: [][]geometry.Point{geometry.Rectangle(geometry.Bx(-5, 1, 20, 20)).Flatten(1)}}
	seen := map[Length][]Length{}
	for _, l := range h.Lines(square, []geometry.Box{geometry.Bx(4.3, 0, 7.7, 30)}) {
		at := l.Path.Vertices[0].Point
		assert.True(t, l.Stroke.Phase >= 0 && l.Stroke.Phase < 3, "%v", l.Stroke.Phase)
		seen[at.Y] = append(seen[at.Y], at.X-l.Stroke.Phase) // where a period starts
	}
	require.NotEmpty(t, seen)
	for y, starts := range seen {
		require.Len(t, starts, 2, "%v", y)
		periods := (starts[1] - starts[0]) / 3
		assert.InDelta(t, float64(periods.Round(1)), float64(periods), 1e-9)
	}
}

// A hole stays open when an area is filled as one path.
func TestPathOfAnAreaKeepsItsHole(t *testing.T) {
	assert.InDelta(t, 400-64, holed.Path().SignedArea(), 1e-9)
	assert.InDelta(t, 400-64, holed.Size(), 1e-9)
	assert.True(t, holed.Holds(geometry.Pt(3, 3)))
	assert.False(t, holed.Holds(geometry.Pt(10, 10)))
}

// A place that is found has room for its box; where there is none, none is.
func TestRoom(t *testing.T) {
	off := Taken{Boxes: []geometry.Box{geometry.Bx(0, 0, 20, 5)}}
	p, ok := Room(holed, 8, 4, off)
	require.True(t, ok)
	box := geometry.Bx(p.X-4, p.Y-2, p.X+4, p.Y+2)
	assert.True(t, box.Min.Y >= 14 || box.Max.X <= 6 || box.Min.X >= 14, "%v", box)
	assert.False(t, !off.Free(box, 0, 0))
	_, ok = Room(holed, 7, 7, Taken{})
	assert.False(t, ok, "the frame is 6 mm wide")
	_, ok = Room(holed, 4, 4, Taken{Lines: []geometry.Segment{
		{From: geometry.Pt(0, 3), To: geometry.Pt(20, 3)}, {From: geometry.Pt(0, 17), To: geometry.Pt(20, 17)},
		{From: geometry.Pt(3, 0), To: geometry.Pt(3, 20)}, {From: geometry.Pt(17, 0), To: geometry.Pt(17, 20)},
	}})
	assert.False(t, ok, "a line runs round the middle of the frame")
}
