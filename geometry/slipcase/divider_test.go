package slipcase_test

import (
	"fmt"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/slipcase"
)

// dividedJob is a case with a compartment for each of some volumes, 220 x 150
// and as thick as given.
func dividedJob(thicknesses ...float64) slipcase.Job {
	j := slipcase.DefaultJob()
	j.Compartments = slipcase.EachItsOwn
	for _, t := range thicknesses {
		j.Books = append(j.Books, slipcase.Book{Height: readings(220), Width: readings(150), Thickness: readings(t)})
	}
	return j
}

// A divider is slid in when the case is covered, so it must clear all that is
// folded over head and tail wall where it stands, side tabs too.
func TestDividerClearsWhatIsTurnedIn(t *testing.T) {
	for _, thicknesses := range [][]float64{{30, 30}, {12, 8, 20}, {3, 3}, {3, 30}, {5, 60}, {3, 3, 3}} {
		t.Run(fmt.Sprint(thicknesses), func(t *testing.T) {
			c, err := slipcase.Make(dividedJob(thicknesses...))
			require.NoError(t, err)
			_, high := piecesOf(c)["divider"].Size()
			// Lined boards of 2 + 0.15, and dividers of 2 + 2 x 0.15 between the
			// volumes, each with its clearance of 2.
			x := 2.15
			for _, thick := range thicknesses[:len(thicknesses)-1] {
				x += thick + 2
				between := c.Cavity.Height.MM() -
					pileBetween(c, geometry.HeadInside, x, x+2.3) - pileBetween(c, geometry.TailInside, x, x+2.3)
				assert.LessOrEqual(t, high.MM(), between+eps, "divider at %v", x)
				x += 2.3
			}
		})
	}
}

// pileBetween gives the greatest thickness of cloth on a face from one place
// across the case to another, counted on a fine grid of points.
func pileBetween(c slipcase.Case, face geometry.Face, from, to float64) (most float64) {
	var layers []foldup.Layer
	for _, f := range c.Proof.Faces {
		if f.Face == face {
			layers = f.Layers
		}
	}
	for i := range 5 {
		for depth := 0.25; depth < c.Outside.Width.MM(); depth += 0.5 {
			x := from + 0.01 + (to-from-0.02)*float64(i)/4
			at := geom.XY{X: x, Y: depth}.AsPoint().AsGeometry()
			pile := 0.0
			for _, l := range layers {
				if geom.Intersects(l.Shape, at) {
					pile += c.Job.Cloth.Thickness.MM()
				}
			}
			most = max(most, pile)
		}
	}
	return most
}
