package chemise

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
)

func book(height, width, thickness Length) []job.Book {
	return []job.Book{{Height: job.Readings{height}, Width: job.Readings{width}, Thickness: job.Readings{thickness}}}
}

func sizes(t *testing.T, change func(*Job)) map[string][2]float64 {
	t.Helper()
	j := DefaultJob(geometry.MM)
	j.Books = book(220, 150, 30)
	change(&j)
	_, refused, _ := j.Check()
	require.Empty(t, refused)
	out := map[string][2]float64{}
	for _, p := range j.pieces() {
		w, h := p.Size()
		out[p.Name] = [2]float64{w.MM(), h.MM()}
	}
	h, w, spine, fore := j.outsides()
	out["outside"] = [2]float64{h.MM(), w.MM()}
	out["thick"] = [2]float64{spine.MM(), fore.MM()}
	return out
}

// The worked example of the design, worked out by hand.
func TestWorkedExample(t *testing.T) {
	for _, c := range []struct {
		foreEdge string
		want     map[string][2]float64
	}{
		{None, map[string][2]float64{
			"chemise spine": {32, 221}, "back cover": {150.3, 221}, "front cover": {150.3, 221},
			"outside": {221.7, 153.2}, "thick": {34.7, 34.7}, "chemise covering": {369.0, 251},
		}},
		{Walls, map[string][2]float64{
			"chemise spine": {32, 221}, "back cover": {149.6, 221}, "front cover": {149.6, 221}, "back wall": {15.4, 221}, "front wall": {15.4, 221},
			"outside": {221.7, 154.7}, "thick": {34.7, 34.7}, "chemise covering": {404.8, 251},
		}},
		{Lapped, map[string][2]float64{
			"chemise spine": {33.85, 221}, "back cover": {149.6, 221}, "front cover": {151.75, 221}, "back wall": {32, 221}, "front wall": {34.85, 221},
			"back flap": {50, 221}, "outside": {221.7, 156.85}, "thick": {36.55, 36.55}, "chemise covering": {498.05, 251},
		}},
		{Hooks, map[string][2]float64{
			"chemise spine": {32, 221}, "back cover": {149.6, 221}, "back wall": {4.3, 221}, "back flap": {20, 221},
			"outside": {221.7, 154.7}, "thick": {34.7, 39.0}, "chemise covering": {429.0, 251},
		}},
	} {
		got := sizes(t, func(j *Job) {
			j.ForeEdge = c.foreEdge
			if c.foreEdge == Hooks {
				j.BookCover = 3
			}
		})
		for name, want := range c.want {
			require.Contains(t, got, name, c.foreEdge)
			assert.InDelta(t, want[0], got[name][0], 0.05, "%s of %s", name, c.foreEdge)
			assert.InDelta(t, want[1], got[name][1], 0.05, "%s of %s", name, c.foreEdge)
		}
	}
}

// Reliure d'art d'Are, "Fabrication d'une chemise" (2018): the leather is the
// height of the book and 30 mm.
func TestTurnInOfAre(t *testing.T) {
	for _, h := range []Length{120, 221, 400} {
		got := sizes(t, func(j *Job) {
			j.Books = book(h, 150, 30)
			j.Clearance.Height, j.TurnIn = 0, 15
		})
		assert.InDelta(t, h.MM()+30, got["chemise covering"][1], 1e-9)
	}
}

// E. Diehl, Bookbinding: Its Background and Technique (1946), "Chemises": the
// hinge at the fore-edge is about 1/16 in. It goes with thin materials only.
func TestHingeOfDiehl(t *testing.T) {
	j := DefaultJob(geometry.MM)
	j.Books = book(220, 150, 30)
	j.Joint = 1.5875
	_, refused, _ := j.Check()
	require.Len(t, refused, 1)
	assert.Equal(t, "chemise.joint", refused[0].Key)
	assert.Equal(t, "at least 3 mm", refused[0].Fix)
	j.Board, j.Covering, j.Lining = 0.8, 0.15, 0.04
	_, refused, _ = j.Check()
	assert.Empty(t, refused)
	assert.InDelta(t, 1.56, j.leastJoint().MM(), 1e-9)
}
