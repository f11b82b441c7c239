// Package pagetest draws cases, titles and printers at random, and holds what is
// drawn on pages to the rules of every page, for tests.
package pagetest

import (
	"fmt"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper"
)

// AnySetup draws a sheet and a printer of any margins and errors that templates
// can be printed with.
func AnySetup(t *rapid.T) paper.Setup {
	length := func(lo, hi float64, label string) geometry.Length {
		return geometry.Length(rapid.Float64Range(lo, hi).Draw(t, label))
	}
	s := paper.DefaultSetup()
	s.Sheet = AnySheet(t)
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

// Broad is AnySetup with 165 mm between the margins at least, for pages whose
// tables need as much.
func Broad(t *rapid.T) paper.Setup {
	s := AnySetup(t)
	if s.Printable(false).Width() < 165*0.97 { // as far as a printer may be off
		t.Skip("narrow")
	}
	return s
}

// AnySheet draws a sheet of a usual size, one that has hardly room for anything, or
// any other.
func AnySheet(t *rapid.T) paper.Sheet {
	name := rapid.SampledFrom([]string{"A4", "A3", "Letter", "Legal", "Tabloid", "small", "small", "any", "any", "any"}).Draw(t, "sheet")
	if side := map[string]int{"small": 210, "any": 900}[name]; side > 0 {
		sides := rapid.IntRange(166, side)
		name = fmt.Sprintf("%d x %d mm", sides.Draw(t, "side"), sides.Draw(t, "other side"))
	}
	s, err := paper.ParseSheet(name, geometry.MM)
	require.NoError(t, err)
	return s
}

// Rounding returns that of a unit as it is where nothing else is asked for.
func Rounding(u geometry.Unit) geometry.Rounding {
	if u == geometry.IN {
		return geometry.To64th
	}
	return geometry.ToTenthMM
}

// AnyCase draws a case of boards, its title and its books' included: for a book of
// any size, or for several, with every choice there is.
func AnyCase(t *rapid.T) slipcase.Case {
	length := func(lo, hi float64, label string) geometry.Length {
		return geometry.Length(rapid.OneOf(
			rapid.Float64Range(lo, hi),
			rapid.Map(rapid.IntRange(int(2*lo), int(2*hi)), func(n int) float64 { return float64(n) / 2 }),
		).Draw(t, label))
	}
	j := slipcase.DefaultJob(geometry.MM)
	j.Title = AnyTitle(t)
	j.Unit = rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit")
	for _, c := range j.Settings().Words() {
		*c.Word = rapid.SampledFrom(c.Words).Draw(t, c.Key)
	}
	n := rapid.SampledFrom([]int{1, 1, 1, 1, 2, 3, job.MostBooks}).Draw(t, "volumes")
	for i := range n {
		b := job.Book{
			Height:    job.Readings{length(40, 700, "height")},
			Width:     job.Readings{length(20, 600, "width")},
			Thickness: job.Readings{length(1, 200/float64(n), "thickness")},
		}
		if i == 0 || rapid.Bool().Draw(t, "odd volume") {
			j.Books = append(j.Books, b)
		} else {
			j.Books = append(j.Books, j.Books[0])
		}
		if n > 1 {
			j.Books[i].Title = AnyTitle(t)
		}
	}
	j.Lining.Thickness = rapid.SampledFrom([]geometry.Length{0, 0.15, 0.4}).Draw(t, "lining")
	j.Lining.Trim = rapid.SampledFrom([]geometry.Length{0, 3, 12, 40}).Draw(t, "trim")
	plain := slipcase.DefaultJob(geometry.MM).Pattern // what is to match must come again
	if rapid.Bool().Draw(t, "patterned") {
		j.Pattern.Across = length(5, 300, "repeat across")
		j.Pattern.Along = length(5, 300, "repeat along")
	} else {
		j.Pattern = plain
	}
	if j.Lining.Thickness > 0 && rapid.IntRange(0, 2).Draw(t, "patterned inside") == 0 {
		j.LiningPattern.Across = length(5, 100, "repeat across inside")
		j.LiningPattern.Along = rapid.SampledFrom([]geometry.Length{j.LiningPattern.Across, 40}).Draw(t, "repeat along inside")
	} else {
		j.LiningPattern = plain
	}
	c, err := plantest.Make[slipcase.Case](j)
	if err != nil {
		t.Skip("can't be made")
	}
	return c
}

// AnyPlan draws what is made of any kind, most often a case of boards, and the
// maker's unit.
func AnyPlan(t *rapid.T) (plan.Plan, geometry.Unit) {
	if rapid.IntRange(0, 2).Draw(t, "of another kind") > 0 {
		c := AnyCase(t)
		return c.Plan(), c.Job.Unit
	}
	length := func(lo, hi float64, label string) job.Readings {
		return job.Readings{geometry.Length(rapid.Float64Range(lo, hi).Draw(t, label))}
	}
	k := rapid.SampledFrom(kinds.All[1:]).Draw(t, "kind")
	unit := rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit")
	j := k.New(unit)
	c := j.Shared()
	c.Title, c.Unit = AnyTitle(t), unit
	c.Books = []job.Book{{Height: length(40, 700, "height"), Width: length(20, 600, "width"), Thickness: length(1, 200, "thickness")}}
	for _, s := range j.Settings().Words() {
		*s.Word = rapid.SampledFrom(s.Words).Draw(t, s.Key)
	}
	for _, key := range []string{"pattern.repeat_across", "pattern.repeat_along", "lining_pattern.repeat_across", "lining_pattern.repeat_along"} {
		if s, ok := j.Settings().Find(key); ok { // what is to match must come again
			*s.Length = 24
		}
	}
	for key, some := range map[string][]geometry.Length{"card.thickness": {0, 0.4, 1, 3}, "chemise.book_cover": {1.5, 3}} {
		if s, ok := j.Settings().Find(key); ok {
			*s.Length = rapid.SampledFrom(some).Draw(t, key)
		}
	}
	p, err := plantest.Plan(j)
	if err != nil {
		t.Skip("can't be made")
	}
	return p, unit
}

// AnyTitle draws none, a short one, or a long one with words of any length, in
// letters that the typeface has and in those it lacks.
func AnyTitle(t *rapid.T) string {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"", "Invented harbour log"}),
		rapid.StringOfN(rapid.RuneFrom([]rune("  aeinorstWM<&%|*–éß½ЖщΩאب港日誌\u0301")), 1, 200, -1),
	).Draw(t, "title")
}
