package onepiece_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
)

func corrugatedJob(thickness onepiece.Length) onepiece.Job {
	return jobFor(297, 212, 38, func(j *onepiece.Job) { j.Card.Kind, j.Card.Thickness = onepiece.Corrugated, thickness })
}

// Of one thickness and one bend, the blank is the same whatever it is folded from, and
// only what it is cut from differs.
func TestKindChangesNoSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := goodJobs().Draw(t, "job")
		var blanks []geometry.Piece
		for _, kind := range []string{onepiece.Solid, onepiece.Corrugated} {
			j.Card.Kind = kind
			c, err := onepiece.Make(j)
			if err != nil {
				t.Skip("too thick for solid card")
			}
			blanks = append(blanks, c.Pieces[0])
		}
		solid, corrugated := blanks[0], blanks[1]
		assert.Equal(t, geometry.Card, solid.Material)
		assert.Equal(t, geometry.Corrugated, corrugated.Material)
		assert.Equal(t, solid.Outline, corrugated.Outline)
		assert.Equal(t, solid.Folds, corrugated.Folds)
		assert.Equal(t, solid.Slits, corrugated.Slits)
		assert.Equal(t, solid.Grain, corrugated.Grain)
	})
}

// The flutes lie as every output says: along the height of the blank, from head to
// tail; across the folds at head and tail, along those beside the spine.
func TestFlutesFromHeadToTail(t *testing.T) {
	c, err := onepiece.Make(corrugatedJob(3))
	require.NoError(t, err)
	blank := c.Pieces[0]
	require.Equal(t, geometry.GrainHeight, blank.Grain)
	var along, across int
	for _, f := range blank.Folds {
		from, to := f.Vertices[0], f.Vertices[1]
		if from.X.Near(to.X) {
			along++
			assert.Greater(t, from.Distance(to.Point), onepiece.Length(297), "beside the spine, from head to tail")
		} else {
			across++
		}
	}
	assert.Equal(t, 2, along)
	assert.Equal(t, 6, across, "three flaps at head and tail each")
}

// Solid card folds up to 4 mm, corrugated board, of one wall, up to 5.
func TestThickestByKind(t *testing.T) {
	j := corrugatedJob(4.5)
	assert.Empty(t, refusal(t, j))
	j.Card.Kind = onepiece.Solid
	ps := refusal(t, j)
	require.Len(t, ps, 1)
	assert.Equal(t, "card.thickness", ps[0].Key)
	assert.Equal(t, "at most 4 mm", ps[0].Fix)
	j.Card.Thickness = 4
	assert.Empty(t, refusal(t, j))
	assert.NotEmpty(t, refusal(t, corrugatedJob(5.01)))
}

func TestSuspectsOfCorrugatedBoard(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*onepiece.Job)
		says   string // empty: nothing is suspect
	}{
		{"usual", func(*onepiece.Job) {}, ""},
		{"fine flutes", func(j *onepiece.Job) { j.Card.Thickness = 1.2 }, ""},
		{"solid by mistake", func(j *onepiece.Job) { j.Card.Thickness = 1 },
			`the thickness of the corrugated board: 1 mm is thin for corrugated board; measure again with jaws that only just touch; what has no flutes is card.kind = "solid"`},
		{"no allowance", func(j *onepiece.Job) { j.Card.Thickness = 0 },
			"the thickness of the corrugated board: zero makes no allowance at the scores; measure the corrugated board, or keep zero to follow a rule that makes none"},
		{"three times as long", func(j *onepiece.Job) { j.Books[0].Thickness[0], j.Clearance.Thickness = 7, 2 }, ""},
		{"stiff flaps", func(j *onepiece.Job) { j.Books[0].Thickness[0], j.Clearance.Thickness = 6, 2 },
			"the thickness of the corrugated board: corrugated board so thick hardly folds to flaps of 8 mm; try it on a strip, or take corrugated board of at most 2.66 mm"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := corrugatedJob(3)
			c.change(&j)
			made, err := onepiece.Make(j)
			require.NoError(t, err)
			if c.says == "" {
				assert.Empty(t, made.Plan().Warnings)
				return
			}
			assert.Equal(t, []string{c.says}, made.Plan().Warnings)
		})
	}
}

// By hand, of 3 mm. A crushed fold takes up 0.15 more or less (a twentieth): two folds
// that are crushed alike lie in height and thickness, one in depth. A spine fold
// lies up to 0.375 off its line (an eighth), each by itself: one in depth, two in
// thickness, none in height. Under jaws that press it, the board measures 0.15 more or
// less. Of solid card there is none of these.
func TestCrushedFoldsInTheFit(t *testing.T) {
	off := func(j onepiece.Job, name string) (d plan.Deviation, ok bool) {
		for _, d := range j.Chain().Off {
			if d.Name == name {
				return d, true
			}
		}
		return d, false
	}
	const crushed, slipped = "what a crushed fold takes up", "spine folds off their line"
	j := corrugatedJob(3)
	takes, ok := off(j, crushed)
	require.True(t, ok)
	assert.InDelta(t, 0.15, takes.PlusMinus.MM(), eps)
	slips, ok := off(j, slipped)
	require.True(t, ok)
	assert.InDelta(t, 0.375, slips.PlusMinus.MM(), eps)
	for i, want := range []struct{ takes, slips, sd float64 }{{0.3, 0, 0}, {0.15, 0.375, 0.1875}, {0.3, 0.75, 0.26517}} {
		assert.InDelta(t, want.takes, takes.Effects[i].High.MM(), eps)
		assert.InDelta(t, want.takes/2, takes.Effects[i].SD.MM(), eps)
		assert.InDelta(t, want.slips, slips.Effects[i].High.MM(), eps)
		assert.InDelta(t, want.sd, slips.Effects[i].SD.MM(), 1e-5)
	}
	thick := func(j onepiece.Job) (high float64) {
		for _, l := range j.Chain().Links {
			if l.Varies != nil {
				high = l.Varies.High.MM()
			}
		}
		return high
	}
	assert.InDelta(t, 0.15, thick(j), eps)
	j.Uncertainty.Board = 0.2
	assert.InDelta(t, 0.2, thick(j), eps, "what the job says goes first")

	solid := jobFor(297, 212, 38, nil)
	for _, name := range []string{crushed, slipped} {
		_, ok := off(solid, name)
		assert.False(t, ok, name)
	}
}

// Corrugated board carries 2 kg, solid card 1.
func TestLoadByKind(t *testing.T) {
	heavy := func(kind string) string {
		j := corrugatedJob(3)
		j.Card.Kind, j.Books[0].Weight = kind, 1500
		c, err := onepiece.Make(j)
		require.NoError(t, err)
		l := c.Plan().Load
		if l.Most >= 1500 {
			return ""
		}
		return l.TooHeavy
	}
	assert.Empty(t, heavy(onepiece.Corrugated))
	assert.Equal(t, "is heavy for folded card; make a case of boards for more than 1 kg", heavy(onepiece.Solid))
}
