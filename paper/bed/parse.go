package bed

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/paper"
	"forel/paper/stock"
)

// ParseSize reads the size of a bed as paper.ParseSize does.
func ParseSize(text string, unit geometry.Unit) (paper.Sheet, error) {
	return paper.ParseSize(text, unit, "a bed", LeastSide, MostSide)
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
