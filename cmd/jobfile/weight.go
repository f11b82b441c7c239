package jobfile

import (
	"fmt"
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

// bookWeight is what a book weighs.
var bookWeight = weightOf("book.weight", "what the book weighs", leastWeight, mostWeight)

// weight reads a weight within the limits of its setting, in grams: a number, or text in
// g or kg.
func (r *reader) weight(v value, s job.Setting) float64 {
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
	limits := fmt.Sprintf(`give %s g to %s kg, such as "850 g" or "1.2 kg" (%s; a bare number is in grams)`, plain(s.Min), plain(s.Max/1000), s.What)
	switch n *= kilo; {
	case math.IsNaN(n) || math.IsInf(n, 0):
		r.tell(v.at, job.Problem{Value: told, Reason: "is no weight", Fix: limits})
	case n < s.Min:
		r.tell(v.at, job.Problem{Value: told, Reason: "is too light", Fix: limits})
	case n > s.Max:
		r.tell(v.at, job.Problem{Value: told, Reason: "is too heavy", Fix: limits})
	default:
		return n
	}
	return 0
}
