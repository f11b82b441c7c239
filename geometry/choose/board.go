package choose

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/bending"
	"forel/geometry/fit"
	"forel/geometry/job"
	"forel/geometry/stage"
)

// Moduli of grey board, in N/mm²: 1 to 3 GPa, by its making and by which way the grain runs
// (from memory).
const (
	soft  = 1000.0
	stiff = 3000.0
)

// What a side must stand, and a tail wall. The loads and limits are chosen here, so that
// 2 mm comes out for an ordinary book, as published cases have it: 2 mm board, lined inside
// (G. Malkin 2016); 2 mm for a book of 157 by 113 by 12 mm (University of Brighton, Book
// Arts, "Worksheets for bookbinders: slipcase").
const (
	Push    = 3.0  // newtons, of a finger at the middle of the mouth
	SideBy  = 30.0 // a side gives no more than its height by this
	TailBy  = 100. // a tail wall no more than what it spans by this
	nearly  = 0.95 // of the middle of the range: an estimate is no better
	roomFor = 2.0  // mm, by which the inside is larger than the book: what changes little
)

// Board is how thick a board should be.
type Board struct {
	Least, Most Length   // of a stiff board and of a soft one
	By          string   // what asks for most: pushed, lying or standing
	Sold        job.Sold // the next thickness that is sold
	Pasted      int      // so many of it pasted together
}

// Thickness returns the whole thickness.
func (b Board) Thickness() Length { return b.Sold.Thickness * Length(b.Pasted) }

// What can ask for a thickness.
const (
	pushed   = "pushed"   // a side, by a finger at the mouth
	lying    = "lying"    // a side, by the books that lie on it
	standing = "standing" // the tail wall, by the books that stand on it
)

// board returns how thick a board is needed for books of a size and weight. The floor of a
// box is its tray on the case, two boards as one, which are eight times as stiff: of what
// lies on it no more counts than a slipcase is advised for.
func (w way) board(c Choice, u geometry.Unit) (b Board) {
	in := c.Size
	in.Height, in.Width, in.Thickness = in.Height+roomFor, in.Width+roomFor, in.Thickness+roomFor
	side := bending.Plate{Free: in.Height, Deep: in.Width, Poisson: bending.Poisson}
	weight := c.Grams / 1000 * fit.Gravity
	onSide := weight
	if w.kind == box.kind {
		onSide = min(weight, much/1000*fit.Gravity)
	}
	gives := side.Free / SideBy
	plate := func(modulus float64, at1 Length) Length { return side.Thickness(modulus, float64(at1/gives)) }
	for _, need := range []struct {
		by string
		at func(modulus float64) Length
	}{
		{pushed, func(e float64) Length { return plate(e, side.Pushed(Push, 1)) }},
		{lying, func(e float64) Length {
			return plate(e, side.Pressed(onSide/(in.Height*in.Width).MM(), 1))
		}},
		{standing, func(e float64) Length {
			return bending.BeamThickness(in.Thickness, in.Width, weight/in.Thickness.MM(), e, in.Thickness/TailBy)
		}},
	} {
		if most := need.at(soft); most > b.Most {
			b.Least, b.Most, b.By = need.at(stiff), most, need.by
		}
	}
	b.carry(max(w.least, (b.Least+b.Most)/2*nearly), u)
	return b
}

// carry takes the next thickness that is sold where makers work in a unit.
func (b *Board) carry(least Length, u geometry.Unit) {
	for b.Pasted = 1; b.Pasted <= 3; b.Pasted++ {
		for _, s := range job.Boards {
			if strings.HasSuffix(s.Name, " "+u.String()) && s.Thickness*Length(b.Pasted) >= least-1e-6 && (b.Pasted == 1 || s.Thickness >= 1.5) {
				b.Sold = s
				return
			}
		}
	}
	b.Pasted = 3
}

// advice tells of the board; least is what the weight asks for, by the kind of case, 0 where
// that says nothing.
func (w way) advice(b Board, least Length, u geometry.Unit) Advice {
	says := b.Sold.Name
	if b.Pasted > 1 {
		says = fmt.Sprintf("%d boards of %s pasted together", b.Pasted, b.Sold.Name)
	}
	reason := map[string]string{
		pushed:   "a finger that pushes a side in at the mouth bends it little enough at %s to %s, as stiff or soft the board is",
		lying:    "a side on which the book lies sags little enough at %s to %s, as stiff or soft the board is",
		standing: "the tail wall under the book, as the case is lifted, sags little enough at %s to %s, as stiff or soft the board is",
	}[b.By]
	a := Advice{"board", "how thick a board", stage.Words(says), []Reason{why(here, reason, b.Least.Round(job.Round(u, 0.1, 0.005)), b.Most.Round(job.Round(u, 0.1, 0.005)))}}
	if least > 0 {
		a.Why = append(a.Why, why(practice, "the glued walls carry this weight in board of %s or more", least))
	}
	if w.kind == box.kind {
		return Advice{a.Key, a.Name, a.Says, append(a.Why, why(trays, "the trays of boxes are made of board of 3/32 in to 0.098 in, or 2.5 mm"))}
	}
	a.Why = append(a.Why, why(malkin, "for an ordinary book 2 mm board, lined on the inside"))
	return a
}

// Assumptions says what the thickness of a board is worked out from.
func Assumptions() string {
	return fmt.Sprintf("how thick a board is worked out: a side is a plate held at three edges and free at the mouth, the tail wall a beam between the sides; "+
		"grey board has a modulus of 1 to 3 GPa and a Poisson's ratio of %g (from memory); covering and lining are left out. "+
		"A side gives at most 1/%.0f of its height, pushed with %.0f N or with the book on it; a tail wall 1/%.0f of what it spans: limits chosen here, so that 2 mm comes out for an ordinary book. "+
		"The next thickness sold is taken, from a little below the middle of the range on. Bend a strip of your own board in your hands before you trust it.",
		bending.Poisson, SideBy, Push, TailBy)
}
