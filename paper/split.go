package paper

import (
	"math"
	"slices"

	"forel/geometry"
)

// split is one way to cut a template up: the piece as it lies, and where the
// sheets of it are joined. Without joins the template is whole.
type split struct {
	piece   geometry.Piece // turned, where turned is set
	turned  bool
	overlap Length
	around  geometry.Box // the template with the white about it
	xs, ys  []Length     // of the joins: across from the left, up from the top
	tiles   []Tile       // row by row, those with nothing of the template left out
	blank   [][2]int     // row and column of those
	words   bool         // it is no template, but room for words
	// turned90 asks for a quarter turn of a template that is whole.
	turned90 bool
}

// whole tells whether the template is printed in one.
func (s split) whole() bool { return len(s.xs)+len(s.ys) == 0 }

// evenly tells how a template is shared out among the sheets in a row: in equal
// parts, or in whole sheets and a rest.
var evenly = []bool{true, false}

// White about a template: about a narrow one there must be room for words.
const (
	white       Length = 2
	whiteNarrow Length = 6
	narrow      Length = 25
)

// whiteMarks is the white about a template with its marks outside, so wide across
// the joins, whose parts reach so far from them.
func whiteMarks(across, reach Length) Length {
	return max(markFromEnd+markFromLine, (reach/MostLever+2*markFromEnd-across)/2)
}

// splits returns the ways to cut a piece up over areas of the given sizes, the
// plainest first, each with as few sheets as its grid allows; only one where
// the piece is printed whole.
func splits(p geometry.Piece, overlap Length, areas []geometry.Box) []split {
	slim := false // a whole one needs room for words, a joined one for its marks
	pad := white
	if w, h := p.Size(); min(w, h) < narrow {
		slim, pad = true, whiteNarrow
	}
	var out []split
	for _, turned := range []bool{false, true} {
		lain := p
		if turned {
			lain = p.QuarterTurn()
		}
		lines := lain.Lines()
		drawn := flatLines(lines)
		outline := lain.Outline.Bounds()
		xs, ys := places(lines)
		for _, a := range areas {
			grids := func(pad Length) (made []split) {
				around := outline.Grow(pad)
				cols, rows := count(around.Width(), a.Width(), overlap), count(around.Height(), a.Height(), overlap)
				for _, evenX := range evenly[:min(cols, len(evenly))] {
					for _, evenY := range evenly[:min(rows, len(evenly))] {
						s := split{piece: lain, turned: turned, overlap: overlap, around: around}
						s.xs = joins(around.Min.X, around.Width(), a.Width(), overlap, min(around.Height(), a.Height()), cols, evenX, xs)
						s.ys = joins(-around.Max.Y, around.Height(), a.Height(), overlap, min(around.Width(), a.Width()), rows, evenY, negative(ys))
						s.ys = negative(s.ys)
						s.cut(lines)
						made = append(made, s)
					}
				}
				return made
			}
			made := grids(pad)
			if made[0].whole() {
				return made[:1]
			}
			loose := func(s split) bool {
				return slices.ContainsFunc(seams(outline, s.tiles, drawn), func(j seam) bool { return j.lever() > MostLever })
			}
			firm := slices.DeleteFunc(slices.Clone(made), loose)
			if slim || len(firm) == 0 {
				made = grids(whiteMarks(min(outline.Width(), outline.Height()), max(a.Width(), a.Height())))
				firm = slices.DeleteFunc(slices.Clone(made), loose)
			}
			if len(firm) == 0 { // a sheet much longer than wide
				firm = made
			}
			for _, s := range firm {
				if !slices.ContainsFunc(out, s.same) {
					out = append(out, s)
				}
			}
		}
	}
	return out
}

func negative(ls []Length) []Length {
	out := make([]Length, len(ls))
	for i, l := range ls {
		out[i] = -l
	}
	return out
}

func (s split) same(o split) bool {
	return s.turned == o.turned && slices.Equal(s.xs, o.xs) && slices.Equal(s.ys, o.ys)
}

// joins returns where a length is cut for sheets in a row that show at most so
// much of it each, neighbours overlapping: as near to equal parts, or to whole
// sheets and a rest, as keeps each join off the places given. No part is too narrow
// for the marks on a join across it, of parts that reach so far from that.
func joins(from, length, sheet, overlap, reach Length, n int, even bool, off []Length) []Length {
	step, end := sheet-overlap, from+length
	leastPart := min(max(leastPart, reach/MostLever+2*markFromLine), length/Length(2*n))
	half := overlap / 2
	leasts := leastClear(end-half, step, n, off)
	at := make([]Length, 0, n-1)
	before := from + half // of the join before
	for k := 1; k < n; k++ {
		// All that is left must reach the end, and this sheet the join.
		least := max(end-half-step*Length(n-k), before+leastPart)
		most := min(before+step, end-leastPart*Length(n-k))
		if l := leasts[k-1]; l <= most { // and the joins after this one keep off too
			least = max(least, l)
		}
		want := most
		if even {
			want = min(max(from+length*Length(k)/Length(n), least), most)
		}
		at = append(at, clearOf(want, least, most, off))
		before = at[k-1]
	}
	return at
}

