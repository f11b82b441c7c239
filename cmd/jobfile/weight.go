package jobfile

import (
	"math"
	"regexp"
	"strings"

	"forel/geometry/job"
)

// Limits of a book's weight, in grams, both allowed.
const (
	leastWeight = 5
	mostWeight  = 30_000
)

var weighed = regexp.MustCompile(`^(-?\d*[.,]?\d+)\s*(g|kg)?$`)

// weight reads what a book weighs, in grams: a number, or text in g or kg.
func (r *reader) weight(v value) float64 {
	n, told, kilo := math.NaN(), written(v), 1.0
	switch v.kind {
	case numberKind:
		n = float(v.text)
	case textKind:
		m := weighed.FindStringSubmatch(strings.TrimSpace(anySpace.Replace(v.text)))
		if m == nil {
			break
		}
		var ok bool
		if n, ok = r.oneWay(v, m[1]); !ok {
			return 0
		}
		if m[2] == "kg" {
			kilo = 1000
		}
	}
	const limits = `give 5 g to 30 kg, such as "850 g" or "1.2 kg" (what the book weighs; a bare number is in grams)`
	switch n *= kilo; {
	case math.IsNaN(n) || math.IsInf(n, 0):
		r.tell(v.at, job.Problem{Value: told, Reason: "is no weight", Fix: limits})
	case n < leastWeight:
		r.tell(v.at, job.Problem{Value: told, Reason: "is too light", Fix: limits})
	case n > mostWeight:
		r.tell(v.at, job.Problem{Value: told, Reason: "is too heavy", Fix: limits})
	default:
		return n
	}
	return 0
}
