package templates_test

import (
	"bytes"
	"image"
	"image/color"
	"math"
	"math/bits"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/srwiley/oksvg"
	"github.com/srwiley/rasterx"
	"github.com/stretchr/testify/require"
)

const (
	fineDPI = 600
	finePx  = fineDPI / inch // pixels in a millimetre
)

// bitmap is a picture of two values, ink or none.
type bitmap struct {
	w, h int
	bits []uint64
}

func newBitmap(w, h int) *bitmap { return &bitmap{w, h, make([]uint64, (w*h+63)/64)} }

func (b *bitmap) in(x, y int) bool { return x >= 0 && y >= 0 && x < b.w && y < b.h }

func (b *bitmap) at(x, y int) bool {
	n := y*b.w + x
	return b.in(x, y) && b.bits[n/64]>>(n%64)&1 == 1
}

func (b *bitmap) set(x, y int) {
	if n := y*b.w + x; b.in(x, y) {
		b.bits[n/64] |= 1 << (n % 64)
	}
}

// ink returns the number of pixels with ink.
func (b *bitmap) ink() (n int) {
	for _, w := range b.bits {
		n += bits.OnesCount64(w)
	}
	return n
}

// farthestLook is how far a pixel's like is looked for, in pixels.
const farthestLook = 30

// rings are the steps to the pixels round one, the nearest first.
var rings = func() (out []image.Point) {
	for y := -farthestLook; y <= farthestLook; y++ {
		for x := -farthestLook; x <= farthestLook; x++ {
			if x*x+y*y <= farthestLook*farthestLook {
				out = append(out, image.Pt(x, y))
			}
		}
	}
	slices.SortFunc(out, func(a, b image.Point) int { return a.X*a.X + a.Y*a.Y - b.X*b.X - b.Y*b.Y })
	return out
}()

// farthest returns the farthest that a pixel of one bitmap is from the nearest of
// another, in pixels, and where; +Inf where that is too far to look.
func farthest(from, to *bitmap) (worst float64, where image.Point) {
	for n, word := range from.bits {
		if word &^= to.bits[n]; word == 0 {
			continue
		}
		for ; word != 0; word &= word - 1 {
			k := n*64 + bits.TrailingZeros64(word)
			x, y := k%from.w, k/from.w
			d := math.Inf(1)
			for _, r := range rings {
				if to.at(x+r.X, y+r.Y) {
					d = math.Hypot(float64(r.X), float64(r.Y))
					break
				}
			}
			if d > worst {
				worst, where = d, image.Pt(x, y)
			}
		}
	}
	return worst, where
}

// deviation returns the largest distance between the ink of two bitmaps, looked
// for both ways (F. Hausdorff's distance), in millimetres.
func deviation(a, b *bitmap) (mm float64, where image.Point) {
	there, at := farthest(a, b)
	back, atBack := farthest(b, a)
	if back > there {
		there, at = back, atBack
	}
	return there / finePx, at
}

var otherGroups = regexp.MustCompile(`(?s)<g id="(Creasing|Positions|Legend)" *>.*?</g>`)

var closing = regexp.MustCompile(`d="M ([-0-9.]+ [-0-9.]+) L ([-0-9.]+ [-0-9.]+)([^"]*) Z"`)

var pathData = regexp.MustCompile(` d="[^"]*"`)

// inHundredths returns path data drawn a hundred times as large; the angle and the
// flags of an arc stay.
func inHundredths(data []byte) []byte {
	words := strings.Fields(strings.Trim(string(data[4:]), `"`))
	since := 0
	for i, w := range words {
		since++
		if v, err := strconv.ParseFloat(w, 64); err != nil {
			since = 0 // a command
		} else if n := since - 1; words[i-since] != "A" || n%7 < 2 || n%7 > 4 {
			words[i] = strconv.FormatFloat(v*100, 'f', 3, 64)
		}
	}
	return []byte(` d="` + strings.Join(words, " ") + `"`)
}