// leastClear returns for each join the first place from which those after it can all
// keep off some places, when each is at most a step after the one before, and the last
// a step before the end.
func leastClear(end, step Length, n int, off []Length) []Length {
	off = slices.Sorted(slices.Values(off))
	at := make([]Length, n-1)
	for k := n - 2; k >= 0; k-- {
		end -= step
		for _, p := range off {
			if (end - p).Abs() < joinFromLine {
				end = p + joinFromLine
			}
		}
		at[k] = end
	}
	return at
}

// leastPart is the least that a sheet shows of a template that is shared out: room
// for two marks on a join across it, and for their names.
const leastPart Length = 45

// Joins keep this far from where a fold, an apex or a slit begins or ends;
// farther where there is room for the marks beside it.
const joinFromLine Length = 5

// clearOf returns the place nearest to the one wanted, between two limits, that
// is far enough from all of those to keep off, or the farthest from them.
func clearOf(want, least, most Length, off []Length) Length {
	const fine = 0.5
	clear := func(at Length) Length {
		near := Length(math.Inf(1))
		for _, p := range off {
			near = min(near, (p - at).Abs())
		}
		return near
	}
	best, best5 := want, Length(math.NaN())
	for n := Length(0); n*fine <= most-least; n++ {
		for _, at := range []Length{want + n*fine, want - n*fine} {
			if at < least || at > most {
				continue
			}
			switch c := clear(at); {
			case c >= markFromLine:
				return at
			case c >= joinFromLine && math.IsNaN(best5.MM()):
				best5 = at
			case c > clear(best):
				best = at
			}
		}
	}
	if !math.IsNaN(best5.MM()) {
		return best5
	}
	for _, at := range []Length{least, most} { // which the steps may have missed
		if clear(at) > joinFromLine-tiny && least <= most {
			return at
		}
	}
	return best
}

// places returns where the lines of a template have corners, across and up: a
// join there would fall on a fold, an apex or the start of a slit.
func places(lines []geometry.Path) (xs, ys []Length) {
	for _, l := range lines {
		for _, v := range l.Vertices {
			xs, ys = append(xs, v.X), append(ys, v.Y)
		}
	}
	for _, list := range []*[]Length{&xs, &ys} {
		slices.Sort(*list)
		*list = slices.Compact(*list)
	}
	return xs, ys
}

// count returns how many sheets side by side cover a length.
func count(length, sheet, overlap Length) int {
	if length <= sheet {
		return 1
	}
	return int(math.Ceil(float64((length-overlap)/(sheet-overlap)) - 1e-9))
}

// turn returns a whole template turned by a quarter, or turned back.
func (s split) turn() split {
	pad := s.piece.Outline.Bounds().Min.X - s.around.Min.X
	p := s.piece.QuarterTurn()
	if s.turned { // turned back, and not upside down
		p = p.QuarterTurn().QuarterTurn()
	}
	s.piece, s.turned, s.around = p, !s.turned, p.Outline.Bounds().Grow(pad)
	s.tiles = nil
	s.cut(p.Lines())
	return s
}

// tile returns what the sheet in a row and a column, from 0, shows of the
// template, and what is left of it once the sheets are joined.
func (s split) tile(row, col int) (window, core geometry.Box) {
	window, core = s.around, s.around
	half := s.overlap / 2
	if col > 0 {
		core.Min.X, window.Min.X = s.xs[col-1], s.xs[col-1]-half
	}
	if col < len(s.xs) {
		core.Max.X, window.Max.X = s.xs[col], s.xs[col]+half
	}
	if row > 0 {
		core.Max.Y, window.Max.Y = s.ys[row-1], s.ys[row-1]+half
	}
	if row < len(s.ys) {
		core.Min.Y, window.Min.Y = s.ys[row], s.ys[row]-half
	}
	return window, core
}

// cut makes the tiles, but for those that no line of the template reaches.
func (s *split) cut(lines []geometry.Path) {
	for r := range len(s.ys) + 1 {
		for c := range len(s.xs) + 1 {
			window, core := s.tile(r, c)
			if slices.ContainsFunc(lines, func(l geometry.Path) bool { return len(l.Clip(core, 0.1)) > 0 }) {
				s.tiles = append(s.tiles, Tile{Row: r + 1, Col: c + 1, Window: window, Core: core})
			} else {
				s.blank = append(s.blank, [2]int{r + 1, c + 1})
			}
		}
	}
}
