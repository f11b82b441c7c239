package slipcase_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/slipcase"
)

func TestLiningsPutInAfterwards(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := linedAfter().Draw(t, "case")
		cavityAfterLining(t, c)
		fitBetweenEachOther(t, c)
		orderLeavesTheCavity(t, c)
	})
}

// linedAfter draws cases whose linings are put in when they are joined.
func linedAfter() *rapid.Generator[slipcase.Case] {
	return casesWith(func(t *rapid.T, j *slipcase.Job) {
		j.Lining.Order = slipcase.LinedAfter
		j.Lining.Thickness = slipcase.Length(length(0.03, 1, 0.15).Draw(t, "lining"))
	})
}

// cavityAfterLining: what is left between the linings, when they are in, is
// the book and its clearance: from the boards as they are cut, less a lining
// on each.
func cavityAfterLining(t *rapid.T, c slipcase.Case) {
	j, ps := c.Job, piecesOf(c)
	b, l := j.Board.Thickness.MM(), j.Lining.Thickness.MM()
	book := j.Books[0]
	deep, high := ps["side"].Size()
	between, _ := ps["spine wall"].Size()
	wall, _ := ps["head wall"].Size()
	assert.InDelta(t, largest(book.Height)+j.Clearance.Height.MM(), high.MM()-2*b-2*l, eps)
	assert.InDelta(t, largest(book.Width)+j.Clearance.Width.MM(), deep.MM()-b-l, eps)
	assert.InDelta(t, largest(book.Width)+j.Clearance.Width.MM(), wall.MM()-l, eps)
	assert.InDelta(t, largest(book.Thickness)+j.Clearance.Thickness.MM(), between.MM()-2*l, eps)
	assert.InDelta(t, c.Stands.Cavity().Height.MM(), high.MM()-2*b-2*l, eps)
	assert.InDelta(t, c.Stands.Cavity().Width.MM(), deep.MM()-b-l, eps)
	assert.InDelta(t, c.Stands.Cavity().Thickness.MM(), between.MM()-2*l, eps)
}

// fitBetweenEachOther: sides go in first, then the spine between them, then
// head and tail between all three; at the mouth each stays back by 2 mm. One as
// deep as what is turned in beside it, or 1 mm deeper, is narrower all the way.
func fitBetweenEachOther(t *rapid.T, c slipcase.Case) {
	l := c.Job.Lining.Thickness.MM()
	_, between := carcass(c.Job)
	for name, want := range map[string][2]float64{
		"side lining":  {between[1] - 2, between[0]},
		"spine lining": {between[2] - 2*l, between[0]},
		"head lining":  {between[1] - l - 2, between[2] - 2*l},
		"tail lining":  {between[1] - l - 2, between[2] - 2*l},
	} {
		p, ok := piecesOf(c)[name]
		require.True(t, ok, name)
		w, h := p.Size()
		assert.InDelta(t, want[0], w.MM(), eps, name)
		s := c.Job.Board.Thickness.MM()
		if turnIn := max(c.Job.Cloth.MouthTurnIn, c.Job.SidePaper.TurnIn).MM() - s - 2 + 1; turnIn < want[0]-eps || name == "spine lining" {
			assert.InDelta(t, want[1], h.MM(), eps, name)
		} else {
			assert.LessOrEqual(t, h.MM(), want[1]+eps, name)
		}
		assert.Equal(t, geometry.Lining, p.Material)
	}
	assert.Equal(t, 2, piecesOf(c)["side lining"].Count)
}

// orderLeavesTheCavity: the book gets the same room, and the case the same
// outside, as in the tables of the design, where it is lined before.
func orderLeavesTheCavity(t *rapid.T, c slipcase.Case) {
	q := truthOf(c.Job)
	assert.InDeltaSlice(t, []float64{q.cavH, q.cavW, q.cavT}, mms(c.Stands.Cavity()), eps)
	assert.InDeltaSlice(t, []float64{q.Ho, q.Wo, q.To}, mms(c.Stands.Outside()), eps)
}
