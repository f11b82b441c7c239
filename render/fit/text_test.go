package fit_test

import (
	"encoding/json"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	renderfit "forel/render/fit"
)

// The JSON report is in millimetres, its chains close, its chances and shares
// add up.
func TestJSONAddsUp(t *testing.T) {
	for _, s := range subjects() {
		data := renderfit.JSON(s.report)
		var got struct {
			Gaps []struct {
				Drawn  float64 `json:"drawn_mm"`
				Damp   float64 `json:"when_damp_mm"`
				Worst  float64 `json:"worst_mm"`
				Best   float64 `json:"best_mm"`
				Chance map[string]float64
				Chain  []struct {
					Length float64 `json:"length_mm"`
					Counts float64
				}
				Errors []struct {
					Low   float64 `json:"low_mm"`
					High  float64 `json:"high_mm"`
					Share float64 `json:"share_of_variance"`
				}
			}
		}
		require.NoError(t, json.Unmarshal(data, &got))
		require.Len(t, got.Gaps, len(s.report.Gaps))
		for _, g := range got.Gaps {
			var sum, share, chance float64
			low, high := g.Drawn, g.Drawn
			for _, l := range g.Chain {
				sum += l.Length * l.Counts
			}
			for _, e := range g.Errors {
				share += e.Share
				low, high = low+e.Low, high+e.High
			}
			for _, c := range g.Chance {
				chance += c
			}
			assert.InDelta(t, g.Damp, sum, 0.01)
			assert.InDelta(t, g.Worst, low, 0.01)
			assert.InDelta(t, g.Best, high, 0.01)
			assert.InDelta(t, 1, share, 1e-4)
			assert.InDelta(t, 1, chance, 1e-5)
		}
		assert.NotContains(t, string(data), "%!")
	}
}

// Text is in the maker's unit, a line short enough to read, and no sentence is
// left without its lengths.
func TestTextReads(t *testing.T) {
	other := map[string]*regexp.Regexp{"mm": regexp.MustCompile(`\d in\b`), "in": regexp.MustCompile(`\d mm\b`)}
	for _, s := range subjects() {
		text := string(renderfit.Text(s.report, s.Round))
		assert.NotContains(t, text, "%!", s.name)
		assert.NotContains(t, text, "NaN", s.name)
		unit := s.Round.Unit.String()
		for _, line := range strings.Split(text, "\n") {
			assert.Equal(t, strings.TrimRight(line, " "), line)
			named := strings.Contains(line, "JSON") || strings.HasPrefix(line, "0.067") || strings.HasPrefix(line, "3/32") || strings.HasPrefix(line, "2 mm") ||
				strings.HasPrefix(line, "too tight: under ") // in the unit of the job, which the other jobs are not shown in
			if !named {
				assert.False(t, other[unit].MatchString(line), "%s: %s", s.name, line)
			}
		}
		assert.Contains(t, text, "take care: knives cut people")
	}
}

// A chance is never rounded to certainty.
func TestNothingIsCertain(t *testing.T) {
	for _, s := range subjects() {
		for _, g := range s.report.Gaps {
			if c := g.Chance.Snug; c < 1-1e-9 {
				assert.Less(t, math.Abs(c), 1.0)
			}
		}
		if s.report.Settled.Snug < 1-1e-9 {
			assert.NotContains(t, string(renderfit.Text(s.report, s.Round)), "snug: 100 %")
		}
	}
}

// A summary says whether the book fits, where it is tightest, what to do and what to
// try, in 15 lines at most, with the caution, and the limits in the words that the
// whole report has.
func TestSummaryIsShort(t *testing.T) {
	for _, s := range subjects() {
		text := string(renderfit.Summary(s.report, s.Round))
		lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
		assert.LessOrEqual(t, len(lines), 15, s.name)
		for _, want := range []string{"; snug: ", "\ntightest: ", "\nstep 1, gauge strip: ", "\ntake care: knives cut people", "\ntoo tight: under "} {
			assert.Contains(t, text, want, s.name)
		}
		assert.NotContains(t, text, "%!")
		all := string(renderfit.Text(s.report, s.Round))
		for _, l := range lines {
			if strings.HasPrefix(l, "too tight: ") || strings.HasPrefix(l, "tightest: ") || strings.HasPrefix(l, "cheapest mend: ") {
				assert.Contains(t, all, l+"\n")
			}
		}
	}
}
