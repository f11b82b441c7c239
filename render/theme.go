package render

import (
	"fmt"
	"strconv"
	"strings"
)

// Color is a colour as red, green and blue.
type Color struct{ R, G, B uint8 }

// Colours that a colour-blind reader can tell apart: Okabe and Ito (2008),
// "Color Universal Design".
var (
	Black         = Color{0, 0, 0}
	Orange        = Color{0xE6, 0x9F, 0x00}
	SkyBlue       = Color{0x56, 0xB4, 0xE9}
	BluishGreen   = Color{0x00, 0x9E, 0x73}
	Yellow        = Color{0xF0, 0xE4, 0x42}
	Blue          = Color{0x00, 0x72, 0xB2}
	Vermilion     = Color{0xD5, 0x5E, 0x00}
	ReddishPurple = Color{0xCC, 0x79, 0xA7}
)

// Grey is for rules and tints that carry no meaning.
var Grey = Color{0x70, 0x70, 0x70}

// Hex gives the colour as #rrggbb.
func (c Color) Hex() string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// ParseColor reads #rrggbb or #rgb.
func ParseColor(text string) (Color, error) {
	hex := strings.TrimPrefix(text, "#")
	if len(hex) == 3 {
		hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
	}
	v, err := strconv.ParseUint(hex, 16, 32)
	if err != nil || len(hex) != 6 || hex == text {
		return Color{}, fmt.Errorf("%.20q is no colour; give it as #rrggbb, such as %s", text, Blue.Hex())
	}
	return Color{uint8(v >> 16), uint8(v >> 8), uint8(v)}, nil
}

// Theme gives each layer its line. Lines differ in pattern and weight, so that
// a print in black alone can be read.
type Theme map[Layer]Stroke

// DefaultTheme gives the lines used where nothing else is asked for.
func DefaultTheme() Theme {
	return Theme{
		CuttingInside: {Width: 0.35, Color: Vermilion},
		Cutting:       {Width: 0.35, Color: Black},
		Creasing:      {Width: 0.25, Dash: []Length{4, 1.6}, Color: Blue},
		Positions:     {Width: 0.2, Dash: []Length{5, 1.2, 0.8, 1.2}, Color: BluishGreen},
		Legend:        {Width: 0.25, Color: Black},
	}
}

// SetColor changes the colour of the layer named, in any case.
func (t Theme) SetColor(layer string, c Color) error {
	var names []string
	for _, l := range Layers {
		if strings.EqualFold(string(l), layer) {
			s := t[l]
			s.Color = c
			t[l] = s
			return nil
		}
		names = append(names, strings.ToLower(string(l)))
	}
	return fmt.Errorf("unknown layer %.20q; give one of %s", layer, strings.Join(names, ", "))
}
