package fit_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/onepiece"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// Length is short for that of geometry.
type Length = geometry.Length

// of makes a job with one invented book, one reading of each dimension.
func of(height, width, thickness Length) slipcase.Job {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: job.Readings{height}, Width: job.Readings{width}, Thickness: job.Readings{thickness}}}
	return j
}

func made(t testing.TB, j slipcase.Job) slipcase.Case {
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(t, err)
	return c
}

// cases draws cases of boards of every kind that can be made.
func cases() *rapid.Generator[slipcase.Case] {
	return rapid.Custom(func(t *rapid.T) slipcase.Case {
		length := func(lo, hi float64, name string) Length { return Length(rapid.Float64Range(lo, hi).Draw(t, name)) }
		j := slipcase.DefaultJob(geometry.MM)
		for range rapid.IntRange(1, 4).Draw(t, "volumes") {
			b := job.Book{
				Height:    job.Readings{length(120, 400, "height")},
				Width:     job.Readings{length(90, 300, "width")},
				Thickness: job.Readings{length(4, 60, "thickness")},
			}
			if rapid.Bool().Draw(t, "tapered") {
				b.ForeEdge = job.Readings{length(4, 60, "fore-edge")}
			}
			j.Books = append(j.Books, b)
		}
		for _, c := range j.Settings().Words() {
			*c.Word = rapid.SampledFrom(c.Words).Draw(t, c.Key)
		}
		j.Pattern, j.LiningPattern = slipcase.DefaultJob(geometry.MM).Pattern, slipcase.DefaultJob(geometry.MM).LiningPattern // which no fit asks for
		j.Board.Thickness = length(1, 3.2, "board")
		j.Lining.Thickness = rapid.SampledFrom([]Length{0, 0.15, 0.3}).Draw(t, "lining")
		j.Cloth.Thickness, j.SidePaper.Thickness = length(0.1, 0.5, "cloth"), length(0.05, 0.3, "paper")
		j.Clearance = job.Clearance{Height: length(1.5, 6, "height"), Width: length(0, 4, "depth"), Thickness: length(2, 6, "thickness")}
		j.Uncertainty.Cutting = length(0, 1, "cutting")
		j.Limits.Swell = float64(length(0, 3, "swell"))
		c, err := plantest.Make[slipcase.Case](j)
		if err != nil {
			t.Skip("can't be made")
		}
		return c
	})
}

// cards draws cases of card.
func cards() *rapid.Generator[onepiece.Case] {
	return rapid.Custom(func(t *rapid.T) onepiece.Case {
		length := func(lo, hi float64, name string) Length { return Length(rapid.Float64Range(lo, hi).Draw(t, name)) }
		j := onepiece.DefaultJob(geometry.MM)
		j.Books = []job.Book{{Height: job.Readings{length(120, 300, "height")}, Width: job.Readings{length(90, 200, "width")}, Thickness: job.Readings{length(8, 50, "thickness")}}}
		j.Card.Kind = rapid.SampledFrom([]string{onepiece.Solid, onepiece.Corrugated}).Draw(t, "kind of card")
		j.Card.Thickness, j.Card.Bend = length(0.3, 2, "card"), rapid.Float64Range(0, 1).Draw(t, "bend")
		j.Clearance = job.Clearance{Height: length(0, 6, "height"), Width: length(0, 4, "depth"), Thickness: length(0, 6, "thickness")}
		c, err := plantest.Make[onepiece.Case](j)
		if err != nil {
			t.Skip("can't be made")
		}
		return c
	})
}
