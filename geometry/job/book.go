// Package job holds what the jobs of every kind of case share: books and their
// readings, clearances, what can be off, the settings a maker can change, and
// the problems that are told of them. It knows no kind of case.
package job

import (
	"fmt"

	"forel/geometry"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Common is what a job of any kind has.
type Common struct {
	Title       string
	Unit        geometry.Unit // the unit the maker works in
	Books       []Book        // side by side, the first at the left
	Clearance   Clearance
	Uncertainty Uncertainty
	Limits      FitLimits
	Wears       string // what the book wears inside, such as "chemise"; then its measures are those of both; empty: nothing
}

// Book returns the job's first book, an empty one where there is none.
func (c Common) Book() Book {
	if len(c.Books) == 0 {
		return Book{}
	}
	return c.Books[0]
}

// Whose names the nth book, from 0, in a sentence: "the book" where there is
// one, its title or its number where there are several.
func (c Common) Whose(n int) string {
	switch {
	case len(c.Books) == 1 && c.Wears != "":
		return "the book in its " + c.Wears
	case len(c.Books) == 1:
		return "the book"
	case c.Books[n].Title != "":
		return c.Books[n].Title
	}
	return fmt.Sprintf("volume %d", n+1)
}

// Readings are measurements of one dimension taken at several places.
type Readings []Length

// Largest returns the reading that counts: a case must clear the largest. It is
// zero where there is none.
func (r Readings) Largest() Length {
	var most Length
	for _, l := range r {
		most = max(most, l)
	}
	return most
}

// Spread returns the distance from the smallest reading to the largest.
func (r Readings) Spread() Length {
	if len(r) == 0 {
		return 0
	}
	least := r[0]
	for _, l := range r {
		least = min(least, l)
	}
	return r.Largest() - least
}

// Book is a book as measured: head to tail, spine to fore-edge with the round
// of the spine, and thickness; for one that is thicker at one edge than at the
// other, the thickness at the fore-edge apart.
type Book struct {
	Title                    string
	Height, Width, Thickness Readings
	ForeEdge                 Readings // thickness at the fore-edge; none: as Thickness
	Weight                   float64  // grams, as weighed; 0: not weighed
}

// Thick returns the thickness that counts, the larger of the two edges.
func (b Book) Thick() Length { return max(b.Thickness.Largest(), b.ForeEdge.Largest()) }

// Taper returns how much thinner the book is at one edge than at the other.
func (b Book) Taper() Length {
	if len(b.ForeEdge) == 0 {
		return 0
	}
	return (b.Thickness.Largest() - b.ForeEdge.Largest()).Abs()
}

// Size is the extent of a space: head to tail, spine to mouth, side to side.
type Size struct{ Height, Width, Thickness Length }

// Plus returns a size with another added to it, Less with it taken away.
func (s Size) Plus(o Size) Size {
	return Size{s.Height + o.Height, s.Width + o.Width, s.Thickness + o.Thickness}
}

// Less: see Plus.
func (s Size) Less(o Size) Size {
	return Size{s.Height - o.Height, s.Width - o.Width, s.Thickness - o.Thickness}
}

// Size returns the largest readings of a book.
func (b Book) Size() Size { return Size{b.Height.Largest(), b.Width.Largest(), b.Thick()} }

// Clearance is what the room inside has beyond the book.
type Clearance = Size

// BookKey returns the key of a dimension of the job's nth book, from 0: that of
// the first is "book.height", of the second "book[2].height".
func BookKey(n int, dimension string) string {
	if n == 0 {
		return "book." + dimension
	}
	return fmt.Sprintf("book[%d].%s", n+1, dimension)
}
