package tolerance

import "math"

// Effect is what an error does to a length: how far it shifts it on average, the
// standard deviation, and the range when the error keeps within its plus-or-minus.
// Flat: any value of the range is as likely as any other. Plus-or-minus is two
// standard deviations of a normal error, see the doc of the package.
type Effect struct {
	Mean, SD  Length
	Low, High Length
	Flat      bool
}

// Moves returns how far the error can move the length, from end to end.
func (e Effect) Moves() Length { return e.High - e.Low }

// Symmetric returns the effect of n independent normal errors, each within plus
// or minus l.
func Symmetric(l Length, n int) Effect {
	w := l * Length(n)
	return Effect{SD: l / 2 * Length(math.Sqrt(float64(n))), Low: -w, High: w}
}

// Smallest returns the effect on what the smallest of n pieces decides, each
// within plus or minus l.
func Smallest(l Length, n int) Effect {
	if l == 0 {
		return Effect{}
	}
	m := smallest(n, l/2)
	return Effect{Mean: m.Mean, SD: m.SD, Low: -l, High: l}
}

// TakesRoom returns the effect of a symmetric error that takes room whichever
// way it goes, such as an edge that leans in or out.
func (e Effect) TakesRoom() Effect {
	m := oneSided(e.SD)
	return Effect{Mean: -m.Mean, SD: m.SD, Low: e.Low}
}

// Bows returns the effect of n sides that each bow in or out at their middle by
// up to l: in takes room, out returns none, since their edges are held. Half of
// the errors of a normal distribution are one way.
func Bows(l Length, n int) Effect {
	sd, k := l/2, Length(n)
	mean := sd / Length(math.Sqrt(2*math.Pi))
	one := Length(math.Sqrt(max(0, float64(sd*sd/2-mean*mean))))
	return Effect{Mean: -mean * k, SD: one * Length(math.Sqrt(float64(n))), Low: -l * k}
}

// Takes returns the effect of what takes a length l of the room for certain.
func Takes(l Length) Effect { return Effect{Mean: -l, Low: -l} }

// Normal returns the effect of a normal error that keeps between low and high
// in 19 of 20 cases.
func Normal(low, high Length) Effect {
	return Effect{Mean: (low + high) / 2, SD: (high - low) / 4, Low: low, High: high}
}

// Uniform returns the effect of an error anywhere between low and high with
// equal chance.
func Uniform(low, high Length) Effect {
	return Effect{Mean: (low + high) / 2, SD: (high - low) / Length(math.Sqrt(12)), Low: low, High: high, Flat: true}
}

// Times returns what the effect on a length does where that length counts so
// many times, less than zero where it takes.
func (e Effect) Times(counts float64) Effect {
	if counts == 0 {
		return Effect{}
	}
	k := Length(counts)
	e.Mean, e.SD, e.Low, e.High = k*e.Mean, k.Abs()*e.SD, k*e.Low, k*e.High
	if k < 0 {
		e.Low, e.High = e.High, e.Low
	}
	return e
}

// moved returns what is left off after so much more.
func (e Effect) moved(by Length) Effect {
	e.Mean, e.Low, e.High = e.Mean+by, e.Low+by, e.High+by
	return e
}

// Plus returns the effect of two independent errors, neither flat.
func (e Effect) Plus(f Effect) Effect {
	return Effect{Mean: e.Mean + f.Mean, SD: rss(e.SD, f.SD), Low: e.Low + f.Low, High: e.High + f.High}
}

// Sum returns a distribution about a mean with all effects, independent of each
// other, on it, and the worst case: every error at the end of its range at once.
// Of several flat effects the widest stays flat; the others count by their mean and
// standard deviation.
func Sum(about Length, effects []Effect) (d Distribution, low, high Length) {
	d, low, high = Distribution{Mean: about}, about, about
	widest := -1
	for i, e := range effects {
		if e.Flat && (widest < 0 || e.Moves() > effects[widest].Moves()) {
			widest = i
		}
	}
	for i, e := range effects {
		low, high = low+e.Low, high+e.High
		if i == widest {
			d.Low, d.High = e.Low, e.High
			continue
		}
		d.Mean += e.Mean
		d.SD = rss(d.SD, e.SD)
	}
	return d, low, high
}
