package tolerance

import (
	"math"
	"slices"
)

// Reading is how measurements are taken: the plus-or-minus of each, and the step
// that they are rounded to.
type Reading struct{ PlusMinus, Step Length }

// sd returns the standard uncertainty of one reading: of the measuring, and of a
// rounding to a step, a twelfth of its square.
func (r Reading) sd() Length { return rss(r.PlusMinus/2, r.Step/Length(math.Sqrt(12))) }

// Off returns how far the true largest of several dimensions is off the largest
// reading of them. Each dimension was measured at one or several places.
func (r Reading) Off(dimensions ...[]Length) Effect {
	all := make([]Effect, len(dimensions))
	var read Length
	for i, d := range dimensions {
		all[i] = r.largest(d)
		read = max(read, largestOf(d))
	}
	return over(all).moved(-read)
}

// OffLeast returns how far the true smallest of one dimension, which was measured at
// several places, is off the largest reading of it.
func (r Reading) OffLeast(readings ...Length) Effect {
	most, least := largestOf(readings), slices.Min(readings)
	mirrored := make([]Length, len(readings))
	for i, l := range readings {
		mirrored[i] = most + least - l
	}
	return r.largest(mirrored).Times(-1).moved(least) // what it is more than most, the smallest is less than least
}

// largestOf returns the largest length, zero where there is none.
func largestOf(all []Length) Length {
	var most Length
	for _, l := range all {
		most = max(most, l)
	}
	return most
}

// largest returns the true largest dimension from readings at several places: its
// distribution, and the range it keeps within when no reading is off by more than its
// plus-or-minus.
//
// The largest of several readings is, on average, too large: of readings that
// differ only because each is a little off, it takes the one that is off the
// most. So readings are drawn together as far as their spread can come from
// measuring, and no further: with the variance s² of the readings, the places
// differ truly by t² = s² - u² (zero at least); a place is drawn toward the mean
// by u² / (u² + t²). (An empirical Bayes estimate of several means: B. Efron and
// C. Morris, 1973; from memory.) One reading is taken as it is.
func (r Reading) largest(readings []Length) Effect {
	sd := r.sd()
	most := largestOf(readings)
	off := r.PlusMinus + r.Step/2
	t := Effect{Mean: most, SD: sd, Low: most - off, High: most + off}
	n := Length(len(readings))
	if n < 2 || sd == 0 {
		return t
	}
	var mean, spread Length
	for _, l := range readings {
		mean += l / n
	}
	for _, l := range readings {
		spread += (l - mean) * (l - mean) / (n - 1)
	}
	noise := sd * sd
	differ := max(0, spread-noise)
	kept := differ / (differ + noise) // of a place's distance from the mean
	places := make([]Distribution, len(readings))
	for i, l := range readings {
		places[i] = Distribution{Mean: mean + kept*(l-mean), SD: sd * Length(math.Sqrt(float64(kept)))}
	}
	m := largest(places)
	common := (1 - kept) * Length(math.Sqrt(float64((differ+noise)/n)))
	t.Mean, t.SD = m.Mean, rss(m.SD, common)
	return t
}

// over returns the largest of several dimensions.
func over(all []Effect) Effect {
	normals := make([]Distribution, len(all))
	out := all[0]
	for i, t := range all {
		normals[i] = Distribution{Mean: t.Mean, SD: t.SD}
		out.Low, out.High = max(out.Low, t.Low), max(out.High, t.High)
	}
	m := largest(normals)
	out.Mean, out.SD = m.Mean, m.SD
	return out
}
