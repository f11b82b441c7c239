package slipcase_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/slipcase"
)

func TestOneMaterial(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := wraps().Draw(t, "case")
		wrapSize(t, c)
		turnInKeepsFromTheWalls(t, c)
		sideFlapsDoNotOverlap(t, c)
		panelSize(t, c)
		nothingBesideTheMaterial(t, c)
	})
}

// wraps draws cases covered with one material, and tells which and how thick.
func wraps() *rapid.Generator[slipcase.Case] {
	return casesWith(func(t *rapid.T, j *slipcase.Job) {
		j.Covering = rapid.SampledFrom([]string{slipcase.AllCloth, slipcase.AllPaper}).Draw(t, "covering")
		j.Lining.Order = rapid.SampledFrom([]string{slipcase.LinedBefore, slipcase.LinedAfter}).Draw(t, "order")
	})
}

func oneMaterial(j slipcase.Job) (geometry.Material, float64) {
	if j.Covering == slipcase.AllPaper {
		return geometry.Paper, j.SidePaper.Thickness.MM()
	}
	return geometry.Cloth, j.Cloth.Thickness.MM()
}

// wrapSize: a wrap goes round both sides and the spine and into the mouth at
// both ends; over head and tail it goes as far as the cloth is turned in,
// less only where half the spine's width at one degree would eat the spine
// flap.
func wrapSize(t *rapid.T, c slipcase.Case) {
	j := c.Job
	out, _ := carcass(j)
	material, _ := oneMaterial(j)
	p := piecesOf(c)["wrap"]
	w, h := p.Size()
	assert.InDelta(t, 2*out[1]+out[2]+2*j.Cloth.MouthTurnIn.MM(), w.MM(), eps)
	side := math.Min(j.Cloth.TurnIn.MM(), out[2]/2-0.5)
	apex := math.Min(j.Cloth.CornerDistance.MM(), side)
	flap := math.Min(j.Cloth.TurnIn.MM(), apex+out[2]/4/tan(1))
	assert.InDelta(t, out[0]+2*flap, h.MM(), eps)
	assert.Equal(t, [3]any{material, 1, geometry.GrainHeight}, [3]any{p.Material, p.Count, p.Grain})
}

// turnInKeepsFromTheWalls: what of a wrap is turned into the mouth keeps
// clear of the head and tail walls and of the covering that is turned over
// them, a flap on a flap.
func turnInKeepsFromTheWalls(t *rapid.T, c slipcase.Case) {
	edge, _ := boards(c.Job)
	_, k := oneMaterial(c.Job)
	out, _ := carcass(c.Job)
	p := piecesOf(c)["wrap"]
	_, h := p.Size()
	tail, past := (h.MM()-out[0])/2, c.Job.Cloth.MouthTurnIn.MM()-edge // of the board's edge
	ends := 0
	for _, v := range p.Outline.Vertices {
		if v.X.MM() >= past-eps || v.X.MM() < -eps {
			continue // not turned inside, on the left
		}
		ends++
		assert.GreaterOrEqual(t, v.Y.MM()-tail, edge+2*k-eps)
		assert.GreaterOrEqual(t, tail+out[0]-v.Y.MM(), edge+2*k-eps)
	}
	assert.GreaterOrEqual(t, ends, 2)
}

// sideFlapsDoNotOverlap: the side flaps of a wrap meet over the head wall but
// do not lie on each other, and none is longer than the wall is thick.
func sideFlapsDoNotOverlap(t *rapid.T, c slipcase.Case) {
	out, _ := carcass(c.Job)
	p := piecesOf(c)["wrap"]
	w, h := p.Size()
	tail := (h.MM() - out[0]) / 2
	var left, right float64
	for _, v := range p.Outline.Vertices {
		switch past := v.Y.MM() - tail - out[0]; {
		case v.X.MM() < (w.MM()-out[2])/2-eps:
			left = math.Max(left, past)
		case v.X.MM() > (w.MM()+out[2])/2+eps:
			right = math.Max(right, past)
		}
	}
	assert.LessOrEqual(t, left+right, out[2]+eps)
	assert.Positive(t, left)
	assert.Positive(t, right)
}

// panelSize: the panels are as wide as the cavity and, inside, narrower by
// the covering turned in on both sides; they start the gap from the spine.
func panelSize(t *rapid.T, c slipcase.Case) {
	j := c.Job
	out, between := carcass(j)
	edge, _ := boards(j)
	material, k := oneMaterial(j)
	for _, name := range []string{"head panel", "tail panel"} {
		p, ok := piecesOf(c)[name]
		require.True(t, ok)
		w, h := p.Size()
		assert.InDelta(t, between[2], w.MM(), eps)
		assert.InDelta(t, out[1]-j.Cloth.SpineGap.MM()+j.Cloth.MouthTurnIn.MM(), h.MM(), eps)
		assert.Equal(t, [3]any{material, 1, geometry.GrainHeight}, [3]any{p.Material, p.Count, p.Grain})
		for _, v := range p.Outline.Vertices {
			if v.Y.MM() > out[1]-j.Cloth.SpineGap.MM()+edge-eps { // past the board's edge
				assert.InDelta(t, (between[2]-2*k)/2, math.Abs(v.X.MM()-between[2]/2), eps)
			}
		}
	}
}

// nothingBesideTheMaterial: covered with one material there is no cloth and
// no paper beside it.
func nothingBesideTheMaterial(t *rapid.T, c slipcase.Case) {
	material, _ := oneMaterial(c.Job)
	var covering []string
	for _, p := range c.Pieces {
		if p.Material == geometry.Cloth || p.Material == geometry.Paper {
			covering = append(covering, p.Name)
			assert.Equal(t, material, p.Material)
		}
	}
	assert.ElementsMatch(t, []string{"wrap", "head panel", "tail panel"}, covering)
}
