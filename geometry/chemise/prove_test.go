package chemise

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/foldup"
)

// usual is a job of an invented book with every setting at its default.
func usual(foreEdge string) Job {
	j := DefaultJob(geometry.MM)
	j.Books = book(220, 150, 30)
	j.ForeEdge = foreEdge
	if foreEdge == Hooks {
		j.BookCover = 3
	}
	return j
}

// kindsOf lists the kinds of fault a proof found.
func kindsOf(r report) []foldup.Kind {
	var out []foldup.Kind
	for _, f := range r.Faults {
		if !slices.Contains(out, f.Kind) {
			out = append(out, f.Kind)
		}
	}
	return out
}

func TestUsualChemisesAreSound(t *testing.T) {
	for _, f := range ForeEdges {
		j := usual(f)
		r := prove(j.pieces(), j.conditions())
		assert.Empty(t, r.Faults, f)
		assert.NotEmpty(t, r.Faces)
	}
}

// piece returns the piece with a name, to be changed.
func piece(t *testing.T, ps []geometry.Piece, name string) *geometry.Piece {
	t.Helper()
	for i := range ps {
		if ps[i].Name == name {
			return &ps[i]
		}
	}
	t.Fatal("no " + name)
	return nil
}

// Each rule of the design, left out, is found.
func TestSpoiltChemises(t *testing.T) {
	for name, c := range map[string]struct {
		want  foldup.Kind
		spoil func(ps []geometry.Piece, k *conditions)
	}{
		"mitre cut to the corner": {foldup.Bare, func(ps []geometry.Piece, k *conditions) {
			p := piece(t, ps, coveringName)
			e := k.Board*0 + 15
			x := p.Outline.Bounds().Max
			pt := geometry.Pt
			p.Outline = geometry.Polygon(pt(e, 0), pt(x.X-e, 0), pt(x.X-e, e), pt(x.X, e), pt(x.X, x.Y-e), pt(x.X-e, x.Y-e), pt(x.X-e, x.Y), pt(e, x.Y), pt(e, x.Y-e), pt(0, x.Y-e), pt(0, e), pt(e, e))
			p.Creases = nil
		}},
		"head and tail turned in with the ends": {foldup.Collision, func(ps []geometry.Piece, _ *conditions) {
			p := piece(t, ps, coveringName)
			for i := range p.Regions {
				p.Regions[i].Turn = 0
			}
		}},
		"lining too small": {foldup.Bare, func(ps []geometry.Piece, _ *conditions) {
			p := piece(t, ps, liningName)
			b := p.Outline.Bounds()
			p.Outline = geometry.Rectangle(geometry.Bx(0, 0, b.Width()-2*14, b.Height()))
		}},
		"lining laid straight over the joints": {foldup.Bare, func(ps []geometry.Piece, k *conditions) {
			p := piece(t, ps, liningName)
			b := p.Outline.Bounds()
			p.Outline = geometry.Rectangle(geometry.Bx(0, 0, b.Width()-5*4*k.Board-20, b.Height()))
		}},
		"lining past the edge": {foldup.Overhang, func(ps []geometry.Piece, _ *conditions) {
			p := piece(t, ps, liningName)
			b := p.Outline.Bounds()
			p.Outline = geometry.Rectangle(geometry.Bx(0, 0, b.Width(), b.Height()+6.1))
		}},
		"turn-in too short": {foldup.Bare, func(ps []geometry.Piece, _ *conditions) {
			j := usual(Lapped)
			j.TurnIn = 3.5
			*piece(t, ps, coveringName) = j.covering()
		}},
		"a board half a millimetre wide": {foldup.Misfit, func(ps []geometry.Piece, _ *conditions) {
			p := piece(t, ps, backCoverName)
			b := p.Outline.Bounds()
			p.Outline = geometry.Rectangle(geometry.Bx(0, 0, b.Width()+0.5, b.Height()))
		}},
		"a board half a millimetre low": {foldup.Misfit, func(ps []geometry.Piece, _ *conditions) {
			p := piece(t, ps, spineName)
			b := p.Outline.Bounds()
			p.Outline = geometry.Rectangle(geometry.Bx(0, 0, b.Width(), b.Height()-0.5))
		}},
		"joint too narrow": {foldup.Tight, func(ps []geometry.Piece, k *conditions) {
			j := usual(Lapped)
			j.Joint = j.leastJoint() - 0.02
			copy(ps, j.pieces())
			*k = j.conditions()
		}},
		"the lining forgotten in every size": {foldup.Tight, func(ps []geometry.Piece, k *conditions) {
			j := usual(Lapped)
			real := j.conditions()
			j.Joint, j.Lining = j.joint(), 0
			copy(ps, j.pieces())
			*k = real
		}},
		"the covering forgotten in every size": {foldup.Tight, func(ps []geometry.Piece, k *conditions) {
			j := usual(Walls)
			real := usual(Walls).conditions()
			j.Joint, j.Covering = j.joint(), 0
			copy(ps, j.pieces())
			*k = real
		}},
		"a cover too long": {foldup.Misfit, func(ps []geometry.Piece, k *conditions) {
			k.Room.Width -= 0.5
		}},
	} {
		t.Run(name, func(t *testing.T) {
			j := usual(Lapped)
			ps, k := j.pieces(), j.conditions()
			if name == "the covering forgotten in every size" {
				ps = usual(Walls).pieces()
			}
			c.spoil(ps, &k)
			r := prove(ps, k)
			require.NotEmpty(t, r.Faults)
			assert.Contains(t, kindsOf(r), c.want, r.Faults)
		})
	}
}

// The layers of the design: inside, the covering and the lining over it within e - b
// of an edge, the outer g of it the covering alone; elsewhere the lining.
func TestLayersInside(t *testing.T) {
	j := usual(Lapped)
	r := prove(j.pieces(), j.conditions())
	for _, f := range r.Faces {
		if f.Face != Inside {
			continue
		}
		thick := func(x, y Length) (n int) {
			at := geometry.Bx(x-0.01, y-0.01, x+0.01, y+0.01)
			for _, l := range f.Layers {
				if len(foldup.Within([]foldup.Patch{{Shape: l.Shape}}, at)) > 0 {
					n++
				}
			}
			return n
		}
		w, h := f.Extent.Width(), f.Extent.Height()
		middle := w - 25
		assert.Equal(t, 1, thick(middle, 1.5), "turn-in only, within g")
		assert.Equal(t, 2, thick(middle, 8), "turn-in and lining")
		assert.Equal(t, 1, thick(middle, h/2), "lining")
		assert.Equal(t, 2, thick(w-8, h/2), "turn-in and lining at the end")
		assert.Equal(t, 3, thick(w-8, 8), "the laps of the mitre, and the lining")
	}
}
