package templates_test

import (
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/paper"
)

// anyPrinter gives a setup the margins and errors of any printer.
func anyPrinter(t *rapid.T, s paper.Setup) paper.Setup {
	length := func(lo, hi float64, label string) geometry.Length {
		return geometry.Length(rapid.Float64Range(lo, hi).Draw(t, label))
	}
	s.Margins = paper.Margins{
		Left: length(0, 18, "left margin"), Right: length(0, 18, "right margin"),
		Top: length(0, 18, "top margin"), Bottom: length(0, 18, "bottom margin"),
	}
	if rapid.Bool().Draw(t, "gauged") {
		s.Measured = paper.Measured{Across: length(194, 206, "measured across"), Along: length(194, 206, "measured along")}
	}
	return s
}

// anyJob draws the job of a book of any size that a case can be made for.
func anyJob(t *rapid.T) slipcase.Job {
	length := func(lo, hi float64, label string) geometry.Length {
		return geometry.Length(rapid.OneOf(
			rapid.Float64Range(lo, hi),
			rapid.Map(rapid.IntRange(int(2*lo), int(2*hi)), func(n int) float64 { return float64(n) / 2 }),
		).Draw(t, label))
	}
	j := slipcase.DefaultJob()
	j.Books = []slipcase.Book{{
		Height:    slipcase.Readings{length(40, 700, "height")},
		Width:     slipcase.Readings{length(20, 600, "width")},
		Thickness: slipcase.Readings{length(1, 200, "thickness")},
	}}
	j.Lining.Thickness = rapid.SampledFrom([]geometry.Length{0, 0.15, 0.4}).Draw(t, "lining")
	j.Lining.Trim = rapid.SampledFrom([]geometry.Length{0, 3, 12, 40}).Draw(t, "trim")
	j.ThumbHole.Shape = rapid.SampledFrom([]string{slipcase.NoHole, slipcase.Semicircle, slipcase.Triangle}).Draw(t, "thumb hole")
	j.Covering = rapid.SampledFrom([]string{
		slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.AllPaper, slipcase.SidesOnly,
	}).Draw(t, "covering")
	if _, err := slipcase.Make(j); err != nil {
		t.Skip("can't be made")
	}
	return j
}
