package foldup_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
)

// A proof that passes everything is worth nothing: each of these breaks one
// flat piece of a sound case on purpose, as a slip of a formula or of a knife
// would, and the proof must name it. The case, where nothing else is said: a
// book of 220 x 150 x 30 with the defaults: board with its lining 2.15, outside
// 226.3 high, 153.15 deep, 36.3 thick.
const (
	wall   = 2.15
	margin = 28.               // of cloth onto a side; also over head and tail
	high   = 226.3             // 220 + 2 + 2 x 2.15
	deep   = 153.15            // 150 + 1 + 2.15
	thick  = 36.3              // 30 + 2 + 2 x 2.15
	head   = margin + high     // the head edge of the board on spine cloth
	mouth  = deep - 5          // the mouth edge on head and tail cloth
	apex   = head + 6          // of a wedge
	inset  = 6.                // of the side paper
	paper  = high - 2*inset    // its height
	edge   = deep - inset      // the mouth edge on it
	beyond = edge + 13         // its width
	middle = margin + thick/2. // of spine, head and tail cloth
)

type mutation struct {
	name  string
	spoil spoil
	kind  foldup.Kind
	piece string // named, or
	face  geometry.Face
	job   func(*slipcase.Job)
}

var mutations = []mutation{
	// Boards.
	{name: "head wall 1 mm too wide", spoil: piece("head wall", higher(0, 1)), kind: foldup.Misfit, piece: "head wall"},
	{name: "tail wall 1 mm too short", spoil: piece("tail wall", higher(-1, 0)), kind: foldup.Misfit, piece: "tail wall"},
	{name: "spine wall 1 mm too high", spoil: piece("spine wall", higher(0, 1)), kind: foldup.Misfit, piece: "spine wall"},
	{name: "no tail wall", spoil: lost("tail wall"), kind: foldup.Misfit, piece: "tail wall"},
	// Spine cloth.
	{name: "wedge cut to the corner", spoil: piece("spine cloth", corner(margin, apex, 0, head-apex)), kind: foldup.Bare, piece: "spine cloth"},
	{name: "wedge cut into the side", spoil: piece("spine cloth", corner(margin, apex, 0, head-apex-6)), kind: foldup.Bare, face: slipcase.LeftOutside},
	{name: "spine cloth too narrow", spoil: piece("spine cloth", cropped(margin-inset+1, 0, 0, 0)), kind: foldup.Bare, face: slipcase.LeftOutside},
	{name: "spine cloth too short", spoil: piece("spine cloth", cropped(0, 0, 0, margin+1)), kind: foldup.Bare, face: slipcase.SpineOutside},
	{name: "spine flap that ends in the gap", spoil: piece("spine cloth", cropped(0, 0, 0, margin-4)), kind: foldup.Bare, face: slipcase.HeadOutside},
	{name: "spine flap longer than the head wall", spoil: piece("spine cloth", cropped(0, 0, 0, -7)), kind: foldup.Overhang, piece: "spine cloth",
		job: func(j *slipcase.Job) { j.Books[0].Width = job.Readings{31} }},
	{name: "margin wider than the side", spoil: piece("spine cloth", cropped(-7, 0, 0, 0)), kind: foldup.Overhang, piece: "spine cloth",
		job: func(j *slipcase.Job) { j.Books[0].Width = job.Readings{31} }},
	{name: "side flaps that overlap", spoil: piece("spine cloth", sideFlaps(3)), kind: foldup.Collision, piece: "spine cloth"},
	{name: "folds too far apart", spoil: piece("spine cloth", moved(func(q geometry.Point) geometry.Point {
		if q.X > middle {
			q.X += 1
		}
		return q
	})), kind: foldup.Overhang, piece: "spine cloth"},
	{name: "no spine cloth", spoil: lost("spine cloth"), kind: foldup.Bare, face: slipcase.SpineOutside},
	// Head and tail cloth.
	{name: "slit straight on the corner", spoil: piece("head cloth", slits(-wall, -wall/3)), kind: foldup.Bare, piece: "head cloth"},
	{name: "slit over the mouth edge", spoil: piece("head cloth", slits(0, -5)), kind: foldup.Bare, piece: "head cloth"},
	{name: "head cloth too short at the spine", spoil: piece("head cloth", cropped(0, 3, 0, 0)), kind: foldup.Bare, face: slipcase.HeadOutside,
		job: func(j *slipcase.Job) { j.Cloth.TurnIn, j.Cloth.CornerDistance = 7, 3 }},
	{name: "mouth turn-in shorter than the board's edge", spoil: piece("tail cloth", cropped(0, 0, 0, 19)), kind: foldup.Bare, face: slipcase.TailMouth},
	{name: "mouth turn-in deeper than the case", spoil: piece("head cloth", cropped(0, 0, 0, -15)), kind: foldup.Collision, piece: "head cloth",
		job: func(j *slipcase.Job) { j.Books[0].Width = job.Readings{31} }},
	{name: "middle tab as wide as the case", spoil: piece("head cloth", middleTab(margin)), kind: foldup.Collision, piece: "head cloth"},
	{name: "middle tab as wide as the cavity, with no room for the cloth beside it", spoil: piece("head cloth", middleTab(margin+wall)), kind: foldup.Collision, piece: "head cloth"},
	{name: "head cloth too narrow", spoil: piece("head cloth", cropped(0, 0, margin-inset+1, 0)), kind: foldup.Bare, face: slipcase.RightOutside},
	{name: "fold at the mouth ruled too early", spoil: piece("tail cloth", corner(0, mouth+wall, 0, -1), corner(2*middle, mouth+wall, 0, -1)), kind: foldup.Overhang, piece: "tail cloth"},
	{name: "no head cloth", spoil: lost("head cloth"), kind: foldup.Bare, face: slipcase.HeadOutside},
	// Side paper.
	{name: "side paper too low", spoil: piece("side paper", cropped(0, margin-inset+1, 0, 0)), kind: foldup.Bare, face: slipcase.RightOutside},
	{name: "side paper too low, seen from the left", spoil: piece("side paper", cropped(0, margin-inset+1, 0, 0)), kind: foldup.Bare, face: slipcase.LeftOutside},
	{name: "side paper too narrow at the spine", spoil: piece("side paper", cropped(margin-inset+1, 0, 0, 0)), kind: foldup.Bare, face: slipcase.RightOutside},
	{name: "side paper not turned in", spoil: piece("side paper", cropped(0, 0, beyond-edge-1, 0)), kind: foldup.Bare, face: slipcase.RightMouth},
	{name: "inset smaller than the wall", spoil: piece("side paper", cropped(0, wall-1-inset, 0, wall-1-inset)), kind: foldup.Collision, piece: "side paper"},
	{name: "inset that clears the wall but not the cloth on it", spoil: piece("side paper", cropped(0, wall+0.1-inset, 0, wall+0.1-inset)), kind: foldup.Collision, piece: "side paper"},
	{name: "side paper laid 3 mm too high", spoil: piece("side paper", func(p *geometry.Piece) {
		for i := range p.Seats {
			p.Seats[i].At[0].At.Y -= 3
		}
	}), kind: foldup.Misfit, piece: "side paper"},
	// Linings.
	{name: "lining smaller than its board", spoil: piece("spine lining", cropped(13, 0, 0, 0)), kind: foldup.Bare, piece: "spine lining"},
	{name: "lining for another board", spoil: piece("head lining", func(p *geometry.Piece) { p.Over = "spine wall" }), kind: foldup.Misfit, piece: "head lining"},
	{name: "lining put in afterwards smaller than its face", spoil: piece("side lining", cropped(0, 3, 0, 0)), kind: foldup.Bare, piece: "side lining", job: linedAfter},
	{name: "lining put in afterwards larger than its face", spoil: piece("head lining", cropped(0, 0, 0, -3)), kind: foldup.Collision, piece: "head lining", job: linedAfter},
	{name: "no spine lining", spoil: lost("spine lining"), kind: foldup.Bare, piece: "spine lining"},
	{name: "no spine lining to put in afterwards", spoil: lost("spine lining"), kind: foldup.Bare, piece: "spine lining", job: linedAfter},
}

