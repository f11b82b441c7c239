package foldup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// straightLining makes a lining put in afterwards a rectangle as large as the
// part of it that lies deeper than what is turned in at the mouth.
func straightLining(p *geometry.Piece) {
	w, h := p.Size()
	p.Outline = geometry.Rectangle(geometry.Bx(0, 0, w, h))
}

// shallowSteps makes a lining put in afterwards narrower for 5 mm only.
func shallowSteps(p *geometry.Piece) {
	w, _ := p.Size()
	moved(func(q geometry.Point) geometry.Point {
		if q.X > 1 && q.X < w {
			q.X = w - 5
		}
		return q
	})(p)
}

// wrapLinedAfter is a case whose panels at head and tail reach into the corners.
func wrapLinedAfter(j *slipcase.Job) { linedAfter(j); covering(slipcase.AllCloth)(j) }

var liningMutations = []mutation{
	{name: "side linings as high at the mouth as between the walls", spoil: piece("side lining", straightLining), kind: foldup.Collision, piece: "side lining", face: slipcase.RightInside, job: wrapLinedAfter},
	{name: "the same on the left", spoil: piece("side lining", straightLining), kind: foldup.Collision, piece: "side lining", face: slipcase.LeftInside, job: wrapLinedAfter},
	{name: "tail lining as wide at the mouth as between the linings", spoil: piece("tail lining", straightLining), kind: foldup.Collision, piece: "tail lining", job: linedAfter},
	{name: "side linings narrowed for less than is turned in", spoil: piece("side lining", shallowSteps), kind: foldup.Collision, piece: "side lining", job: wrapLinedAfter},
	{name: "head lining narrowed for less than is turned in", spoil: piece("head lining", shallowSteps), kind: foldup.Collision, piece: "head lining", job: linedAfter},
	{name: "side linings too short at the mouth", spoil: piece("side lining", cropped(0, 0, 30, 0)), kind: foldup.Bare, piece: "side lining", job: linedAfter},
	{name: "side linings 1.5 mm too low", spoil: piece("side lining", cropped(0, 0, 0, 1.5)), kind: foldup.Bare, piece: "side lining", job: linedAfter},
	{name: "spine lining over those of the sides", spoil: piece("spine lining", cropped(0, 0, -0.1, 0)), kind: foldup.Collision, piece: "spine lining", job: linedAfter},
	{name: "head lining over that of the spine", spoil: piece("head lining", cropped(-0.1, 0, 0, 0)), kind: foldup.Collision, piece: "head lining", job: linedAfter},
	{name: "side linings without the thumb hole", spoil: piece("side lining", straightLining), kind: foldup.Collision, piece: "side lining",
		job: func(j *slipcase.Job) { linedAfter(j); hole(slipcase.Semicircle)(j); j.Covering = slipcase.SidesOnly }},
	{name: "one side lining", spoil: piece("side lining", func(p *geometry.Piece) { p.Count = 1 }), kind: foldup.Misfit, piece: "side lining", job: linedAfter},
}

func TestProofNamesLiningsThatDoNotFit(t *testing.T) { breaks(t, liningMutations) }

// By hand for the defaults: a wall of head or tail has the middle tab, 0.35, as far as
// 20 of cloth reach in round a board of 2; a side has the side tab, 0.35. The linings
// start 2 back from the mouth.
func TestLiningsPutInAfterwardsAreSteppedAtTheMouth(t *testing.T) {
	j := jobFor(220, 150, 30)
	linedAfter(&j)
	c, err := plantest.Make[slipcase.Case](j)
	require.NoError(t, err)
	for _, p := range c.Pieces {
		wide, ok := map[string]float64{"side lining": 0.35, "head lining": 0.35, "tail lining": 0.35}[p.Name]
		if !ok {
			continue
		}
		w, h := p.Size()
		var deep, low, high float64
		for _, v := range p.Outline.Vertices {
			switch {
			case v.X.Near(w) && v.Y < h/2:
				low = v.Y.MM()
			case v.X.Near(w):
				high = (h - v.Y).MM()
			case v.X > 1:
				deep = (w - v.X).MM()
			}
		}
		assert.InDelta(t, wide, low, 1e-9, p.Name)
		assert.InDelta(t, wide, high, 1e-9, p.Name)
		assert.InDelta(t, 20-2-2, deep, 1+1e-9, p.Name)
		assert.GreaterOrEqual(t, deep, 16., p.Name)
	}
}
