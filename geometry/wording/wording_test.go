package wording_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"forel/geometry/wording"
)

func TestWords(t *testing.T) {
	assert.Equal(t, "a b", wording.OneLine(" a\n\tb "))
	assert.Equal(t, "Élan", wording.Capital("élan"))
	assert.Equal(t, "", wording.Capital(""))
	assert.Equal(t, "a, b and c", wording.And([]string{"a", "b", "c"}))
	assert.Equal(t, "a or b", wording.Or([]string{"a", "b"}))
	assert.Equal(t, "", wording.And[string](nil))
	assert.Equal(t, "1 sheet", wording.Count(1, "sheet"))
	assert.Equal(t, "0 sheets", wording.Count(0, "sheet"))
	assert.Equal(t, `a\nb`, wording.Printable("a\nb"))
	assert.Equal(t, `a\|b\*`, wording.Escape("a|b*"))
	assert.Equal(t, "keep your\nfingers\nbehind", wording.Wrap("keep your fingers  behind", 10))
}

// A number is what it is read back as, to its last decimal, and has no zero too
// many.
func TestDecimal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, decimals := rapid.Float64Range(-1e6, 1e6).Draw(t, "v"), rapid.IntRange(0, 6).Draw(t, "decimals")
		s := wording.Decimal(v, decimals)
		back, err := strconv.ParseFloat(s, 64)
		assert.NoError(t, err)
		assert.InDelta(t, v, back, 0.5000001/pow10(decimals))
		assert.NotEqual(t, "-0", s)
		if _, part, ok := strings.Cut(s, "."); ok {
			assert.False(t, part == "" || strings.HasSuffix(part, "0") || len(part) > decimals, s)
		}
	})
	assert.Equal(t, "100", wording.Decimal(100, 0))
}

func pow10(n int) float64 {
	v := 1.
	for range n {
		v *= 10
	}
	return v
}

// Columns stand below each other, numbers at their ends; an empty one is left out.
func TestAligned(t *testing.T) {
	rows := [][]string{{"piece", "cut", "none"}, {"side", "2", ""}, {"spine wall", "10", ""}}
	assert.Equal(t, "piece       cut\nside          2\nspine wall   10\n", wording.Aligned(rows, func(i int) bool { return i > 0 }))
}