func linedAfter(j *slipcase.Job) { j.Lining.Order = slipcase.LinedAfter }

// sideFlaps makes the side flaps at the head longer.
func sideFlaps(by slipcase.Length) func(*geometry.Piece) {
	return moved(func(q geometry.Point) geometry.Point {
		if q.Y > head+1 && (q.X < margin || q.X > margin+thick) {
			q.Y += by
		}
		return q
	})
}

func TestProofNamesWhatIsBroken(t *testing.T) { breaks(t, mutations) }

func breaks(t *testing.T, mutations []mutation) {
	sound := map[string]slipcase.Case{} // by their job
	for _, m := range mutations {
		t.Run(m.name, func(t *testing.T) {
			j := jobFor(220, 150, 30)
			if m.job != nil {
				m.job(&j)
			}
			of := fmt.Sprintf("%+v", j)
			c, ok := sound[of]
			if !ok {
				var err error
				c, err = plantest.Make[slipcase.Case](j)
				require.NoError(t, err)
				whole := func(ps []geometry.Piece) []geometry.Piece { return ps }
				require.Empty(t, folded(c, whole, j.Cloth.Thickness, j.SidePaper.Thickness).Faults, "before")
				sound[of] = c
			}
			faults := folded(c, m.spoil, j.Cloth.Thickness, j.SidePaper.Thickness).Faults
			assert.True(t, named(faults, m), "%s %s%s is not named in %v", m.kind, m.piece, m.face, faults)
		})
	}
}

func named(faults []foldup.Fault, m mutation) bool {
	for _, f := range faults {
		if f.Kind == m.kind && (m.piece == "" || f.Piece == m.piece) && (m.face == "" || f.Face == m.face) && f.String() != "" {
			return true
		}
	}
	return false
}
