package paper_test

import (
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper"
)

// randomCases gives the pieces of so many cases for invented books of any size,
// the same each time.
func randomCases(n int) (all [][]geometry.Piece) {
	r := rand.New(rand.NewPCG(1, 2))
	for len(all) < n {
		length := func(lo, hi float64) job.Readings {
			return job.Readings{geometry.Length(lo + (hi-lo)*r.Float64())}
		}
		j := slipcase.DefaultJob(geometry.MM)
		j.Books = []job.Book{{Height: length(40, 500), Width: length(30, 400), Thickness: length(3, 150)}}
		j.Covering = []string{slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.AllPaper, slipcase.SidesOnly}[r.IntN(4)]
		j.ThumbHole.Shape = []string{slipcase.NoHole, slipcase.Semicircle, slipcase.Triangle}[r.IntN(3)]
		if c, err := plantest.Make[slipcase.Case](j); err == nil {
			all = append(all, c.Pieces)
		}
	}
	return all
}

// BenchmarkLay lays the templates of 1,000 random cases over sheets, and tells
// how many sheets that takes: beside a grid of its own for each template, and
// beside the least that the area of what is printed would take.
func BenchmarkLay(b *testing.B) {
	jobs := randomCases(1000)
	for _, name := range []string{"A4", "Letter"} {
		for _, o := range []paper.Options{{}, {Set: paper.Separate}} {
			s := paper.DefaultSetup()
			sheet, err := paper.ParseSheet(name, geometry.MM)
			require.NoError(b, err)
			s.Sheet = sheet
			title := name
			if o.Set != nil {
				title += ", separate"
			}
			b.Run(title, func(b *testing.B) {
				var sheets, plain, least, blank, slowest float64
				for b.Loop() {
					sheets, plain, least, blank = 0, 0, 0, 0
					for _, pieces := range jobs {
						start := time.Now()
						l := s.Lay(pieces, o)
						slowest = max(slowest, float64(time.Since(start).Microseconds())/1000)
						sheets += float64(len(l.Pages))
						least += float64(l.AtLeast)
						blank += float64(l.Blank)
						for _, p := range pieces {
							plain += float64(plainGrid(s, p))
						}
					}
				}
				n := float64(len(jobs))
				b.ReportMetric(b.Elapsed().Seconds()*1000/float64(b.N)/n, "ms/job")
				b.ReportMetric(slowest, "ms-slowest")
				b.ReportMetric(sheets/n, "sheets/job")
				b.ReportMetric(sheets/plain, "sheets/plain")
				b.ReportMetric(sheets/least, "sheets/atleast")
				b.ReportMetric(blank/n, "blank/job")
				b.ReportMetric(0, "ns/op")
			})
		}
	}
}
