package geometry_test

import (
	"fmt"
	"math"
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
)

// Expected values are worked out by hand from 1 in = 25.4 mm exactly, the
// definition in the international yard and pound agreement of 1959.
var read = []struct {
	text string
	bare geometry.Unit
	mm   float64
}{
	// Decimal numbers and their units.
	{"235", geometry.MM, 235},
	{"2", geometry.IN, 50.8},
	{"235 mm", geometry.IN, 235},
	{"235mm", geometry.MM, 235},
	{"23.5 cm", geometry.MM, 235},
	{"9.25 in", geometry.MM, 234.95}, // 228.6 + 6.35
	{"9.25", geometry.IN, 234.95},
	{".5 in", geometry.MM, 12.7},
	{"0", geometry.MM, 0},
	{"0/4 in", geometry.MM, 0},
	{"007 mm", geometry.MM, 7},
	{"1234.5", geometry.MM, 1234.5},
	{"1.234", geometry.MM, 1.234},
	{"10 millimetres", geometry.MM, 10},
	{"1 millimeter", geometry.MM, 1},
	{"2 centimetres", geometry.MM, 20},
	{"1 centimeter", geometry.MM, 10},
	{"1 INCH", geometry.MM, 25.4},
	{"2 Inches", geometry.MM, 50.8},
	{"2 in.", geometry.MM, 50.8},
	{"235 MM", geometry.MM, 235},
	{"  235\t mm\n", geometry.MM, 235},

	// Decimal commas.
	{"23,5 mm", geometry.MM, 23.5},
	{"0,125 in", geometry.MM, 3.175}, // an eighth
	{"1234,567 mm", geometry.MM, 1234.567},
	{"12,34", geometry.MM, 12.34},
	{"1,2345", geometry.MM, 1.2345},
	{",5 mm", geometry.MM, 0.5},

	// Fractions and mixed numbers; 1/8 in is 3.175 mm, 1/16 in is 1.5875 mm.
	{"9 1/4 in", geometry.MM, 234.95},
	{`9-1/4"`, geometry.MM, 234.95},
	{"9 1/4", geometry.IN, 234.95},
	{"9 1 / 4 in", geometry.MM, 234.95},
	{`5/8"`, geometry.MM, 15.875},
	{"1 1/8 in", geometry.MM, 28.575},
	{"5/4 in", geometry.MM, 31.75},
	{"1/2 mm", geometry.MM, 0.5},
	{"1/2 cm", geometry.IN, 5},
	{"0 1/4 in", geometry.MM, 6.35},
	{"5 31/32 in", geometry.MM, 151.60625}, // 6 in less 0.79375

	// Marks and characters beyond ASCII.
	{"9¼ in", geometry.MM, 234.95},
	{"9 ¼ in", geometry.MM, 234.95},
	{"9-¼ in", geometry.MM, 234.95},
	{"¼″", geometry.MM, 6.35},
	{"½”", geometry.MM, 12.7},
	{"½''", geometry.MM, 12.7},
	{"½′′", geometry.MM, 12.7},
	{"2＂", geometry.MM, 50.8},
	{"235\u00a0mm", geometry.MM, 235},
	{"9\u202f1/4\u2009in", geometry.MM, 234.95},
	{"9 1\u20444 in", geometry.MM, 234.95},
	{"9 1\u22154 in", geometry.MM, 234.95},
	{"¹⁄₁₆ in", geometry.MM, 1.5875},
	{"¹/₁₆ in", geometry.MM, 1.5875},
	{"⅟₁₆ in", geometry.MM, 1.5875},
	{"3¹⁄₁₆ in", geometry.MM, 77.7875}, // 76.2 + 1.5875
	{"1¹¹⁄₁₆ in", geometry.MM, 42.8625},
	{"9\u20111/4 in", geometry.MM, 234.95},
	{"9\u20131/4 in", geometry.MM, 234.95},
	{"２３５ｍｍ", geometry.IN, 235},
	{"９¼ ｉｎ", geometry.MM, 234.95},
	{"235 ㎜", geometry.IN, 235},
}

func TestParseLength(t *testing.T) {
	for _, c := range read {
		t.Run(c.text, func(t *testing.T) {
			l, err := geometry.ParseLength(c.text, c.bare)
			require.NoError(t, err)
			assert.InDelta(t, c.mm, l.MM(), 1e-12)
		})
	}
}

