package stock

import (
	"errors"
	"fmt"
	"strings"

	"forel/geometry"
	"forel/paper"
)

// ParseSize reads the size of a sheet: one that paper.Sheets has, by name in any
// case, upright; or its two sides as geometry.ParseSides reads them.
func ParseSize(text string, unit geometry.Unit) (width, height Length, err error) {
	for _, s := range paper.Sheets {
		if strings.EqualFold(s.Name, strings.TrimSpace(text)) {
			return s.Width, s.Height, nil
		}
	}
	width, height, err = geometry.ParseSides(text, unit)
	if errors.Is(err, geometry.ErrSides) {
		return 0, 0, fmt.Errorf(`%.40q is no size of a sheet; give both sides, such as "26 x 38 in", or a size of ISO 216, such as "A1"`, text)
	}
	if err != nil {
		return 0, 0, err
	}
	for _, l := range []Length{width, height} {
		if l < LeastSide || l > MostSide {
			return 0, 0, fmt.Errorf("a side of %.6g mm is no sheet's; give %g to %g mm", l.MM(), LeastSide.MM(), MostSide.MM())
		}
	}
	return width, height, nil
}
