package scene

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/geometry"
	"forel/geometry/stage"
)

// nearest gives the object that a line of sight meets first, by looking at every
// face for itself; clear is how far the place is from any outline, ahead how far
// the next face lies behind it.
func nearest(faces []Face, v View, at geometry.Point) (object string, clear, ahead float64) {
	clear = math.Inf(1)
	first, second := math.Inf(-1), math.Inf(-1)
	for _, f := range faces {
		n := f.normal()
		facing := n.Dot(v.toward)
		in := false
		for i, p := range f.Points {
			a, b := v.Flat(p), v.Flat(f.Points[(i+1)%len(f.Points)])
			clear = min(clear, at.ToLine(a, b).MM())
			if (a.Y > at.Y) != (b.Y > at.Y) && at.X < a.X+(at.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
				in = !in
			}
		}
		if !in || facing.Abs() < 1e-3 {
			continue
		}
		// The point on the plane of the face: right*x + up*y + toward*t.
		flat := v.right.Mul(at.X).Add(v.up.Mul(at.Y))
		t := ((n.Dot(f.Points[0]) - n.Dot(flat)) / facing).MM()
		if t > first {
			second, first, object = first, t, f.Object
		} else {
			second = max(second, t)
		}
	}
	return object, clear, first - second
}

// block returns the faces of an upright block.
func block(object string, a, b Vec) (out []Face) {
	for _, f := range stage.Box(object, a, b, stage.Board) {
		out = append(out, Face{Object: f.Object, Name: f.Name, Points: f.Points})
	}
	return out
}

func holding(s Seen, at geometry.Point) []string {
	var out []string
	for _, p := range s.Patches {
		for _, a := range p.Shape {
			if a.Holds(at) {
				out = append(out, p.Object)
			}
		}
	}
	return out
}

// Whatever stands in the way is taken out, as a line of sight at many places
// finds it: blocks and tilted sheets, some cutting through each other.
func TestSeeAgainstLinesOfSight(t *testing.T) {
	rnd := rand.New(rand.NewSource(3))
	within := func(r float64) Length { return Length(rnd.Float64() * r) }
	place := func(r float64) Vec { return Vec{X: within(r), Y: within(r), Z: within(r)} }
	looked := 0
	for range 40 {
		var faces []Face
		back := Look{}
		for i := range 3 + rnd.Intn(4) {
			a := place(80)
			object := string(rune('a' + i))
			if rnd.Intn(2) == 0 {
				faces = append(faces, block(object, a, a.Add(place(60)).Add(Vec{X: 2, Y: 2, Z: 2}))...)
				continue
			}
			u, w := place(60).Sub(Vec{X: 30, Y: 30, Z: 30}), place(60).Sub(Vec{X: 30, Y: 30, Z: 30})
			faces = append(faces, Face{Object: object, Back: &back, Points: []Vec{a, a.Add(u), a.Add(u).Add(w), a.Add(w)}})
		}
		v := Turned(Vec{Z: 1}, Vec{Y: 1}, rnd.Float64()*70, rnd.Float64()*60)
		seen := See(faces, v)
		assert.Zero(t, seen.Unworked())
		b := seen.Bounds()
		for range 60 {
			at := b.Min.Add(geometry.Pt(b.Width()*Length(rnd.Float64()), b.Height()*Length(rnd.Float64())))
			want, clear, ahead := nearest(faces, v, at)
			if clear < 0.3 || ahead < 0.3 { // at an outline, or where faces cut through each other
				continue
			}
			looked++
			got := holding(seen, at)
			if want == "" {
				assert.Empty(t, got, "%v", at)
			} else {
				assert.Equal(t, []string{want}, got, "%v", at)
			}
		}
	}
	assert.Greater(t, looked, 1000)
}

// Of faces in one plane the higher layer is seen, whatever their order.
func TestLayers(t *testing.T) {
	back := Look{}
	sheet := func(object string, layer int, size Length) Face {
		return Face{Object: object, Layer: layer, Back: &back, Points: []Vec{{}, {X: size}, {X: size, Y: size}, {Y: size}}}
	}
	v := From(Vec{Z: 1}, Vec{Y: 1})
	for _, faces := range [][]Face{{sheet("low", 1, 20), sheet("high", 2, 10)}, {sheet("high", 2, 10), sheet("low", 1, 20)}} {
		s := See(faces, v)
		assert.Equal(t, []string{"high"}, holding(s, geometry.Pt(5, 5)))
		assert.Equal(t, []string{"low"}, holding(s, geometry.Pt(15, 5)))
	}
}

// A view keeps what lies square to it at its size, and its directions are square.
func TestView(t *testing.T) {
	v := Turned(Vec{Z: 1}, Vec{Y: 1}, 0, 0)
	assert.InDelta(t, 30, v.Flat(Vec{X: 30, Z: 9}).X.MM(), 1e-9)
	assert.InDelta(t, 20, v.Flat(Vec{Y: 20, Z: 9}).Y.MM(), 1e-9)
	for _, yaw := range []float64{-40, 0, 33, 60} {
		v := Turned(Vec{Y: -1}, Vec{X: -1}, yaw, 41)
		for _, p := range [][2]Vec{{v.right, v.up}, {v.up, v.toward}, {v.right, v.toward}} {
			assert.InDelta(t, 0, p[0].Dot(p[1]).MM(), 1e-12)
			assert.InDelta(t, 1, p[0].Size().MM(), 1e-12)
		}
	}
	// The viewer goes to the right: what is nearer moves to the left.
	assert.Less(t, Turned(Vec{Z: 1}, Vec{Y: 1}, 30, 0).Flat(Vec{Z: 10}).X.MM(), 0.0)
	assert.Less(t, Turned(Vec{Z: 1}, Vec{Y: 1}, 0, 30).Flat(Vec{Z: 10}).Y.MM(), 0.0)
}

// A line on a face is seen only where the face is.
func TestLinesAreHiddenToo(t *testing.T) {
	floor := Face{Object: "floor", Points: []Vec{{}, {X: 100}, {X: 100, Y: 100}, {Y: 100}},
		Lines: []Line{{Points: []Vec{{Y: 50}, {X: 100, Y: 50}}}}}
	s := See(append(block("block", Vec{X: 30, Y: 40}, Vec{X: 60, Y: 60, Z: 10}), floor), From(Vec{Z: 1}, Vec{Y: 1}))
	var long float64
	for _, l := range s.Lines {
		for _, run := range l.Runs {
			for i := 1; i < len(run); i++ {
				long += run[i-1].Distance(run[i]).MM()
			}
		}
	}
	assert.InDelta(t, 70, long, 0.01)
}
