package templates_test

import (
	"math/rand/v2"
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render/templates"
)

// BenchmarkWholeJob makes every file of one job in memory, from the job.
func BenchmarkWholeJob(b *testing.B) {
	j, o := octavo.job(), on(b, "A4")
	b.ReportAllocs()
	for b.Loop() {
		c := planOf(b, j)
		for _, p := range c.Pieces {
			if len(templates.PieceSVG(c, p, o)) == 0 {
				b.Fatal("no drawing")
			}
		}
		_, err := templates.Document(c, layoutOf(c, o), o).PDF()
		require.NoError(b, err)
	}
}

// BenchmarkOnePiece makes the drawing of the piece with the most lines.
func BenchmarkOnePiece(b *testing.B) {
	c, o := octavo.make(), on(b, "A4")
	var most int
	for i, p := range c.Pieces {
		if len(p.Outline.Vertices) > len(c.Pieces[most].Outline.Vertices) {
			most = i
		}
	}
	b.ReportAllocs()
	for b.Loop() {
		if len(templates.PieceSVG(c, c.Pieces[most], o)) == 0 {
			b.Fatal("no drawing")
		}
	}
}

// BenchmarkPDF draws the document of a case that is laid out already, and
// tells how many of its pages a second that is.
func BenchmarkPDF(b *testing.B) {
	for _, s := range []scenario{octavo, folio} {
		b.Run(s.name, func(b *testing.B) {
			c, o := s.make(), on(b, "A4")
			layout := layoutOf(c, o)
			b.ReportAllocs()
			for b.Loop() {
				_, err := templates.Document(c, layout, o).PDF()
				require.NoError(b, err)
			}
			b.ReportMetric(float64(len(layout.Pages)*b.N)/b.Elapsed().Seconds(), "sheets/s")
		})
	}
}

// BenchmarkThousandJobs makes every file of 1,000 random jobs in memory, one
// after the other, and tells how much of the heap is held after 100 and after
// all of them: what one job used is free for the next.
func BenchmarkThousandJobs(b *testing.B) {
	const jobs = 1000
	held := func() float64 {
		var m runtime.MemStats
		runtime.GC()
		runtime.GC()
		runtime.ReadMemStats(&m)
		return float64(m.HeapAlloc) / (1 << 20)
	}
	o := on(b, "A4")
	for b.Loop() {
		var early, sheets float64
		r := rand.New(rand.NewPCG(3, 4))
		for n := 0; n < jobs; {
			c, ok := randomPlan(r)
			if !ok {
				continue
			}
			for _, p := range c.Pieces {
				if len(templates.PieceSVG(c, p, o)) == 0 {
					b.Fatal("no drawing")
				}
			}
			layout := o.Setup.Lay(c.Pieces, paper.Options{})
			_, err := templates.Document(c, layout, o).PDF()
			require.NoError(b, err)
			sheets += float64(len(layout.Pages))
			if n++; n == 100 {
				early = held()
			}
		}
		b.ReportMetric(early, "MiB-at-100")
		b.ReportMetric(held(), "MiB-at-1000")
		b.ReportMetric(sheets/jobs, "sheets/job")
	}
	b.ReportMetric(b.Elapsed().Seconds()*1000/float64(b.N)/jobs, "ms/job")
}

// randomPlan returns the case of an invented book of any size.
func randomPlan(r *rand.Rand) (plan.Plan, bool) {
	length := func(lo, hi float64) job.Readings {
		return job.Readings{geometry.Length(lo + (hi-lo)*r.Float64())}
	}
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: length(40, 500), Width: length(30, 400), Thickness: length(3, 150)}}
	j.Covering = []string{slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.AllPaper, slipcase.SidesOnly}[r.IntN(4)]
	j.ThumbHole.Shape = []string{slipcase.NoHole, slipcase.Semicircle, slipcase.Triangle}[r.IntN(3)]
	c, err := plantest.Make[slipcase.Case](j)
	if err != nil {
		return plan.Plan{}, false
	}
	return c.Plan(), true
}
