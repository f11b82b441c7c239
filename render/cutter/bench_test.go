package cutter_test

import (
	"context"
	"math"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper/bed"
	"forel/paper/pack"
	"forel/render"
	"forel/render/cutter"
)

// each calls do with every element of a drawing.
func each(e element, do func(element)) {
	do(e)
	for _, c := range e.Inner {
		each(c, do)
	}
}

// Every line is as wide as was asked for, whatever its layer; names are lines too.
func TestWidthOfLines(t *testing.T) {
	s := setup(0.2, 0)
	for _, b := range beds(t, s) {
		o := plain
		o.Labels, o.Line = true, 0.07
		d, err := read(cutter.SVG(b, s, o))
		require.NoError(t, err)
		names := 0
		each(d, func(e element) {
			if e.XMLName.Local == "path" {
				assert.Equal(t, "0.07", e.attr("stroke-width"))
				assert.Equal(t, "none", e.attr("fill"))
			}
			assert.NotEqual(t, "text", e.XMLName.Local)
		})
		for _, g := range layer(d, render.Legend) {
			names++
			assert.NotEmpty(t, g.Inner)
		}
		assert.Equal(t, len(b.Parts), names)
	}
}

// What a tool creases is as asked for, material by material.
func TestCreasesAsAskedFor(t *testing.T) {
	s := setup(0, 0)
	s.Creased = map[geometry.Material]bool{geometry.Cloth: true}
	creased := map[geometry.Material]bool{}
	for _, b := range beds(t, s) {
		d, err := read(cutter.SVG(b, s, plain))
		require.NoError(t, err)
		if len(layer(d, render.Creasing)) > 0 {
			creased[b.Material] = true
		}
	}
	assert.Equal(t, s.Creased, creased)
}

// stretch is a level or upright piece of a cut: where it is across, and from where to where.
type stretch struct{ from, to float64 }

// union returns the length of upright and level lines, what lies on each other counted
// once; lines within 0.002 mm of each other are one.
func union(t *testing.T, runs []run) (sum float64) {
	lines := map[[2]int][]stretch{}
	add := func(way int, at, from, to float64) {
		for _, near := range []int{-1, 0, 1} { // the key of a line that is there already
			if key := [2]int{way, int(math.Round(at*500)) + near}; lines[key] != nil {
				lines[key] = append(lines[key], stretch{min(from, to), max(from, to)})
				return
			}
		}
		key := [2]int{way, int(math.Round(at * 500))}
		lines[key] = []stretch{{min(from, to), max(from, to)}}
	}
	for _, r := range runs {
		points := r.points
		if r.closed {
			points = append(points[:len(points):len(points)], points[0])
		}
		for i := range points[1:] {
			a, b := points[i], points[i+1]
			if math.Abs(a.x-b.x) < 1e-3 {
				add(0, a.x, a.y, b.y)
			} else {
				require.InDelta(t, a.y, b.y, 1e-3)
				add(1, a.y, a.x, b.x)
			}
		}
	}
	for _, on := range lines {
		slices.SortFunc(on, func(a, b stretch) int { return int(math.Copysign(1, a.from-b.from)) })
		end := math.Inf(-1)
		for _, s := range on {
			sum += max(0, s.to-max(s.from, end))
			end = max(end, s.to)
		}
	}
	return sum
}

// Without a spacing each edge that pieces share is cut once: the file's cuts are as long as
// the lines of all outlines together, what lies on each other counted once, and shorter
// than the outlines.
func TestSharedEdgesAreCutOnce(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		var pieces []geometry.Piece
		for range rapid.IntRange(2, 12).Draw(rt, "pieces") {
			w, h := L(rapid.IntRange(20, 90).Draw(rt, "width")), L(rapid.Float64Range(20, 90).Draw(rt, "height"))
			pieces = append(pieces, geometry.Piece{Name: "panel", Material: geometry.Board, Count: 2, Outline: geometry.Rectangle(geometry.Bx(0, 0, w, h))})
		}
		s := setup(L(rapid.SampledFrom([]float64{0, 0.18}).Draw(rt, "kerf")), 0)
		s.Gap = 0
		laid, err := bed.Lay(context.Background(), s, []bed.Job{{Pieces: pieces}}, pack.Effort{Iterations: 20})
		require.NoError(t, err)
		for _, b := range laid {
			d, err := read(cutter.SVG(b, s, plain))
			require.NoError(t, err)
			var cut, all []run
			for _, g := range layer(d, render.Cutting) {
				runs, err := g.runs()
				require.NoError(t, err)
				cut = append(cut, runs...)
			}
			var whole, done float64
			for _, p := range b.Parts {
				r := run{closed: true}
				for _, v := range p.Cut.Vertices {
					r.points = append(r.points, xy{v.X.MM(), v.Y.MM()})
				}
				all, whole = append(all, r), whole+r.length()
			}
			for _, r := range cut {
				done += r.length()
			}
			assert.InDelta(t, union(t, all), done, 0.05)
			assert.InDelta(t, union(t, all), union(t, cut), 0.05, "every edge is cut")
			assert.InDelta(t, whole-done, b.Shared.MM(), 0.05)
			if len(b.Parts) > 1 {
				assert.Less(t, done, whole-10)
			}
		}
	})
}

// The test square, cut by a beam that takes away what it will, measures so that the rule in
// the drawing's words returns just that.
func TestSquareTellsTheKerf(t *testing.T) {
	rule := regexp.MustCompile(`kerf = (?:([0-9.]+) mm \+ )?\(slot - square \+ ([0-9.]+) mm\) / 2`)
	for _, madeUp := range []L{0, 0.2} {
		for _, beam := range []float64{0, 0.12, 0.31} {
			s := setup(madeUp, 3)
			b, err := bed.Test(s)
			require.NoError(t, err)
			d, err := read(cutter.TestSVG(b, s, plain))
			require.NoError(t, err)
			size := func(l render.Layer) (wide, tall float64) {
				groups := layer(d, l)
				require.Len(t, groups, 1)
				runs, err := groups[0].runs()
				require.NoError(t, err)
				require.Len(t, runs, 1)
				require.True(t, runs[0].closed)
				lo, hi := box(runs)
				return hi.x - lo.x, hi.y - lo.y
			}
			wide, tall := size(render.Cutting)
			assert.InDelta(t, wide, tall, micron)
			_, slot := size(render.InsideCuts)
			words := rule.FindStringSubmatch(d.child("desc").Text)
			require.NotNil(t, words)
			number := func(text string) float64 {
				v, _ := strconv.ParseFloat(text, 64)
				return v
			}
			assert.InDelta(t, beam, number(words[1])+((slot+beam)-(wide-beam)+number(words[2]))/2, micron)
		}
	}
}
