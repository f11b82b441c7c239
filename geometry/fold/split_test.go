package fold_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/space"
)

// Lines that end a few nanometres from each other part a piece wherever on the
// table it is drawn: a fold across it, in two runs that end beside each other,
// leaves two parts that share it.
func TestEndsBesideEachOtherAreOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := func(name string, most float64) fold.Length {
			return fold.Length(rapid.Float64Range(0, most).Draw(t, name))
		}
		corner := geometry.Pt(at("x", 1), at("y", 1))
		beside := geometry.Pt(at("beside x", 5e-6), at("beside y", 5e-6))
		p := geometry.Piece{
			Name:    "strip",
			Outline: geometry.Polygon(corner, corner.Add(geometry.Pt(40, 0)), corner.Add(geometry.Pt(40, 20)), corner.Add(geometry.Pt(0, 20))),
		}
		middle := corner.Add(geometry.Pt(15, 10))
		p.Folds = []geometry.Path{
			geometry.Line(corner.Add(geometry.Pt(0, 10)), middle),
			geometry.Line(middle.Add(beside), corner.Add(geometry.Pt(40, 10))),
		}
		parts := fold.Split(p)
		require.Len(t, parts, 2)
		for _, part := range parts {
			var long fold.Length
			for _, j := range part.Joins {
				long += j.Length()
			}
			assert.InDelta(t, 40, long.MM(), 1e-3)
		}
	})
}

// A fold that ends within a piece parts nothing, and is told.
func TestAFoldThatEndsShortIsIdle(t *testing.T) {
	p := geometry.Piece{Outline: geometry.Rectangle(geometry.Bx(0, 0, 40, 20)), Folds: []geometry.Path{geometry.Line(geometry.Pt(0, 10), geometry.Pt(39, 10))}}
	parts := fold.Split(p)
	require.Len(t, parts, 1)
	assert.NotEmpty(t, parts[0].Idle)
	assert.Empty(t, parts[0].Joins)
	assert.NotContains(t, parts[0].Outline, geometry.Pt(39, 10), "the fold leaves no spike")
}

// Turned about a join a part keeps its lengths and right angles, its points on the join
// stay, and it stands from its plane at the angle it is turned by.
func TestTurned(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := func(name string) fold.Length { return fold.Length(rapid.Float64Range(-50, 50).Draw(t, name)) }
		degrees := rapid.SampledFrom([]float64{0, 12, 90, 137, 180, -90, 270}).Draw(t, "degrees")
		j := fold.Join{From: geometry.Pt(num("x"), num("y")), At: geometry.Pt(num("u"), num("v")), Kind: fold.Fold}
		if j.Length() < 1 {
			t.Skip("a point")
		}
		flat := space.Frame{O: space.Vec{X: num("ox"), Y: 1}, U: space.Vec{Y: 1}, V: space.Vec{Z: 1}}
		f := fold.Turned(flat, j, degrees)
		for _, d := range []fold.Length{f.U.Size() - 1, f.V.Size() - 1, f.U.Dot(f.V), f.At(j.From).Sub(flat.At(j.From)).Size(), f.At(j.At).Sub(flat.At(j.At)).Size()} {
			assert.InDelta(t, 0, d.MM(), 1e-9)
		}
		assert.InDelta(t, math.Cos(degrees*math.Pi/180), f.Normal().Dot(flat.Normal()).MM(), 1e-9)
	})
}
