package fit

import "slices"

// Dimension is one of the three a case has.
type Dimension string

// The dimensions: head to tail, spine to fore-edge, side to side.
const (
	Height    Dimension = "height"
	Depth     Dimension = "depth"
	Thickness Dimension = "thickness"
)

// Place is where in a case a clearance is.
type Place string

// The places. The mouth is where coverings are turned in; in its corners tabs
// lie over each other.
const (
	Body    Place = "body"
	Mouth   Place = "mouth"
	Corners Place = "corners"
)

// Link is one length of a chain of dimensions and how many times it counts:
// more than zero where it gives room, less where it takes room.
type Link struct {
	Name   string
	Length Length
	Counts float64
	Book   bool // a length of the book, or of one of several
}

// Takes gives what the link adds to the clearance.
func (l Link) Takes() Length { return l.Length * Length(l.Counts) }

// spot is a clearance of a case: which, and in which compartment, from 0.
type spot struct {
	dimension Dimension
	place     Place
	room      int
}

// assembly is a case as it is put together: the lengths it comes from, and what
// clearance is left at each spot when they have the given values.
type assembly struct {
	spots []spot
	names []string
	drawn []Length // the lengths as drawn or measured
	book  func(i int) bool
	clear func([]Length) []Length
}

// step is how far a length is moved to find its sensitivity.
const step Length = 1e-3

// sensitivities gives how much each spot's clearance grows with each length:
// central differences. Where a rule of the geometry changes at just the drawn
// length (a third layer of tabs, say), the side that does not jump is taken.
func (a assembly) sensitivities() [][]float64 {
	out := make([][]float64, len(a.spots))
	for s := range out {
		out[s] = make([]float64, len(a.drawn))
	}
	at := a.clear(a.drawn)
	moved := append([]Length(nil), a.drawn...)
	const jump = 10
	for i := range a.drawn {
		moved[i] = a.drawn[i] + step
		up := a.clear(moved)
		moved[i] = a.drawn[i] - step
		down := a.clear(moved)
		moved[i] = a.drawn[i]
		for s := range a.spots {
			right, left := float64((up[s]-at[s])/step), float64((at[s]-down[s])/step)
			slope := (right + left) / 2
			switch {
			case right > jump || right < -jump:
				slope = left
			case left > jump || left < -jump:
				slope = right
			}
			out[s][i] = snapped(slope)
		}
	}
	return out
}

// snapped takes the noise of float64 arithmetic from a slope.
func snapped(v float64) float64 {
	const fine = 1e6
	if v > -1/fine && v < 1/fine {
		return 0
	}
	if v < 0 {
		return -float64(int64(-v*fine+0.5)) / fine
	}
	return float64(int64(v*fine+0.5)) / fine
}

// chains gives each spot's chain: what gives room, then what takes it.
func (a assembly) chains(slopes [][]float64) [][]Link {
	out := make([][]Link, len(a.spots))
	for s := range a.spots {
		for i, counts := range slopes[s] {
			if counts != 0 && a.drawn[i] != 0 {
				out[s] = append(out[s], Link{a.names[i], a.drawn[i], counts, a.book != nil && a.book(i)})
			}
		}
		slices.SortStableFunc(out[s], func(p, q Link) int {
			switch {
			case p.Counts > 0 && q.Counts < 0:
				return -1
			case p.Counts < 0 && q.Counts > 0:
				return 1
			}
			return 0
		})
	}
	return out
}
