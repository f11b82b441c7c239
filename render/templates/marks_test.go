package templates_test

import (
	"math"
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"
)

var markName = regexp.MustCompile(`\b[A-Z]+[12]\b`)

// A registration mark: a cross in a circle, in millimetres.
const (
	ringRadius       = 1.8
	leastArm         = 2.5      // of a mark that has little room
	armFrom, armTo   = 2.1, 3.6 // where nothing of the mark but an arm is
	armWidth         = 0.2
	searchRound      = 9.0 // the name of a mark
	leastOfMarkInked = 0.97
)

// marks finds the registration marks in a picture of a part of a page: for each
// name of a mark that is written there, the cross in a circle next to it.
func marks(t *testing.T, words []phrase, page int, p picture) map[string]xy {
	t.Helper()
	out := map[string]xy{}
	end := p.size()
	for _, f := range words {
		mid := xy{(f.lo.x + f.hi.x) / 2, (f.lo.y + f.hi.y) / 2}
		if mid.x < p.from.x || mid.y < p.from.y || mid.x > p.from.x+end.x || mid.y > p.from.y+end.y {
			continue
		}
		for _, name := range markName.FindAllString(f.text, -1) {
			require.NotContains(t, out, name, "page %d has it twice in one place", page)
			at, ok := findMark(p, mid)
			require.True(t, ok, "mark %s on page %d", name, page)
			out[name] = at
		}
	}
	return out
}

// shape is a mark about its middle: its circle, half of it after the other half so that
// a few places tell where there is none, and its cross.
var shape = func() (out []xy) {
	const n = 48
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i*7%n) / n)
		out = append(out, xy{ringRadius * cos, ringRadius * sin})
	}
	for d := 0.0; d <= leastArm; d += 0.2 {
		out = append(out, xy{d, 0}, xy{-d, 0}, xy{0, d}, xy{0, -d})
	}
	return out
}()

// findMark finds the mark nearest a place.
func findMark(p picture, near xy) (xy, bool) {
	inked := func(x, y float64) bool { return black(p.image.RGBAAt(p.pixelX(x), p.pixelY(y))) > 0.2 }
	spare := int((1 - leastOfMarkInked) * float64(len(shape))) // places that may be white
	best, least := xy{}, spare+1
	step := 1 / p.scale.x
	for y := near.y - searchRound; y <= near.y+searchRound; y += step {
		for x := near.x - searchRound; x <= near.x+searchRound; x += step {
			missed := 0
			for i := 0; i < len(shape) && missed <= spare; i++ {
				if !inked(x+shape[i].x, y+shape[i].y) {
					missed++
				}
			}
			closer := math.Hypot(x-near.x, y-near.y) < math.Hypot(best.x-near.x, best.y-near.y)
			if missed < least || missed == least && closer {
				best, least = xy{x, y}, missed
			}
		}
	}
	if least > spare {
		return xy{}, false
	}
	// The arms tell the middle to a part of a pixel, where no other ink is by them.
	var mid xy
	var nx, ny float64
	arm := func(seen []stripe) (middle, n float64) {
		if len(seen) == 1 && math.Abs(seen[0].width-armWidth) < 0.05 {
			return seen[0].middle, 1
		}
		return 0, 0
	}
	for d := armFrom; d <= armTo; d += step {
		for _, side := range []float64{d, -d} {
			at, n := arm(p.across(black, best.y+side, best.x-0.6, best.x+0.6))
			mid.x, nx = mid.x+at, nx+n
			at, n = arm(p.down(black, best.x+side, best.y-0.6, best.y+0.6))
			mid.y, ny = mid.y+at, ny+n
		}
	}
	return xy{mid.x / nx, mid.y / ny}, nx > 0 && ny > 0
}
