package choose_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/bending"
	"forel/geometry/choose"
	"forel/geometry/job"
)

func book(h, w, t, grams float64) job.Book {
	at := func(l float64) job.Readings { return job.Readings{geometry.Length(l)} }
	return job.Book{Height: at(h), Width: at(w), Thickness: at(t), Weight: grams}
}

func of(t require.TestingT, b job.Book, use string, conditions ...string) choose.Choice {
	c, err := choose.Of(choose.Ask{Books: []job.Book{b}, Use: use, Conditions: conditions})
	require.NoError(t, err)
	return c
}

// set returns what a choice sets a key to.
func set(c choose.Choice, key string) (word string, l geometry.Length) {
	for _, s := range c.Sets {
		if s.Key == key {
			return s.Word, s.Value
		}
	}
	return "", 0
}

// University of Brighton, Book Arts, "Worksheets for bookbinders: slipcase": 2 mm board for
// a book of 113 by 157 by 12 mm. G. Malkin, "Straightforward Slipcases" (2016): 2 mm board,
// for an octavo of invented size.
func TestPublishedBoards(t *testing.T) {
	for _, b := range []job.Book{book(157, 113, 12, 0), book(221, 148.5, 32, 0)} {
		c := of(t, b, choose.Shelf)
		kind, _ := set(c, "kind")
		construction, _ := set(c, "construction")
		_, board := set(c, "board.thickness")
		assert.Equal(t, "slipcase", kind)
		assert.Equal(t, "boards", construction)
		assert.Equal(t, geometry.Length(2), board)
	}
}

// Cornell University Library, Conservation manual guide 11A (1999): a one-piece slipcase of
// corrugated board for a book of 20.3 by 13.0 by 2.2 cm.
func TestPublishedCorrugated(t *testing.T) {
	c := of(t, book(203, 130, 22, 0), choose.Archive)
	construction, _ := set(c, "construction")
	kind, _ := set(c, "card.kind")
	assert.Equal(t, "card", construction)
	assert.Equal(t, "corrugated", kind)
}

// E. Diehl (1946), "Chemises": made for a leather book that is elaborately tooled. What is
// loose or raised, or weighs much, goes into a box (common practice, no source).
func TestMoreThanASlipcase(t *testing.T) {
	for _, test := range []struct {
		grams     float64
		condition []string
		kind      string
	}{
		{700, nil, "slipcase"}, {700, []string{choose.Fragile}, "chemise and slipcase"}, {700, []string{choose.Raised}, "drop-spine box"},
		{700, []string{choose.Fragile, choose.Loose}, "drop-spine box"}, {4500, nil, "drop-spine box"}, {12_000, nil, "drop-spine box"},
	} {
		kind, _ := set(of(t, book(250, 180, 40, test.grams), choose.Shelf, test.condition...), "kind")
		assert.Equal(t, test.kind, kind, "%v", test)
	}
	several := choose.Ask{Books: []job.Book{book(200, 140, 20, 400), book(200, 140, 20, 400)}, Use: choose.Shelf, Conditions: []string{choose.Fragile}}
	c, err := choose.Of(several)
	require.NoError(t, err)
	kind, _ := set(c, "kind")
	assert.Equal(t, "slipcase", kind, "nothing else takes several")
	several.Books[0].Weight = 20_000
	_, err = choose.Of(several)
	assert.ErrorContains(t, err, "make two cases")
}

// any book that a job takes, and any use.
func anyAsk(t *rapid.T) choose.Ask {
	h, w := rapid.Float64Range(60, 500).Draw(t, "height"), rapid.Float64Range(45, 380).Draw(t, "width")
	a := choose.Ask{Use: rapid.SampledFrom(choose.Uses).Draw(t, "use"), Unit: rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit")}
	for _, one := range choose.Conditions {
		if rapid.IntRange(0, 3).Draw(t, one) == 0 {
			a.Conditions = append(a.Conditions, one)
		}
	}
	a.Books = []job.Book{book(h, w, rapid.Float64Range(2, 90).Draw(t, "thickness"), rapid.OneOf(rapid.Just(0.), rapid.Float64Range(30, 9000)).Draw(t, "weight"))}
	return a
}

// M. Roberts and D. Etherington (1982), "slipcase": a simple slipcase should not be notched.
// Each piece of advice has its reasons, and each reason its source.
func TestAdvice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := anyAsk(t)
		c, err := choose.Of(a)
		if err != nil {
			return // told in the test of the command
		}
		shape, _ := set(c, "thumb_hole.shape")
		assert.True(t, shape == "" || strings.HasPrefix(c.Kind.Name, "chemise"), "a simple slipcase is notched")
		var keys []string
		for _, one := range c.Advice {
			keys = append(keys, one.Key)
			assert.NotEmpty(t, one.Says.Text)
			assert.NotEmpty(t, one.Why)
			for _, r := range one.Why {
				assert.NotEmpty(t, r.Source, r.Says.Text)
				assert.Equal(t, strings.Count(r.Says.Text, "%s"), len(r.Says.Lengths), r.Says.Text)
			}
		}
		assert.Equal(t, []string{"make", "board", "out"}, keys)
		assert.NotEmpty(t, c.Others)
		for _, o := range c.Others {
			assert.NotEqual(t, c.Kind.About, o.Name)
		}
	})
}

// A heavier book never gets a thinner board, nor a higher one, whatever it is then made
// of; card is no board.
func TestHeavierIsNeverThinner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := anyAsk(t)
		a.Conditions = nil
		b := a.Books[0]
		b.Weight = rapid.Float64Range(30, 8000).Draw(t, "weighed")
		light, err := choose.Of(choose.Ask{Books: []job.Book{b}, Use: a.Use, Unit: a.Unit})
		if err != nil || light.Board == nil {
			return
		}
		heavier, higher := b, b
		heavier.Weight *= rapid.Float64Range(1, 4).Draw(t, "times")
		higher.Height = job.Readings{b.Height.Largest() * geometry.Length(rapid.Float64Range(1, 1.4).Draw(t, "higher"))}
		for _, more := range []job.Book{heavier, higher} {
			c, err := choose.Of(choose.Ask{Books: []job.Book{more}, Use: a.Use, Unit: a.Unit})
			if err != nil {
				continue
			}
			require.NotNil(t, c.Board)
			assert.GreaterOrEqual(t, c.Board.Thickness(), light.Board.Thickness(), "%v after %v", more, b)
		}
	})
}

// A board of the middle of the range, of a stiffness between those reckoned with, bends as
// little as is said: by a plate and a beam worked out anew.
func TestBoardIsStiffEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := anyAsk(t)
		c, err := choose.Of(a)
		if err != nil || c.Board == nil || c.Kind.Name == "drop-spine box" {
			return
		}
		const inside, gravity, between = 2, 9.80665, 2000
		side := bending.Plate{Free: c.Size.Height + inside, Deep: c.Size.Width + inside, Poisson: bending.Poisson}
		d := side.Rigidity(between, c.Board.Thickness())
		weight := c.Grams / 1000 * gravity
		assert.LessOrEqual(t, side.Pushed(3, d), side.Free/30)
		assert.LessOrEqual(t, side.Pressed(weight/(side.Free*side.Deep).MM(), d), side.Free/30)
		span := c.Size.Thickness + inside
		assert.LessOrEqual(t, bending.Beam(span, side.Deep, c.Board.Thickness(), weight/span.MM(), between), span/100)
		assert.True(t, slices.ContainsFunc(job.Boards, func(s job.Sold) bool { return s == c.Board.Sold }))
	})
}
