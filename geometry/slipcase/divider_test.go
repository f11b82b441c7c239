package slipcase_test

import (
	"fmt"
	"math"
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

// A divider stands when the case is covered, so what is turned in at head and tail
// is cut out where it stands with its strip round it, side tabs too, and fills the rest:
// nothing lies on head and tail wall there.
func TestNothingIsTurnedInWhereADividerStands(t *testing.T) {
	for _, covering := range []string{slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.AllPaper} {
		for _, thicknesses := range [][]float64{{30, 30}, {12, 8, 20}, {3, 3}, {3, 30}, {5, 60}, {3, 3, 3}, {1, 1, 1}} {
			for _, back := range []float64{0, 7.6e-6, 1e-4, 0.001, 0.02, 4, 30} {
				t.Run(fmt.Sprint(covering, thicknesses, back), func(t *testing.T) {
					j := dividedJob(thicknesses...)
					j.Covering, j.Divider.SetBack = covering, slipcase.Length(back)
					c, err := slipcase.Make(j)
					require.NoError(t, err)
					_, high := piecesOf(c)["divider"].Size()
					assert.InDelta(t, c.Stands.Cavity().Height.MM(), high.MM(), eps)
					// Lined boards of 2 + 0.15, and dividers of 2 + 2 x 0.15 between the
					// volumes, each with its clearance of 2. The strip is 0.35 thick.
					x := 2.15
					for _, thick := range thicknesses[:len(thicknesses)-1] {
						x += thick + 2
						deep := c.Stands.Outside().Width.MM() - 2.15 - back // from the wall
						for _, face := range []geometry.Face{slipcase.HeadInside, slipcase.TailInside} {
							assert.Zero(t, pileBetween(c, face, x-0.35, x+2.3+0.35, 2.15, 2.15+deep), "divider at %v", x)
						}
						x += 2.3
					}
					// Elsewhere the wall is covered as before: in the middle of a wide compartment.
					if thicknesses[0] >= 30 && back < 30 {
						assert.Positive(t, pileBetween(c, slipcase.HeadInside, 15, 20, 2.15, 200))
					}
				})
			}
		}
	}
}

// pileBetween gives the greatest thickness of cloth on a face from one place
// across the case to another and from one depth to another, counted on a fine grid of
// points.
func pileBetween(c slipcase.Case, face geometry.Face, from, to, low, high float64) (most float64) {
	var layers []foldup.Patch
	for _, f := range c.Proof.Faces {
		if f.Face == face {
			layers = f.Layers
		}
	}
	for i := range 5 {
		for depth := low + 0.01; depth < min(high, c.Stands.Outside().Width.MM()); depth += 0.5 {
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
		j.ThumbHole.Shape = rapid.SampledFrom([]string{slipcase.NoHole, slipcase.Semicircle, slipcase.Triangle}).Draw(t, "hole")
		j.Divider.SetBack = slipcase.Length(length(0, 60, 0).Draw(t, "set-back"))
		j.Divider.Lap = slipcase.Length(length(4, 60, 12).Draw(t, "lap"))
		for range rapid.IntRange(1, 3).Draw(t, "more volumes") {
			j.Books = append(j.Books, books().Draw(t, "book"))
		}
	})
}

// A divider is as deep as the cavity less its set-back, and as high; it is lined on both
// faces, each lining larger by the trim; its strip of cloth goes round its edge and onto
// both faces. From three volumes on it has the thumb hole of the sides, as far as that
// reaches behind its set-back, 3 mm at least; then a strip lies below it and one above.
func TestDividerSizes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := dividers().Draw(t, "case")
		j, ps := c.Job, piecesOf(c)
		l, trim, lap := j.Lining.Thickness.MM(), j.Lining.Trim.MM(), j.Divider.Lap.MM()
		n, thick := len(j.Books)-1, j.Board.Thickness.MM()+2*l
		tall, deep, _ := extremes(j)
		back := j.Divider.SetBack.MM()
		deep += j.Clearance.Width.MM() - back
		tall += j.Clearance.Height.MM()

		board, ok := ps["divider"]
		require.True(t, ok)
		w, h := board.Size()
		assert.Equal(t, [3]any{geometry.Board, n, geometry.GrainHeight}, [3]any{board.Material, board.Count, board.Grain})
		assert.InDelta(t, deep, w.MM(), eps)
		assert.InDelta(t, tall, h.MM(), eps)

		r := 0.0
		if j.ThumbHole.Shape != slipcase.NoHole {
			r = holeSize(t, ps["side"])
		}
		long, strips := tall, n
		notched := n > 1 && r-back >= 3
		edge, has := ps["notch strip"]
		require.Equal(t, notched, has)
		if !notched {
			assert.InDelta(t, 0, cutAway(board), 1e-4)
		} else {
			half := holeSize(t, board)
			area, around := (r-back)*(r-back), 2*math.Sqrt2*(r-back) // a triangle with a right angle at its point
			if j.ThumbHole.Shape == slipcase.Semicircle {
				angle := 2 * math.Acos(back/r) // a segment of a circle
				area, around = r*r/2*(angle-math.Sin(angle)), r*angle
				assert.InDelta(t, r*math.Sin(angle/2), half, eps)
			} else {
				assert.InDelta(t, r-back, half, eps)
			}
			assert.InDelta(t, area, cutAway(board), 1e-3)
			ew, eh := edge.Size()
			assert.InDelta(t, thick+2*3, ew.MM(), eps)
			assert.InDelta(t, around+2*3, eh.MM(), eps)
			assert.Equal(t, n, edge.Count)
			assert.InDelta(t, ew.MM()*eh.MM()-4*3*3, edge.Outline.SignedArea(), eps, "without its corners")
			long, strips = tall/2-half, 2*n
		}

		strip := ps["divider strip"]
		sw, sh := strip.Size()
		assert.Equal(t, [3]any{geometry.Cloth, strips, geometry.GrainHeight}, [3]any{strip.Material, strip.Count, strip.Grain})
		assert.InDelta(t, thick+2*lap, sw.MM(), eps)
		assert.InDelta(t, long, sh.MM(), eps)
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
