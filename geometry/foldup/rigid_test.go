package foldup_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/slipcase"
	"forel/geometry/space"
)

// snapped is what two coordinates may differ by that were each rounded to a
// nanometre, on planes and grids in between.
const snapped = 5e-5

// Paper does not grow or tear when it is folded: parted at its folds a piece has
// the area it had, each part keeps its shape in space, and parts that hang on
// each other keep their common edge.
func TestFoldingKeepsShapeAndHoldsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := everyJob().Draw(t, "job")
		j.Cloth.Stretch, j.SidePaper.Stretch = 0, 0 // cut as it lies on the case
		c, err := mended(j)
		require.NoError(t, err)
		carcass, faults := slipcase.Build(c.Pieces, c.Job.Edge())
		require.Empty(t, faults)
		body := carcass.Body(c.Job)
		placed := 0
		for _, p := range c.Pieces {
			require.NoError(t, keepsArea(p), "%+v", c.Job)
			for _, parts := range foldup.Folded(body, p) {
				n, err := rigid(parts)
				require.NoError(t, err, "%+v", c.Job)
				placed += n
			}
		}
		require.GreaterOrEqual(t, placed, 6, "two sides of paper have an outside, an edge and a turn-in each")
	})
}

// shoelace gives the area in a ring of points.
func shoelace(points []geometry.Point) float64 {
	twice, o := 0.0, points[0]
	for i, a := range points {
		a, b := a.Sub(o), points[(i+1)%len(points)].Sub(o)
		twice += float64(a.X)*float64(b.Y) - float64(b.X)*float64(a.Y)
	}
	return twice / 2
}

func keepsArea(p geometry.Piece) error {
	sum := 0.0
	for _, r := range foldup.Regions(p) {
		sum += shoelace(r.Flat)
	}
	// As arcs are parted: into chords a hundredth of a millimetre off them.
	whole := shoelace(p.Outline.Flatten(0.01))
	if w, h := p.Size(); math.Abs(sum-whole) > snapped*(w+h).MM() {
		return fmt.Errorf("%s: its parts have %v mm2 together, it has %v", p.Name, sum, whole)
	}
	return nil
}

// rigid tells how many parts lie on a face, and what is wrong with them.
func rigid(parts []foldup.Part) (placed int, err error) {
	for i, p := range parts {
		if p.Space == nil {
			continue
		}
		placed++
		for a := range p.Flat {
			for b := range a {
				flat, space := p.Flat[a].Distance(p.Flat[b]).MM(), apartInSpace(p.Space[a], p.Space[b])
				if math.Abs(flat-space) > snapped {
					err = errors.Join(err, fmt.Errorf("%s, part %d: %v mm flat, %v mm folded", p.Piece, i, flat, space))
				}
			}
		}
		for _, j := range p.Joins {
			if !j.Hinged || parts[j.To].Space == nil {
				continue
			}
			for _, q := range j.Ends {
				here, there := spaceOf(p, q), spaceOf(parts[j.To], q)
				if d := apartInSpace(here, there); d > snapped {
					err = errors.Join(err, fmt.Errorf("%s, parts %d and %d: %v mm apart at %v", p.Piece, i, j.To, d, q))
				}
			}
		}
	}
	return placed, err
}

func apartInSpace(a, b space.Vec) float64 {
	return math.Sqrt(math.Pow((a.X-b.X).MM(), 2) + math.Pow((a.Y-b.Y).MM(), 2) + math.Pow((a.Z-b.Z).MM(), 2))
}

// spaceOf gives where a flat point of a part is, from three corners of the part
// that span it best.
func spaceOf(p foldup.Part, q geometry.Point) space.Vec {
	best, o, i, k := 0.0, 0, 0, 0
	for b := range p.Flat {
		for c := range b {
			if a := math.Abs(shoelace([]geometry.Point{p.Flat[0], p.Flat[c], p.Flat[b]})); a > best {
				best, i, k = a, c, b
			}
		}
	}
	u, v, d := p.Flat[i].Sub(p.Flat[o]), p.Flat[k].Sub(p.Flat[o]), q.Sub(p.Flat[o])
	det := u.X*v.Y - v.X*u.Y
	m, n := (d.X*v.Y-v.X*d.Y)/det, (u.X*d.Y-d.X*u.Y)/det
	at := func(o, u, v foldup.Length) foldup.Length { return o + m*(u-o) + n*(v-o) }
	a, b, c := p.Space[o], p.Space[i], p.Space[k]
	return space.Vec{X: at(a.X, b.X, c.X), Y: at(a.Y, b.Y, c.Y), Z: at(a.Z, b.Z, c.Z)}
}
