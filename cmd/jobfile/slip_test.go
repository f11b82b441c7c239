package jobfile_test

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/kinds"
)

// What may have been meant by a measure out of its limits, the likeliest first: the decimal
// sign a place on where that makes a usual book beside the other measures, or another unit.
func TestSlips(t *testing.T) {
	for _, c := range []struct {
		units, height, width, thickness string
		want                            []string
	}{
		{"mm", "22,1", "148.5", "32", []string{`--height: "22,1" is too small; did you mean 221 mm? Or give 40 mm to 700 mm (the book from head to tail); if it was inches, write "22.1 in"`}},
		{"mm", "221", "14.85", "32", []string{`--width: "14.85" is too small; did you mean 148.5 mm? Or `}},
		{"mm", "2210", "148.5", "32", []string{`--height: "2210" is too large; did you mean 221 mm? Or give 40 mm to 700 mm (the book from head to tail)`}},
		{"mm", "221", "148.5", "320", []string{`--thickness: "320" is too large; did you mean 32 mm? Or `}},
		{"mm", "9", "148.5", "32", []string{`--height: "9" is too small; give 40 mm to 700 mm (the book from head to tail); if it was inches, write "9 in"`}}, // 90 mm high and 148.5 wide is no usual book
		{"mm", "9", "6", "0.75", []string{
			`--height: "9" is too small; give 40 mm to 700 mm (the book from head to tail); if it was inches, write "9 in"; or did you mean 90 mm?`,
			`--thickness: "0.75" is too small; give 1 mm to 300 mm (the book's thickness); if it was inches, write "0.75 in"; or did you mean 7.5 mm?`,
			`--width: "6" is too small; give 20 mm to 700 mm (the book from spine to fore-edge); if it was inches, write "6 in"; or did you mean 60 mm?`,
		}},
		{"mm", "221", "148.5", "32in", []string{`--thickness: "32in" is too large; give 0.04 in to 11.811 in (the book's thickness); if it was millimetres, write "32 mm"; or did you mean 3.2 in?`}},
		{"in", "8.7", "5.85", "0.5 mm", []string{`--thickness: "0.5 mm" is too small; give 1 mm to 300 mm (the book's thickness); if it was inches, write "0.5 in"; or did you mean 5 mm?`}},
		{"in", "87", "5", "1", []string{`--height: "87" is too large; did you mean 8.7 in? Or give 1.575 in to 27.559 in (the book from head to tail); if it was millimetres, write "87 mm"`}},
		{"in", "221", "148", "32", []string{
			`--height: "221" is too large; give 1.575 in to 27.559 in (the book from head to tail); if it was millimetres, write "221 mm"; or did you mean 22.1 in?`,
			`--thickness: "32" is too large; give 0.04 in to 11.811 in (the book's thickness); if it was millimetres, write "32 mm"; or did you mean 3.2 in?`,
			`--width: "148" is too large; give 0.788 in to 27.559 in (the book from spine to fore-edge); if it was millimetres, write "148 mm"; or did you mean 14.8 in?`,
		}},
	} {
		_, _, err := fromFlags(append(measured(c.height, c.width, c.thickness), set("units", c.units)))
		require.Error(t, err)
		begins(t, "", c.want, err.Error())
	}
	_, _, err := fromFlags(measured("221", "148.5", "32", set("board.thickness", "20")))
	assert.ErrorContains(t, err, `"20" is too large; did you mean 2 mm? Or give 0.5 mm to 6 mm (the board's thickness)`)
}

// didYouMean is the first thing that is said would be right.
var didYouMean = regexp.MustCompile(`; did you mean (\S+ mm)\? Or give `)

// Of a usual book of any kind of case a height or a width with its decimal sign a place off
// is asked about with what was measured, and that is what a button of the page sets.
func TestSlippedDecimal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		high := rapid.IntRange(1600, 3900).Draw(t, "height") // tenths of a millimetre
		wide := rapid.IntRange(10*high/18, 10*high/12).Draw(t, "width")
		if wide >= 2000 {
			wide = 1999 // a tenth of it is out of the limits
		}
		k := rapid.SampledFrom(kinds.All).Draw(t, "kind")
		book := map[string]int{"height": high, "width": wide}
		slipped := rapid.SampledFrom([]string{"height", "width"}).Draw(t, "slipped")
		off := map[string]string{"height": fmt.Sprintf("%.2f", float64(high)/10), "width": fmt.Sprintf("%.2f", float64(wide)/10)}
		off[slipped] = fmt.Sprintf("%.3f", float64(book[slipped])/100)
		flags := append(measured(off["height"], off["width"], "25"), set("kind", k.Name))
		if k.Construction != "" {
			flags = append(flags, set("construction", k.Construction))
		}
		_, _, err := fromFlags(flags)
		var bad jobfile.Issues
		require.True(t, errors.As(err, &bad), "%v", off)
		for _, i := range bad {
			if i.Key != "--"+slipped {
				continue
			}
			m := didYouMean.FindStringSubmatch(i.String())
			require.NotNil(t, m, "%v: %v", off, i)
			meant, err := geometry.ParseLength(m[1], geometry.MM)
			require.NoError(t, err)
			require.InDelta(t, float64(book[slipped])/10, meant.MM(), 0.006)
			require.InDelta(t, meant.MM(), i.Mend.Value.MM(), 1e-9)
			return
		}
		t.Fatalf("%v: nothing is told of the %s: %v", off, slipped, bad)
	})
}

// BenchmarkSlips reads a file as long as any that is read, with as many slips as are told
// below a long comment and no table.
func BenchmarkSlips(b *testing.B) {
	text := []byte(strings.Repeat("# a comment of the maker\n", 41_000) + strings.Repeat("title = 9,5\n", 20))
	for b.Loop() {
		if _, _, err := jobfile.Parse("case.toml", text); err == nil {
			b.Fatal("taken")
		}
	}
}
