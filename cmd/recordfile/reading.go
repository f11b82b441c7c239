package recordfile

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/wording"
)

// mostLength is longer than anything that is measured, in mm.
const mostLength Length = 1e4

// mostReadings is how many places of one quantity are taken down at once.
const mostReadings = 20

// Typed reads what a maker typed of a quantity: lengths with ";" between them, or with ","
// where that can't be a decimal comma. A bare number is in the unit u.
func Typed(q fit.Quantity, text string, u geometry.Unit) (out []Length, err error) {
	each := func(parts []string) (all []Length, near bool, err error) {
		near = true
		for _, p := range parts {
			l, err := geometry.ParseSigned(p, u)
			if err != nil {
				return nil, false, err
			}
			if !(l.Abs() < mostLength) {
				return nil, false, fmt.Errorf("%s is longer than anything that is measured; give less than %s", wording.Quote(p), geometry.Settable(mostLength, u))
			}
			all, near = append(all, l), near && !q.Slip(l)
		}
		return all, near, nil
	}
	if strings.Contains(text, ";") || !strings.Contains(text, ",") {
		out, _, err = each(strings.Split(text, ";"))
	} else {
		whole, wholeNear, wrong := each([]string{text})
		parts, partsNear, err2 := each(strings.Split(text, ","))
		switch {
		case wrong != nil && err2 != nil:
			err = err2
		case wrong == nil && err2 == nil && wholeNear == partsNear:
			return nil, fmt.Errorf("%s can be one length or several; write %s for one, or %s", wording.Quote(text), strings.Replace(text, ",", ".", 1), strings.Join(strings.Split(text, ","), "; "))
		case wrong != nil || err2 == nil && partsNear:
			out = parts
		default:
			out = whole
		}
	}
	if err == nil && len(out) > mostReadings {
		err = fmt.Errorf("more than %d readings; keep those that count", mostReadings)
	}
	return out, err
}
