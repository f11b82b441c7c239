package pipeline_test

import (
	"context"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/pipeline"
)

// The covering is for the carcass as it stands, largest reading of each, boards are as
// they were cut: cloth 40.1 + 2 x 28 by 229.5 + 2 x 28, side paper 229.5 - 2 x 6 high
// (the design, "The coverings"). What differs by more than 1 mm is told.
func TestCoveringOfTheCarcassAsBuilt(t *testing.T) {
	c := pipeline.Cutlist{Job: job("as_built.height=229.5;229", "as_built.thickness=40.1"), Format: "csv"}
	r, err := c.Make(context.Background())
	require.NoError(t, err)
	rows := map[string][]string{}
	for _, line := range strings.Split(string(r.Report), "\n") {
		if cells := strings.Split(line, ","); len(cells) > 4 {
			rows[cells[0]] = cells
		}
	}
	assert.Contains(t, strings.Join(rows["spine cloth"], " "), "96.1 285.5")
	assert.Contains(t, strings.Join(rows["side paper"], " "), " 217.5")
	assert.Contains(t, strings.Join(rows["side"], " "), "151.7 227.8")
	require.Len(t, r.Warnings, 2)
	assert.Contains(t, r.Warnings[0].Error(), "1.7 mm more than planned")
	assert.Contains(t, r.Warnings[0].Error(), "leaves the book 3 mm of room")

	near, err := pipeline.Cutlist{Job: job("as_built.height=228.7"), Format: "csv"}.Make(context.Background())
	require.NoError(t, err)
	assert.Empty(t, near.Warnings, "0.9 mm")

	sheet := read(t, pipeline.Handout{Job: job("as_built.height=229.5")})
	assert.Contains(t, strings.ReplaceAll(sheet, " .", ""), "Ho height, as built 229.5 mm", "without the dots between them")
	assert.Contains(t, read(t, pipeline.Handout{Job: job()}), "write yours under [as_built] in the job and print the covering anew: forel templates --only cloth,paper")
}

// The fit is that of the carcass as it stands, wherever it is told. By hand, a book of
// 221.5 x 148.5 x 32 and lined boards of 2.15: 227.2 outside leave 227.2 - 4.3 - 221.5 in
// height and less two of cloth, 0.35, at the mouth; 151.5 leave 151.5 - 2.15 - 148.5 in
// depth; 38.2 leave 38.2 - 4.3 - 32 in thickness, less two of cloth and paper, 0.5.
func TestFitOfTheCarcassAsBuilt(t *testing.T) {
	set := []string{"as_built.height=227.2;227.1", "as_built.width=151.5", "as_built.thickness=38.2"}
	fitOf := func(j pipeline.Job) (drawn map[string]float64, said string) {
		r, err := pipeline.Fit{Job: j, Format: "json"}.Make(context.Background())
		require.NoError(t, err)
		var out struct {
			Gaps []struct {
				Dimension, Place string
				Drawn            float64 `json:"drawn_mm"`
			}
		}
		require.NoError(t, json.Unmarshal(r.Report, &out))
		drawn = map[string]float64{}
		for _, g := range out.Gaps {
			drawn[g.Dimension+" "+g.Place] = g.Drawn
		}
		return drawn, string(r.Report)
	}
	_, cut := fitOf(job())
	drawn, measured := fitOf(job(set...))
	for gap, want := range map[string]float64{"height body": 1.4, "height mouth": 0.7, "depth body": 0.85, "thickness body": 1.9, "thickness mouth": 0.9} {
		assert.InDelta(t, want, drawn[gap], 1e-3, gap)
	}
	assert.Contains(t, cut, `"cutting"`)
	assert.NotContains(t, measured, `"cutting"`)
	assert.Contains(t, measured, `"measuring the carcass"`)

	line := func(c pipeline.Command) string {
		r, err := c.Make(context.Background())
		require.NoError(t, err)
		for _, n := range r.Notes {
			if strings.HasPrefix(n, "fit: ") {
				return strings.TrimPrefix(n, "fit: ")
			}
		}
		return ""
	}
	text := read(t, pipeline.Fit{Job: job(set...)})
	told, _, _ := strings.Cut(line(pipeline.Templates{Job: job(set...)}), ";")
	require.NotEmpty(t, told)
	assert.Contains(t, text, told)
	assert.NotEqual(t, line(pipeline.Templates{Job: job()}), line(pipeline.Templates{Job: job(set...)}))
}

// A carcass too small to be covered is refused, and so is one of a kind that has none.
func TestAsBuiltRefused(t *testing.T) {
	for want, j := range map[string]pipeline.Job{
		"take a thinner covering, or make the carcass anew": job("as_built.height=226"),
		"a case of card has no carcass":                     job("construction=card", "as_built.height=226"),
	} {
		_, err := pipeline.Cutlist{Job: j}.Make(context.Background())
		assert.ErrorContains(t, err, want)
	}
}

// Only what is asked for is printed, by material or by name.
func TestTemplatesOfSomePieces(t *testing.T) {
	names := func(only ...string) (out []string) {
		r, err := pipeline.Templates{Job: job(), Only: only}.Make(context.Background())
		require.NoError(t, err)
		for _, f := range r.Files {
			out = append(out, f.Name)
		}
		return out
	}
	assert.Equal(t, []string{"spine-cloth.svg", "head-cloth.svg", "tail-cloth.svg", "side-paper.svg", "templates.pdf"}, names("cloth", "paper"))
	assert.Equal(t, []string{"spine-wall.svg", "templates.pdf"}, names("spine wall"))
	_, err := pipeline.Templates{Job: job(), Only: []string{"spine walls"}}.Make(context.Background())
	assert.ErrorContains(t, err, `"spine walls" is no material and no piece`)
}
