package templates_test

import (
	"strings"

	"forel/geometry"
)

// slack is what boxes may share by the rounding of floats.
const slack geometry.Length = 1e-6

var longTitles = map[string]string{
	"no title":              "",
	"short title":           "Invented harbour log",
	"200 letters":           strings.Repeat("Invented ", 22) + "ab",
	"200 letters, one word": strings.Repeat("W", 200),
	"200 Chinese letters":   strings.Repeat("港口日誌", 50),
}