const (
	thousands = "has a thousands separator"
	twoWays   = "can be read in two ways"
	manyMarks = "has more than one point or comma"
	junk      = "isn't a length"
	noNumber  = "doesn't begin with a number"
	notWhole  = "isn't a fraction"
	unitless  = "is a fraction without a unit"
	improper  = "has a fraction of one or more beside a whole number"
	unknown   = "has an unknown unit"
	twoUnits  = "has more than one unit"
	two       = "holds more than one number"
	negative  = "is negative"
	feet      = "is in feet"
)

var refused = []struct {
	text  string
	bare  geometry.Unit
	wrong string // what follows the quoted text
	right string // a part of it
}{
	{"", geometry.MM, "holds no length", "235 mm or 9 1/4 in"},
	{" \t\u00a0\n", geometry.MM, "holds no length", "235 mm"},

	{"1 234 mm", geometry.MM, thousands, "such as 1234"},
	{"1\u202f234,5 mm", geometry.MM, thousands, "such as 1234"},
	{"1'234", geometry.MM, thousands, "such as 1234"},
	{"1’234.5 mm", geometry.MM, thousands, "such as 1234"},
	{"1,234.5", geometry.MM, manyMarks, "1234.5, without thousands separators"},
	{"1.234,5", geometry.MM, manyMarks, "1234.5"},
	{"1.234.567", geometry.MM, manyMarks, "1234.5"},
	{"1..5", geometry.MM, manyMarks, "1234.5"},
	{"1,234", geometry.MM, twoWays, "write 1234 or 1.234"},
	{"12,345 mm", geometry.MM, twoWays, "write 12345 or 12.345"},
	{"999,000 in", geometry.IN, twoWays, "write 999000 or 999.000"},

	{"1/4", geometry.MM, unitless, "a fraction needs its unit: write 1/4 in"},
	{"9 1/4", geometry.MM, unitless, "write 9 1/4 in"},
	{"9¼", geometry.MM, unitless, "write 9 1/4 in"},
	{"9 1/0 in", geometry.MM, "divides by zero", "1/4 in"},
	{"1/00", geometry.IN, "divides by zero", "1/4 in"},
	{"9 5/4 in", geometry.MM, improper, "9 1/4 in"},
	{"9 4/4 in", geometry.MM, improper, "9 1/4 in"},
	{"9.5 1/4 in", geometry.MM, notWhole, "whole numbers"},
	{"1/2.5 in", geometry.MM, notWhole, "whole numbers"},
	{"1/2/4 in", geometry.MM, notWhole, "whole numbers"},
	{"9--1/4 in", geometry.MM, notWhole, "whole numbers"},
	{"½½ in", geometry.MM, notWhole, "whole numbers"},
	{"¼5 in", geometry.MM, notWhole, "whole numbers"}, // no 1/45
	{"9/ in", geometry.MM, notWhole, "whole numbers"},

	{"-5 mm", geometry.MM, negative, "zero or more"},
	{"\u22125 mm", geometry.MM, negative, "zero or more"},
	{"- ½ in", geometry.MM, negative, "zero or more"},
	{"NaN", geometry.MM, "isn't a number", "235 mm"},
	{"nan mm", geometry.MM, "isn't a number", "235 mm"},
	{"inf", geometry.MM, "is infinite", "235 mm"},
	{"-Infinity in", geometry.MM, "is infinite", "235 mm"},
	{"∞ mm", geometry.MM, "is infinite", "235 mm"},
	{"1e3", geometry.MM, "has an exponent", "such as 1000"},
	{"1.5E-3 mm", geometry.MM, "has an exponent", "such as 1000"},

	{"1'", geometry.IN, feet, "inches or millimetres"},
	{"1′ 6″", geometry.IN, feet, "inches or millimetres"},
	{"1 ft", geometry.MM, feet, "inches or millimetres"},
	{"1 Foot 6 in", geometry.MM, feet, "inches or millimetres"},
	{"2feet", geometry.MM, feet, "inches or millimetres"},
	{"5 m", geometry.MM, unknown, `mm, cm or in for "m"`},
	{"5 µm", geometry.MM, unknown, "mm, cm or in"},
	{"5 mmm", geometry.MM, unknown, `for "mmm"`},
	{"5 mm in", geometry.MM, twoUnits, "one number and one unit"},
	{`5 in"`, geometry.MM, twoUnits, "one number and one unit"},
	{"1 cm 5 mm", geometry.MM, twoUnits, "one number and one unit"},

	{"5 6 mm", geometry.MM, two, "one length"},
	{"9-10 in", geometry.MM, two, "one length"},
	{"10² mm", geometry.MM, two, "one length"}, // no 102
	{"1①", geometry.MM, two, "one length"},
	{"mm", geometry.MM, noNumber, "235 mm"},
	{"mm 5", geometry.MM, noNumber, "235 mm"},
	{".", geometry.MM, noNumber, "235 mm"},
	{"-", geometry.MM, noNumber, "235 mm"},
	{"about 5", geometry.MM, noNumber, "235 mm"},
	{"+5", geometry.MM, noNumber, "235 mm"},
	{"5.", geometry.MM, junk, "235 mm"},
	{"5 mm²", geometry.MM, junk, "235 mm"},
	{"5 mm 3", geometry.MM, junk, "235 mm"},
	{"5?", geometry.MM, junk, "235 mm"},
	{"0x10", geometry.MM, junk, "235 mm"},
	{"1_000", geometry.MM, junk, "235 mm"},
	{"5\x00mm", geometry.MM, junk, "235 mm"},
	{"5\xff", geometry.MM, junk, "235 mm"},
}

