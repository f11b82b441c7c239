package handout_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/render/handout"
)

// wordsOf gives what the handout of a job says in its steps and its checks.
func wordsOf(t *testing.T, j slipcase.Job) string {
	return handout.Words(subjectOf(t, j), on(t, "A4"))
}

// Dividers stand before the case is closed, so each of three volumes has its play of 2
// for itself; in one compartment they share it.
func TestPlayOfVolumes(t *testing.T) {
	j := jobOf(221.5, 150, 30)
	j.Books = append(j.Books, jobOf(219, 150, 22).Books[0], jobOf(221, 148, 12).Books[0])
	j.Compartments = slipcase.EachItsOwn
	said := wordsOf(t, j)
	assert.Contains(t, said, "2.0 mm in height, the tallest, and 2.0 mm in thickness, each")
	assert.Less(t, strings.Index(said, "Glue the dividers between the walls"), strings.Index(said, "Glue the other side on top"))
	assert.Less(t, strings.Index(said, "Wrap the mouth edges of the dividers"), strings.Index(said, "Glue the dividers between the walls"))
	assert.Contains(t, said, "each part of it goes into its own compartment")

	j.Compartments = slipcase.DefaultJob(geometry.MM).Compartments
	assert.Contains(t, wordsOf(t, j), "and 2.0 mm in thickness, all together")

	// Linings that go in last leave room for two of 0.15 until then.
	j = jobOf(210, 148, 20)
	j.Lining.Order = slipcase.LinedAfter
	assert.Contains(t, wordsOf(t, j), "has play in it: 2.3 mm in height and 2.3 mm in thickness")
}

// The strip of covering round the edge of a hole comes first, in the words of
// the order of work.
func TestHoleWords(t *testing.T) {
	for _, shape := range []string{slipcase.Semicircle, slipcase.Triangle} {
		j := jobOf(221.5, 148.5, 32)
		j.ThumbHole.Shape = shape
		said := wordsOf(t, j)
		assert.Contains(t, said, "The thumb holes\nAt each hole, before its tabs are turned, "+slipcase.HoleStrip)
		assert.Equal(t, shape == slipcase.Semicircle, strings.Contains(said, "follow the curve"), shape)
		assert.Equal(t, shape == slipcase.Triangle, strings.Contains(said, "into two tabs"), shape)
	}
}

// A piece of patterned stock is cut by its face drawing before it is pasted.
func TestDesignWords(t *testing.T) {
	j := jobOf(210, 140, 26)
	assert.NotContains(t, wordsOf(t, j), "design")
	j.Pattern.Across, j.Pattern.Along, j.Pattern.Direction, j.Pattern.Match = 18, 64, slipcase.OneWay, slipcase.MatchMirrored
	said := wordsOf(t, j)
	for _, want := range []string{
		"Cut the side papers by the printed design", "with the extra that the cut list says: side paper ", "its marks on lines of the printed design",
		"the top of the design at its head", "right side paper face and left side paper face", "Draw round it and cut",
	} {
		assert.Contains(t, said, want)
	}
	assert.Less(t, strings.Index(said, "Cut the side papers"), strings.Index(said, "Paste a side paper"))
	j.Covering = slipcase.AllCloth
	said = wordsOf(t, j)
	assert.Less(t, strings.Index(said, "Cut the wrap, head panel and tail panel by"), strings.Index(said, "Glue the wrap"))
	assert.Contains(t, said, "face of the cloth up")
	j.Pattern = slipcase.Pattern{Across: 3, Direction: slipcase.AnyWay, Match: slipcase.MatchNothing}
	said = wordsOf(t, j)
	assert.Contains(t, said, "the lines of the printed design along its edges")
	assert.NotContains(t, said, "roughly")
}

// Each kind of case is spoken of by what it is made of.
func TestWordsForTheKind(t *testing.T) {
	card := handout.Words(cardOf(t, 203, 130, 22, 1.6), on(t, "A4"))
	for _, never := range []string{"board shows", "boards must", "turn-in", "turned in", "tab ", "covering", "Cloth", "cloth"} {
		assert.NotContains(t, card, never)
	}
	for _, want := range []string{"2.0 mm of play in height", "the inner flaps lie flat", "cut a new blank"} {
		assert.Contains(t, card, want)
	}
	for covering, want := range map[string]string{
		slipcase.ClothAndPaper: "Cloth or paper lifts", slipcase.AllCloth: "Cloth lifts",
		slipcase.AllPaper: "Paper lifts", slipcase.SidesOnly: "Paper lifts",
	} {
		j := jobOf(210, 148, 20)
		j.Covering = covering
		said := wordsOf(t, j)
		assert.Contains(t, said, want)
		if covering == slipcase.AllPaper || covering == slipcase.SidesOnly {
			assert.NotContains(t, strings.ToLower(said), "cloth ", covering)
		}
	}
}

// A thin case has side flaps too short for a wedge beside them.
func TestNotchWords(t *testing.T) {
	assert.Contains(t, wordsOf(t, jobOf(210, 148, 3)), "with its notches")
	assert.NotContains(t, wordsOf(t, jobOf(210, 148, 3)), "wedge")
	assert.Contains(t, wordsOf(t, jobOf(210, 148, 30)), "with its wedges")
}

// Thicknesses in one column have one number of decimals, and lose nothing in
// millimetres; in inches they are in thousandths.
func TestThicknesses(t *testing.T) {
	j := jobOf(210, 148, 20) // board 2, lining 0.15, cloth 0.3, paper 0.1
	j.Board.Thickness, j.Cloth.Thickness, j.SidePaper.Thickness = 2, 0.3, 0.1
	assert.Equal(t, []string{"2.00 mm", "0.15 mm", "0.30 mm", "0.10 mm", "2.15 mm"}, handout.Thicknesses(subjectOf(t, j), on(t, "A4")))
	j.Lining.Thickness = 0
	assert.Equal(t, []string{"2.0 mm", "0.3 mm", "0.1 mm", "2.0 mm"}, handout.Thicknesses(subjectOf(t, j), on(t, "A4")))
	j.Board.Thickness = 2.125
	assert.Equal(t, []string{"2.125 mm", "0.300 mm", "0.100 mm", "2.125 mm"}, handout.Thicknesses(subjectOf(t, j), on(t, "A4")))
	o := on(t, "A4")
	o.Round = geometry.To64th
	assert.Equal(t, "0.084 in", handout.Thicknesses(subjectOf(t, j), o)[0]) // 2.125 / 25.4
}
