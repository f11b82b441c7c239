package geometry

import "math"

// Repeat is a pattern of stock, lined, striped or printed, and where it is to
// fall on a piece: it comes again every Across along the piece's X and every
// Along along its Y, 0 where it does not come again. Where AtX is set, a line of
// it falls on First.X, and so on First.X ± n Across; likewise with AtY.
type Repeat struct {
	Across, Along Length
	First         Point
	AtX, AtY      bool
	OneWay        bool // it has a top, which points along the piece's Y
}

// Plain tells whether there is no pattern.
func (r Repeat) Plain() bool { return r.Across == 0 && r.Along == 0 && !r.OneWay }

// Extra returns what stock must have beyond a piece's size, in X and in Y, so
// that the piece can be cut from it with lines where they are to fall, wherever
// the stock itself was cut: one repeat each way that matters.
func (r Repeat) Extra() Point {
	var extra Point
	if r.AtX {
		extra.X = r.Across
	}
	if r.AtY {
		extra.Y = r.Along
	}
	return extra
}

// Lines returns where lines of the pattern fall on a box: X of those that run
// along Y, Y of those that run along X.
func (r Repeat) Lines(b Box) (xs, ys []Length) {
	if r.AtX {
		xs = linesIn(r.First.X, r.Across, b.Min.X, b.Max.X)
	}
	if r.AtY {
		ys = linesIn(r.First.Y, r.Along, b.Min.Y, b.Max.Y)
	}
	return xs, ys
}

// linesIn returns first ± n times step from lo to hi.
func linesIn(first, step, lo, hi Length) []Length {
	if !(step > 0) {
		return nil
	}
	var out []Length
	for x := lo + Modulo(first-lo, step); x <= hi+1e-9; x += step {
		out = append(out, x)
	}
	return out
}

// Modulo returns what is left of l when steps are taken off: from 0 to under the
// step. A hair under a step is 0: the same line, reached by another way.
func Modulo(l, step Length) Length {
	m := Length(math.Mod(math.Mod(float64(l), float64(step))+float64(step), float64(step)))
	if m.Near(step) {
		return 0
	}
	return m
}

// Rough returns the size a piece is first cut to: its own, and what its pattern
// takes beyond that.
func (p Piece) Rough() (width, height Length) {
	w, h := p.Size()
	return w + p.Extra.X, h + p.Extra.Y
}
