package bed_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper/bed"
	"forel/paper/pack"
	"forel/paper/stock"
)

type L = geometry.Length

func pt(x, y L) geometry.Point { return geometry.Pt(x, y) }

// quick is enough of a search for a test.
var quick = pack.Effort{Iterations: 20}

func lay(s bed.Setup, pieces ...geometry.Piece) ([]bed.Bed, error) {
	return bed.Lay(context.Background(), s, []bed.Job{{Pieces: pieces}}, quick)
}

func setup(w, h L) bed.Setup {
	s := bed.Default()
	s.Width, s.Height = w, h
	return s
}

func panel(name string, w, h L) geometry.Piece {
	return geometry.Piece{Name: name, Material: geometry.Board, Count: 1, Outline: geometry.Rectangle(geometry.Bx(0, 0, w, h)), Grain: geometry.GrainHeight}
}

// caseOf gives the pieces of a case of the ordinary kind.
func caseOf(t require.TestingT, change func(*slipcase.Job)) []geometry.Piece {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: job.Readings{221}, Width: job.Readings{148.5}, Thickness: job.Readings{32}}}
	if change != nil {
		change(&j)
	}
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(t, err)
	return c.Pieces
}

// Every piece is laid as often as it is cut, on a bed of its material, within
// the margin, at least the spacing from the others, its grain as the stock's.
func TestLaidSoundly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pieces := caseOf(t, func(j *slipcase.Job) {
			j.Books[0].Thickness = job.Readings{L(rapid.Float64Range(8, 90).Draw(t, "thickness"))}
			j.Covering = rapid.SampledFrom([]string{slipcase.ClothAndPaper, slipcase.AllPaper, slipcase.SidesOnly}).Draw(t, "covering")
			j.ThumbHole.Shape = rapid.SampledFrom([]string{slipcase.NoHole, slipcase.Semicircle}).Draw(t, "hole")
		})
		s := setup(L(rapid.Float64Range(400, 1200).Draw(t, "width")), L(rapid.Float64Range(400, 1200).Draw(t, "height")))
		s.Kerf = L(rapid.Float64Range(0, 0.4).Draw(t, "kerf"))
		s.Gap = L(rapid.Float64Range(0, 12).Draw(t, "gap"))
		s.Margin = L(rapid.Float64Range(0, 12).Draw(t, "margin"))
		if s.Gap > 0 {
			s.Tabs = rapid.IntRange(0, 4).Draw(t, "tabs")
		}
		s.Creased[geometry.Cloth] = rapid.Bool().Draw(t, "cloth is creased")
		g := rapid.SampledFrom([]geometry.Grain{geometry.GrainHeight, geometry.GrainWidth, stock.NoGrain}).Draw(t, "grain")
		s.Grain = map[geometry.Material]geometry.Grain{geometry.Board: g, geometry.Cloth: g, geometry.Paper: g, geometry.Lining: g}
		beds, err := lay(s, pieces...)
		if err != nil {
			assert.Regexp(t, "larger than the bed|too narrow for a kerf", err.Error())
			t.Skip("can't be laid out")
		}
		count := map[string]int{}
		for _, b := range beds {
			free := geometry.Bx(0, 0, b.Width, b.Height).Grow(-s.Margin + 0.001)
			for i, p := range b.Parts {
				count[p.Piece.Name]++
				assert.Equal(t, b.Material, p.Piece.Material)
				assert.True(t, free.Contains(p.Cut.Bounds()), "%s is outside the bed", p.Piece.Name)
				assert.InDelta(t, p.Piece.Outline.SignedArea(), math.Abs(p.Outline.SignedArea()), 1e-6)
				if g != stock.NoGrain {
					assert.Equal(t, p.Piece.Grain != g, p.Turned, "%s against the grain", p.Piece.Name)
				}
				for _, q := range b.Parts[:i] {
					apart := p.Cut.Bounds().Grow(s.Gap - 0.001).Intersect(q.Cut.Bounds())
					assert.True(t, apart.Empty(), "%s is too near %s", p.Piece.Name, q.Piece.Name)
				}
			}
			checkSteps(t, s, b)
		}
		for _, p := range pieces {
			assert.Equal(t, p.Count, count[p.Name], p.Name)
		}
	})
}

