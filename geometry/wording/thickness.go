package wording

import "strings"

// OfThickness returns a material with its thickness: "grey board 2 mm", or, where the maker's
// name for it has a figure in it, "grey board 2 mm (2.04 mm)".
func OfThickness(name, thickness string) string {
	if strings.ContainsAny(name, "0123456789") {
		return name + " (" + thickness + ")"
	}
	return name + " " + thickness
}
