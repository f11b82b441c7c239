package jobfile

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0},
		{"", "cloth", 5},
		{"cloth", "cloth", 0},
		{"clot", "cloth", 1},
		{"cclothh", "cloth", 2},
		{"cl0th", "cloth", 1},
		{"heigth", "height", 2},
		{"kitten", "sitting", 3}, // the textbook's pair: k to s, e to i, g put in
		{"é", "e", 1},
	} {
		assert.Equal(t, c.want, distance([]rune(c.a), []rune(c.b)), "%s %s", c.a, c.b)
	}
}

// A distance is a metric: the same both ways, and no longer than by way of a third.
func TestDistanceIsAMetric(t *testing.T) {
	word := rapid.SliceOfN(rapid.RuneFrom([]rune("abc_")), 0, 6)
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := word.Draw(t, "a"), word.Draw(t, "b"), word.Draw(t, "c")
		if distance(a, b) != distance(b, a) {
			t.Fatal("not the same both ways")
		}
		if (distance(a, b) == 0) != (string(a) == string(b)) {
			t.Fatal("zero is for the same word only")
		}
		if distance(a, c) > distance(a, b)+distance(b, c) {
			t.Fatal("longer than by way of a third")
		}
	})
}
