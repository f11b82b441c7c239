package slipcase_test

import (
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/slipcase"
)

// pattern is what the design says of one pattern.
type pattern struct {
	material      geometry.Material
	count         int
	width, height float64
	grain         geometry.Grain
}

// patterns gives the pieces of a job by the tables of the design. Grain runs
// head to tail in sides, spine wall and their coverings, and along the length
// of head and tail walls (common practice, no source); head and tail cloth
// covers a wall whose length is the pattern's height.
func patterns(j slipcase.Job) map[string]pattern {
	q := truthOf(j)
	out := map[string]pattern{
		"side":        {geometry.Board, 2, q.cavW + q.s, q.cavH + 2*q.s, geometry.GrainHeight},
		"spine wall":  {geometry.Board, 1, q.cavT, q.cavH + 2*q.s, geometry.GrainHeight},
		"head wall":   {geometry.Board, 1, q.cavW, q.cavT, geometry.GrainWidth},
		"tail wall":   {geometry.Board, 1, q.cavW, q.cavT, geometry.GrainWidth},
		"spine cloth": {geometry.Cloth, 1, q.To + 2*q.m, q.Ho + 2*q.e, geometry.GrainHeight},
		"head cloth":  {geometry.Cloth, 1, q.To + 2*q.m, q.Wo - q.g + q.mouthTurnIn, geometry.GrainHeight},
		"tail cloth":  {geometry.Cloth, 1, q.To + 2*q.m, q.Wo - q.g + q.mouthTurnIn, geometry.GrainHeight},
		"side paper":  {geometry.Paper, 2, q.Wo - q.i + q.x, q.Ho - 2*q.i, geometry.GrainHeight},
	}
	if j.Lining.Thickness > 0 {
		for board, lining := range map[string]string{
			"side": "side lining", "spine wall": "spine lining", "head wall": "head lining", "tail wall": "tail lining",
		} {
			l := out[board]
			l.material, l.width, l.height = geometry.Lining, l.width+2*q.trim, l.height+2*q.trim
			out[lining] = l
		}
	}
	return out
}

// checkSizes holds every pattern against the tables. Only the height of the
// spine cloth may fall short, where a thin case shortens the spine flap; how
// far is for checkWedges.
func checkSizes(j slipcase.Job, ps pieces) error {
	want := patterns(j)
	if len(ps) != len(want) {
		return fmt.Errorf("%d patterns, not %d", len(ps), len(want))
	}
	for name, q := range want {
		p, ok := ps[name]
		if !ok {
			return errors.New("no " + name)
		}
		w, h := p.Size()
		if !same(w.MM(), q.width) || !same(h.MM(), q.height) && !(name == "spine cloth" && h.MM() < q.height) {
			return fmt.Errorf("%s is %v x %v, not %v x %v", name, w, h, q.width, q.height)
		}
		if got := (pattern{p.Material, p.Count, q.width, q.height, p.Grain}); got != q {
			return fmt.Errorf("%s: material, count or grain is %v, not %v", name, got, q)
		}
	}
	return nil
}

// checkCommonStrip: the three walls come off one strip at one fence setting,
// and sides and spine wall share another.
func checkCommonStrip(_ slipcase.Job, ps pieces) error {
	sideW, sideH := ps["side"].Size()
	spine, spineH := ps["spine wall"].Size()
	headW, head := ps["head wall"].Size()
	tailW, tail := ps["tail wall"].Size()
	switch {
	case spine != head || head != tail:
		return fmt.Errorf("walls %v, %v and %v wide", spine, head, tail)
	case sideH != spineH:
		return fmt.Errorf("sides %v high, spine wall %v", sideH, spineH)
	case headW != tailW || headW >= sideW:
		return fmt.Errorf("walls %v and %v deep in sides of %v", headW, tailW, sideW)
	}
	return nil
}

// No setting but the book's own thickness shortens the spine cloth: with the
// default cloth every book keeps the full turn-in.
func TestDefaultClothIsNeverShortened(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := defaultJobs().Draw(t, "job")
		j.Board.Thickness = slipcase.Length(length(0.5, 6, 2).Draw(t, "board"))
		c, err := slipcase.Make(j)
		if err != nil {
			t.Skip("the thickest boards need a wider inset, the tiniest books less cloth")
		}
		q := truthOf(j)
		assertSize(t, piecesOf(c), "spine cloth", q.To+2*28, q.Ho+2*28)
	})
}

// Cavity and outside are what the boards make of them.
func TestCavityAndOutside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := goodJobs().Draw(t, "case")
		q := truthOf(c.job)
		assert.InDeltaSlice(t, []float64{q.cavH, q.cavW, q.cavT}, mms(c.Stands.Cavity()), eps)
		assert.InDeltaSlice(t, []float64{q.Ho, q.Wo, q.To}, mms(c.Stands.Outside()), eps)
	})
}

func mms(s slipcase.Size) []float64 { return []float64{s.Height.MM(), s.Width.MM(), s.Thickness.MM()} }

func TestUnlinedCaseHasNoLinings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		book := defaultJobs().Draw(t, "job")
		count := func(thickness slipcase.Length) (n int) {
			book.Lining.Thickness = thickness
			c, err := mended(book)
			require.NoError(t, err)
			for _, p := range c.Pieces {
				if p.Material == geometry.Lining {
					n += p.Count
				}
			}
			return n
		}
		assert.Equal(t, 0, count(0))
		assert.Equal(t, 5, count(0.15))
	})
}
