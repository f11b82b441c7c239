package job

import (
	"math"

	"forel/geometry"
)

// Far tells how far a length is from what would be usual in its place, from 0; infinite
// where it is not usual at all.
type Far func(Length) float64

// NearTo is how far a length is from a usual one: no more than twice or half of it.
func NearTo(usual Length) Far {
	return func(l Length) float64 {
		if far := apart(l, usual); far <= math.Ln2+hair {
			return far
		}
		return math.Inf(1)
	}
}

// apart returns the logarithm of how many times one length is the other, 0 or more; NaN
// where one is no length.
func apart(a, b Length) float64 { return math.Abs(math.Log(float64(a / b))) }

// A usual book (common practice, no source): as high as wide by these factors, about so
// high, no thicker than wide, and most often much thinner.
const (
	leastTall        = 0.7
	usualTall        = math.Sqrt2
	mostTall         = 2
	usualHigh Length = 220
	usualThin        = 5 // times as wide as thick; thickness varies far more than height
)

// slips are what a length was multiplied by where it is out of its limits: a decimal sign
// a place off, or another unit.
var slips = []float64{10, 0.1, geometry.Inch.MM(), 1 / geometry.Inch.MM()}

// Far tells how far a dimension is from that of a usual book with the others as they are
// measured. One of these that is out of its limits is taken to be off in the same way, or
// else, which is less likely, in another.
func (b Book) Far(d Dimension) Far {
	written := d.At(&b).Largest()
	return func(l Length) float64 {
		slip := float64(l / written)
		least := math.Inf(1)
		b := b
		*d.At(&b) = Readings{l}
		for _, other := range append([]float64{slip}, slips...) {
			h, w, t := height.meant(b, other), width.meant(b, other), thickness.meant(b, other)
			if tall := float64(h / w); !(tall >= leastTall && tall <= mostTall && t <= w) { // of NaN too
				continue
			}
			far := apart(h/usualTall, w) + apart(h, usualHigh)
			if t > 0 {
				far += apart(t*usualThin, w) / 4
			}
			if other != slip {
				far += math.Ln2
			}
			least = min(least, far)
		}
		return least
	}
}

// meant returns the largest reading of a dimension, and where it is out of its limits what
// it is without a slip; zero where that is out of them too.
func (d Dimension) meant(b Book, slip float64) Length {
	l := d.At(&b).Largest()
	for _, l := range []Length{l, l * Length(slip)} {
		if l >= d.Min && l <= d.Max {
			return l
		}
	}
	return 0
}

// meant adds to what is wrong with a length out of its limits what may have been meant:
// with the decimal sign a place on, or in the other unit; the more usual of them first. far
// is nil where nobody knows what is usual.
func (p *Problem) meant(l, lo, hi Length, unit geometry.Unit, far Far) {
	within := func(l Length) bool { return l >= lo && l <= hi }
	var decimal, other Length
	switch {
	case l > 0 && l < lo:
		decimal = 10 * l
		if unit == geometry.MM {
			other = l * geometry.Inch
		}
	case l > hi:
		decimal = l / 10
		if unit == geometry.IN {
			other = l / geometry.Inch
		}
	}
	if !within(other) {
		other = 0
	}
	if far == nil || !within(decimal) || math.IsInf(far(decimal), 1) {
		decimal = 0
	}
	first := decimal > 0 && !(other > 0 && far(other) < far(decimal))
	if first {
		p.Fix = "did you mean " + Show(decimal, unit, 0) + "? Or " + p.Fix
		p.Mend.Value = Shown(decimal, unit, 0)
	}
	if other > 0 {
		if unit == geometry.MM {
			p.Fix += `; if it was inches, write "` + number(l.MM()) + ` in"`
		} else {
			p.Fix += `; if it was millimetres, write "` + number(float64(l/geometry.Inch)) + ` mm"`
		}
		if !first {
			p.Mend.Value = other
		}
	}
	if decimal > 0 && !first {
		p.Fix += "; or did you mean " + Show(decimal, unit, 0) + "?"
	}
}
