package templates_test

import (
	"testing"

	"github.com/stretchr/testify/require"

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
		_, err := templates.Booklet(c, layoutOf(c, o), o)
		require.NoError(b, err)
	}
}

// BenchmarkOnePiece makes the drawing of the piece with the most lines.
func BenchmarkOnePiece(b *testing.B) {
	c, o := octavo.make(b), on(b, "A4")
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
