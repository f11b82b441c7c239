package foldup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// A pamphlet of 3 mm stands in a cavity of 5: there is no room for the side tabs
// of head cloth beside each other as the rule has them, 4.6 of each at the
// mouth, nor for three layers of cloth at head and tail.
func TestPamphletHasRoomInItsCorners(t *testing.T) {
	for _, thick := range []slipcase.Length{1, 2, 3, 5, 8, 12, 14} {
		c, err := plantest.Make[slipcase.Case](jobFor(210, 148, thick))
		require.NoError(t, err, "%v", thick)
		assert.Empty(t, c.Proof.Faults, "%v", thick)
		assert.Positive(t, c.Proof.Clearance.MouthCorners.MM(), "%v", thick)
		assert.Empty(t, c.Plan().Warnings, "%v", thick)
	}
}

// Invariant 7 in the corners: what leaves no room is refused, and the clearance
// named is then accepted. Cloth of 0.6 at head and tail takes 1.2; tucks under it
// would take as much again.
func TestCornersOfTheMouthAreHeldAgainstTheClearance(t *testing.T) {
	for _, thick := range []slipcase.Length{3, 30} {
		j := jobFor(210, 148, thick)
		j.Cloth.Thickness, j.Clearance.Height, j.Clearance.Thickness = 0.6, 1, 3
		_, err := plantest.Make[slipcase.Case](j)
		var refused job.Problems
		require.ErrorAs(t, err, &refused)
		require.Len(t, refused, 1)
		assert.Equal(t, "clearance.height", refused[0].Key)
		c, err := mended(j)
		require.NoError(t, err)
		assert.Positive(t, c.Proof.Clearance.MouthCorners.MM())
		assert.Less(t, c.Job.Clearance.Height.MM(), 1.3, "the smallest that would do")
	}
}

// wholeTabs parts side tabs from the middle tab by slits alone: they are as
// broad as the cloth lets them be.
func wholeTabs(p *geometry.Piece) {
	_, h := p.Size()
	w, _ := p.Size()
	for i, s := range p.Slits {
		from, to := s.Vertices[0].Point, s.Vertices[1].Point
		lean := (to.X - from.X) / (to.Y - from.Y)
		p.Slits[i] = geometry.Line(from, geometry.Pt(from.X+lean*(h-from.Y), h))
	}
	p.Outline = geometry.Rectangle(geometry.Bx(0, 0, w, h))
}

var tabMutations = []mutation{
	{name: "side tabs of a pamphlet that are whole", spoil: piece("head cloth", wholeTabs, bentInto(wall)), kind: foldup.Collision, piece: "head cloth",
		job: func(j *slipcase.Job) { j.Books[0].Thickness = job.Readings{3} }},
	{name: "side tabs of a thin case that are whole", spoil: piece("tail cloth", wholeTabs, bentInto(wall)), kind: foldup.Collision, piece: "tail cloth",
		job: func(j *slipcase.Job) { j.Books[0].Thickness = job.Readings{10} }},
	// Cloth of 0.7 leaves 2 - 2 x 0.7; with tabs tucked under it in the corners of the head, 2 - 3 x 0.7.
	{name: "tucks where there is no room for them", spoil: piece("head cloth", wholeTabs, bentInto(wall)), kind: foldup.Tight, piece: "",
		job: func(j *slipcase.Job) { j.Cloth.Thickness, j.Clearance.Thickness = 0.7, 3 }},
}

// bentInto gives head or tail cloth the creases of a tab that is tucked into a
// corner of the mouth, the boards as thick as given.
func bentInto(s slipcase.Length) func(*geometry.Piece) {
	return func(p *geometry.Piece) {
		w, h := p.Size()
		for _, x := range []slipcase.Length{margin - s, w - margin + s} {
			p.Creases = append(p.Creases,
				geometry.Crease{Path: geometry.Line(geometry.Pt(x, mouth+s), geometry.Pt(x, h)), Kind: geometry.Bend},
			)
		}
		for i, s0 := range p.Slits {
			from, to := s0.Vertices[0].Point, s0.Vertices[1].Point
			at := from.X + (to.X-from.X)*(mouth+s-from.Y)/(to.Y-from.Y)
			x := margin - s
			if i == 1 {
				x = w - margin + s
			}
			p.Creases = append(p.Creases, geometry.Crease{Path: geometry.Line(geometry.Pt(x, mouth+s), geometry.Pt(at, mouth+s)), Kind: geometry.Give})
		}
	}
}

func TestProofNamesTabsThatJam(t *testing.T) { breaks(t, tabMutations) }
