package slipcase

import (
	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/stage"
)

// Conditions are what is known of a case beside its flat pieces.
type Conditions struct {
	Edge   Length // thickness of a board as it is joined, with a lining pasted before
	Lining Length // thickness of a lining pasted in afterwards, else zero
	// What stands in the case: the tallest, the deepest, and the thickness of
	// all with the dividers between them.
	Height, Width, Thickness Length
	Compartments             int // one or more
	Layer                    map[geometry.Material]Length
	Lined                    bool   // every board is lined
	LinedShort               Length // what a lining put in afterwards stays back from the mouth
	LinedStep                Length // how much deeper than what is turned in beside it such a lining may be narrow
	SidesOnly                bool   // only the sides are covered, but for a border at spine, head and tail
	Border                   Length
	Divider                  Length // thickness of a divider with its linings
	Notch                    Length // how far a divider between others may stand in the thumb hole of the sides
	// How far the straight end of a tab may leave the edge of a thumb hole, and how
	// far two tabs may part over the thickness of the board.
	HoleChord, HoleGap Length
}

// Report is the proof of a case of boards, with what only such a case has.
type Report struct {
	plan.Proof
	Carcass   Carcass
	Dividers  []Standing // from left to right
	Clearance Left
}

// Prove folds the pieces of a case up, knowing them by their outlines, cuts, folds
// and seats alone, and looks at the result.
func Prove(pieces []geometry.Piece, k Conditions) Report {
	c, faults := Build(pieces, k.Edge)
	if len(faults) > 0 {
		return Report{Proof: plan.Proof{Faults: faults}}
	}
	r := Report{Carcass: c}
	var coverings []geometry.Piece
	for _, p := range pieces {
		if p.Material != geometry.Board && p.Material != geometry.Lining {
			coverings = append(coverings, p)
		}
	}
	v, faults := c.Body(k).Cover(coverings, k.thick)
	faces, wrong := v.Look(pieces,
		func() []foldup.Fault { return c.rims(v) },
		func() []foldup.Fault { return c.linings(pieces, k) },
		func() []foldup.Fault {
			if k.Lining == 0 {
				return nil
			}
			return c.linedAfter(v, pieces, k)
		})
	r.Faces, r.Faults = faces, append(faults, wrong...)
	r.stand(v, pieces, k)
	r.clear(k)
	r.show(pieces, k)
	return r
}

// thick returns how thick a layer of a piece is.
func (k Conditions) thick(p geometry.Piece) Length { return k.Layer[p.Material] }

// ground returns what a face inside shows where nothing is turned in. Linings
// that go in last would hide what is turned in, so they are left out.
func (k Conditions) ground() foldup.Ground {
	switch {
	case !k.Lined:
		return foldup.BareBoard
	case k.Lining > 0:
		return foldup.Ground{Name: "board, to be lined", Stuff: stage.Board, State: "lined last"}
	}
	return foldup.Ground{Name: "lining", Stuff: stage.Lining, State: "lined"}
}

// conditions returns what is known of the case beside its pieces.
func (j Job) conditions() Conditions {
	lining := Length(0)
	if !j.linedBefore() {
		lining = j.Lining.Thickness
	}
	c := j.contents()
	return Conditions{
		Edge:         j.Edge(),
		Lining:       lining,
		Height:       c.Height,
		Width:        c.Width,
		Thickness:    c.Thickness,
		Compartments: j.compartments(),
		Layer:        map[geometry.Material]Length{geometry.Cloth: j.Cloth.Thickness, geometry.Paper: j.SidePaper.Thickness},
		LinedShort:   linedShort,
		LinedStep:    liningStep,
		Lined:        j.Lining.Thickness > 0,
		SidesOnly:    j.Covering == SidesOnly,
		Border:       j.SidePaper.Inset,
		Divider:      j.dividerThickness(),
		Notch:        leastNotch,
		HoleChord:    holeChord,
		HoleGap:      j.holeGap(),
	}
}
