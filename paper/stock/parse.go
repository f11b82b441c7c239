package stock

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
)

// numerals are what a number of a length is written with, its unit not.
const numerals = "0123456789.,/- \u00a0\u2044¼½¾⅛⅜⅝⅞"

// ParseSize reads the size of a sheet: one of the A and B sizes of ISO 216 by
// name, in any case, upright; or its two sides with an x between them, such as
// "26 x 38 in" or "594 x 841 mm", in the order written. A side without a unit
// takes the other's, or else the unit given. The
// error is a job.Problem without a key or a *geometry.ParseError.
func ParseSize(text string, unit geometry.Unit) (width, height Length, err error) {
	name := strings.TrimSpace(text)
	for _, n := range named {
		if strings.EqualFold(n.name, name) {
			return n.width, n.height, nil
		}
	}
	sides := strings.FieldsFunc(name, func(r rune) bool { return r == 'x' || r == 'X' || r == '×' })
	if len(sides) != 2 {
		return 0, 0, job.Problem{Value: fmt.Sprintf("%.40q", text), Reason: "is no size of a sheet", Fix: `give both sides, such as "26 x 38 in", or a size of ISO 216, such as "A1"`}
	}
	unitOf := func(side string) string { return strings.TrimLeft(strings.TrimSpace(side), numerals) }
	if first, second := unitOf(sides[0]), unitOf(sides[1]); first == "" {
		sides[0] += " " + second // "26 x 38 in": the unit at the end holds for both
	}
	var l [2]Length
	for i, side := range sides {
		if l[i], err = geometry.ParseLength(side, unit); err != nil {
			return 0, 0, err
		}
		if l[i] < LeastSide || l[i] > MostSide {
			return 0, 0, job.Problem{Value: fmt.Sprintf("a side of %.6g mm", l[i].MM()), Reason: "is no sheet's", Fix: fmt.Sprintf("give %g to %g mm", LeastSide.MM(), MostSide.MM())}
		}
	}
	return l[0], l[1], nil
}
