package stock

import (
	"errors"
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/paper"
)

// ParseSize reads the size of a sheet: one that paper.Sheets has, by name in any
// case, upright; or its two sides, each from least to MostSide, as geometry.ParseSides reads them. The error is a
// job.Problem without a key or a *geometry.ParseError.
func ParseSize(text string, unit geometry.Unit, least Length) (width, height Length, err error) {
	for _, s := range paper.Sheets {
		if strings.EqualFold(s.Name, strings.TrimSpace(text)) {
			return s.Width, s.Height, nil
		}
	}
	width, height, err = geometry.ParseSides(text, unit)
	if errors.Is(err, geometry.ErrSides) {
		return 0, 0, job.Problem{Value: fmt.Sprintf("%.40q", text), Reason: "is no size of a sheet", Fix: `give both sides, such as "26 x 38 in", or a size of ISO 216, such as "A1"`}
	}
	if err != nil {
		return 0, 0, err
	}
	for _, l := range []Length{width, height} {
		if l < least || l > MostSide {
			return 0, 0, job.Problem{Value: fmt.Sprintf("a side of %.6g mm", l.MM()), Reason: "is no sheet's", Fix: fmt.Sprintf("give %g to %g mm", least.MM(), MostSide.MM())}
		}
	}
	return width, height, nil
}
