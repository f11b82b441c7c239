package templates_test

import (
	"fmt"
	"math"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/render"
)

var markName = regexp.MustCompile(`\b[A-Z]+[12]\b`)

// A registration mark: a cross in a circle, in millimetres.
const (
	ringRadius       = 1.8
	armFrom, armTo   = 2.4, 3.6 // where nothing of the mark but an arm is
	searchRound      = 9.0      // the name of a mark
	leastOfMarkInked = 0.97
)

// marks finds the registration marks of a page in its pixels: for each name
// that is written on the page, the cross in a circle next to it.
func marks(t *testing.T, v *viewed, page int, p picture) map[string]xy {
	t.Helper()
	out := map[string]xy{}
	for _, f := range v.phrases(t, page) {
		if f.lo.y > p.from.y+p.size().y {
			continue // in the foot
		}
		for _, name := range markName.FindAllString(f.text, -1) {
			require.NotContains(t, out, name, "page %d has it twice", page)
			at, ok := findMark(p, xy{(f.lo.x + f.hi.x) / 2, (f.lo.y + f.hi.y) / 2})
			require.True(t, ok, "mark %s on page %d", name, page)
			out[name] = at
		}
	}
	return out
}

// findMark finds the mark nearest a place.
func findMark(p picture, near xy) (xy, bool) {
	inked := func(x, y float64) float64 {
		if black(p.image.RGBAAt(p.pixelX(x), p.pixelY(y))) > 0.2 {
			return 1
		}
		return 0
	}
	best, score := xy{}, 0.0
	step := 1 / p.scale.x
	for y := near.y - searchRound; y <= near.y+searchRound; y += step {
		for x := near.x - searchRound; x <= near.x+searchRound; x += step {
			var sum, n float64
			for i := range 48 {
				sin, cos := math.Sincos(2 * math.Pi * float64(i) / 48)
				sum += inked(x+ringRadius*cos, y+ringRadius*sin)
				n++
			}
			if sum < n/2 {
				continue
			}
			for d := 0.0; d <= armTo; d += 0.2 {
				sum += inked(x+d, y) + inked(x-d, y) + inked(x, y+d) + inked(x, y-d)
				n += 4
			}
			closer := math.Hypot(x-near.x, y-near.y) < math.Hypot(best.x-near.x, best.y-near.y)
			if s := sum / n; s > leastOfMarkInked && (s > score || s == score && closer) {
				best, score = xy{x, y}, s
			}
		}
	}
	if score == 0 {
		return xy{}, false
	}
	// The arms tell the middle to a part of a pixel.
	var mid xy
	var nx, ny float64
	for d := armFrom; d <= armTo; d += step {
		for _, side := range []float64{d, -d} {
			for _, s := range p.across(black, best.y+side, best.x-0.6, best.x+0.6) {
				mid.x += s.middle
				nx++
			}
			for _, s := range p.down(black, best.x+side, best.y-0.6, best.y+0.6) {
				mid.y += s.middle
				ny++
			}
		}
	}
	return xy{mid.x / nx, mid.y / ny}, nx > 0 && ny > 0
}

// joined is a page laid in its place beside the first: on the first page's
// coordinates it is moved by shift.
type joined struct {
	page    int
	picture picture
	marks   map[string]xy
	shift   xy
	placed  bool
}

// join lays pages together by the marks that they share.
func join(t *testing.T, v *viewed, pages []int) []*joined {
	t.Helper()
	var all []*joined
	for _, n := range pages {
		size := pageSize(t, v, n)
		p := v.render(t, n, 300, xy{0, 0}, xy{size.x, size.y - footTall})
		all = append(all, &joined{page: n, picture: p, marks: marks(t, v, n, p)})
	}
	all[0].placed = true
	for range all {
		for _, a := range all {
			for _, b := range all {
				if !a.placed || b.placed {
					continue
				}
				for name, at := range a.marks {
					if other, shared := b.marks[name]; shared {
						b.shift, b.placed = xy{at.x + a.shift.x - other.x, at.y + a.shift.y - other.y}, true
					}
				}
			}
		}
	}
	return all
}

