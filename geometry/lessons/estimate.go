package lessons

import (
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Level is how often an interval holds the truth.
const Level = 0.95

// Estimate is what a sample of normally distributed values tells of them: their mean and
// standard deviation, each with the interval that holds the truth at the Level. The mean's
// is by Student's t, the deviation's by chi-squared (NIST/SEMATECH e-Handbook of
// Statistical Methods, 1.3.5.2 and 7.2.3.1; from memory).
type Estimate struct {
	N                       int
	Mean, MeanLow, MeanHigh float64
	SD, SDLow, SDHigh       float64
}

// estimate returns the Estimate from two or more values.
func estimate(values []float64) Estimate {
	e := Estimate{N: len(values)}
	n := float64(e.N)
	e.Mean, e.SD = stat.MeanStdDev(values, nil)
	squares := e.SD * e.SD * (n - 1)
	half := distuv.StudentsT{Sigma: 1, Nu: n - 1}.Quantile((1+Level)/2) * e.SD / math.Sqrt(n)
	e.MeanLow, e.MeanHigh = e.Mean-half, e.Mean+half
	chi := distuv.ChiSquared{K: n - 1}
	e.SDLow, e.SDHigh = math.Sqrt(squares/chi.Quantile((1+Level)/2)), math.Sqrt(squares/chi.Quantile((1-Level)/2))
	return e
}

// less returns the estimate with a variance that comes from elsewhere taken from its
// deviation.
func (e Estimate) less(variance float64) Estimate {
	for _, sd := range []*float64{&e.SD, &e.SDLow, &e.SDHigh} {
		*sd = math.Sqrt(max(0, *sd**sd-variance))
	}
	return e
}

// Biased tells whether the mean is off zero by more than chance.
func (e Estimate) Biased() bool { return e.MeanLow > 0 || e.MeanHigh < 0 }
