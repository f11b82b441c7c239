package jobfile

import (
	"fmt"
	"math"
	"regexp"
	"strings"

	"forel/geometry/job"
	"forel/paper/money"
)

// mostDecimals is how many decimals a price may have.
const mostDecimals = 6

var (
	plainly = regexp.MustCompile(`^[+-]?\d{1,12}(\.\d{1,6})?$`)
	inText  = regexp.MustCompile(`^[+-]?\d*[.,]?\d+$`)
)

// amount reads a price or another number that is reckoned with exactly, within the limits
// of its setting, both allowed. It returns ok = false where it tells what is wrong.
func (r *reader) amount(v value, s job.Setting) (a money.Amount, ok bool) {
	text := strings.TrimSpace(anySpace.Replace(v.text))
	n := math.NaN()
	switch v.kind {
	case numberKind:
		text = strings.ReplaceAll(text, "_", "")
		n = float(text)
	case textKind:
		if s.Percent {
			text = strings.TrimSpace(strings.TrimSuffix(text, "%"))
		}
		if !inText.MatchString(text) {
			break
		}
		if n, ok = r.oneWay(v, text); !ok {
			return a, false
		}
		text = strings.Replace(text, ",", ".", 1)
		if text[0] == '.' {
			text = "0" + text
		}
	}
	sign := ""
	if s.Percent {
		sign = " %"
	}
	right := fmt.Sprintf("give %s%s to %s%s (%s)", plain(s.Min), sign, plain(s.Max), sign, s.What)
	switch {
	case math.IsNaN(n) || math.IsInf(n, 0):
		r.reject(v, "is no number", right)
	case n < s.Min:
		r.reject(v, "is too small", right)
	case n > s.Max:
		r.reject(v, "is too large", right)
	default:
		if !plainly.MatchString(text) { // with an exponent, or with many decimals
			text = fmt.Sprintf("%.*f", mostDecimals, n)
			if float(text) != n {
				r.reject(v, fmt.Sprintf("has more than %d decimals", mostDecimals), "round it")
				return a, false
			}
		}
		a, err := money.Parse(text)
		return a, err == nil
	}
	return a, false
}
