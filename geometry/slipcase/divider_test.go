package slipcase_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

// dividedJob is a case with a compartment for each of some volumes, 220 x 150
// and as thick as given.
func dividedJob(thicknesses ...float64) slipcase.Job {
	j := slipcase.DefaultJob(geometry.MM)
	j.Compartments = slipcase.EachItsOwn
	for _, t := range thicknesses {
		j.Books = append(j.Books, job.Book{Height: readings(220), Width: readings(150), Thickness: readings(t)})
	}
	return j
}

// A divider is slid in when the case is covered, so it must clear all that is
// folded over head and tail wall where it stands, side tabs too.
func TestDividerClearsWhatIsTurnedIn(t *testing.T) {
	for _, thicknesses := range [][]float64{{30, 30}, {12, 8, 20}, {3, 3}, {3, 30}, {5, 60}, {3, 3, 3}} {
		t.Run(fmt.Sprint(thicknesses), func(t *testing.T) {
			c, err := slipcase.Make(dividedJob(thicknesses...))
			require.NoError(t, err)
			_, high := piecesOf(c)["divider"].Size()
			// Lined boards of 2 + 0.15, and dividers of 2 + 2 x 0.15 between the
			// volumes, each with its clearance of 2.
			x := 2.15
			for _, thick := range thicknesses[:len(thicknesses)-1] {
				x += thick + 2
				between := c.Cavity.Height.MM() -
					pileBetween(c, slipcase.HeadInside, x, x+2.3) - pileBetween(c, slipcase.TailInside, x, x+2.3)
				assert.LessOrEqual(t, high.MM(), between+eps, "divider at %v", x)
				x += 2.3
			}
		})
	}
}

// pileBetween gives the greatest thickness of cloth on a face from one place
// across the case to another, counted on a fine grid of points.
func pileBetween(c slipcase.Case, face geometry.Face, from, to float64) (most float64) {
	var layers []foldup.Layer
	for _, f := range c.Proof.Faces {
		if f.Face == face {
			layers = f.Layers
		}
	}
	for i := range 5 {
		for depth := 0.25; depth < c.Outside.Width.MM(); depth += 0.5 {
			x := from + 0.01 + (to-from-0.02)*float64(i)/4
			at := geometry.Pt(slipcase.Length(x), slipcase.Length(depth))
			pile := 0.0
			for _, l := range layers {
				if l.Shape.Holds(at) {
					pile += c.Job.Cloth.Thickness.MM()
				}
			}
			most = max(most, pile)
		}
	}
	return most
}

// dividers draws cases of two to four volumes with a compartment for each.
func dividers() *rapid.Generator[slipcase.Case] {
	return casesWith(func(t *rapid.T, j *slipcase.Job) {
		j.Compartments = slipcase.EachItsOwn
		j.Covering = rapid.SampledFrom([]string{slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.AllPaper, slipcase.SidesOnly}).Draw(t, "covering")
		j.Lining.Order = rapid.SampledFrom([]string{slipcase.LinedBefore, slipcase.LinedAfter}).Draw(t, "order")
		j.Divider.SetBack = slipcase.Length(length(0, 60, 0).Draw(t, "set-back"))
		j.Divider.Lap = slipcase.Length(length(4, 60, 12).Draw(t, "lap"))
		for range rapid.IntRange(1, 3).Draw(t, "more volumes") {
			j.Books = append(j.Books, books().Draw(t, "book"))
		}
	})
}

// A divider is as deep as the cavity less its set-back, and lower than it by at
// least the covering that is turned in at head and tail, at most by it and a tab
// of each side; it is lined on both faces, each lining larger by the trim; its
// strip of cloth goes round its edge and onto both faces.
func TestDividerSizes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := dividers().Draw(t, "case")
		j, ps := c.Job, piecesOf(c)
		l, trim, lap := j.Lining.Thickness.MM(), j.Lining.Trim.MM(), j.Divider.Lap.MM()
		n, thick := len(j.Books)-1, j.Board.Thickness.MM()+2*l
		tall, deep, _ := extremes(j)
		deep += j.Clearance.Width.MM() - j.Divider.SetBack.MM()
		tall += j.Clearance.Height.MM()

		board, ok := ps["divider"]
		require.True(t, ok)
		w, h := board.Size()
		assert.Equal(t, [3]any{geometry.Board, n, geometry.GrainHeight}, [3]any{board.Material, board.Count, board.Grain})
		assert.InDelta(t, deep, w.MM(), eps)
		switch j.Covering {
		case slipcase.SidesOnly:
			assert.InDelta(t, tall, h.MM(), eps)
		case slipcase.ClothAndPaper:
			k := j.Cloth.Thickness.MM()
			assert.LessOrEqual(t, h.MM(), tall-2*k+eps)
			assert.GreaterOrEqual(t, h.MM(), tall-2*3*k-eps)
		default:
			_, k := oneMaterial(j)
			assert.InDelta(t, tall-2*k, h.MM(), eps)
		}

		strip := ps["divider strip"]
		sw, sh := strip.Size()
		assert.Equal(t, [3]any{geometry.Cloth, n, geometry.GrainHeight}, [3]any{strip.Material, strip.Count, strip.Grain})
		assert.InDelta(t, thick+2*lap, sw.MM(), eps)
		assert.Equal(t, h, sh)
		require.Len(t, strip.Folds, 2)
		for i, x := range []float64{lap, lap + thick} {
			for _, v := range strip.Folds[i].Vertices {
				assert.InDelta(t, x, v.X.MM(), eps)
			}
		}

		lining, lined := ps["divider lining"]
		require.Equal(t, l > 0, lined)
		if lined {
			lw, lh := lining.Size()
			assert.Equal(t, 2*n, lining.Count)
			assert.InDelta(t, w.MM()+2*trim, lw.MM(), eps)
			assert.InDelta(t, h.MM()+2*trim, lh.MM(), eps)
		}
	})
}

// One volume, or several in one compartment, have no divider.
func TestNoDivider(t *testing.T) {
	one := dividedJob(30)
	together := dividedJob(30, 20)
	together.Compartments = slipcase.OneCompartment
	for _, j := range []slipcase.Job{one, together} {
		c, err := slipcase.Make(j)
		require.NoError(t, err)
		for name := range piecesOf(c) {
			assert.NotContains(t, name, "divider")
		}
	}
	c, err := slipcase.Make(dividedJob(30, 20))
	require.NoError(t, err)
	assert.Contains(t, piecesOf(c), "divider")
}
