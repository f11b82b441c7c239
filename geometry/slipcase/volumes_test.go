package slipcase_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

// sets draws cases of two to five volumes of about one format, some thicker at
// one edge.
func sets() *rapid.Generator[slipcase.Case] {
	return rapid.Custom(func(t *rapid.T) slipcase.Case {
		j := slipcase.DefaultJob(geometry.MM)
		j.Unit = rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit")
		j.Compartments = rapid.SampledFrom([]string{slipcase.OneCompartment, slipcase.EachItsOwn}).Draw(t, "compartments")
		j.Covering = rapid.SampledFrom([]string{slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.AllPaper, slipcase.SidesOnly}).Draw(t, "covering")
		j.Lining.Order = rapid.SampledFrom([]string{slipcase.LinedBefore, slipcase.LinedAfter}).Draw(t, "order")
		for i := range rapid.IntRange(2, 5).Draw(t, "volumes") {
			hundredths := func(lo, hi int, what string) float64 {
				return float64(rapid.IntRange(lo*100, hi*100).Draw(t, fmt.Sprint(what, " ", i))) / 100
			}
			b := job.Book{
				Height:    readings(hundredths(210, 220, "height"), hundredths(210, 220, "height again")),
				Width:     readings(hundredths(140, 150, "width")),
				Thickness: readings(hundredths(10, 40, "thickness"), hundredths(10, 12, "thickness again")),
			}
			if rapid.Bool().Draw(t, "tapered") {
				b.ForeEdge = readings(hundredths(5, 45, "at the fore-edge"))
			}
			j.Books = append(j.Books, b)
		}
		c, err := settled(j)
		require.NoError(t, err)
		return c
	})
}

func TestSeveralVolumes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := sets().Draw(t, "case")
		takesTheLargest(t, c)
		namesLooseVolumes(t, c)
		tellsThePlayOfTaperedVolumes(t, c)
	})
}

// thick is the thicker edge of a book.
func thick(b job.Book) float64 {
	return math.Max(largest(b.Thickness), largest(b.ForeEdge))
}

// extremes gives the tallest, the deepest and the thickness of all.
func extremes(j slipcase.Job) (tall, deep, all float64) {
	for _, b := range j.Books {
		tall, deep, all = math.Max(tall, largest(b.Height)), math.Max(deep, largest(b.Width)), all+thick(b)
	}
	return tall, deep, all
}

// takesTheLargest: the cavity is the tallest, the deepest, and the thickness of
// all, with the clearance; with a compartment each, the clearance for each and
// the dividers, of board lined on both faces.
func takesTheLargest(t *rapid.T, c slipcase.Case) {
	j := c.Job
	tall, deep, all := extremes(j)
	clear := 1.0
	if j.Compartments == slipcase.EachItsOwn {
		clear = float64(len(j.Books))
		all += (clear - 1) * (j.Board.Thickness.MM() + 2*j.Lining.Thickness.MM())
	}
	assert.InDeltaSlice(t, []float64{tall, deep, all}, mms(c.Stands.Contents()), eps)
	assert.InDeltaSlice(t, []float64{
		tall + j.Clearance.Height.MM(), deep + j.Clearance.Width.MM(), all + clear*j.Clearance.Thickness.MM(),
	}, mms(c.Stands.Cavity()), eps)
}

var lengths = regexp.MustCompile(`(\d+(?:\.\d+)?) (mm|in) (lower|shallower)`)

// namesLooseVolumes: a volume more than 3 mm lower or shallower than the largest
// stands loose and is named with how much, to a hundredth of a millimetre or a
// thousandth of an inch; no other is.
func namesLooseVolumes(t *rapid.T, c slipcase.Case) {
	j := c.Job
	tall, deep, _ := extremes(j)
	said := map[string]map[string]float64{}
	for _, p := range c.Suspects() {
		if !strings.Contains(p.Wrong(), "loose") {
			continue
		}
		said[p.Key] = map[string]float64{}
		for _, w := range lengths.FindAllStringSubmatch(p.Wrong(), -1) {
			n, err := strconv.ParseFloat(w[1], 64)
			require.NoError(t, err)
			if w[2] == "in" {
				n *= 25.4
			}
			said[p.Key][w[3]] = n
		}
	}
	for i, b := range j.Books {
		by, loose := said[job.BookKey(i, "height")]
		lower, shallower := tall-largest(b.Height), deep-largest(b.Width)
		if math.Abs(lower-3) < eps || math.Abs(shallower-3) < eps {
			continue // on the limit, to a rounding
		}
		require.Equal(t, lower > 3 || shallower > 3, loose, "volume %d of %+v", i, j.Books)
		for word, much := range map[string]float64{"lower": lower, "shallower": shallower} {
			n, told := by[word]
			require.Equal(t, much > 3, told, "volume %d %s by %v: %v", i, word, much, c.Suspects())
			if told {
				assert.InDelta(t, much, n, 0.0128) // half a thousandth of an inch
			}
		}
	}
}

// tellsThePlayOfTaperedVolumes: the case takes the thicker edge, and tells that
// the thinner has the difference and the clearance of play.
func tellsThePlayOfTaperedVolumes(t *rapid.T, c slipcase.Case) {
	var want, got []float64
	for _, b := range c.Job.Books {
		if len(b.ForeEdge) > 0 {
			if d := math.Abs(largest(b.Thickness) - largest(b.ForeEdge)); d > 0 {
				want = append(want, d, d+c.Job.Clearance.Thickness.MM())
			}
		}
	}
	for _, r := range c.Plan().Remarks {
		if strings.Contains(r.Text, "thinner") {
			for _, l := range r.Lengths {
				got = append(got, l.MM())
			}
		}
	}
	assert.InDeltaSlice(t, want, got, eps)
}

// A book 40 thick at the spine and 32 at the fore-edge takes a case for 40; at
// the fore-edge it has 8 and the clearance of 2, which is worth a warning. So
// has one that is swollen at the fore-edge.
func TestTaper(t *testing.T) {
	for _, edges := range [][2]float64{{40, 32}, {32, 40}} {
		c, err := slipcase.Make(exampleJob(func(j *slipcase.Job) {
			j.Books[0].Thickness, j.Books[0].ForeEdge = readings(edges[0]), readings(edges[1])
		}))
		require.NoError(t, err)
		assert.InDelta(t, 42, c.Stands.Cavity().Thickness.MM(), eps)
		require.Len(t, c.Suspects(), 1)
		assert.Contains(t, c.Suspects()[0].Wrong(), "8 mm")
		assert.Contains(t, c.Suspects()[0].Fix, "10 mm")
	}
}
