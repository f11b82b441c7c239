package pipeline_test

import (
	"context"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/pipeline"
)

// Corners that are cut on the case: nothing but a rectangle of the same size is cut
// beforehand, and the steps say when to cut.
func TestCornersMarked(t *testing.T) {
	type piece struct {
		Name    string
		Width   float64 `json:"width_mm"`
		Height  float64 `json:"height_mm"`
		Outline []any   `json:"outline_mm"`
		Slits   []any   `json:"slits_mm"`
		Guides  []any   `json:"guides_mm"`
	}
	list := func(set ...string) map[string]piece {
		r, err := pipeline.Cutlist{Job: job(set...), Format: "json", Outlines: true}.Make(context.Background())
		require.NoError(t, err)
		var out struct{ Pieces []piece }
		require.NoError(t, json.Unmarshal(r.Report, &out), string(r.Report))
		of := map[string]piece{}
		for _, p := range out.Pieces {
			of[p.Name] = p
		}
		return of
	}
	cut, marked := list(), list("cloth.corners=marked")
	for _, name := range []string{"spine cloth", "head cloth", "tail cloth"} {
		a, b := cut[name], marked[name]
		assert.Equal(t, a.Width, b.Width)
		assert.Equal(t, a.Height, b.Height)
		assert.Empty(t, b.Slits)
		assert.Len(t, b.Outline, 4)
		assert.Greater(t, len(b.Guides), len(a.Guides))
	}
	sheet := read(t, pipeline.Handout{Job: job("cloth.corners=marked")})
	inOrder(t, sheet, "Cut the spine cloth as a rectangle", "draw the margin up tight", "When the margins lie, cut the wedges", "Fold the two side flaps",
		"Glue the head cloth", "When the margins lie, cut the slits", "Fold the side tabs")
	wrap := read(t, pipeline.Handout{Job: job("cloth.corners=marked", "covering=cloth")})
	inOrder(t, wrap, "Cut it as a rectangle and rule its wedges", "Glue the wrap", "When the sides lie, cut the wedges", "Fold the two side flaps")
	assert.NotContains(t, read(t, pipeline.Handout{Job: job()}), "do not cut them yet")
}
