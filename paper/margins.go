package paper

import (
	"fmt"

	"forel/geometry"
)

// Margins are what a printer leaves white at each side of a sheet, as the sheet
// is fed: upright, seen from the printed face, Top the edge that text begins at.
type Margins struct{ Left, Right, Top, Bottom Length }

// EvenMargins returns the same margin on every side.
func EvenMargins(m Length) Margins { return Margins{m, m, m, m} }

// MostMargin is the widest margin of a Setup; the narrowest is none.
const MostMargin Length = 40

// turned returns the margins of a page that lies on the sheet: its words run along
// the sheet's long side. The page is turned a quarter anticlockwise onto the
// sheet, so that its top comes to the sheet's left side and its left to the
// sheet's bottom: "landscape" of RFC 8011, 5.2.10 (from memory). A driver that
// turns it the other way swaps the two margins of each pair.
func (m Margins) turned() Margins {
	return Margins{Left: m.Bottom, Right: m.Top, Top: m.Left, Bottom: m.Right}
}

// of returns what the margins leave of a page.
func (m Margins) of(width, height Length) geometry.Box {
	return geometry.Bx(m.Left, m.Top, width-m.Right, height-m.Bottom)
}

func (m Margins) sides() [4]Length { return [4]Length{m.Left, m.Right, m.Top, m.Bottom} }

// String returns the margins in millimetres, in one number where they are even.
func (m Margins) String() string {
	if m == EvenMargins(m.Left) {
		return fmt.Sprintf("%.4g mm", m.Left.MM())
	}
	return fmt.Sprintf("%.4g mm left, %.4g right, %.4g top, %.4g bottom", m.Left.MM(), m.Right.MM(), m.Top.MM(), m.Bottom.MM())
}
