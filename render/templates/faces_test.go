package templates_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/render/templates"
)

// In the finished drawings of striped side papers, seen from the face, every
// mark is a whole number of repeats from where a stripe is asked for: 9 mm from the spine edge
// of the side, so 9 less the inset from that of the paper, on the right of the
// right one and on the left of the left one.
func TestMarksOfAPatternReadBack(t *testing.T) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: job.Readings{210}, Width: job.Readings{140}, Thickness: job.Readings{26}}}
	j.SidePaper.Inset = 6
	j.Pattern = slipcase.Pattern{Across: 18, Along: 64, Direction: slipcase.OneWay, Match: slipcase.MatchMirrored, FromSpine: 9, FromTail: 20}
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(t, err)
	p := c.Plan()
	require.Len(t, p.Faces, 2)
	for _, f := range p.Faces {
		d, err := readDrawing(templates.PieceSVG(p, f, on(t, "A4")))
		require.NoError(t, err)
		var left, right, bottom float64
		left, bottom = math.Inf(1), 0
		for _, q := range outline(t, d).points {
			left, right, bottom = min(left, q.x), max(right, q.x), max(bottom, q.y)
		}
		upright, level := 0, 0
		for _, path := range d.group("Positions").paths {
			for _, r := range path.runs {
				a, b := r.points[0], r.points[len(r.points)-1]
				switch {
				case a.x == b.x:
					fromSpine := a.x - left
					if f.Name == "right side paper face" {
						fromSpine = right - a.x
					}
					assert.InDelta(t, 0, math.Remainder(fromSpine-(9-6), 18), micron, f.Name)
					upright++
				case a.y == b.y: // the head is up in both
					assert.InDelta(t, 0, math.Remainder(bottom-a.y-(20-6), 64), micron, f.Name)
					level++
				default:
					assert.Fail(t, "a slanting mark")
				}
			}
		}
		assert.Equal(t, 18, upright, "stripes at 3, 21 ... 147 of 149.85 mm, marked at both ends")
		assert.Equal(t, 6, level, "lines at 14, 78 and 142 of 204.3 mm, marked at both ends")
	}
}

// In the finished drawings of linings from squared paper, worked out by hand: the room is
// 212 high and 28 thick, a lined board is 2.15 thick, linings stand 12 past their boards.
// Lines are 15 apart, one 4 mm from the spine wall and one 5 mm from the tail on both
// sides, one on the middle of the spine wall: so they meet at all eight inner corners.
func TestMarksOfLiningsReadBack(t *testing.T) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: job.Readings{210}, Width: job.Readings{140}, Thickness: job.Readings{26}}}
	j.LiningPattern = slipcase.Pattern{Across: 15, Along: 15, Direction: slipcase.AnyWay, Match: slipcase.MatchMirrored, FromSpine: 4, FromTail: 5}
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(t, err)
	p := c.Plan()
	const trim, board = 12, 2.15
	places := map[string]struct {
		fromLeft, fromRight float64 // of a line, from the lining's left edge or else its right one
		fromBelow           float64
	}{
		"right side lining face": {fromLeft: trim + board + 4, fromBelow: trim + board + 5},
		"left side lining face":  {fromRight: trim + board + 4, fromBelow: trim + board + 5},
		"spine lining face":      {fromLeft: trim + 14, fromBelow: trim + board + 5},
		"head lining face":       {fromLeft: trim + 4, fromBelow: trim + 14},
		"tail lining face":       {fromLeft: trim + 4, fromBelow: trim + 14},
	}
	require.Len(t, p.Faces, len(places))
	for _, f := range p.Faces {
		want, ok := places[f.Name]
		require.True(t, ok, f.Name)
		d, err := readDrawing(templates.PieceSVG(p, f, on(t, "A4")))
		require.NoError(t, err)
		left, right, bottom := math.Inf(1), 0., 0.
		for _, q := range outline(t, d).points {
			left, right, bottom = min(left, q.x), max(right, q.x), max(bottom, q.y)
		}
		upright, level := 0, 0
		for _, path := range d.group("Positions").paths {
			for _, r := range path.runs {
				a, b := r.points[0], r.points[len(r.points)-1]
				switch {
				case a.x == b.x && want.fromRight > 0:
					assert.InDelta(t, 0, math.Remainder(right-a.x-want.fromRight, 15), micron, f.Name)
					upright++
				case a.x == b.x:
					assert.InDelta(t, 0, math.Remainder(a.x-left-want.fromLeft, 15), micron, f.Name)
					upright++
				case a.y == b.y:
					assert.InDelta(t, 0, math.Remainder(bottom-a.y-want.fromBelow, 15), micron, f.Name)
					level++
				default:
					assert.Fail(t, "a slanting mark")
				}
			}
		}
		assert.Greater(t, upright, 4, f.Name)
		assert.Greater(t, level, 4, f.Name)
	}
}
