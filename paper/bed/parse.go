package bed

import (
	"fmt"
	"strings"

	"forel/geometry"
)

// ParseSize reads the size of a bed, width x height, such as "600x300" or "24 x
// 12 in". A bare number is in millimetres; a side without a unit takes the
// other's.
func ParseSize(text string) (width, height Length, err error) {
	sides := strings.FieldsFunc(text, func(r rune) bool { return r == 'x' || r == 'X' || r == '×' })
	if len(sides) != 2 {
		return 0, 0, fmt.Errorf("%.40q is no size of a bed; give width x height, such as 600x300", text)
	}
	const number = "0123456789.,/- ¼½¾⅛⅜⅝⅞"
	unit := func(s string) string { return strings.TrimLeft(strings.TrimSpace(s), number) }
	for i := range sides {
		if unit(sides[i]) == "" {
			sides[i] += " " + unit(sides[1-i])
		}
	}
	if width, err = geometry.ParseLength(sides[0], geometry.MM); err != nil {
		return 0, 0, err
	}
	height, err = geometry.ParseLength(sides[1], geometry.MM)
	return width, height, err
}

// ParseGrain reads the direction of a grain on the bed: width, height or none.
func ParseGrain(text string) (geometry.Grain, error) {
	for _, g := range []geometry.Grain{geometry.GrainWidth, geometry.GrainHeight, NoGrain} {
		if strings.EqualFold(strings.TrimSpace(text), string(g)) {
			return g, nil
		}
	}
	return "", fmt.Errorf("%.20q is no direction of grain; give width, height or none", text)
}
