package handout_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/render/handout"
)

// holdFigures: nothing could not be worked out, every board is seen being joined,
// and every piece of covering is what some figure is about.
func holdFigures(t require.TestingT, j slipcase.Job, what string) {
	p := subjectOf(t, j)
	figures := handout.Figures(p)
	fresh := map[string]bool{}
	steps := map[string]bool{}
	for _, f := range figures {
		steps[f.Step] = true
		assert.Zero(t, f.Unworked, "%s: %s", what, f.Step)
		assert.NotEmpty(t, f.Objects, "%s: %s", what, f.Step)
		for _, o := range f.Fresh {
			fresh[o] = true
			assert.True(t, slices.Contains(f.Objects, o), "%s: %s: the %s is not seen", what, f.Step, o)
		}
		if strings.HasPrefix(f.Step, "Glue the other side") {
			for _, b := range []string{"left side", "tail wall"} {
				assert.Contains(t, f.Objects, b, what)
			}
		}
	}
	for _, b := range []string{"spine wall", "head wall", "tail wall", "left side"} {
		assert.True(t, fresh[b], "%s: no figure is about the %s", what, b)
	}
	for _, p := range p.Pieces {
		switch name := p.Name; name {
		case "spine cloth", "head cloth", "side paper", "wrap", "head panel", "divider":
			assert.True(t, fresh[name], "%s: no figure is about the %s", what, name)
		}
	}
	assert.Equal(t, j.ThumbHole.Shape != slipcase.NoHole, steps["The thumb holes"], what)
}

func TestFigures(t *testing.T) {
	for name, j := range plantest.Few(jobs(), "lined last, hole", "wrap of paper, hole", "three volumes, dividers") {
		holdFigures(t, j, name)
	}
	for name, s := range subjects() {
		if !strings.HasPrefix(name, "card") {
			continue
		}
		for _, f := range handout.Figures(s) {
			assert.Zero(t, f.Unworked, "%s: %s", name, f.Step)
			assert.NotEmpty(t, f.Objects, "%s: %s", name, f.Step)
		}
	}
}

func TestFiguresOfAnyJob(t *testing.T) {
	for seed := range drawnJobs() {
		holdFigures(t, rapid.Custom(anyJob).Example(seed), fmt.Sprintf("job %d", seed))
	}
}
