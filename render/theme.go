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

// White is paper.
var White = Color{0xFF, 0xFF, 0xFF}

// Grey is for rules and tints that carry no meaning.
var Grey = Color{0x70, 0x70, 0x70}

// Hex returns the colour as #rrggbb.
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

// Theme gives each layer its line. Lines differ in dash and weight, so that
// a print in black alone can be read.
type Theme map[Layer]Stroke

// DefaultTheme returns the lines used where nothing else is asked for.
func DefaultTheme() Theme {
	return Theme{
		InsideCuts: {Width: 0.35, Color: Black},
		Cutting:    {Width: 0.35, Color: Black},
		Creasing:   {Width: 0.25, Dash: []Length{4, 1.6}, Color: Blue},
		Positions:  {Width: 0.2, Dash: []Length{5, 1.2, 0.8, 1.2}, Color: BluishGreen},
		Legend:     {Width: 0.25, Color: Black},
	}
}

// MachineTheme returns lines whose kinds differ by colour alone, for a machine.
func MachineTheme() Theme {
	t := DefaultTheme()
	t[InsideCuts] = Stroke{Color: Vermilion}
	return t
}

// BlackTheme returns the lines of a print in black alone. No line is finer than
// what a poor print keeps (see Finest), and kinds differ by weight and dash.
func BlackTheme() Theme {
	return Theme{
		Cutting:    {Width: 0.5, Color: Black},
		InsideCuts: {Width: 0.5, Color: Black},
		Creasing:   {Width: 0.3, Dash: []Length{4, 1.6}, Color: Black},
		Positions:  {Width: 0.25, Dash: []Length{5, 1.2, 0.8, 1.2}, Color: Black},
		Legend:     {Width: 0.25, Color: Black},
	}
}

// Finest is the finest line of a print in black alone: at 150 dots an inch, a
// dot black where half of it is inked, it leaves one dot wherever it falls.
const Finest Length = 0.22

// InBlack returns the colour that stands for another in a print in black alone:
// white where the colour is nearer to white, black where it is not.
func (c Color) InBlack() Color {
	if c.light() {
		return White
	}
	return Black
}

// light tells whether a colour is a tint that carries no meaning in black: its
// luminance, by the weights of ITU-R BT.709 (from memory), is over half.
func (c Color) light() bool {
	return 0.2126*float64(c.R)+0.7152*float64(c.G)+0.0722*float64(c.B) > 0.5*255
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