func TestParseLengthRefuses(t *testing.T) {
	for _, c := range refused {
		t.Run(c.text, func(t *testing.T) {
			l, err := geometry.ParseLength(c.text, c.bare)
			var pe *geometry.ParseError
			require.ErrorAs(t, err, &pe)
			assert.Zero(t, l)
			assert.Equal(t, c.text, pe.Text)
			assert.Equal(t, c.wrong, pe.Reason)
			assert.Contains(t, pe.Fix, c.right)
			assert.Equal(t, fmt.Sprintf("%q %s; %s", c.text, c.wrong, pe.Fix), err.Error())
			assert.NotContains(t, err.Error(), "\n")
			assert.False(t, strings.HasSuffix(err.Error(), "."), "full stop")
		})
	}
}

func TestParseLengthLongInput(t *testing.T) {
	ones := strings.Repeat("1", 100_000)
	for name, text := range map[string]string{
		"whole":       ones + " mm",
		"decimal":     ones + "." + ones + " in",
		"numerator":   ones + "/3 in",
		"denominator": "1/" + ones + " in",
		"mixed":       ones + " 1/4 in",
		// Each number fits a float64 (below 1.8e308), the length doesn't.
		"product": strings.Repeat("1", 200) + " 1/" + strings.Repeat("9", 200) + " in",
		"in mm":   strings.Repeat("1", 308) + " in",
	} {
		t.Run(name, func(t *testing.T) {
			_, err := geometry.ParseLength(text, geometry.MM)
			require.Error(t, err)
			assert.Contains(t, err.Error(), "is too large a number")
			assert.Less(t, len(err.Error()), 200)
		})
	}

	l, err := geometry.ParseLength("0."+ones+" mm", geometry.MM)
	require.NoError(t, err)
	assert.InDelta(t, 1.0/9, l.MM(), 1e-12)

	_, err = geometry.ParseLength(strings.Repeat("1/", 100_000), geometry.MM)
	require.Error(t, err)
	assert.Less(t, len(err.Error()), 200)
}

func TestParseErrorShortensWholeCharacters(t *testing.T) {
	_, err := geometry.ParseLength(strings.Repeat("é", 41), geometry.MM)
	require.Error(t, err)
	assert.Contains(t, err.Error(), `"`+strings.Repeat("é", 40)+`…" `)

	_, err = geometry.ParseLength(strings.Repeat("é", 40), geometry.MM)
	require.Error(t, err)
	assert.Contains(t, err.Error(), `"`+strings.Repeat("é", 40)+`" `)
}

func TestParseLengthMixedFraction(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := rapid.Int64Range(0, 1000).Draw(t, "whole")
		den := rapid.Int64Range(1, 1000).Draw(t, "den")
		num := rapid.Int64Range(0, den-1).Draw(t, "num")
		join := rapid.SampledFrom([]string{" ", "-", "\u00a0", "  "}).Draw(t, "join")
		slash := rapid.SampledFrom([]string{"/", "\u2044", " / "}).Draw(t, "slash")
		unit := rapid.SampledFrom([]string{" in", `"`, "″", "INCHES", ""}).Draw(t, "unit")

		l, err := geometry.ParseLength(fmt.Sprint(whole, join, num, slash, den, unit), geometry.IN)
		require.NoError(t, err)

		exact := big.NewRat(whole*den+num, den)
		want, _ := exact.Mul(exact, big.NewRat(254, 10)).Float64()
		assert.InDelta(t, want, l.MM(), 1e-15*want) // a few roundings of a float64
	})
}

