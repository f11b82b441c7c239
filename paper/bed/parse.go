package bed

import (
	"errors"
	"fmt"
	"strings"

	"forel/geometry"
	"forel/paper/stock"
)

// ParseSize reads the size of a bed, width x height, such as "600x300" or "24 x
// 12 in". A side without a unit takes the other's, or else the unit given.
func ParseSize(text string, unit geometry.Unit) (width, height Length, err error) {
	width, height, err = geometry.ParseSides(text, unit)
	if errors.Is(err, geometry.ErrSides) {
		err = fmt.Errorf("%.40q is no size of a bed; give width x height, such as 600x300", text)
	}
	return width, height, err
}

// ParseGrain reads the direction of a grain on the bed: width, height or none.
func ParseGrain(text string) (geometry.Grain, error) {
	for _, g := range []geometry.Grain{geometry.GrainWidth, geometry.GrainHeight, stock.NoGrain} {
		if strings.EqualFold(strings.TrimSpace(text), string(g)) {
			return g, nil
		}
	}
	return "", fmt.Errorf("%.20q is no direction of grain; give width, height or none", text)
}
