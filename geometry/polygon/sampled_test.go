package polygon_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/polygon"
)

// clear is how far from every edge a place is asked about: more than the
// coarsest grid moves an edge.
const clear = 3e-3

// neighbours draws polygons as parts of a piece lie on a face: boxes and
// trapezia on a common lattice, edge to edge or over each other, off it by
// nothing or by rounding, all turned together.
func neighbours(t *rapid.T) [][]geometry.Point {
	off := rapid.SampledFrom([]float64{0, 0, 0, 1e-6, 2e-6, -1e-6, 5e-6, 1e-5, 1e-4, 0.3, 1, 1.0 / 3, 7})
	lattice := []float64{0, 2, 2.15, 6.35, 20, 23.99, 28.575, 150, 151.85, 227.999994}
	turn := rapid.SampledFrom([]float64{0, 0, math.Pi / 2, math.Pi, 0.3, 1e-7}).Draw(t, "turn")
	sin, cos := math.Sincos(turn)
	at := func(name string) float64 {
		return rapid.SampledFrom(lattice).Draw(t, name) + off.Draw(t, name+" off")
	}
	var out [][]geometry.Point
	for i := range rapid.IntRange(2, 5).Draw(t, "shapes") {
		name := fmt.Sprint(i)
		x0, x1, y0, y1 := at("x0 "+name), at("x1 "+name), at("y0 "+name), at("y1 "+name)
		if math.Abs(x1-x0) < 0.01 || math.Abs(y1-y0) < 0.01 {
			continue
		}
		lean := rapid.SampledFrom([]float64{0, 0, 0.1, 0.3333, 1e-6}).Draw(t, "lean "+name) * (x1 - x0)
		var shape []geometry.Point
		for _, q := range [][2]float64{{x0, y0}, {x1, y0}, {x1 - lean, y1}, {x0 + lean, y1}} {
			shape = append(shape, geometry.Pt(polygon.Length(q[0]*cos-q[1]*sin), polygon.Length(q[0]*sin+q[1]*cos)))
		}
		out = append(out, shape)
	}
	return out
}

// holds tells whether a place lies in a polygon, by the edges that a ray from it
// crosses; edges gives how far the nearest is.
func holds(q geometry.Point, ring []geometry.Point) (in bool, edges float64) {
	edges = math.Inf(1)
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > q.Y) != (b.Y > q.Y) && q.X < a.X+(b.X-a.X)*(q.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
		edges = min(edges, q.ToLine(a, b).MM())
	}
	return in, edges
}

// has tells whether a place lies in a shape, holes counted.
func has(q geometry.Point, s polygon.Shape) bool {
	in := false
	for _, a := range s {
		for _, ring := range a.Rings {
			if odd, _ := holds(q, ring); odd {
				in = !in
			}
		}
	}
	return in
}

// asked gives the places asked about: on both sides of every edge, and where
// the middles of two edges look at each other.
func asked(shapes [][]geometry.Point) []geometry.Point {
	var middles, out []geometry.Point
	for _, s := range shapes {
		for i, a := range s {
			b := s[(i+1)%len(s)]
			d := b.Sub(a)
			n := geometry.Pt(-d.Y, d.X).Mul(2 * clear / math.Hypot(d.X.MM(), d.Y.MM()))
			for _, part := range []float64{0.001, 0.37, 0.5, 0.998} {
				q := a.Add(d.Mul(part))
				out = append(out, q.Add(n), q.Sub(n))
			}
			middles = append(middles, a.Add(d.Mul(0.5)))
		}
	}
	for i, a := range middles {
		for _, b := range middles[:i] {
			out = append(out, a.Add(b).Mul(0.5))
		}
	}
	return out
}

// What is in the result is what is in the shapes as the operation says, place
// by place: the edges that a ray crosses are counted here, and the library has
// no part in it.
func TestPlaceByPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		drawn := neighbours(t)
		if len(drawn) < 2 {
			t.Skip("too few")
		}
		shapes := shapesOf(t, drawn)
		all, err := polygon.Union(shapes...)
		require.NoError(t, err)
		both, err := polygon.Meet(shapes[0], shapes[1])
		require.NoError(t, err)
		rest, err := polygon.Without(shapes[0], shapes[1])
		require.NoError(t, err)
		others, err := polygon.Union(shapes[1:]...)
		require.NoError(t, err)
		past, err := polygon.Without(shapes[0], others)
		require.NoError(t, err)
		pastEach, err := polygon.Without(shapes[0], shapes[1:]...)
		require.NoError(t, err)
		// What is past and what is shared part the first: together they are it.
		first, err := polygon.Union(rest, both)
		require.NoError(t, err)
		for _, q := range asked(drawn) {
			in, near := make([]bool, len(drawn)), math.Inf(1)
			some, further := false, false
			for i, d := range drawn {
				var edge float64
				in[i], edge = holds(q, d)
				near, some, further = min(near, edge), some || in[i], further || i > 0 && in[i]
			}
			if near < clear {
				continue
			}
			for _, c := range []struct {
				what string
				got  polygon.Shape
				want bool
			}{
				{"union", all, some}, {"meet", both, in[0] && in[1]}, {"without", rest, in[0] && !in[1]}, {"without the others", past, in[0] && !further},
				{"without each other", pastEach, in[0] && !further}, {"both parts", first, in[0]},
			} {
				if has(q, c.got) != c.want {
					t.Fatalf("%s: %.6f, %.6f should be in it: %v\n%v\nof %v", c.what, q.X.MM(), q.Y.MM(), c.want, c.got, drawn)
				}
			}
		}
	})
}

