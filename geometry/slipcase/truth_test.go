package slipcase_test

import (
	"math"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

// truth is a job in the symbols of the design of a five-board case, worked
// out again here, in plain numbers, apart from the code under test.
type truth struct {
	H, W, T           float64 // book: the largest readings
	s, k              float64 // lined board, cloth
	cavH, cavW, cavT  float64
	Ho, Wo, To        float64
	m, e, a, g, i, x  float64 // overlap, turn-in, corner distance, spine gap, inset, paper turn-in
	mouthTurnIn, trim float64
	mouthH, mouthT    float64 // clearance left at the mouth
}

func truthOf(j slipcase.Job) truth {
	mm := func(l slipcase.Length) float64 { return float64(l) }
	b := j.Books[0]
	q := truth{H: largest(b.Height), W: largest(b.Width), T: largest(b.Thickness)}
	q.s, q.k = mm(j.Board.Thickness)+mm(j.Lining.Thickness), mm(j.Cloth.Thickness)
	q.cavH, q.cavW, q.cavT = q.H+mm(j.Clearance.Height), q.W+mm(j.Clearance.Width), q.T+mm(j.Clearance.Thickness)
	q.Ho, q.Wo, q.To = q.cavH+2*q.s, q.cavW+q.s, q.cavT+2*q.s
	q.m, q.e, q.a, q.g = mm(j.Cloth.Overlap), mm(j.Cloth.TurnIn), mm(j.Cloth.CornerDistance), mm(j.Cloth.SpineGap)
	q.i, q.x = mm(j.SidePaper.Inset), mm(j.SidePaper.TurnIn)
	q.mouthTurnIn, q.trim = mm(j.Cloth.MouthTurnIn), mm(j.Lining.Trim)
	q.mouthH = mm(j.Clearance.Height) - 2*q.k
	q.mouthT = mm(j.Clearance.Thickness) - 2*(q.k+mm(j.SidePaper.Thickness))
	return q
}

func largest(r job.Readings) float64 {
	most := math.Inf(-1)
	for _, l := range r {
		most = math.Max(most, float64(l))
	}
	return most
}

// pieces are a case's patterns by name.
type pieces map[string]geometry.Piece

func piecesOf(c slipcase.Case) pieces {
	ps := pieces{}
	for _, p := range c.Pieces {
		ps[p.Name] = p
	}
	return ps
}

// tan gives the tangent of an angle in degrees.
func tan(degrees float64) float64 { return math.Tan(degrees * math.Pi / 180) }

// same tells whether two lengths are one length.
func same(a, b float64) bool { return math.Abs(a-b) <= eps }
