package fit_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
	renderfit "forel/render/fit"
)

// plotted is what a plot's file holds, read by the standard library.
type plotted struct {
	numbers map[float64]float64 // where along the drawing a number stands on the axis
	limits  []float64           // where the upright lines of limits stand
	dots    []float64           // the middles of dots
	words   string
}

var (
	upright = regexp.MustCompile(`^M ([\d.-]+) [\d.-]+ L ([\d.-]+) [\d.-]+$`)
	start   = regexp.MustCompile(`^M ([\d.-]+) `)
)

func read(t testing.TB, file []byte) plotted {
	out := plotted{numbers: map[float64]float64{}}
	d := xml.NewDecoder(bytes.NewReader(file))
	attr := map[string]string{}
	inText := false
	for {
		token, err := d.Token()
		if err == io.EOF {
			return out
		}
		require.NoError(t, err)
		switch e := token.(type) {
		case xml.StartElement:
			attr = map[string]string{}
			for _, a := range e.Attr {
				attr[a.Name.Local] = a.Value
			}
			inText = e.Name.Local == "text"
			if e.Name.Local != "path" {
				continue
			}
			if m := upright.FindStringSubmatch(attr["d"]); m != nil && m[1] == m[2] && attr["stroke-width"] == "0.45" {
				out.limits = append(out.limits, number(t, m[1]))
			}
			if m := start.FindStringSubmatch(attr["d"]); m != nil && strings.Contains(attr["d"], "A") && attr["fill"] != "none" {
				out.dots = append(out.dots, number(t, m[1])+0.9) // from the left of a dot
			}
		case xml.CharData:
			if !inText {
				continue
			}
			out.words += string(e) + "\n"
			if v, err := strconv.ParseFloat(string(e), 64); err == nil && attr["text-anchor"] == "middle" && strings.Contains(string(e), ".") {
				out.numbers[v] = number(t, attr["x"])
			}
		case xml.EndElement:
			inText = false
		}
	}
}

func number(t testing.TB, s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err, s)
	return v
}

// Limits and dots stand where the numbers on the axis say.
func TestPlotsAreToScale(t *testing.T) {
	for _, s := range subjects() {
		for i, p := range renderfit.Plots(s.report, s.Options) {
			d := []string{plan.Height, plan.Depth, plan.Thickness}[i]
			got := read(t, p.SVG)
			require.GreaterOrEqual(t, len(got.numbers), 3, "%s %s", s.name, d)
			// The scale, from the numbers that are furthest apart.
			lo, hi := 1e9, -1e9
			for v := range got.numbers {
				lo, hi = min(lo, v), max(hi, v)
			}
			at := func(l Length) float64 {
				v := float64(l / s.Round.Unit.Length())
				return got.numbers[lo] + (v-lo)/(hi-lo)*(got.numbers[hi]-got.numbers[lo])
			}
			for v, x := range got.numbers {
				assert.InDelta(t, at(Length(v)*s.Round.Unit.Length()), x, 0.02)
			}
			body, _ := s.report.Find(d, slipcase.InBody)
			held := s.report.Gaps[s.report.Tightest(d)] // by the tightest place
			limits := []Length{held.Tight}
			if d != plan.Depth {
				limits = append(limits, held.Loose)
			}
			require.Len(t, got.limits, len(limits))
			for i, l := range limits {
				assert.InDelta(t, at(l), got.limits[i], 0.1)
			}
			require.NotEmpty(t, got.dots, "%s %s", s.name, d)
			assert.InDelta(t, at(body.Drawn), got.dots[0], 0.1, "%s %s", s.name, d)
		}
	}
}

// The chain's lengths are there to read.
func TestChainsAreWritten(t *testing.T) {
	for _, s := range subjects() {
		if s.Round.Unit != geometry.MM {
			continue
		}
		got := read(t, renderfit.Plots(s.report, s.Options)[0].SVG)
		g, _ := s.report.Find(plan.Height, slipcase.InBody)
		for _, l := range g.Chain {
			assert.Contains(t, got.words, strconv.FormatFloat(l.Length.MM(), 'f', 2, 64), l.Name)
		}
	}
}
