package jobfile

import (
	"math"
	"regexp"
	"strings"

	"forel/geometry/job"
	"forel/geometry/wording"
)

var (
	share    = regexp.MustCompile(`^(-?\d*[.,]?\d+)\s*%?$`)
	twoWays  = regexp.MustCompile(`^-?[1-9]\d{0,2},\d{3}$`) // a decimal comma, or one between thousands
	anySpace = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2009", " ")
)

// oneWay reads a number in text, with a point or a comma. It refuses one that can
// be read in two ways.
func (r *reader) oneWay(v value, number string) (n float64, ok bool) {
	point := strings.Replace(number, ",", ".", 1)
	if twoWays.MatchString(number) {
		r.reject(v, "can be read in two ways", "write "+point+" or "+strings.Replace(number, ",", "", 1))
		return 0, false
	}
	return float(point), true
}

// percent reads a share: a number, or text with or without a percent sign.
func (r *reader) percent(v value, p job.Setting) float64 {
	limits := "give " + plain(p.Min) + " % to " + plain(p.Max) + " % (" + p.What + ")"
	n, told := math.NaN(), written(v)
	switch v.kind {
	case numberKind:
		if n = float(v.text); math.IsInf(n, 0) {
			n = math.NaN()
		}
		if !math.IsNaN(n) {
			told += " %"
		}
	case textKind:
		m := share.FindStringSubmatch(strings.TrimSpace(anySpace.Replace(v.text)))
		if m == nil {
			break
		}
		var ok bool
		if n, ok = r.oneWay(v, m[1]); !ok { // infinite where it is too large
			return 0
		}
	}
	switch {
	case math.IsNaN(n):
		r.tell(v.at, job.Problem{Value: told, Reason: "is not a share in percent", Fix: limits})
	case n < 0:
		r.tell(v.at, job.Problem{Value: told, Reason: "is negative", Fix: limits})
	case n < p.Min:
		r.tell(v.at, job.Problem{Value: told, Reason: "is too small", Fix: limits})
	case n > p.Max:
		r.tell(v.at, job.Problem{Value: told, Reason: "is too large", Fix: limits})
	}
	return n
}

func plain(v float64) string { return wording.Decimal(v, 6) }
