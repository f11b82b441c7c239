package page

import (
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// typeface returns the typeface of the prints, for the page to be set in too.
func typeface() []File {
	const of = "font/ttf" // RFC 8081
	return []File{{Name: "Go-Regular.ttf", Type: of, Data: goregular.TTF}, {Name: "Go-Bold.ttf", Type: of, Data: gobold.TTF}}
}
