package tolerance

import (
	"math"
	"slices"
)

// Distribution is a normal distribution, its mean anywhere in a flat range with
// equal chance. Without a range it is normal.
type Distribution struct {
	Mean, SD  Length // of the normal part; the range is not in them
	Low, High Length // the range, added to Mean
}

// Expected returns the mean of the whole.
func (d Distribution) Expected() Length { return d.Mean + (d.Low+d.High)/2 }

// StandardDeviation returns that of the whole: root-sum-square of the normal part
// and of the range, whose own is its width over the root of 12.
func (d Distribution) StandardDeviation() Length {
	return rss(d.SD, (d.High-d.Low)/Length(math.Sqrt(12)))
}

// Below returns the chance of a value under x.
func (d Distribution) Below(x Length) float64 {
	z := func(from Length) float64 { return float64((x - d.Mean - from) / d.SD) }
	switch flat := d.High - d.Low; {
	case d.SD <= 0 && flat <= 0:
		if x > d.Mean+d.Low {
			return 1
		}
		return 0
	case d.SD <= 0:
		return max(0, min(1, float64((x-d.Mean-d.Low)/flat)))
	case float64(flat) < 1e-6*float64(d.SD):
		return phi(z((d.Low + d.High) / 2))
	default: // the mean of the normal's over the range
		return max(0, min(1, float64(d.SD/flat)*(ramp(z(d.Low))-ramp(z(d.High)))))
	}
}

// Density returns the chance per millimetre at x; zero where nothing varies.
func (d Distribution) Density(x Length) float64 {
	z := func(from Length) float64 { return float64((x - d.Mean - from) / d.SD) }
	switch flat := d.High - d.Low; {
	case d.SD <= 0 && flat <= 0:
		return 0
	case d.SD <= 0:
		if x >= d.Mean+d.Low && x <= d.Mean+d.High {
			return 1 / flat.MM()
		}
		return 0
	case float64(flat) < 1e-6*float64(d.SD):
		return bell(z((d.Low+d.High)/2)) / d.SD.MM()
	default:
		return (phi(z(d.Low)) - phi(z(d.High))) / flat.MM()
	}
}

// Under returns the value that a part of all lie below, for a part between 0 and
// 1, to a nanometre.
func (d Distribution) Under(part float64) Length {
	reach := 10*d.SD + 1e-6
	lo, hi := d.Mean+d.Low-reach, d.Mean+d.High+reach
	for range 80 {
		if mid := (lo + hi) / 2; d.Below(mid) < part {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// phi is the standard normal distribution, bell its density, ramp the integral
// of phi.
func phi(z float64) float64  { return math.Erfc(-z/math.Sqrt2) / 2 }
func bell(z float64) float64 { return math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) }
func ramp(z float64) float64 { return z*phi(z) + bell(z) }

// rss adds independent deviations as squares.
func rss(all ...Length) Length {
	var sum float64
	for _, l := range all {
		sum += float64(l * l)
	}
	return Length(math.Sqrt(sum))
}

// largest returns mean and standard deviation of the largest of independent
// normal lengths, by quadrature over its distribution, the product of theirs.
func largest(of []Distribution) Distribution {
	lo, hi := Length(math.Inf(1)), Length(math.Inf(-1))
	for _, n := range of {
		lo, hi = min(lo, n.Mean-8*n.SD), max(hi, n.Mean+8*n.SD)
	}
	if len(of) == 1 || hi-lo < 1e-9 {
		return of[0]
	}
	below := func(x Length) float64 {
		p := 1.0
		for _, n := range of {
			p *= n.Below(x)
		}
		return p
	}
	// E(x) = hi - integral of the distribution; E(x^2) likewise, about hi.
	const steps = 300
	dx := (hi - lo) / steps
	var first, second Length
	for i := range steps {
		x := lo + (Length(i)+0.5)*dx
		p := Length(below(x))
		first += p * dx
		second += 2 * (hi - x) * p * dx
	}
	return Distribution{Mean: hi - first, SD: Length(math.Sqrt(max(0, float64(second-first*first))))}
}

// smallest returns how far the least of n normal lengths with one deviation lies
// from their mean, and its deviation: of two or three in closed form (H. L. Jones,
// "Exact lower moments of order statistics in small samples from a normal
// distribution", 1948; from memory).
func smallest(n int, sd Length) Distribution {
	switch n {
	case 1:
		return Distribution{SD: sd}
	case 2:
		return Distribution{Mean: -sd / Length(math.Sqrt(math.Pi)), SD: sd * Length(math.Sqrt(1-1/math.Pi))}
	case 3:
		return Distribution{Mean: -1.5 * sd / Length(math.Sqrt(math.Pi)), SD: sd * Length(math.Sqrt(1+math.Sqrt(3)/2/math.Pi-9/math.Pi/4))}
	}
	m := largest(slices.Repeat([]Distribution{{SD: sd}}, n))
	return Distribution{Mean: -m.Mean, SD: m.SD}
}

// oneSided returns mean and deviation of the size, without sign, of a normal error:
// the half-normal distribution.
func oneSided(sd Length) Distribution {
	return Distribution{Mean: sd * Length(math.Sqrt(2/math.Pi)), SD: sd * Length(math.Sqrt(1-2/math.Pi))}
}
