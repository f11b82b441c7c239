package job_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
)

func TestProblemInWords(t *testing.T) {
	whole := job.Problem{Key: "book.width", Of: "the width of the book", Value: "30 mm", Reason: "is too large", Fix: "give 1 mm"}
	assert.Equal(t, "30 mm is too large", whole.Wrong())
	assert.Equal(t, "book.width: 30 mm is too large; give 1 mm", whole.Error())
	assert.Equal(t, "the width of the book: 30 mm is too large; give 1 mm", whole.Sentence())
	bare := job.Problem{Reason: "no book"}
	assert.Equal(t, "no book", bare.Error())
	assert.Equal(t, "no book", bare.Sentence())
	assert.Equal(t, bare.Error()+"\n"+whole.Error(), job.Problems{bare, whole}.Error())
}

// Whatever is no number, or outside its limits, is refused, and nothing else;
// what is refused says the key and one line of what would do.
func TestSettingCheck(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo := rapid.Float64Range(0.01, 10).Draw(t, "least")
		hi := lo + rapid.Float64Range(0.01, 100).Draw(t, "most")
		v := rapid.OneOf(rapid.Float64Range(lo, hi), rapid.Float64(), rapid.SampledFrom([]float64{lo, hi, 0, math.NaN(), math.Inf(1), -lo})).Draw(t, "value")
		unit := rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit")
		l, n := job.Length(v), v
		for _, s := range []job.Setting{job.LengthOf("a.b", "the b", lo, hi, &l), job.NumberOf("a.b", "the b", lo, hi, &n), job.PercentOf("a.b", "the b", lo, hi, &n)} {
			p, ok := s.Check(unit)
			if within := v >= lo && v <= hi; ok != within {
				t.Fatalf("%v in %v to %v: %v %v", v, lo, hi, ok, p)
			}
			if !ok && (p.Key != "a.b" || p.Reason == "" || p.Fix == "") {
				t.Fatalf("%+v", p)
			}
		}
	})
}

func TestWordsAndAuto(t *testing.T) {
	word, l := "each", job.Length(0)
	s := job.WordOf("settings", "how", []string{"one", "each"}, &word)
	_, ok := s.Check(geometry.MM)
	assert.True(t, ok)
	word = "both"
	p, ok := s.Check(geometry.MM)
	assert.False(t, ok)
	assert.Equal(t, `settings: "both" is not known; give one of one, each (how)`, p.Error())
	_, ok = job.LengthOf("radius", "the radius", 6, 60, &l).Check(geometry.MM)
	assert.False(t, ok)
	_, ok = job.LengthOf("radius", "the radius", 6, 60, &l).OrAuto().Check(geometry.MM)
	assert.True(t, ok)
}

// Names of books in a sentence: one is "the book", several go by title or number.
func TestWhose(t *testing.T) {
	c := job.Common{Books: []job.Book{{Title: "Tide log"}}} // invented
	assert.Equal(t, "the book", c.Whose(0))
	c.Books = append(c.Books, job.Book{})
	assert.Equal(t, "Tide log", c.Whose(0))
	assert.Equal(t, "volume 2", c.Whose(1))
	assert.Equal(t, "book.width", job.BookKey(0, "width"))
	assert.Equal(t, "book[2].width", job.BookKey(1, "width"))
}