// checkSteps: each crease, slit and outline is done once, creases and inside
// cuts before any outline, and the way is as told and no longer than it was.
func checkSteps(t require.TestingT, s bed.Setup, b bed.Bed) {
	last := bed.Crease
	lengths := map[int]float64{}
	var travel L
	at := geometry.Point{}
	done := map[bed.Kind]int{}
	for _, step := range b.Steps {
		assert.GreaterOrEqual(t, step.Kind, last)
		last = step.Kind
		done[step.Kind]++
		for i, p := range step.Paths {
			vs := p.Vertices
			if i == 0 {
				travel += at.Distance(vs[0].Point)
			}
			at = vs[len(vs)-1].Point
			if p.Closed {
				at = vs[0].Point
			}
			if step.Kind == bed.Outside {
				lengths[step.Part] += length(p)
			}
		}
	}
	slits, folds, shared := 0, 0, 0.0
	for i, p := range b.Parts {
		slits += len(p.Piece.Slits)
		if s.Creased[b.Material] {
			folds += len(p.Piece.Folds)
		}
		if s.Gap > 0 {
			assert.InDelta(t, length(p.Cut)-float64(s.Tabs)*(s.TabWidth+s.Kerf).MM(), lengths[i], 1e-6, "tabs are as broad as asked for")
		} else {
			shared += length(p.Cut) - lengths[i]
		}
	}
	assert.InDelta(t, b.Shared.MM(), shared, 0.01)
	assert.Equal(t, map[bed.Kind]int{bed.Crease: folds, bed.Inside: slits}, map[bed.Kind]int{bed.Crease: done[bed.Crease], bed.Inside: done[bed.Inside]})
	if s.Gap > 0 {
		assert.Equal(t, len(b.Parts), done[bed.Outside])
	}
	assert.InDelta(t, travel.MM(), b.Travel.After.MM(), 1e-6)
	assert.LessOrEqual(t, b.Travel.After, b.Travel.Before+1e-6)
}

func length(p geometry.Path) float64 {
	var sum float64
	for _, s := range p.Segments() {
		if s.Bulge == 0 {
			sum += s.From.Distance(s.To).MM()
			continue
		}
		_, r, _, sweep := s.Arc()
		sum += r.MM() * math.Abs(sweep)
	}
	return sum
}

// A hole is shrunk and cut before its outline; a slit is cut as it is drawn.
func TestHoleAndSlit(t *testing.T) {
	p := panel("plate", 100, 80)
	p.Slits = []geometry.Path{geometry.Circle(pt(50, 40), 10), geometry.Line(pt(20, 80), pt(20, 60))}
	s := setup(200, 200)
	s.Kerf, s.Margin = 0.3, 0
	beds, err := lay(s, p)
	require.NoError(t, err)
	var kinds []bed.Kind
	for _, step := range beds[0].Steps {
		kinds = append(kinds, step.Kind)
		switch {
		case step.Kind == bed.Outside:
			assert.InDelta(t, 100.3*80.3, math.Abs(step.Paths[0].SignedArea()), 1e-9)
		case step.Paths[0].Closed:
			assert.InDelta(t, math.Pi*9.85*9.85, math.Abs(step.Paths[0].SignedArea()), 1e-9)
		default:
			assert.InDelta(t, 20, length(step.Paths[0]), 1e-9)
		}
	}
	assert.Equal(t, []bed.Kind{bed.Inside, bed.Inside, bed.Outside}, kinds)
}

// A tab keeps off corners, off arcs, and off where a slit meets the outline.
func TestTabs(t *testing.T) {
	p := panel("plate", 100, 60)
	p.Slits = []geometry.Path{geometry.Line(pt(50, 60), pt(50, 40))}
	s := setup(200, 200)
	s.Margin, s.Tabs, s.TabWidth = 0, 2, 1
	beds, err := lay(s, p)
	require.NoError(t, err)
	runs := beds[0].Steps[len(beds[0].Steps)-1].Paths
	require.Len(t, runs, 2)
	for i, r := range runs {
		end := r.Vertices[len(r.Vertices)-1].Point
		next := runs[(i+1)%2].Vertices[0].Point
		assert.InDelta(t, 1, end.Distance(next).MM(), 1e-9, "a tab of 1 mm")
		mid := end.Add(next).Mul(0.5)
		slit := pt(50, 0) // Y downward on the bed
		assert.Greater(t, mid.Distance(slit).MM(), 3.0)
		for _, c := range p.Outline.Vertices {
			assert.Greater(t, mid.Distance(pt(c.X, 60-c.Y)).MM(), 3.0)
		}
	}
	_, err = lay(s, panel("chip", 8, 5))
	require.NoError(t, err)
	s.Tabs = 5
	_, err = lay(s, panel("chip", 8, 5))
	assert.ErrorContains(t, err, "chip: its straight edges have no room for 5 tabs")
}

