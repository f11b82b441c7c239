package geometry_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
)

// inches gives n/den of an inch.
func inches(n, den float64) geometry.Length { return geometry.Length(n * 25.4 / den) }

// Expected texts are worked out by hand; 1/64 in is 0.396875 mm.
func TestRoundingFormat(t *testing.T) {
	for _, c := range []struct {
		rounding geometry.Rounding
		length   geometry.Length
		want     string
		pretty   string
	}{
		{geometry.ToTenthMM, 151.66, "151.7 mm", "151.7 mm"},
		{geometry.ToTenthMM, 151.64, "151.6 mm", "151.6 mm"},
		{geometry.ToTenthMM, 151.96, "152.0 mm", "152.0 mm"},
		{geometry.ToTenthMM, 0.25, "0.3 mm", "0.3 mm"},
		{geometry.ToTenthMM, -0.25, "-0.3 mm", "-0.3 mm"},
		{geometry.ToTenthMM, 0.35, "0.4 mm", "0.4 mm"},
		{geometry.ToTenthMM, 1.15 - 1e-14, "1.2 mm", "1.2 mm"}, // a half but for float64
		{geometry.ToTenthMM, 1.149, "1.1 mm", "1.1 mm"},
		{geometry.ToTenthMM, 0, "0.0 mm", "0.0 mm"},
		{geometry.ToTenthMM, -0.04, "0.0 mm", "0.0 mm"},
		{geometry.ToTenthMM, geometry.Length(math.Copysign(0, -1)), "0.0 mm", "0.0 mm"},
		{geometry.ToTenthMM, 1234.5, "1234.5 mm", "1234.5 mm"},

		{geometry.ToHalfMM, 151.7, "151.5 mm", "151.5 mm"},
		{geometry.ToHalfMM, 151.75, "152.0 mm", "152.0 mm"},
		{geometry.ToHalfMM, -151.75, "-152.0 mm", "-152.0 mm"},
		{geometry.ToHalfMM, 151.24, "151.0 mm", "151.0 mm"},
		{geometry.ToHalfMM, -0.2, "0.0 mm", "0.0 mm"},

		{geometry.To32nd, 151.6, "5 31/32 in", "5 31/32 in"}, // 151.60625
		{geometry.To32nd, 152.4, "6 in", "6 in"},
		{geometry.To32nd, 152.3, "6 in", "6 in"}, // 0.1 short, less than half of 0.79375
		{geometry.To32nd, 234.95, "9 1/4 in", "9¼ in"},
		{geometry.To32nd, inches(3, 32), "3/32 in", "3/32 in"},
		{geometry.To32nd, inches(1, 64), "1/32 in", "1/32 in"}, // a half, up
		{geometry.To32nd, inches(-1, 64), "-1/32 in", "-1/32 in"},
		{geometry.To32nd, inches(4, 32), "1/8 in", "⅛ in"},

		{geometry.To64th, 0, "0 in", "0 in"},
		{geometry.To64th, 0.1, "0 in", "0 in"},
		{geometry.To64th, -0.1, "0 in", "0 in"},
		{geometry.To64th, -3.175, "-1/8 in", "-⅛ in"},
		{geometry.To64th, -38.1, "-1 1/2 in", "-1½ in"},
		{geometry.To64th, 12.7, "1/2 in", "½ in"},
		{geometry.To64th, 19.05, "3/4 in", "¾ in"},
		{geometry.To64th, 9.525, "3/8 in", "⅜ in"},
		{geometry.To64th, 15.875, "5/8 in", "⅝ in"},
		{geometry.To64th, 22.225, "7/8 in", "⅞ in"},
		{geometry.To64th, inches(63, 64), "63/64 in", "63/64 in"},
		{geometry.To64th, inches(12, 64), "3/16 in", "3/16 in"},
		{geometry.To64th, inches(1, 128), "1/64 in", "1/64 in"}, // a half, up
		{geometry.To64th, inches(127, 128), "1 in", "1 in"},     // a half, up to the whole
		{geometry.To64th, 254, "10 in", "10 in"},

		{geometry.Rounding{}, 1.5, "2.0 mm", "2.0 mm"},                                     // no step: whole units
		{geometry.ToTenthMM, 1e18, "1000000000000000000.0 mm", "1000000000000000000.0 mm"}, // more steps than an int64 holds
		{geometry.ToTenthMM, geometry.Length(math.NaN()), "NaN mm", "NaN mm"},
		{geometry.To64th, geometry.Length(math.Inf(1)), "+Inf in", "+Inf in"},
	} {
		t.Run(fmt.Sprint(float64(c.length), " ", c.rounding), func(t *testing.T) {
			assert.Equal(t, c.want, c.rounding.Format(c.length))
			assert.Equal(t, c.pretty, c.rounding.Pretty(c.length))
			assert.Equal(t, c.want, c.rounding.Number(c.length)+" "+c.rounding.Unit.String())
		})
	}
}

