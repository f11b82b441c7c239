package fit

import (
	"math"

	"forel/geometry/job"
)

// truth is what is known of a dimension of a book: its distribution, and the
// range it keeps within when no reading is off by more than its plus-or-minus.
type truth struct {
	normal
	low, high Length
}

// readingSD gives the standard uncertainty of one reading: of the measuring,
// and of a rounding to a step, a twelfth of its square.
func readingSD(u job.Uncertainty) Length {
	return rss(u.Measuring/2, u.ReadingStep/Length(math.Sqrt(12)))
}

// trueLargest gives the true largest dimension from readings at several places.
//
// The largest of several readings is, on average, too large: of readings that
// differ only because each is a little off, it takes the one that is off the
// most. So readings are drawn together as far as their spread can come from
// measuring, and no further: with the variance s² of the readings, the places
// differ truly by t² = s² - u² (zero at least); a place is drawn toward the mean
// by u² / (u² + t²). (An empirical Bayes estimate of several means: B. Efron and
// C. Morris, 1973; from memory.) One reading is taken as it is.
func trueLargest(r job.Readings, u job.Uncertainty) truth {
	sd := readingSD(u)
	most := r.Largest()
	off := u.Measuring + u.ReadingStep/2
	t := truth{normal{most, sd}, most - off, most + off}
	n := Length(len(r))
	if n < 2 || sd == 0 {
		return t
	}
	var mean, spread Length
	for _, l := range r {
		mean += l / n
	}
	for _, l := range r {
		spread += (l - mean) * (l - mean) / (n - 1)
	}
	noise := sd * sd
	differ := max(0, spread-noise)
	kept := differ / (differ + noise) // of a place's distance from the mean
	places := make([]normal, len(r))
	for i, l := range r {
		places[i] = normal{mean + kept*(l-mean), sd * Length(math.Sqrt(float64(kept)))}
	}
	m := largest(places)
	common := (1 - kept) * Length(math.Sqrt(float64((differ+noise)/n)))
	t.normal = normal{m.mean, rss(m.sd, common)}
	return t
}

// thickest gives the true thickness that counts of a book, the larger of its two
// edges.
func thickest(b job.Book, u job.Uncertainty) truth {
	t := trueLargest(b.Thickness, u)
	if len(b.ForeEdge) == 0 {
		return t
	}
	return over(t, trueLargest(b.ForeEdge, u))
}

// over gives the largest of several dimensions.
func over(all ...truth) truth {
	normals := make([]normal, len(all))
	out := all[0]
	for i, t := range all {
		normals[i] = t.normal
		out.low, out.high = max(out.low, t.low), max(out.high, t.high)
	}
	out.normal = largest(normals)
	return out
}
