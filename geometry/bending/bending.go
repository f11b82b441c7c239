// Package bending works out how far board gives under a load: a plate held at three edges,
// as the side of a case is by its walls, and a beam, as a wall is between two sides. Both
// are elastic, and give little against their size; neither covering nor lining counts.
//
// Pressures are in N/mm², forces in N, moduli in N/mm² (1 GPa is 1000 N/mm²).
package bending

import (
	"math"

	"forel/geometry"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Poisson is the Poisson's ratio taken for board (from memory: that of board is 0.2 to 0.4).
const Poisson = 0.3

// Plate is a rectangular plate held at three edges, so that they stay but may turn, and free
// at the fourth: the side of a case, free at its mouth.
type Plate struct {
	Free    Length // its free edge
	Deep    Length // from the free edge to the one opposite
	Poisson float64
}

// Rigidity returns the flexural rigidity of a plate so thick, in N·mm: E t³ / 12 (1 - ν²)
// (S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 1959; from memory).
func (p Plate) Rigidity(modulus float64, thick Length) float64 {
	t := thick.MM()
	return modulus * t * t * t / (12 * (1 - p.Poisson*p.Poisson))
}

// Thickness returns how thick a plate of a rigidity is.
func (p Plate) Thickness(modulus, rigidity float64) Length {
	return Length(math.Cbrt(rigidity * 12 * (1 - p.Poisson*p.Poisson) / modulus))
}

// Pressed returns how far the middle of the free edge gives under a pressure all over the
// plate.
func (p Plate) Pressed(pressure, rigidity float64) Length { return p.gives(pressure, 0, rigidity) }

// Pushed returns how far the middle of the free edge gives under a force there.
func (p Plate) Pushed(force, rigidity float64) Length { return p.gives(0, force, rigidity) }

// terms is how many terms of the series are summed; they fall with their number cubed or
// faster.
const terms = 200

// deepest is how deep a plate is at most for a term, in its waves: what lies deeper moves
// the free edge by less than a ten-thousandth, and its numbers grow too large.
const deepest = 12

// gives sums M. Lévy's series for the deflection of the middle of the free edge: each term
// is a wave along that edge, whose course across it has two constants by the held edge (no
// deflection, no moment) and two by the free one (no moment, and the force as its shear). See
// Timoshenko and Woinowsky-Krieger, chapter 6 (from memory).
func (p Plate) gives(pressure, force, rigidity float64) Length {
	a, b, nu := p.Free.MM(), p.Deep.MM(), p.Poisson
	sum := 0.0
	for i := range terms {
		m := float64(2*i + 1)
		alpha := m * math.Pi / a
		k := min(alpha*b, deepest)
		th := math.Tanh(k)
		inv := 1 / math.Cosh(k)
		sign := 1 - 2*float64(i%2) // of the wave at the middle
		under := 4 * pressure / (a * math.Pow(alpha, 5) * rigidity)
		shear := 2 * force / a * sign / (math.Pow(alpha, 3) * rigidity)
		// w = under + A cosh + B η sinh + C sinh + E η cosh, all over cosh k from here on.
		A, B := -under, under/2
		// C x1 + E y1 = z1: no moment; C x2 + E y2 = z2: the shear.
		x1, y1 := (1-nu)*th, 2*th+(1-nu)*k
		z1 := nu*under*inv - A*(1-nu) - B*(2+(1-nu)*k*th)
		x2, y2 := -(1 - nu), (1+nu)-(1-nu)*k*th
		z2 := -shear*inv + (1-nu)*A*th - B*((1+nu)*th-(1-nu)*k)
		d := x1*y2 - x2*y1
		C, E := (z1*y2-z2*y1)/d, (x1*z2-x2*z1)/d
		sum += sign * (under + (A+B*k*th+C*th+E*k)/inv)
	}
	return Length(sum)
}

// Beam returns how far the middle of a beam gives whose two ends rest on something, under a
// load spread along it, in N/mm: 5 q L⁴ / 384 E I, its section being so wide and thick (any
// textbook of mechanics; from memory).
func Beam(span, wide, thick Length, load, modulus float64) Length {
	l := span.MM()
	t := thick.MM()
	inertia := wide.MM() * t * t * t / 12
	return Length(5 * load * l * l * l * l / (384 * modulus * inertia))
}

// BeamThickness returns how thick a beam must be to give no more than that.
func BeamThickness(span, wide Length, load, modulus float64, gives Length) Length {
	return Length(math.Cbrt(float64(Beam(span, wide, 1, load, modulus) / gives)))
}
