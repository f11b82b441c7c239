package bending_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/bending"
)

func plate(free, deep, poisson float64) bending.Plate {
	return bending.Plate{Free: geometry.Length(free), Deep: geometry.Length(deep), Poisson: poisson}
}

// Published coefficients of w = α q a⁴ / D at the middle of the free edge, three edges
// simply supported, ν = 0.3, by b/a: S. Timoshenko and S. Woinowsky-Krieger, Theory of
// Plates and Shells (1959), table of plates with one edge free (from memory).
func TestPublishedPlates(t *testing.T) {
	for ratio, want := range map[float64]float64{1. / 2: 0.00710, 2. / 3: 0.00968, 1: 0.01286, 1.5: 0.01462, 2: 0.01507, 3: 0.01520, 100: 0.01522} {
		assert.InDelta(t, want, plate(1, ratio, 0.3).Pressed(1, 1).MM(), 0.000015, "b/a = %g", ratio)
	}
}

// Where nothing crosses the bending, a plate far from the held edge is a strip of beam:
// 5 q L⁴ / 384 E I (any textbook of mechanics; from memory).
func TestDeepPlateIsABeam(t *testing.T) {
	const modulus = 2000
	p := plate(200, 4000, 0)
	strip := bending.Beam(200, 1, 2, 0.001, modulus)
	assert.InDelta(t, strip.MM(), p.Pressed(0.001, p.Rigidity(modulus, 2)).MM(), 0.001*strip.MM())
	assert.InDelta(t, 5*0.001*math.Pow(200, 4)/(384*modulus*(8./12)), strip.MM(), 1e-9)
}

// Ritz's method, which shares nothing with the series but the plate: of all courses of the
// deflection that the held edges allow, the one of least energy. It gives no more than the
// plate does, and comes near it.
func TestAgainstLeastEnergy(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := plate(100, rapid.Float64Range(30, 200).Draw(t, "deep"), rapid.Float64Range(0, 0.45).Draw(t, "Poisson"))
		near := func(name string, want, got geometry.Length, within float64) {
			if r := float64(got / want); r < 1-within || r > 1+1e-4 {
				t.Fatalf("%s: by energy %v, by the series %v", name, got, want)
			}
		}
		near("pressed", p.Pressed(1, 1), ritz(p, 1, 0), 0.003)
		near("pushed", p.Pushed(1, 1), ritz(p, 0, 1), 0.03)
	})
}

// ritz returns the deflection of the middle of the free edge by Ritz's method: waves along
// it, powers of the depth across it, rigidity 1.
func ritz(p bending.Plate, pressure, force float64) geometry.Length {
	a, b, nu := p.Free.MM(), p.Deep.MM(), p.Poisson
	const powers = 9
	sum := 0.0
	for m := 1.0; m < 40; m += 2 {
		k := m * math.Pi / a
		middle := math.Sin(m * math.Pi / 2)
		h := make([][]float64, powers)
		for i := range h {
			h[i] = make([]float64, powers+1)
		}
		const steps = 150
		for s := range steps { // over the depth, which runs from 0 to 1 in the powers
			y := (float64(s) + 0.5) / steps
			dy := b / steps
			var f, f1, f2 [powers]float64
			for i := range powers {
				n := float64(i + 1)
				f[i], f1[i] = math.Pow(y, n), n*math.Pow(y, n-1)/b
				if n > 1 {
					f2[i] = n * (n - 1) * math.Pow(y, n-2) / (b * b)
				}
			}
			for i := range powers {
				for j := range powers {
					// sin² and cos² over the edge come to a/2 each
					h[i][j] += dy * a / 2 * (k*k*k*k*f[i]*f[j] + f2[i]*f2[j] - nu*k*k*(f[i]*f2[j]+f2[i]*f[j]) + 2*(1-nu)*k*k*f1[i]*f1[j])
				}
				h[i][powers] += dy * pressure * f[i] * 2 / k
			}
		}
		for i := range powers {
			h[i][powers] += force * middle
		}
		for _, c := range solved(h) {
			sum += c * middle // every power is 1 at the free edge
		}
	}
	return geometry.Length(sum)
}

// solved solves linear equations by elimination.
func solved(m [][]float64) []float64 {
	n := len(m)
	for i := range n {
		best := i
		for j := i; j < n; j++ {
			if math.Abs(m[j][i]) > math.Abs(m[best][i]) {
				best = j
			}
		}
		m[i], m[best] = m[best], m[i]
		for j := range n {
			if j != i {
				f := m[j][i] / m[i][i]
				for k := i; k <= n; k++ {
					m[j][k] -= f * m[i][k]
				}
			}
		}
	}
	out := make([]float64, n)
	for i := range out {
		out[i] = m[i][n] / m[i][i]
	}
	return out
}

// A plate as thick as it is said to have to be gives just as much; and a beam.
func TestThickness(t *testing.T) {
	p := plate(220, 150, bending.Poisson)
	d := p.Rigidity(1500, 2)
	assert.InDelta(t, 2, p.Thickness(1500, d).MM(), 1e-9)
	need := bending.BeamThickness(60, 150, 0.4, 1500, 0.6)
	assert.InDelta(t, 0.6, bending.Beam(60, 150, need, 0.4, 1500).MM(), 1e-9)
	require.Greater(t, p.Pushed(2, d), p.Pushed(1, d))
}
