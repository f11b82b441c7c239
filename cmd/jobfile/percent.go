package jobfile

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"forel/geometry/slipcase"
)

var (
	share    = regexp.MustCompile(`^(-?\d*[.,]?\d+)\s*%?$`)
	twoWays  = regexp.MustCompile(`^-?[1-9]\d{0,2},\d{3}$`) // a decimal comma, or one between thousands
	anySpace = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2009", " ")
)

// percent reads a share: a number, or text with or without a percent sign.
func (r *reader) percent(v value, p slipcase.Percent) float64 {
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
		point := strings.Replace(m[1], ",", ".", 1)
		if twoWays.MatchString(m[1]) {
			r.refuse(v.at, told+" can be read in two ways", "write "+point+" or "+strings.Replace(m[1], ",", "", 1))
			return 0
		}
		n = float(point) // infinite where it is too large
	}
	switch {
	case math.IsNaN(n):
		r.refuse(v.at, told+" is not a share in percent", limits)
	case n < 0:
		r.refuse(v.at, told+" is negative", limits)
	case n < p.Min:
		r.refuse(v.at, told+" is too small", limits)
	case n > p.Max:
		r.refuse(v.at, told+" is too large", limits)
	}
	return n
}

func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
