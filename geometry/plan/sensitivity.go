package plan

import "forel/geometry/tolerance"

// step is how far a link is moved to find its sensitivity: little, since where a rule
// changes nearer than that (the thicker of two papers that are almost alike), the slope is
// one between the two; far more than the rounding of floats.
const step Length = 1e-5

// Sensitivities returns how much each length that Left returns grows with each
// link: central differences. Where a rule of the geometry changes at just the
// drawn length (a third layer of tabs, say), the side that does not jump is taken.
func (c Chain) Sensitivities() [][]float64 {
	moved := c.Drawn()
	at := c.Left(moved)
	out := make([][]float64, len(at))
	for g := range out {
		out[g] = make([]float64, len(c.Links))
	}
	const jump = 10
	for i, l := range c.Links {
		moved[i] = l.Length + step
		up := c.Left(moved)
		moved[i] = l.Length - step
		down := c.Left(moved)
		moved[i] = l.Length
		for g := range out {
			right, left := float64((up[g]-at[g])/step), float64((at[g]-down[g])/step)
			slope := (right + left) / 2
			switch {
			case right > jump || right < -jump:
				slope = left
			case left > jump || left < -jump:
				slope = right
			}
			out[g][i] = snapped(slope)
		}
	}
	return out
}

// Through returns what errors of links do to each length that Left returns, by its index.
// slopes are the Sensitivities; of tells what a link is off, as a length has it that grows
// with it so many times.
func Through(slopes [][]float64, of func(length, link int, counts float64) tolerance.Effect) map[int]tolerance.Effect {
	out := map[int]tolerance.Effect{}
	for i, links := range slopes {
		for link, counts := range links {
			if counts != 0 {
				out[i] = out[i].Plus(of(i, link, counts))
			}
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
