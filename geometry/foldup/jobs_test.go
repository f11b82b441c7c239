package foldup_test

import (
	"slices"

	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// length draws a length in [lo, hi]: often the usual one, a limit, or near one.
func length(lo, hi, usual float64) *rapid.Generator[float64] {
	return rapid.OneOf(
		rapid.Just(usual),
		rapid.Map(rapid.IntRange(0, int((hi-lo)*100)), func(n int) float64 { return lo + float64(n)/100 }),
		rapid.Map(rapid.Float64Range(0, hi-lo), func(above float64) float64 { return lo + above }),
		rapid.Float64Range(max(lo, usual*0.7), min(hi, usual*1.3+0.01)),
		rapid.SampledFrom([]float64{lo, hi}),
	)
}

// volumes draws a book of the sizes that slipcases are made for.
func volumes() *rapid.Generator[job.Book] {
	return rapid.Custom(func(t *rapid.T) job.Book {
		b := job.Book{
			Height:    job.Readings{slipcase.Length(length(40, 500, 220).Draw(t, "height"))},
			Width:     job.Readings{slipcase.Length(length(30, 400, 150).Draw(t, "width"))},
			Thickness: job.Readings{slipcase.Length(length(3, 150, 30).Draw(t, "thickness"))},
		}
		if rapid.IntRange(0, 4).Draw(t, "tapered") == 4 {
			b.ForeEdge = job.Readings{slipcase.Length(length(3, 150, 30).Draw(t, "thickness at the fore-edge"))}
		}
		return b
	})
}

// everyJob draws jobs with one to four volumes, every choice, and every setting
// within its legal range, board from 1 to 4; all settings, or a few of them, are
// away from their defaults.
func everyJob() *rapid.Generator[slipcase.Job] {
	return rapid.Custom(func(t *rapid.T) slipcase.Job {
		j := slipcase.DefaultJob(geometry.MM)
		j.Unit = rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit")
		j.Books = rapid.SliceOfN(volumes(), 1, 4).Draw(t, "books")
		for _, c := range j.Settings().Words() {
			*c.Word = rapid.SampledFrom(c.Words).Draw(t, c.Key)
		}
		j.Cloth.Corners = slipcase.CornersCut // marked, what is folded is not cut yet
		for _, p := range j.Settings().Numbers() {
			*p.Number = rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(p.Min, p.Max)).Draw(t, p.Key)
		}
		few := rapid.Bool().Draw(t, "few settings changed")
		for _, f := range j.Settings().Lengths() {
			if few && rapid.IntRange(0, 3).Draw(t, "change "+f.Key) > 0 {
				continue
			}
			l := f.Length
			lo, hi, usual := f.Min, f.Max, l.MM()
			switch f.Key {
			case "board.thickness":
				lo, hi = 1, 4
			case "thumb_hole.radius":
				usual = 14
				if rapid.Bool().Draw(t, "auto") {
					continue
				}
			}
			*l = slipcase.Length(length(lo, hi, usual).Draw(t, f.Key))
		}
		return j
	})
}

// mended does what each refusal says until the job is accepted.
func mended(j slipcase.Job) (slipcase.Case, error) {
	if err := plantest.Mended(&j); err != nil {
		return slipcase.Case{}, err
	}
	return plantest.Make[slipcase.Case](j)
}

// ofCarcass gives the faces of a proof without those of dividers.
func ofCarcass(c slipcase.Case) []foldup.FaceReport {
	return slices.DeleteFunc(slices.Clone(c.Proof.Faces), func(f foldup.FaceReport) bool {
		return f.Face == slipcase.DividerLeft || f.Face == slipcase.DividerRight || f.Face == slipcase.DividerMouth
	})
}