func TestRoundingHalvesAwayFromZero(t *testing.T) {
	for _, r := range []struct {
		geometry.Rounding
		unit, parts float64 // millimetres, and steps in them
	}{
		{geometry.ToHalfMM, 1, 2},
		{geometry.ToTenthMM, 1, 10},
		{geometry.To32nd, 25.4, 32},
		{geometry.To64th, 25.4, 64},
	} {
		for n := range 2000 {
			half := geometry.Length((float64(n) + 0.5) * r.unit / r.parts)
			up := geometry.Length(float64(n+1) * r.unit / r.parts)
			require.Equal(t, r.Format(up), r.Format(half), "%v and a half steps, %v", n, r.Rounding)
			require.NotEqual(t, r.Format(up), r.Format(half-1e-6), "under %v and a half steps, %v", n, r.Rounding)
			require.Equal(t, "-"+r.Format(up), r.Format(-half))
		}
	}
}

func TestRoundingString(t *testing.T) {
	assert.Equal(t, "to the nearest 0.5 mm", geometry.ToHalfMM.String())
	assert.Equal(t, "to the nearest 0.1 mm", geometry.ToTenthMM.String())
	assert.Equal(t, "to the nearest 1/32 in", geometry.To32nd.String())
	assert.Equal(t, "to the nearest 1/64 in", geometry.To64th.String())
}

func TestParseRounding(t *testing.T) {
	for _, c := range []struct {
		text string
		unit geometry.Unit
		want geometry.Rounding
	}{
		{"0.5", geometry.MM, geometry.ToHalfMM},
		{"0,5 mm", geometry.MM, geometry.ToHalfMM},
		{"0.1", geometry.MM, geometry.ToTenthMM},
		{"0.1mm", geometry.MM, geometry.ToTenthMM},
		{"1/32", geometry.IN, geometry.To32nd},
		{"1/64", geometry.IN, geometry.To64th},
		{"1/64 in", geometry.IN, geometry.To64th},
	} {
		t.Run(c.text, func(t *testing.T) {
			r, err := geometry.ParseRounding(c.text, c.unit)
			require.NoError(t, err)
			assert.Equal(t, c.want, r)
		})
	}
}

func TestParseRoundingRefuses(t *testing.T) {
	for _, text := range []string{"", "1/32", "1/64 in", "0.2", "1", "0", "-0.5", "half", "0.1\n5"} {
		_, err := geometry.ParseRounding(text, geometry.MM)
		var pe *geometry.ParseError
		require.ErrorAs(t, err, &pe, text)
		assert.EqualError(t, err, fmt.Sprintf("%q is no rounding for mm; give 0.5 or 0.1", text))
		assert.Equal(t, text, pe.Text)
	}
	for _, text := range []string{"", "0.5", "0.1 mm", "1/16", "1/128", "1", "1/0"} {
		_, err := geometry.ParseRounding(text, geometry.IN)
		assert.EqualError(t, err, fmt.Sprintf("%q is no rounding for in; give 1/32 or 1/64", text))
	}
}

func TestFormatThenParse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.SampledFrom([]geometry.Rounding{
			geometry.ToHalfMM, geometry.ToTenthMM, geometry.To32nd, geometry.To64th,
		}).Draw(t, "rounding")
		l := geometry.Length(rapid.Float64Range(0, 2000).Draw(t, "mm"))
		for _, text := range []string{r.Format(l), r.Pretty(l), r.Number(l)} {
			back, err := geometry.ParseLength(text, r.Unit)
			require.NoError(t, err)
			assert.LessOrEqual(t, (back - l).Abs().MM(), r.Step.MM()/2+1e-9, text)
		}
	})
}

func ExampleRounding_Format() {
	width := 151.66 * geometry.Millimetre
	fmt.Println(geometry.ToTenthMM.Format(width))
	fmt.Println(geometry.ToHalfMM.Format(width))
	fmt.Println(geometry.To32nd.Format(width))
	// Output:
	// 151.7 mm
	// 151.5 mm
	// 5 31/32 in
}

// A small length is shown to 0.01 mm or 0.001 in (1 in = 25.4 mm), never as -0.
func TestFine(t *testing.T) {
	for _, test := range []struct {
		l    geometry.Length
		u    geometry.Unit
		want string
	}{{0.6, geometry.MM, "0.60 mm"}, {-1.236, geometry.MM, "-1.24 mm"}, {-0.004, geometry.MM, "0.00 mm"}, {1, geometry.IN, "0.039 in"}, {25.4, geometry.IN, "1.000 in"}} {
		if got := geometry.Fine(test.l, test.u); got != test.want {
			t.Errorf("%v in %v: %q, not %q", test.l, test.u, got, test.want)
		}
	}
}

// What is shown finely is rounded as the decimals are that a maker types, by exact
// arithmetic, halves away from zero; a thickness with three digits likewise.
func TestHalvesAreRoundedAsTyped(t *testing.T) {
	exact := func(thousandths int, places int32) string {
		return decimal.New(int64(thousandths), -3).Round(places).String()
	}
	for n := 1; n < 20_000; n++ {
		typed, err := geometry.ParseLength(decimal.New(int64(n), -3).String(), geometry.MM)
		require.NoError(t, err)
		fine, err := decimal.NewFromString(geometry.FineNumber(typed, geometry.MM))
		require.NoError(t, err)
		require.Equal(t, exact(n, 2), fine.String(), "%d", n)
		places := int32(3)
		if n >= 1000 {
			places = 2
		}
		if n >= 10_000 {
			places = 1
		}
		require.Equal(t, exact(n, places)+" mm", geometry.Rounding{Unit: geometry.MM}.Thickness(typed), "%d", n)
	}
}