// shapesOf gives the shapes of polygons, at times turned over in place: zeros have a
// sign then.
func shapesOf(t *rapid.T, drawn [][]geometry.Point) []polygon.Shape {
	over := rapid.Bool().Draw(t, "turned over")
	out := make([]polygon.Shape, len(drawn))
	for i, d := range drawn {
		out[i] = polygon.Of(d)
		if over {
			out[i] = out[i].Moved(func(p geometry.Point) geometry.Point { return geometry.Pt(-p.X, p.Y) })
			for n := range d {
				d[n].X = -d[n].X
			}
		}
	}
	return out
}

// Two boxes that touch at a corner share nothing, whichever sign the zeros have.
func TestSignOfZero(t *testing.T) {
	zero := polygon.Length(math.Copysign(0, -1))
	box := polygon.Shape{{Rings: [][]geometry.Point{{{X: -40, Y: 4}, {X: zero, Y: 4}, {X: zero, Y: 9}, {X: -40, Y: 9}}}}}
	got, err := polygon.Meet(box, polygon.Box(geometry.Bx(0, 0, 3, 4)))
	require.NoError(t, err)
	assert.Zero(t, got.Size())
}

// crooked draws a polygon of three to nine corners on a coarse grid round a
// middle, so that two of them often share corners, edges and parts of edges.
func crooked(t *rapid.T, name string) []geometry.Point {
	ways := []geometry.Point{{X: 1}, {X: 2, Y: 1}, {X: 1, Y: 1}, {X: 1, Y: 2}, {Y: 1}, {X: -1, Y: 1}, {X: -1}, {X: -1, Y: -1}, {Y: -1}, {X: 1, Y: -1}}
	at := func() polygon.Length { return polygon.Length(5 * rapid.IntRange(0, 3).Draw(t, name)) }
	middle := geometry.Pt(at(), at())
	var out []geometry.Point
	for _, w := range ways {
		if far := rapid.IntRange(0, 3).Draw(t, name); far > 0 {
			out = append(out, middle.Add(w.Mul(5*float64(far))))
		}
	}
	return out
}

// A place lies in the result of two operations in a row where it should by the polygons
// it lies in, and the result is made of polygons that the standard takes for such.
func TestTwoInARowPlaceByPlace(t *testing.T) {
	type operation struct {
		do   func(a, b polygon.Shape) (polygon.Shape, error)
		keep func(a, b bool) bool
	}
	operations := []operation{
		{polygon.Meet, func(a, b bool) bool { return a && b }},
		{func(a, b polygon.Shape) (polygon.Shape, error) { return polygon.Without(a, b) }, func(a, b bool) bool { return a && !b }},
		{func(a, b polygon.Shape) (polygon.Shape, error) { return polygon.Union(a, b) }, func(a, b bool) bool { return a || b }},
	}
	rapid.Check(t, func(t *rapid.T) {
		var drawn [3][]geometry.Point
		var shapes [3]polygon.Shape
		for i, name := range []string{"a", "b", "c"} {
			drawn[i] = crooked(t, name)
			if len(drawn[i]) > 2 {
				shapes[i] = polygon.Of(drawn[i])
			}
			if len(shapes[i]) == 0 || shapes[i].Validate() != nil {
				t.Skip("crosses itself")
			}
		}
		first, second := rapid.SampledFrom(operations).Draw(t, "first"), rapid.SampledFrom(operations).Draw(t, "second")
		ab, err := first.do(shapes[0], shapes[1])
		require.NoError(t, err)
		require.NoError(t, ab.Validate())
		abc, err := second.do(ab, shapes[2])
		require.NoError(t, err)
		require.NoError(t, abc.Validate(), "%v, then %v", ab, abc)
		for x := polygon.Length(-19.7); x < 40; x += 1.3 {
			for y := polygon.Length(-19.6); y < 40; y += 1.3 {
				p := geometry.Pt(x, y)
				var in [3]bool
				near := math.Inf(1)
				for i, d := range drawn {
					var edge float64
					in[i], edge = holds(p, d)
					near = min(near, edge)
				}
				if near < 0.05 {
					continue // on an edge
				}
				require.Equal(t, second.keep(first.keep(in[0], in[1]), in[2]), has(p, abc), "%v", p)
			}
		}
	})
}
