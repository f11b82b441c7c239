package templates_test

import (
	"image/color"
	"math"
)

// ink tells how much of a pixel is covered by a certain colour, 0 to 1.
type ink func(color.RGBA) float64

// black is ink without a hue.
func black(c color.RGBA) float64 {
	most, least := max(c.R, c.G, c.B), min(c.R, c.G, c.B)
	if most-least > 16 {
		return 0
	}
	return float64(255-most) / 255
}

// stripe is a line that a scan crosses, in millimetres: its middle and its
// width, by the weight of its ink, and the first and last pixel of it.
type stripe struct{ middle, width, from, to float64 }

// stripes returns the lines that a scan crosses, weighing each pixel by its ink;
// position is where the middle of the first pixel is.
func stripes(coverage []float64, first, scale float64) []stripe {
	var out []stripe
	var sum, moment float64
	start := -1
	end := func(i int) {
		if w := sum / scale; w > 0.04 {
			out = append(out, stripe{first + moment/sum/scale, w, first + float64(start)/scale, first + float64(i-1)/scale})
		}
		sum, moment, start = 0, 0, -1
	}
	for i, c := range coverage {
		if c < 0.02 {
			end(i)
			continue
		}
		if start < 0 {
			start = i
		}
		sum += c
		moment += c * float64(i)
	}
	end(len(coverage))
	return out
}

func (p picture) pixelX(x float64) int { return int(math.Round((x - p.from.x) * p.scale.x)) }
func (p picture) pixelY(y float64) int { return int(math.Round((y - p.from.y) * p.scale.y)) }

// covered returns how much of some pixels, from one place in the picture on, is inked.
func (p picture) covered(of ink, at, step, pixels int) []float64 {
	coverage := make([]float64, pixels)
	for i := range coverage {
		c := p.image.Pix[at+i*step:]
		coverage[i] = of(color.RGBA{R: c[0], G: c[1], B: c[2], A: c[3]})
	}
	return coverage
}

// across scans a row of pixels from x0 to x1, all in millimetres.
func (p picture) across(of ink, y, x0, x1 float64) []stripe {
	b := p.image.Bounds()
	row, from, to := p.pixelY(y), max(b.Min.X, p.pixelX(x0)), min(b.Max.X, p.pixelX(x1))
	if row < b.Min.Y || row >= b.Max.Y || from >= to {
		return nil
	}
	return stripes(p.covered(of, p.image.PixOffset(from, row), 4, to-from), p.from.x+(float64(from)+0.5)/p.scale.x, p.scale.x)
}

// down scans a column of pixels from y0 to y1.
func (p picture) down(of ink, x, y0, y1 float64) []stripe {
	b := p.image.Bounds()
	column, from, to := p.pixelX(x), max(b.Min.Y, p.pixelY(y0)), min(b.Max.Y, p.pixelY(y1))
	if column < b.Min.X || column >= b.Max.X || from >= to {
		return nil
	}
	return stripes(p.covered(of, p.image.PixOffset(column, from), p.image.Stride, to-from), p.from.y+(float64(from)+0.5)/p.scale.y, p.scale.y)
}

// size returns the picture's extent in millimetres.
func (p picture) size() xy {
	b := p.image.Bounds()
	return xy{float64(b.Dx()) / p.scale.x, float64(b.Dy()) / p.scale.y}
}

// leastLine is how long a straight line is that is no part of a letter.
const leastLine = 3.5

// extremes returns where the outermost straight lines lie that a picture's scans
// cross square: lines of a certain width, crossed by every scan over some
// length. Scans are a step apart; NaN where there is none.
func extremes(scan func(at float64) []stripe, from, to, step, width float64) (lo, hi float64) {
	type line struct {
		sum    float64
		scans  int
		latest float64
	}
	lo, hi = math.NaN(), math.NaN()
	var going []line
	ended := func(l line) {
		if float64(l.scans)*step >= leastLine {
			at := l.sum / float64(l.scans)
			lo, hi = lesser(lo, at), -lesser(-hi, -at)
		}
	}
	for at := from; at < to; at += step {
		var still []line
		for _, s := range scan(at) {
			if math.Abs(s.width-width) > 0.06 {
				continue
			}
			l := line{s.middle, 1, s.middle}
			for i, g := range going {
				if math.Abs(g.latest-s.middle) < 0.02 {
					l = line{g.sum + s.middle, g.scans + 1, s.middle}
					going[i].scans = 0
					break
				}
			}
			still = append(still, l)
		}
		for _, g := range going {
			ended(g)
		}
		going = still
	}
	for _, g := range going {
		ended(g)
	}
	return lo, hi
}

// lesser returns the lesser of two values, or the one that is a number.
func lesser(a, b float64) float64 {
	if math.IsNaN(a) || b < a {
		return b
	}
	return a
}
