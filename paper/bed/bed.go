// Package bed lays pieces out on the bed of a machine that cuts freely, a laser
// or a drag knife, and makes the paths its tool follows: the outline grown by half of
// what the beam takes away, holes shrunk, inside cuts before outlines, in an
// order that keeps the way between them short.
package bed

import (
	"cmp"
	"fmt"

	"forel/geometry"
	"forel/geometry/job"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Setup is the bed and how it cuts.
type Setup struct {
	Unit          geometry.Unit // of a number that a maker types bare
	Width, Height Length        // of the bed
	Margin        Length        // kept free along each edge
	Gap           Length        // between the paths of neighbouring pieces
	Kerf          Length        // what a beam takes away, from side to side; 0 for a knife
	// Grain is the direction on the bed of each material's grain: along the
	// bed's width or height, or stock.NoGrain; along its height where nothing is said.
	Grain    map[geometry.Material]geometry.Grain
	Creased  map[geometry.Material]bool // whose folds a tool of the machine creases; others are folded by hand
	Tabs     int                        // left uncut in each outline, to hold the piece in its sheet
	TabWidth Length                     // as it is left standing
}

// Default returns the setup used where nothing else is asked for (common
// practice, no source), with a bed of no size.
func Default() Setup {
	// A machine that takes all lines for cuts would cut cloth and paper at their folds,
	// and so would a blade or a beam that half cuts what has to be crushed.
	stiff := map[geometry.Material]bool{}
	for _, m := range geometry.Materials {
		stiff[m] = m.Like() != geometry.Cloth && m.Like() != geometry.Paper && !m.Crushed()
	}
	return Setup{Margin: 5, Gap: 3, TabWidth: 0.5, Creased: stiff}
}

// Limits of a Setup, all allowed.
const (
	LeastSide     Length = 50
	MostSide      Length = 5000
	MostMargin    Length = 100
	MostGap       Length = 100
	MostKerf      Length = 2
	MostTabs             = 40
	LeastTabWidth Length = 0.1
	MostTabWidth  Length = 10
)

// Faults returns what does not fit together in a setup, each length of which is within its
// limits; the keys are margin and spacing.
func (s Setup) Faults() (faults job.Problems) {
	d := Default()
	if s.Tabs > 0 && s.Gap == 0 {
		faults = append(faults, job.Problem{Key: "spacing", Reason: "a spacing of 0 mm with tabs, where the tabs of one piece lie on the cut of the next", Fix: fmt.Sprintf("leave out the tabs, or give a spacing: --spacing %s", s.typed(d.Gap))})
	}
	if s.Width <= 2*s.Margin || s.Height <= 2*s.Margin {
		faults = append(faults, job.Problem{Key: "margin", Reason: fmt.Sprintf("a margin of %.4g mm leaves nothing of a bed of %s", s.Margin.MM(), s), Fix: fmt.Sprintf("give a smaller margin: --margin %s", s.typed(d.Margin))})
	}
	return faults
}

// typed writes a length in millimetres as a flag takes it.
func (s Setup) typed(l Length) string {
	if s.Unit == geometry.IN {
		return fmt.Sprintf("%.4gmm", l.MM())
	}
	return fmt.Sprintf("%.4g", l.MM())
}

// String returns the bed's size, such as "600 x 300 mm".
func (s Setup) String() string { return fmt.Sprintf("%.6g x %.6g mm", s.Width.MM(), s.Height.MM()) }

// GrainOf returns the direction of a material's grain on the bed.
func (s Setup) GrainOf(m geometry.Material) geometry.Grain {
	if g, ok := s.Grain[m]; ok {
		return g
	}
	return geometry.GrainHeight
}

// Job is the pieces of one case, its name, and what its materials are, such as
// "board 2 mm": pieces of what is not the same do not share a bed.
type Job struct {
	Name   string
	Pieces []geometry.Piece
	Stock  map[geometry.Material]string
}

func (j Job) stock(m geometry.Material) string {
	return cmp.Or(j.Stock[m], string(m))
}

// Bed is one filling of the machine's bed, all of one material. Coordinates are
// from its upper left corner, Y downward.
type Bed struct {
	Material      geometry.Material
	Stock         string // what it is, in words
	Number        int    // among the beds of its material, from 1
	Width, Height Length
	Parts         []Part
	Register      Register // how patterned stock is laid; pieces of it are seen from their face
	Steps         []Step   // in the order they are done
	Travel        Travel
	Shared        Length // of edges that two pieces have in common, which are cut once
}

// Part is one piece as it lies on a bed.
type Part struct {
	Piece   geometry.Piece
	Job     string
	Of, All int           // which of the piece's count it is, from 1, and the count
	Turned  bool          // a quarter turn counterclockwise
	Outline geometry.Path // of the finished piece
	Cut     geometry.Path // the way of the tool round it, tabs left out of account
	Rulings []geometry.Path
	Short   Length          // how far the beam stops short of an inward corner
	Inside  []geometry.Path // the way of the tool along slits and round holes
	creases []geometry.Path
	outline []geometry.Path // the way of the tool, in stretches between tabs and edges that are cut with a neighbour's
	shares  bool            // some of its edges are
}

// Name tells which piece of which case a part is.
func (p Part) Name() string {
	name := p.Piece.Name
	if p.All > 1 {
		name += fmt.Sprintf(" %d of %d", p.Of, p.All)
	}
	if p.Job != "" {
		name += ", " + p.Job
	}
	return name
}

// Used returns the share of the bed that its pieces cover, 0 to 1.
func (b Bed) Used() float64 {
	var sum float64
	for _, p := range b.Parts {
		sum += p.Piece.Outline.SignedArea()
	}
	return sum / (b.Width * b.Height).MM()
}

// Kind is what is done in a step.
type Kind int

// The kinds of step in the order they are done: a piece that is cut free may
// shift, so its outline comes last.
const (
	Crease Kind = iota
	Inside
	Outside
)

// Step is all that is done at one part in one go.
type Step struct {
	Kind  Kind
	Part  int // index into Bed.Parts
	Paths []geometry.Path
}

// Travel is how far the tool goes without cutting, from the bed's upper left
// corner, in the order pieces were laid out and in the order of the steps.
type Travel struct{ Before, After Length }