// A piece on several pages: joined by its marks it has the size of the design,
// marks of the same name meet everywhere, and each line that is cut goes on
// across the join.
func TestPixelsTiledPiecesJoin(t *testing.T) {
	pure, err := render.ParseColor("#ff0000")
	require.NoError(t, err)
	var worstMark, worstSize, worstLine float64
	for _, test := range []struct {
		scenario
		sheet, piece string
		pages        int
	}{
		{octavo, "A4", "spine cloth", 2},
		{octavo, "Letter", "spine cloth", 2},
		{folio, "A4", "side", 4},
		{folio, "A4", "spine cloth", 4},
		{folio, "A3", "side", 2},
	} {
		t.Run(fmt.Sprintf("%s, %s of %s", test.sheet, test.piece, test.name), func(t *testing.T) {
			o := on(t, test.sheet)
			require.NoError(t, o.Theme.SetColor("cutting", pure)) // to tell the outline from marks and words
			v := view(t, booklet(t, test.make(t), o))
			pages := pagesByPiece(t, v, test.scenario)[test.piece]
			require.Len(t, pages, test.pages)
			all := join(t, v, pages)

			lo, hi := xy{math.Inf(1), math.Inf(1)}, xy{math.Inf(-1), math.Inf(-1)}
			for _, j := range all {
				require.True(t, j.placed, "page %d shares no mark with another", j.page)
				p, in := j.picture, j.picture.size()
				left, right := extremes(func(y float64) []stripe { return p.across(red, y, 0, in.x) }, 0, in.y, 1/p.scale.y, cutWidth)
				top, bottom := extremes(func(x float64) []stripe { return p.down(red, x, 0, in.y) }, 0, in.x, 1/p.scale.x, cutWidth)
				// A page may show no line along one of the two ways.
				if !math.IsNaN(left) {
					lo.x, hi.x = min(lo.x, left+j.shift.x), max(hi.x, right+j.shift.x)
				}
				if !math.IsNaN(top) {
					lo.y, hi.y = min(lo.y, top+j.shift.y), max(hi.y, bottom+j.shift.y)
				}
			}
			want := test.cuts()[test.piece]
			assert.InDelta(t, want.width, hi.x-lo.x, tenth, "width")
			assert.InDelta(t, want.height, hi.y-lo.y, tenth, "height")
			worstSize = max(worstSize, math.Abs(want.width-(hi.x-lo.x)), math.Abs(want.height-(hi.y-lo.y)))

			shared, crossings := 0, 0
			for i, a := range all {
				for _, b := range all[:i] {
					for name, m := range a.marks {
						n, ok := b.marks[name]
						if !ok {
							continue
						}
						shared++
						dx, dy := m.x+a.shift.x-n.x-b.shift.x, m.y+a.shift.y-n.y-b.shift.y
						assert.InDelta(t, 0, math.Hypot(dx, dy), tenth, "mark %s of pages %d and %d", name, a.page, b.page)
						worstMark = max(worstMark, math.Hypot(dx, dy))
						lines, off := sameLines(t, a, b, m)
						crossings, worstLine = crossings+lines, max(worstLine, off)
					}
				}
			}
			assert.GreaterOrEqual(t, shared, 2*(test.pages-1), "two marks a join")
			assert.GreaterOrEqual(t, crossings, 2, "lines that cross a join")
		})
	}
	t.Logf("largest deviation: marks %.3f mm, sizes %.3f mm, lines across a join %.3f mm", worstMark, worstSize, worstLine)
}

// sameLines compares the cutting lines that two pages show beside their join,
// near a mark at m on page a: their number, and the most that one is off.
func sameLines(t *testing.T, a, b *joined, m xy) (crossings int, worst float64) {
	t.Helper()
	square := func(all []stripe) (out []float64) {
		for _, s := range all {
			if math.Abs(s.width-cutWidth) < 0.06 {
				out = append(out, s.middle)
			}
		}
		return out
	}
	by := xy{a.shift.x - b.shift.x, a.shift.y - b.shift.y}
	for _, beside := range []float64{-2.5, 2.5} { // within an overlap of 10 mm
		var onA, onB []float64
		move := 0.0
		switch in := a.picture.size(); {
		case math.Abs(by.y) > 100 && math.Abs(by.x) < 1: // one above the other
			onA = square(a.picture.across(red, m.y+beside, 0, in.x))
			onB = square(b.picture.across(red, m.y+beside+by.y, 0, in.x))
			move = by.x
		case math.Abs(by.x) > 100 && math.Abs(by.y) < 1: // side by side
			onA = square(a.picture.down(red, m.x+beside, 0, in.y))
			onB = square(b.picture.down(red, m.x+beside+by.x, 0, in.y))
			move = by.y
		default:
			return 0, 0
		}
		require.Len(t, onB, len(onA), "pages %d and %d", a.page, b.page)
		for i := range onA {
			off := math.Abs(onA[i] + move - onB[i])
			assert.LessOrEqual(t, off, tenth, "pages %d and %d", a.page, b.page)
			worst = max(worst, off)
		}
		crossings += len(onA)
	}
	return crossings, worst
}