func TestParseLengthNeverGuesses(t *testing.T) {
	n := rapid.IntRange(1, 999)
	three := rapid.StringMatching(`[0-9]{3}`)
	forms := map[string]func(*rapid.T) string{
		"comma": func(t *rapid.T) string { return fmt.Sprintf("%d,%s mm", n.Draw(t, "n"), three.Draw(t, "d")) },
		"space": func(t *rapid.T) string { return fmt.Sprintf("%d %s mm", n.Draw(t, "n"), three.Draw(t, "d")) },
		"apostrophe": func(t *rapid.T) string {
			return fmt.Sprintf("%d'%s mm", n.Draw(t, "n"), three.Draw(t, "d"))
		},
		"two points": func(t *rapid.T) string {
			return fmt.Sprintf("%d.%s.%s", n.Draw(t, "n"), three.Draw(t, "d"), three.Draw(t, "e"))
		},
		"comma and point": func(t *rapid.T) string { return fmt.Sprintf("%d,%s.5", n.Draw(t, "n"), three.Draw(t, "d")) },
		"unitless":        func(t *rapid.T) string { return fmt.Sprintf("%d/%d", n.Draw(t, "n"), n.Draw(t, "d")) },
		"negative":        func(t *rapid.T) string { return fmt.Sprintf("-%d mm", n.Draw(t, "n")) },
		"zero denominator": func(t *rapid.T) string {
			return fmt.Sprintf("%d %d/0 in", n.Draw(t, "n"), n.Draw(t, "d"))
		},
		"improper": func(t *rapid.T) string {
			d := n.Draw(t, "d")
			return fmt.Sprintf("%d %d/%d in", n.Draw(t, "n"), d+n.Draw(t, "more")-1, d)
		},
		"exponent": func(t *rapid.T) string { return fmt.Sprintf("%de%d", n.Draw(t, "n"), n.Draw(t, "d")) },
		"feet":     func(t *rapid.T) string { return fmt.Sprintf("%d' %d\"", n.Draw(t, "n"), n.Draw(t, "d")) },
	}
	for name, form := range forms {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			text := form(t)
			l, err := geometry.ParseLength(text, geometry.MM)
			require.Errorf(t, err, "%q gave %v", text, l)
		}))
	}
}

func TestParseErrorIsOneLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[\n\r\x{2028}\x{85}0-9/.,' "a-z]{0,60}`).Draw(t, "text")
		if _, err := geometry.ParseLength(text, geometry.MM); err != nil {
			assert.False(t, strings.ContainsAny(err.Error(), "\n\r\u2028\u0085"), err.Error())
		}
	})
}

// FuzzParseLength: no text makes ParseLength panic; what it reads is finite
// and zero or more, and what it refuses is told in one short line.
func FuzzParseLength(f *testing.F) {
	for _, c := range read {
		f.Add(c.text, c.bare == geometry.IN)
	}
	for _, c := range refused {
		f.Add(c.text, c.bare == geometry.IN)
	}
	f.Add(strings.Repeat("9", 400), false)
	f.Add("1/"+strings.Repeat("9", 400)+" in", false)
	f.Fuzz(func(t *testing.T, text string, inches bool) {
		bare := geometry.MM
		if inches {
			bare = geometry.IN
		}
		l, err := geometry.ParseLength(text, bare)
		if err == nil {
			assert.False(t, math.IsNaN(l.MM()) || math.IsInf(l.MM(), 0) || l < 0, "%q gave %v", text, l)
			padded, err := geometry.ParseLength("\u00a0"+text+" ", bare)
			require.NoError(t, err)
			assert.Equal(t, l, padded, "space around %q", text)
			return
		}
		var pe *geometry.ParseError
		require.ErrorAs(t, err, &pe)
		assert.Zero(t, l)
		assert.Equal(t, text, pe.Text)
		assert.NotEmpty(t, pe.Fix)
		assert.False(t, strings.ContainsAny(err.Error(), "\n\r\u2028\u2029\u0085"), "%q", err.Error())
		assert.Less(t, len(err.Error()), 1200) // 40 characters, at most 10 bytes each, quoted twice, and the words
	})
}

func ExampleParseLength() {
	for _, text := range []string{"235", "23,5 cm", "9¼ in", "1,234", "9 1/4"} {
		l, err := geometry.ParseLength(text, geometry.MM)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%.2f mm\n", l.MM())
	}
	// Output:
	// 235.00 mm
	// 235.00 mm
	// 234.95 mm
	// "1,234" can be read in two ways; write 1234 or 1.234
	// "9 1/4" is a fraction without a unit; a fraction needs its unit: write 9 1/4 in
}
