package foldup_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/geometry/space"
)

// posedJobs are cases of every covering, with and without a thumb hole.
func posedJobs(t *testing.T) map[string]slipcase.Case {
	out := map[string]slipcase.Case{}
	for _, covering := range []string{slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.AllPaper, slipcase.SidesOnly} {
		for _, hole := range []string{slipcase.NoHole, slipcase.Semicircle, slipcase.Triangle} {
			j := slipcase.DefaultJob(geometry.MM)
			j.Covering, j.ThumbHole.Shape = covering, hole
			j.Books = []job.Book{{Height: job.Readings{221.5}, Width: job.Readings{148.5}, Thickness: job.Readings{32}}}
			c, err := plantest.Make[slipcase.Case](j)
			require.NoError(t, err)
			out[covering+", "+hole] = c
		}
	}
	return out
}

func away(a, b space.Vec) float64 {
	return geometry.Pt(geometry.Pt(a.X-b.X, a.Y-b.Y).Distance(geometry.Point{}), a.Z-b.Z).Distance(geometry.Point{}).MM()
}

// At every stage a leaf keeps its lengths and stays joined to what it hangs on.
func TestPosedLeavesStayWholeAndJoined(t *testing.T) {
	for name, c := range posedJobs(t) {
		for _, p := range c.Pieces {
			for seat := range p.Seats {
				s, ok := c.Proof.Carcass.Hang(p, seat)
				require.True(t, ok, "%s: %s", name, p.Name)
				for _, degrees := range []float64{0, 30, 77, 90} {
					posed := s.Pose(func(i int) float64 { return degrees * float64(i%3) / 2 })
					for i, q := range posed {
						for k, a := range q.Outline {
							b := q.Outline[(k+1)%len(q.Outline)]
							assert.InDelta(t, a.Distance(b).MM(), away(q.At(a), q.At(b)), 1e-9)
						}
						if q.On < 0 {
							continue
						}
						from, to := q.Hinge()
						for _, e := range []geometry.Point{from, to} {
							assert.InDelta(t, 0, away(q.At(e), posed[q.On].At(e)), 1e-9, "%s: %s, leaf %d", name, p.Name, i)
						}
					}
				}
			}
		}
	}
}

// Folded by a right angle every leaf lies where the proof has it: as much of each
// face is under the piece's leaves as the proof's layers of it say.
func TestFoldedLeavesLieWhereTheProofHasThem(t *testing.T) {
	for name, c := range posedJobs(t) {
		proved := map[string]float64{}
		seen := map[string]bool{}
		for _, f := range c.Proof.Faces {
			if f.Inside && c.Job.ThumbHole.Shape != slipcase.NoHole {
				continue // the tabs of a hole, bent twice, are no leaves folded once
			}
			for _, l := range f.Layers {
				b := l.Shape.Bounds()
				key := fmt.Sprintf("%s %s %.3f %.3f", plane(f.Face), l.Piece, b.Min, b.Max)
				if seen[key] {
					continue // a layer at the mouth is told of under every edge there
				}
				seen[key] = true
				proved[string(plane(f.Face))+", "+l.Piece] += l.Shape.Size()
			}
		}
		hung := map[string]float64{}
		for _, p := range c.Pieces {
			for seat := range p.Seats {
				s, _ := c.Proof.Carcass.Hang(p, seat)
				for _, l := range s.Leaves {
					if l.Face != "" {
						hung[string(plane(l.Face))+", "+p.Name] += geometry.Polygon(l.Outline...).SignedArea()
					}
				}
			}
		}
		for key, area := range proved {
			assert.InEpsilon(t, area, hung[key], 1e-3, "%s: %s", name, key)
		}
	}
}

// plane names the four edges of the mouth alike, which lie in one plane.
func plane(f geometry.Face) geometry.Face {
	switch f {
	case slipcase.RightMouth, slipcase.HeadMouth, slipcase.TailMouth:
		return slipcase.LeftMouth
	}
	return f
}

// Flat, all leaves lie in one plane, in the piece's own arrangement.
func TestFlatLeavesAreThePiece(t *testing.T) {
	for name, c := range posedJobs(t) {
		for _, p := range c.Pieces {
			if len(p.Seats) == 0 {
				continue
			}
			s, _ := c.Proof.Carcass.Hang(p, 0)
			var area float64
			posed := s.Pose(func(int) float64 { return 0 })
			for _, q := range posed {
				area += geometry.Polygon(q.Outline...).SignedArea()
				for _, o := range q.Outline {
					assert.InDelta(t, 0, away(q.At(o), posed[0].At(o)), 1e-9, "%s: %s", name, p.Name)
				}
			}
			assert.InEpsilon(t, p.Outline.SignedArea(), area, 1e-3, "%s: %s", name, p.Name)
		}
	}
}
