package paper_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper"
)

const inch = 25.4

// known are the sheets by name as their standards have them, in millimetres.
// ISO 216: A0 is 841 by 1189, B0 1000 by 1414, and each size halves the longer
// side of the last, rounded down. ANSI/ASME Y14.1: sizes A and B are 8½ by 11
// and 11 by 17 in. Legal, 8½ by 14 in, is US practice.
func known() map[string][2]float64 {
	out := map[string][2]float64{}
	for series, s := range map[string][2]float64{"A": {841, 1189}, "B": {1000, 1414}} {
		for n := range 7 {
			out[fmt.Sprint(series, n)] = s
			s = [2]float64{math.Floor(s[1] / 2), s[0]}
		}
	}
	out["Letter"] = [2]float64{8.5 * inch, 11 * inch}
	out["Legal"] = [2]float64{8.5 * inch, 14 * inch}
	out["Tabloid"] = [2]float64{11 * inch, 17 * inch}
	return out
}

func TestSheetsAreThoseOfTheStandards(t *testing.T) {
	want := known()
	assert.Len(t, paper.Sheets, len(want))
	for _, s := range paper.Sheets {
		require.Contains(t, want, s.Name)
		assert.InDelta(t, want[s.Name][0], s.Width.MM(), 1e-9, s.Name)
		assert.InDelta(t, want[s.Name][1], s.Height.MM(), 1e-9, s.Name)
	}
}

func TestParseSheet(t *testing.T) {
	for text, want := range map[string][2]float64{
		"A4": {210, 297}, "a4": {210, 297}, " A3 ": {297, 420},
		"letter": {215.9, 279.4}, "LEGAL": {215.9, 355.6}, "Tabloid": {279.4, 431.8},
		"210 x 297 mm": {210, 297}, "210×297": {210, 297}, "210 X 297": {210, 297}, "210mm x 297mm": {210, 297},
		"21 x 29.7 cm": {210, 297}, "21 x 29,7 cm": {210, 297},
		"297 x 210 mm":  {210, 297}, // given lying, kept upright
		"8 1/2 x 11 in": {215.9, 279.4}, "8.5x11in": {215.9, 279.4}, "8½ × 11 in": {215.9, 279.4}, `8 1/2" x 11"`: {215.9, 279.4},
		"11 in x 17 in": {279.4, 431.8}, "210 mm x 11 in": {210, 279.4}, "8.5 in x 300 mm": {215.9, 300},
		"100 x 2000 mm": {100, 2000}, // both limits
	} {
		s, err := paper.ParseSheet(text, geometry.MM)
		if assert.NoError(t, err, text) {
			assert.InDelta(t, want[0], s.Width.MM(), 1e-9, text)
			assert.InDelta(t, want[1], s.Height.MM(), 1e-9, text)
		}
	}
	s, err := paper.ParseSheet("8.5 x 14", geometry.IN)
	require.NoError(t, err)
	assert.InDelta(t, 8.5*inch, s.Width.MM(), 1e-9, "a bare number is in the job's unit")
	assert.InDelta(t, 14*inch, s.Height.MM(), 1e-9)
}

func TestParseSheetRefuses(t *testing.T) {
	for _, text := range []string{
		"", " ", "x", "A", "A44", "a4 letter", "210", "210 mm", "210 x", "x 297", "210 x 297 x 1", "210 by 297", "210, 297",
		"-210 x 297 mm", "210 x -297 mm", "0 x 297", "NaN x 297", "Inf x Inf", "1e9 x 297", "9 1/0 x 11 in", "210 furlong x 297 mm",
		"99.9 x 200 mm", "210 x 2000.1 mm", "8.5 x 11" /* in mm */, "210\x00x297", strings.Repeat("9", 400) + " x 297",
	} {
		_, err := paper.ParseSheet(text, geometry.MM)
		if assert.Error(t, err, "%q", text) {
			assert.Less(t, len(err.Error()), 300, "%q", text)
		}
	}
}

// Any size within the limits is read as written, whichever side comes first.
func TestParseSheetReadsAnySize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := float64(rapid.IntRange(1000, 20000).Draw(t, "tenths of one side")) / 10
		b := float64(rapid.IntRange(1000, 20000).Draw(t, "tenths of the other")) / 10
		s, err := paper.ParseSheet(fmt.Sprintf("%v x %v mm", a, b), geometry.MM)
		require.NoError(t, err)
		assert.InDelta(t, min(a, b), s.Width.MM(), 1e-9)
		assert.InDelta(t, max(a, b), s.Height.MM(), 1e-9)
	})
}

func TestParseSheetNeverPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringMatching(`[0-9 ./,xX×¼½"a-zA-Z-]{0,20}`)).Draw(t, "text")
		s, err := paper.ParseSheet(text, geometry.MM)
		if err == nil {
			assert.True(t, s.Width >= paper.LeastSheet && s.Height <= paper.MostSheet && s.Width <= s.Height, "%q is %v", text, s)
		}
	})
}

func TestSetupCheck(t *testing.T) {
	for _, s := range paper.Sheets {
		err := paper.Setup{Sheet: s, Margins: paper.EvenMargins(10), Overlap: 10}.Check()
		if s.Width < 140 { // no room for the rulers
			assert.ErrorContains(t, err, "is needed", s.Name)
		} else {
			assert.NoError(t, err, s.Name)
		}
	}
	assert.NoError(t, paper.DefaultSetup().Check())
	a4 := paper.Sheets[0]
	for name, s := range map[string]paper.Setup{
		"narrower than a ruler of 4 in and its words": {Sheet: paper.Sheet{Width: 120, Height: 300}, Margins: paper.EvenMargins(10), Overlap: 10},
		"too low for its foot and a template":         {Sheet: paper.Sheet{Width: 100, Height: 100}, Overlap: 10},
		"all margin":                                  {Sheet: a4, Margins: paper.EvenMargins(105), Overlap: 10},
		"a negative margin":                           {Sheet: a4, Margins: paper.EvenMargins(-1), Overlap: 10},
		"margin no number":                            {Sheet: a4, Margins: paper.EvenMargins(geometry.Length(math.NaN())), Overlap: 10},
		"one margin too wide":                         {Sheet: a4, Margins: paper.Margins{Top: 40.1}, Overlap: 10},
		"one margin negative":                         {Sheet: a4, Margins: paper.Margins{Left: -0.1}, Overlap: 10},
		"printed by far too small":                    {Sheet: a4, Overlap: 10, Measured: paper.Measured{Across: 193.9}},
		"printed by far too large":                    {Sheet: a4, Overlap: 10, Measured: paper.Measured{Along: 206.1}},
		"measured no number":                          {Sheet: a4, Overlap: 10, Measured: paper.Measured{Along: geometry.Length(math.NaN())}},
		"overlap no number":                           {Sheet: a4, Margins: paper.EvenMargins(10), Overlap: geometry.Length(math.NaN())},
		"overlap of a sheet":                          {Sheet: a4, Margins: paper.EvenMargins(10), Overlap: 190},
		"no overlap":                                  {Sheet: a4, Margins: paper.EvenMargins(10)},
		"negative overlap":                            {Sheet: a4, Margins: paper.EvenMargins(10), Overlap: -10},
		"no sheet":                                    {Margins: paper.EvenMargins(10), Overlap: 10},
	} {
		assert.Error(t, s.Check(), name)
	}
}
