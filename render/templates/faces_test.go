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
