package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
)

func line(x0, y0, x1, y1 float64) geometry.Path { return geometry.Line(pt(x0, y0), pt(x1, y1)) }

// ruled gives the rulings of a piece with the guides and folds.
func ruled(guides, folds []geometry.Path) []geometry.Path {
	p := geometry.Piece{Folds: folds}
	for _, g := range guides {
		p.Guides = append(p.Guides, geometry.Guide{Path: g})
	}
	return p.Rulings()
}

// What is left of the guides was worked out by hand on squared paper.
func TestRulings(t *testing.T) {
	square := geometry.Rectangle(bx(0, 0, 10, 10))
	for _, c := range []struct {
		name          string
		guides, folds []geometry.Path
		want          []geometry.Path
	}{
		{"nothing", nil, []geometry.Path{line(0, 0, 9, 0)}, nil},
		{"no fold", []geometry.Path{line(0, 0, 9, 0)}, nil, []geometry.Path{line(0, 0, 9, 0)}},
		{"same", []geometry.Path{line(0, 0, 9, 0)}, []geometry.Path{line(0, 0, 9, 0)}, nil},
		{"same, other way", []geometry.Path{line(0, 0, 9, 0)}, []geometry.Path{line(9, 0, 0, 0)}, nil},
		{"fold longer", []geometry.Path{line(1, 1, 2, 2)}, []geometry.Path{line(0, 0, 9, 9)}, nil},
		{"fold in the middle", []geometry.Path{line(0, 0, 9, 0)}, []geometry.Path{line(3, 0, 5, 0)}, []geometry.Path{line(0, 0, 3, 0), line(5, 0, 9, 0)}},
		{"fold over the start", []geometry.Path{line(0, 0, 9, 0)}, []geometry.Path{line(5, 0, -3, 0)}, []geometry.Path{line(5, 0, 9, 0)}},
		{"fold over the end", []geometry.Path{line(9, 0, 0, 0)}, []geometry.Path{line(5, 0, -3, 0)}, []geometry.Path{line(9, 0, 5, 0)}},
		{"fold further along", []geometry.Path{line(0, 0, 9, 0)}, []geometry.Path{line(10, 0, 12, 0)}, []geometry.Path{line(0, 0, 9, 0)}},
		{"folds end to end", []geometry.Path{line(0, 0, 9, 0)}, []geometry.Path{line(0, 0, 4, 0), line(4, 0, 9, 0)}, nil},
		{"folds overlap", []geometry.Path{line(0, 0, 9, 0)}, []geometry.Path{line(1, 0, 4, 0), line(3, 0, 8, 0)}, []geometry.Path{line(0, 0, 1, 0), line(8, 0, 9, 0)}},
		{"parallel", []geometry.Path{line(0, 0, 9, 0)}, []geometry.Path{line(0, 0.001, 9, 0.001)}, []geometry.Path{line(0, 0, 9, 0)}},
		{"crossing", []geometry.Path{line(0, 0, 9, 0)}, []geometry.Path{line(4, -1, 5, 1)}, []geometry.Path{line(0, 0, 9, 0)}},
		{"hair's breadth at the end", []geometry.Path{line(0, 0, 9, 0)}, []geometry.Path{line(4, 0, 9, 0.001)}, []geometry.Path{line(0, 0, 9, 0)}},
		{
			"one side of a square",
			[]geometry.Path{square},
			[]geometry.Path{line(10, -5, 10, 15)},
			[]geometry.Path{line(0, 0, 10, 0), line(10, 10, 0, 10), line(0, 10, 0, 0)},
		},
		{"guide the same twice", []geometry.Path{line(0, 0, 9, 0), line(0, 0, 9, 0)}, nil, []geometry.Path{line(0, 0, 9, 0)}},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, ruled(c.guides, c.folds)) })
	}
}

// A guide that is an arc is ruled as that arc.
func TestRulingsKeepArcs(t *testing.T) {
	arc := geometry.Path{Vertices: []geometry.Vertex{vertex(10, 0, 1), vertex(-10, 0, 0)}}
	got := ruled([]geometry.Path{arc}, []geometry.Path{line(-10, 0, 10, 0)})
	require.Len(t, got, 1)
	assertBox(t, bx(-10, 0, 10, 10), got[0].Bounds())
}

// On one line, guide and fold make a whole: what is ruled is the guide's
// length less what fold and guide share, and none of it lies on the fold.
func TestRulingsShareNothingWithFolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		angle := rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
		along := rapid.Float64Range(-300, 300)
		origin := pt(along.Draw(t, "x"), along.Draw(t, "y"))
		at := func(d float64) geometry.Point { return origin.Add(pt(math.Cos(angle), math.Sin(angle)).Mul(d)) }
		g0, g1, f0, f1 := along.Draw(t, "g0"), along.Draw(t, "g1"), along.Draw(t, "f0"), along.Draw(t, "f1")
		if math.Abs(g0-g1) < 1e-3 || math.Abs(f0-f1) < 1e-3 {
			t.Skip("no line")
		}
		got := ruled([]geometry.Path{geometry.Line(at(g0), at(g1))}, []geometry.Path{geometry.Line(at(f0), at(f1))})

		shared := max(0, min(max(g0, g1), max(f0, f1))-max(min(g0, g1), min(f0, f1)))
		total := 0.0
		for _, p := range got {
			require.Len(t, p.Vertices, 2)
			a, b := p.Vertices[0].Point, p.Vertices[1].Point
			total += a.Distance(b).MM()
			// The middle of a ruling is on no fold.
			middle := a.Add(b).Mul(0.5)
			assert.Positive(t, offLine(middle, at(f0), at(f1)))
			assert.InDelta(t, 0, offLine(middle, at(g0), at(g1)), 1e-9)
		}
		assert.InDelta(t, math.Abs(g1-g0)-shared, total, 1e-5)
	})
}

func TestPieceSizeAndCuts(t *testing.T) {
	p := geometry.Piece{
		Outline: closed(vertex(10, 0, 1), vertex(-10, 0, 0)),
		Slits:   []geometry.Path{line(0, 1, 0, 9), line(2, 1, 2, 5)},
	}
	w, h := p.Size()
	assert.InDelta(t, 20, w.MM(), 1e-9)
	assert.InDelta(t, 10, h.MM(), 1e-9)
	assert.Equal(t, []geometry.Path{p.Outline, p.Slits[0], p.Slits[1]}, p.Cuts())
	p.Cuts()[1] = geometry.Path{}
	assert.Len(t, p.Slits[0].Vertices, 2, "the piece itself is left alone")
}
