package geometry_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// turnedPieces draws a piece of a case, and the same turned by a quarter.
func turnedPieces(t *rapid.T) (p, turned geometry.Piece) {
	length := func(lo, hi float64, label string) job.Readings {
		return job.Readings{geometry.Length(rapid.Float64Range(lo, hi).Draw(t, label))}
	}
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: length(40, 500, "height"), Width: length(30, 400, "width"), Thickness: length(3, 150, "thickness")}}
	j.ThumbHole.Shape = rapid.SampledFrom([]string{slipcase.NoHole, slipcase.Semicircle, slipcase.Triangle}).Draw(t, "thumb hole")
	j.Covering = rapid.SampledFrom([]string{slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.SidesOnly}).Draw(t, "covering")
	c, err := plantest.Make[slipcase.Case](j)
	if err != nil {
		t.Skip("can't be made")
	}
	p = rapid.SampledFrom(c.Pieces).Draw(t, "piece")
	return p, p.QuarterTurn()
}

// A turned piece is counterclockwise from where it was: its lower right corner
// is where its upper right was. It starts at the origin, as large as before.
func TestQuarterTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, turned := turnedPieces(t)
		w, h := p.Size()
		b := turned.Outline.Bounds()
		assert.True(t, b.Min.Near(geometry.Pt(0, 0)))
		assert.InDelta(t, h.MM(), b.Width().MM(), 1e-9)
		assert.InDelta(t, w.MM(), b.Height().MM(), 1e-9)
		assert.InDelta(t, p.Outline.SignedArea(), turned.Outline.SignedArea(), 1e-6*p.Outline.SignedArea(), "counterclockwise still, not mirrored")
		want := func(q geometry.Point) geometry.Point { return geometry.Pt(h-q.Y, q.X) }
		lines, got := p.Lines(), turned.Lines()
		require.Len(t, got, len(lines))
		for i, l := range lines {
			require.Len(t, got[i].Vertices, len(l.Vertices))
			assert.Equal(t, l.Closed, got[i].Closed)
			for k, v := range l.Vertices {
				assert.True(t, want(v.Point).Near(got[i].Vertices[k].Point))
				assert.Equal(t, v.Bulge, got[i].Vertices[k].Bulge)
			}
		}
		require.Len(t, turned.Edges, len(p.Edges))
		for i, e := range p.Edges {
			assert.Equal(t, e.Name, turned.Edges[i].Name)
			assert.True(t, want(e.From).Near(turned.Edges[i].From) && want(e.To).Near(turned.Edges[i].To), e.Name)
		}
		require.Len(t, turned.Regions, len(p.Regions))
		for i, r := range p.Regions {
			got := turned.Regions[i]
			assert.Equal(t, r.Face, got.Face)
			assert.True(t, want(r.Room.Center()).Near(got.Room.Center()), r.Name)
			assert.InDelta(t, r.Room.Width().MM(), got.Room.Height().MM(), 1e-9)
			assert.InDelta(t, r.Room.Height().MM(), got.Room.Width().MM(), 1e-9)
		}
		assert.NotEqual(t, p.Grain, turned.Grain)
		assert.Contains(t, []geometry.Grain{geometry.GrainWidth, geometry.GrainHeight}, turned.Grain)
	})
}

// Turned four times, a piece lies as it did.
func TestFourQuarterTurns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, turned := turnedPieces(t)
		back := turned.QuarterTurn().QuarterTurn().QuarterTurn()
		for i, l := range p.Lines() {
			for k, v := range l.Vertices {
				assert.True(t, v.Near(back.Lines()[i].Vertices[k].Point))
			}
		}
		for i, e := range p.Edges {
			assert.True(t, e.From.Near(back.Edges[i].From) && e.To.Near(back.Edges[i].To))
		}
		for i, r := range p.Regions {
			assert.True(t, r.Room.Min.Near(back.Regions[i].Room.Min) && r.Room.Max.Near(back.Regions[i].Room.Max))
		}
		for i, s := range p.Seats {
			for k, a := range s.At {
				assert.True(t, a.At.Near(back.Seats[i].At[k].At))
			}
		}
		assert.Equal(t, p.Grain, back.Grain)
	})
}
