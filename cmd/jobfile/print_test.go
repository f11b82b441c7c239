package jobfile_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/paper"
)

func TestMargins(t *testing.T) {
	for text, want := range map[string]paper.Margins{
		"":                                  {Left: 10, Right: 10, Top: 10, Bottom: 10},
		"margin = 6":                        {Left: 6, Right: 6, Top: 6, Bottom: 6},
		"margin_left = 4":                   {Left: 4, Right: 10, Top: 10, Bottom: 10},
		"margin_top = 3\nmargin = '0.5 in'": {Left: 12.7, Right: 12.7, Top: 3, Bottom: 12.7}, // whichever comes first
		"margin_left = 1\nmargin_right = 2\nmargin_top = 3\nmargin_bottom = '1/4 in'": {Left: 1, Right: 2, Top: 3, Bottom: 6.35},
	} {
		f, _, err := jobfile.Parse("case.toml", []byte(book+"[print]\n"+text))
		if assert.NoError(t, err, text) {
			assert.InDelta(t, want.Left.MM(), f.Print.Margins.Left.MM(), 1e-9, text)
			assert.InDelta(t, want.Right.MM(), f.Print.Margins.Right.MM(), 1e-9, text)
			assert.InDelta(t, want.Top.MM(), f.Print.Margins.Top.MM(), 1e-9, text)
			assert.InDelta(t, want.Bottom.MM(), f.Print.Margins.Bottom.MM(), 1e-9, text)
		}
	}
}

// What a rule measured stands for 200 mm; another rule says its length.
func TestMeasured(t *testing.T) {
	for text, want := range map[string]float64{
		"199.2": 199.2, "'199.2 mm'": 199.2, "'199,2 mm'": 199.2, "'19.92 cm'": 199.2, "194": 194, "206": 206,
		"'199.2 of 200 mm'": 199.2, "'149.4 of 150 mm'": 199.2, "'149.4 mm of 15 cm'": 199.2, "'280 of 280'": 200,
		"'7 15/16 in of 8 in'": 7.9375 / 8 * 200, "'7 15/16 of 8 in'": 7.9375 / 8 * 200, `'7 7/8"'`: 7.875 * 25.4,
	} {
		f, _, err := jobfile.Parse("case.toml", []byte(book+"[print]\nmeasured_across = "+text+"\nmeasured_along = "+text))
		if assert.NoError(t, err, text) {
			assert.InDelta(t, want, f.Print.Measured.Across.MM(), 1e-9, text)
			assert.InDelta(t, want, f.Print.Measured.Along.MM(), 1e-9, text)
		}
	}
}

// More than three in a hundred is a scaling setting: the refusal says where to
// look for it. What is no length is told as it is elsewhere.
func TestMeasuredRefused(t *testing.T) {
	for text, want := range map[string][]string{
		"193.9":             {"193.9 mm is too small; give 194 mm to 206 mm", "across the sheet", "print dialogue", "100 %", "fit to page", "borderless"},
		"206.1":             {"206.1 mm is too large; give 194 mm to 206 mm", "borderless"},
		"'140 of 150 mm'":   {"too small; give 145.5 mm to 154.5 mm", "150 mm measured", "print dialogue"},
		"7.84":              {`write "7.84 in"`},
		"0":                 {"zero is no measurement"},
		"true":              {"not a length"},
		"'199.2 of 20 mm'":  {"too small; give 50 mm"},
		"'199.2 of'":        {"199.2 of"},
		"'of 200 mm'":       {"of 200 mm"},
		"'9 of 9 of 200mm'": {"9 of 200mm"},
		"[199.2, 199.4]":    {"a list is not a length"},
	} {
		_, _, err := jobfile.Parse("case.toml", []byte(book+"[print]\nmeasured_across = "+text))
		if assert.Error(t, err, text) {
			assert.Contains(t, err.Error(), "case.toml:6: print.measured_across: ", text)
			for _, w := range want {
				assert.Contains(t, err.Error(), w, text)
			}
			assert.NotContains(t, err.Error(), "\n", text)
		}
	}
}

func TestInk(t *testing.T) {
	for text, want := range map[string]bool{"": false, "ink = 'colour'": false, "ink = 'black'": true, "ink = 'Black'": true} {
		f, _, err := jobfile.Parse("case.toml", []byte(book+"[print]\n"+text))
		require.NoError(t, err)
		assert.Equal(t, want, f.Black, text)
	}
	_, _, err := jobfile.Parse("case.toml", []byte(book+"[print]\nink = 'blue'"))
	assert.ErrorContains(t, err, `case.toml:6: print.ink: "blue" is none of its words; give "colour" or "black"`)
}

// Print reads [print] of any job, whatever else is wrong with it, or flags alone.
func TestPrint(t *testing.T) {
	s, unit, err := noShop.Print("case.toml", []byte("units = 'in'\n[[book]]\nheight = 'tall'\n[print]\nmargin = 0.25\n"), []jobfile.Flag{{Name: "--paper", Key: "print.paper", Value: "letter"}})
	require.NoError(t, err)
	assert.Equal(t, geometry.IN, unit)
	assert.Equal(t, "Letter", s.Sheet.Name)
	assert.InDelta(t, 6.35, s.Margins.Bottom.MM(), 1e-9)
	_, _, err = noShop.Print("", nil, nil)
	assert.NoError(t, err)
	_, _, err = noShop.Print("case.toml", []byte("[print]\npapr = 'a4'\nmargin = 50"), nil)
	assert.ErrorContains(t, err, "case.toml:2: print.papr: unknown key; did you mean print.paper")
	assert.ErrorContains(t, err, "case.toml:3: print.margin: 50 mm is too large")
}
