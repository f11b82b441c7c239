package paper

import (
	"math"

	"forel/geometry"
)

// Mark is a registration mark: a place in the pattern that is printed on two
// neighbouring tiles and lies on the line where they are joined.
type Mark struct {
	At   geometry.Point
	Name string // the join's letters and a number, such as B2; of this join alone in the whole layout
}

// Marks keep this far from the ends of a join and from the lines of a pattern,
// so that neither their arms nor their names touch anything.
const (
	markFromEnd  Length = 12
	markFromLine Length = 9
)

// addMarks puts two marks on every join of two tiles, as far apart as the
// tiles allow, off the lines of the pattern. Joins are named from the number
// given on; it gives the next.
func (t *Tiling) addMarks(join int) int {
	var drawn [][]geometry.Point
	for _, l := range t.Piece.Lines() {
		points := l.Flatten(0.1)
		if l.Closed {
			points = append(points, points[0])
		}
		drawn = append(drawn, points)
	}
	add := func(from, to geometry.Point) {
		name := letters(join)
		join++
		long := from.Distance(to)
		at := func(along Length) geometry.Point { return from.Add(to.Sub(from).Mul((along / long).MM())) }
		end := min(markFromEnd, long/4)
		first := free(at, end, long/2-end/2, drawn)
		last := free(at, long-end, long/2+end/2, drawn)
		for i, along := range []Length{first, last} {
			t.Marks = append(t.Marks, Mark{At: at(along), Name: name + string(rune('1'+i))})
		}
	}
	for _, tile := range t.Tiles {
		c := tile.Core
		if _, ok := t.Neighbour(tile.Row, tile.Col+1); ok {
			add(geometry.Pt(c.Max.X, c.Max.Y), geometry.Pt(c.Max.X, c.Min.Y))
		}
		if _, ok := t.Neighbour(tile.Row+1, tile.Col); ok {
			add(geometry.Pt(c.Min.X, c.Min.Y), geometry.Pt(c.Max.X, c.Min.Y))
		}
	}
	return join
}

// free gives the place for a mark on a join between two places along it: the
// first from the outer one that keeps off all lines, or else the one farthest
// from any.
func free(at func(Length) geometry.Point, outer, inner Length, lines [][]geometry.Point) Length {
	const steps = 60
	best, most := outer, Length(-1)
	for i := range steps + 1 {
		along := outer + (inner-outer)*Length(i)/steps
		d := nearest(at(along), lines)
		if d >= markFromLine {
			return along
		}
		if d > most {
			best, most = along, d
		}
	}
	return best
}

// nearest gives how far a point is from the nearest of some lines.
func nearest(p geometry.Point, lines [][]geometry.Point) Length {
	near := Length(math.Inf(1))
	for _, l := range lines {
		for i := 1; i < len(l); i++ {
			near = min(near, p.ToLine(l[i-1], l[i]))
		}
	}
	return near
}

// letters names the nth join: A to Z, then AA, AB and on.
func letters(n int) string {
	if n < 26 {
		return string(rune('A' + n))
	}
	return letters(n/26-1) + letters(n%26)
}