// What does not fit is named with the bed and what would do.
func TestTooLarge(t *testing.T) {
	s := setup(300, 200)
	_, err := lay(s, panel("side", 150, 228))
	assert.ErrorContains(t, err, "side: 150.0 x 228.0 mm is larger than the bed of 300 x 200 mm less its margin of 5 mm as the grain of the board lies; lay the board with its grain along the bed's width: --grain board=width")
	_, err = lay(s, panel("side", 350, 228.2), panel("door", 900, 20))
	assert.ErrorContains(t, err, "a bed of at least 910 x 239 mm would do: --bed 910x239")
	assert.ErrorContains(t, err, "door: ", "all that does not fit is named")
	_, err = lay(s, panel("side", 350, 228.2), panel("door", 60, 20), panel("small lid", 50, 20))
	assert.ErrorContains(t, err, `: --bed 360x239; or lay out the others alone: --only "door,small lid"`)
	s.Grain = map[geometry.Material]geometry.Grain{geometry.Board: stock.NoGrain}
	_, err = lay(s, panel("side", 150, 228))
	assert.NoError(t, err)
	// Just as large as the bed allows.
	s = setup(160, 238)
	_, err = lay(s, panel("side", 150, 228))
	assert.NoError(t, err)
	s.Kerf = 0.1
	_, err = lay(s, panel("side", 150, 228))
	assert.ErrorContains(t, err, "with half a kerf on each side")
}

func TestTooNarrowForTheBeam(t *testing.T) {
	p := panel("comb", 0, 0)
	p.Outline = geometry.Polygon(pt(0, 0), pt(100, 0), pt(100, 60), pt(50.1, 60), pt(50.1, 40), pt(50, 40), pt(50, 60), pt(0, 60))
	s := setup(200, 200)
	s.Kerf = 0.2
	_, err := lay(s, p)
	assert.ErrorContains(t, err, "comb: a notch of its outline near 50.")
	assert.ErrorContains(t, err, "too narrow for a kerf of 0.2 mm")
}

// The order is never longer than the one pieces were laid out in, and a comb
// of slits, given in a bad order, is done along the comb: each way of a
// stop is used.
func TestTravel(t *testing.T) {
	p := panel("comb", 220, 60)
	for i := range 20 {
		x := L(10 + 10*((i*7)%20))
		p.Slits = append(p.Slits, geometry.Line(pt(x, 10), pt(x, 50)))
	}
	s := setup(300, 200)
	s.Margin = 0
	beds, err := lay(s, p)
	require.NoError(t, err)
	// At best: from the corner to the end of the first slit, 10 mm between
	// neighbours, every other slit backward, and from the last, at 200, to the far corner.
	assert.InDelta(t, math.Hypot(10, 10)+19*10+math.Hypot(20, 10), beds[0].Travel.After.MM(), 1e-6)
	assert.Greater(t, beds[0].Travel.Before.MM(), 3*beds[0].Travel.After.MM())
}

func TestFaults(t *testing.T) {
	s := setup(600, 300)
	s.Gap, s.Tabs = 0, 2
	assert.ErrorContains(t, s.Faults()[0], "a spacing of 0 mm with tabs")
	s = setup(100, 300)
	s.Margin = 50
	assert.ErrorContains(t, s.Faults()[0], "leaves nothing of a bed of 100 x 300 mm")
	assert.Empty(t, setup(600, 300).Faults())
}

func TestParseSize(t *testing.T) {
	for text, want := range map[string][2]L{
		"600x300": {600, 300}, "600 x 300 mm": {600, 300}, "24x12in": {24 * 25.4, 12 * 25.4}, "24 in × 300 mm": {24 * 25.4, 300}, "60x30 cm": {600, 300}, "a2": {420, 594}, // ISO 216
	} {
		s, err := bed.ParseSize(text, geometry.MM)
		require.NoError(t, err, text)
		assert.InDelta(t, want[0].MM(), s.Width.MM(), 1e-9, text)
		assert.InDelta(t, want[1].MM(), s.Height.MM(), 1e-9, text)
	}
	for _, text := range []string{"", "600", "600x", "axb", "600x300x2", "600*300"} {
		_, err := bed.ParseSize(text, geometry.MM)
		assert.Error(t, err, text)
	}
}
