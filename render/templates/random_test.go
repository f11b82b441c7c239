package templates_test

import (
	"fmt"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
	"forel/paper"
)

// anyPrinter gives a setup the margins and errors of any printer.
func anyPrinter(t *rapid.T, s paper.Setup) paper.Setup {
	length := func(lo, hi float64, label string) geometry.Length {
		return geometry.Length(rapid.Float64Range(lo, hi).Draw(t, label))
	}
	most := rapid.SampledFrom([]float64{18, paper.MostMargin.MM()}).Draw(t, "most margin")
	s.Margins = paper.Margins{
		Left: length(0, most, "left margin"), Right: length(0, most, "right margin"),
		Top: length(0, most, "top margin"), Bottom: length(0, most, "bottom margin"),
	}
	if rapid.Bool().Draw(t, "gauged") {
		s.Measured = paper.Measured{Across: length(194, 206, "measured across"), Along: length(194, 206, "measured along")}
	}
	s.Overlap = length(paper.LeastOverlap.MM(), paper.MostOverlap.MM(), "overlap")
	if s.Check() != nil {
		t.Skip("can't be printed with")
	}
	return s
}

// anySheet names a sheet of a usual size, or gives the sides of another.
func anySheet(t *rapid.T) string {
	if rapid.Bool().Draw(t, "usual sheet") {
		return rapid.SampledFrom(sheets).Draw(t, "sheet").name
	}
	side := rapid.IntRange(121, 900)
	return fmt.Sprintf("%d x %d mm", side.Draw(t, "sheet side"), side.Draw(t, "other side"))
}

// anyJob draws the job of a case of boards: for a book of any size, or for
// several, with every choice there is.
func anyJob(t *rapid.T) slipcase.Job {
	length := func(lo, hi float64, label string) geometry.Length {
		return geometry.Length(rapid.OneOf(
			rapid.Float64Range(lo, hi),
			rapid.Map(rapid.IntRange(int(2*lo), int(2*hi)), func(n int) float64 { return float64(n) / 2 }),
		).Draw(t, label))
	}
	j := slipcase.DefaultJob()
	j.Title = anyTitle(t)
	for _, c := range slipcase.Choices {
		*c.At(&j) = rapid.SampledFrom(c.Words).Draw(t, c.Key)
	}
	n := rapid.SampledFrom([]int{1, 1, 1, 1, 2, 3, slipcase.MostBooks}).Draw(t, "volumes")
	for i := range n {
		b := slipcase.Book{
			Height:    slipcase.Readings{length(40, 700, "height")},
			Width:     slipcase.Readings{length(20, 600, "width")},
			Thickness: slipcase.Readings{length(1, 200/float64(n), "thickness")},
		}
		if i == 0 || rapid.Bool().Draw(t, "odd volume") {
			j.Books = append(j.Books, b)
		} else {
			j.Books = append(j.Books, j.Books[0])
		}
		if n > 1 {
			j.Books[i].Title = anyTitle(t)
		}
	}
	j.Lining.Thickness = rapid.SampledFrom([]geometry.Length{0, 0.15, 0.4}).Draw(t, "lining")
	j.Lining.Trim = rapid.SampledFrom([]geometry.Length{0, 3, 12, 40}).Draw(t, "trim")
	if rapid.Bool().Draw(t, "patterned") {
		j.Pattern.Across = length(5, 300, "repeat across")
		j.Pattern.Along = length(5, 300, "repeat along")
	}
	if _, err := slipcase.Make(j); err != nil {
		t.Skip("can't be made")
	}
	return j
}

// anyCard draws the job of a case of scored card.
func anyCard(t *rapid.T) onepiece.Job {
	length := func(lo, hi float64, label string) slipcase.Readings {
		return slipcase.Readings{geometry.Length(rapid.Float64Range(lo, hi).Draw(t, label))}
	}
	j := onepiece.DefaultJob()
	j.Title = anyTitle(t)
	j.Book = slipcase.Book{Height: length(40, 700, "height"), Width: length(20, 600, "width"), Thickness: length(1, 200, "thickness")}
	j.Card.Thickness = rapid.SampledFrom([]geometry.Length{0, 0.4, 1, 3}).Draw(t, "card")
	if _, err := onepiece.Make(j); err != nil {
		t.Skip("can't be made")
	}
	return j
}

// anyTitle draws none, a short one, or a long one with words of any length, in
// letters that the typeface has and in those it lacks.
func anyTitle(t *rapid.T) string {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"", "Invented harbour log"}),
		rapid.StringOfN(rapid.RuneFrom([]rune("  aeinorstWM–éß½ЖщΩאب港日誌\u0301")), 1, 200, -1),
	).Draw(t, "title")
}

// anyPlan draws a case of any kind, in millimetres or in inches.
func anyPlan(t *rapid.T) (plan.Plan, geometry.Unit) {
	unit := rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit")
	if rapid.IntRange(0, 4).Draw(t, "of card") == 0 {
		j := anyCard(t)
		j.Unit = unit
		c, err := onepiece.Make(j)
		require.NoError(t, err)
		return c.Plan(), unit
	}
	j := anyJob(t)
	j.Unit = unit
	return planOf(t, j), unit
}