// cutLines draws the cutting lines of a drawing's file at 600 dpi with an SVG
// renderer that shares no code with ours. That one keeps the points of a path to
// 1/64 of a unit, so it is given the path in hundredths of a millimetre. It takes lines to meet
// bluntly unless told what SVG 1.1, 11.4, has by default. And it leaves out the point where a path is
// closed, so that the path goes on there along its first line.
func cutLines(t require.TestingT, file []byte) *bitmap {
	file = otherGroups.ReplaceAll(file, nil)
	file = bytes.ReplaceAll(file, []byte("<path "), []byte(`<path stroke-linejoin="miter" stroke-miterlimit="4" `))
	file = closing.ReplaceAll(file, []byte("d=\"M $1 L $2$3 L $1 L $2\""))
	file = pathData.ReplaceAllFunc(file, inHundredths)
	icon, err := oksvg.ReadIconStream(bytes.NewReader(file), oksvg.StrictErrorMode)
	require.NoError(t, err)
	require.NotEmpty(t, icon.SVGPaths)
	width, height := icon.ViewBox.W*finePx, icon.ViewBox.H*finePx
	for i := range icon.SVGPaths {
		icon.SVGPaths[i].LineWidth *= finePx // in pixels: this renderer scales paths, not lines
		icon.SVGPaths[i].SetLineColor(color.Black)
	}
	out := newBitmap(int(math.Ceil(width)), int(math.Ceil(height)))
	const band = 400
	for top := 0; top < out.h; top += band {
		seen := image.NewAlpha(image.Rect(0, 0, out.w, band))
		scanner := rasterx.NewScannerGV(out.w, band, seen, seen.Rect)
		// The target is where the whole drawing lies on this band.
		icon.Transform = rasterx.Identity.Translate(0, float64(-top)).Scale(finePx/100, finePx/100)
		icon.Draw(rasterx.NewDasher(out.w, band, scanner), 1)
		for y := range band {
			for x, c := range seen.Pix[y*seen.Stride : y*seen.Stride+out.w] {
				if c >= 128 {
					out.set(x, top+y)
				}
			}
		}
	}
	return out
}

// affine takes (x, y) to (a x + c y + e, b x + d y + f), as in SVG 1.1, 7.4.
type affine struct{ a, b, c, d, e, f float64 }

func (m affine) apply(p xy) xy { return xy{m.a*p.x + m.c*p.y + m.e, m.b*p.x + m.d*p.y + m.f} }

// then returns the step m and after it the step n.
func (m affine) then(n affine) affine {
	o, x, y := n.apply(m.apply(xy{})), n.apply(m.apply(xy{1, 0})), n.apply(m.apply(xy{0, 1}))
	return affine{x.x - o.x, x.y - o.y, y.x - o.x, y.y - o.y, o.x, o.y}
}

func (m affine) inverse() affine {
	det := m.a*m.d - m.b*m.c
	a, b, c, d := m.d/det, -m.b/det, -m.c/det, m.a/det
	return affine{a, b, c, d, -(a*m.e + c*m.f), -(b*m.e + d*m.f)}
}

func moved(by xy) affine         { return affine{1, 0, 0, 1, by.x, by.y} }
func scaled(x, y float64) affine { return affine{x, 0, 0, y, 0, 0} }
func turnedBy(a float64) affine  { s, c := math.Sincos(a); return affine{c, s, -s, c, 0, 0} }
func laidOn(from, to [2]xy) (affine, float64) {
	// Two marks laid on two others: middle on middle, and turned as they are.
	mid := func(p [2]xy) xy { return xy{(p[0].x + p[1].x) / 2, (p[0].y + p[1].y) / 2} }
	way := func(p [2]xy) float64 { return math.Atan2(p[1].y-p[0].y, p[1].x-p[0].x) }
	turn := math.Remainder(way(to)-way(from), 2*math.Pi)
	a, b := mid(from), mid(to)
	return moved(xy{-a.x, -a.y}).then(turnedBy(turn)).then(moved(b)), turn
}
