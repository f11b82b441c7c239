package onepiece_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/onepiece"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/geometry/walled"
)

// Whatever the book and the card, what is accepted folds up to a cavity of the
// book and its clearance, exactly, open at the mouth, with nothing wrong.
func TestFoldsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := goodJobs().Draw(t, "job")
		c, err := onepiece.Make(j)
		require.NoError(t, err)
		require.Empty(t, c.Proof.Faults)
		thick := j.Card.Thickness
		want := slipcase.Size{
			Height:    j.Books[0].Height[0] + j.Clearance.Height,
			Width:     j.Books[0].Width[0] + j.Clearance.Width,
			Thickness: j.Books[0].Thickness[0] + j.Clearance.Thickness,
		}
		same(t, want, c.Proof.Cavity)
		same(t, want, c.Job.Cavity())
		outside := slipcase.Size{Height: want.Height + 4*thick, Width: want.Width + thick, Thickness: want.Thickness + 2*thick}
		same(t, outside, c.Proof.Outside)
		same(t, outside, c.Job.Outside())
	})
}

// same compares sizes, to the rounding of floats.
func same(t require.TestingT, want, is slipcase.Size) {
	assert.InDelta(t, want.Height.MM(), is.Height.MM(), eps, "height")
	assert.InDelta(t, want.Width.MM(), is.Width.MM(), eps, "width")
	assert.InDelta(t, want.Thickness.MM(), is.Thickness.MM(), eps, "thickness")
}

// Cornell's rule, without any allowance for the board's thickness, folds up
// too where the board has none.
func TestFoldsUpWithoutThickness(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := anyJobs().Draw(t, "job")
		j.Card.Thickness = 0
		require.NoError(t, plantest.Mended(&j))
		c, err := onepiece.Make(j)
		require.NoError(t, err)
		require.Empty(t, c.Proof.Faults)
	})
}

// The inner flap is the inside of head and tail; spine flap and outer flap lie
// side by side on it; left and right are as in the pattern.
func TestWhichFlapLiesWhere(t *testing.T) {
	c, err := onepiece.Make(jobFor(220, 150, 30, nil))
	require.NoError(t, err)
	walls := map[geometry.Face][][]string{}
	for _, f := range c.Proof.Faces {
		for _, l := range f.Layers {
			for len(walls[f.Face]) <= l.Order {
				walls[f.Face] = append(walls[f.Face], nil)
			}
			walls[f.Face][l.Order] = append(walls[f.Face][l.Order], l.Name())
		}
	}
	for _, end := range []struct {
		wall            geometry.Face
		inside, outside string
	}{
		{walled.HeadOutside, " (inside of the head wall)", " (outside of the head wall)"},
		{walled.TailOutside, " (inside of the tail wall)", " (outside of the tail wall)"},
	} {
		layers := walls[end.wall]
		require.Len(t, layers, 2)
		assert.Equal(t, []string{"inner flap" + end.inside}, layers[0])
		assert.ElementsMatch(t, []string{"spine flap" + end.outside, "outer flap" + end.outside}, layers[1])
	}
	assert.Equal(t, [][]string{{"left side (inside of the left side)"}}, walls[walled.LeftOutside])
	assert.Equal(t, [][]string{{"right side (inside of the right side)"}}, walls[walled.RightOutside])
	assert.Equal(t, [][]string{{"spine (inside of the spine wall)"}}, walls[walled.SpineOutside])
	assert.Len(t, walls, 5)
}

// Flaps fold in the order in which they lie.
func TestSteps(t *testing.T) {
	c, err := onepiece.Make(jobFor(220, 150, 30, nil))
	require.NoError(t, err)
	steps := ""
	for _, s := range c.Plan().Steps {
		steps += s.Short.Text + "\n"
	}
	last := -1
	for _, words := range []string{"Score every fold", "Fold the inner flaps", "spine flaps and fold", "then the outer flaps"} {
		at := strings.Index(steps, words)
		assert.Greater(t, at, last, words)
		last = at
	}
}

func BenchmarkProve(b *testing.B) {
	j := jobFor(220, 150, 30, nil)
	c, err := onepiece.Make(j)
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		onepiece.Prove(c.Pieces[0], j)
	}
}
