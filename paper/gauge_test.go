package paper_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper"
)

func ExampleSetup_Printable() {
	s := paper.DefaultSetup()
	s.Margins = paper.Margins{Left: 4, Right: 5, Top: 6, Bottom: 14}
	up, lying := s.Printable(false), s.Printable(true)
	fmt.Printf("upright: %.0f to %.0f across, %.0f to %.0f down\n", up.Min.X, up.Max.X, up.Min.Y, up.Max.Y)
	fmt.Printf("lying: %.0f to %.0f across, %.0f to %.0f down\n", lying.Min.X, lying.Max.X, lying.Min.Y, lying.Max.Y)
	// Output:
	// upright: 4 to 205 across, 6 to 283 down
	// lying: 14 to 291 across, 4 to 205 down
}

func ExampleMeasured() {
	m := paper.Measured{Across: 199.2, Along: 200.4}
	x, y := m.Scale(true) // a page that lies has the two ways swapped
	fmt.Printf("%.3f %.3f\n%v\n", x, y, m)
	// Output:
	// 1.002 0.996
	// corrected: across 200 mm printed as 199.2, along 200 mm printed as 200.4
}

// Pages turned onto the sheet a quarter anticlockwise keep off the same margins:
// a page's place (x, y) comes to (y, height of the sheet - x).
func TestLyingMarginsAreTheSheets(t *testing.T) {
	s := paper.Setup{Sheet: paper.Sheet{Width: 200, Height: 300}, Margins: paper.Margins{Left: 1, Right: 2, Top: 3, Bottom: 4}}
	lying, up := s.Printable(true), s.Printable(false)
	turn := func(p geometry.Point) geometry.Point { return geometry.Pt(p.Y, 300-p.X) }
	a, b := turn(lying.Min), turn(lying.Max)
	assert.Equal(t, up, geometry.Bx(min(a.X, b.X), min(a.Y, b.Y), max(a.X, b.X), max(a.Y, b.Y)))
}

// The printable area in the file is never in the margins, nor is it on paper;
// what is drawn so long prints so long.
func TestCorrectionKeepsToTheMargins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(lo, hi float64, name string) geometry.Length {
			return geometry.Length(rapid.Float64Range(lo, hi).Draw(t, name))
		}
		s := paper.DefaultSetup()
		s.Margins = paper.Margins{Left: length(0, 20, "left"), Right: length(0, 20, "right"), Top: length(0, 20, "top"), Bottom: length(0, 20, "bottom")}
		open := s.Printable(false)
		across, along := length(194, 206, "across"), length(194, 206, "along")
		s.Measured = paper.Measured{Across: across, Along: along}
		require.NoError(t, s.Check())
		for _, lying := range []bool{false, true} {
			within := open
			printsX, printsY := across/200, along/200
			if lying {
				within = paper.Setup{Sheet: s.Sheet, Margins: s.Margins}.Printable(true)
				printsX, printsY = printsY, printsX
			}
			x, y, c := s.InFile(lying)
			area := s.Printable(lying)
			require.True(t, within.Grow(1e-9).Contains(area), "on paper")
			put := func(p geometry.Point) geometry.Point {
				return geometry.Pt(c.X+(p.X-c.X)*geometry.Length(x), c.Y+(p.Y-c.Y)*geometry.Length(y))
			}
			file := geometry.Box{Min: put(area.Min), Max: put(area.Max)}
			require.True(t, within.Grow(1e-9).Contains(file), "in the file")
			require.InDelta(t, area.Width().MM(), (file.Width() * printsX).MM(), 1e-9)
			require.InDelta(t, area.Height().MM(), (file.Height() * printsY).MM(), 1e-9)
		}
	})
}
