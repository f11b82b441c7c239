package foldup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/slipcase"
)

// Lines that end a few nanometres from each other part a piece wherever on the
// table it is drawn: a fold across it, in two runs that end beside each other,
// leaves two parts that share it.
func TestEndsBesideEachOtherAreOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := func(name string, most float64) foldup.Length {
			return foldup.Length(rapid.Float64Range(0, most).Draw(t, name))
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
		parts := foldup.Regions(p)
		require.Len(t, parts, 2)
		for _, part := range parts {
			var long foldup.Length
			for _, j := range part.Joins {
				long += j.Ends[0].Distance(j.Ends[1])
			}
			assert.InDelta(t, 40, long.MM(), 1e-3)
		}
	})
}

// Linings of 0.8 mm put in afterwards leave a case of which the tucks are as broad
// as its board is thick, but for nanometres: it is as sound as one of 0.79 mm.
func TestTucksAsBroadAsABoardIsThick(t *testing.T) {
	for _, thick := range []foldup.Length{0.79, 0.8 - 3.2e-6, 0.8 - 1e-7, 0.8, 0.8 + 2.1e-6, 0.81} {
		j := jobFor(220, 148, 1.4)
		j.Lining.Thickness, j.Lining.Order = thick, slipcase.LinedAfter
		_, err := slipcase.Make(j)
		assert.NoError(t, err, "%v", float64(thick))
	}
}
