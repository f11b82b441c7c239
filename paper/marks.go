package paper

import (
	"math"

	"forel/geometry"
	"forel/geometry/wording"
)

// Mark is a registration mark: a place in the template that is printed on two
// neighbouring tiles and lies on the line where they are joined.
type Mark struct {
	At   geometry.Point
	Name string // the join's letters and a number, such as B2; of this join alone in the whole layout
}

// Marks keep this far from the ends of a join and from the lines of a template,
// so that neither their arms nor their names touch anything.
const (
	markFromEnd  Length = 6
	markFromLine Length = 9
)

// MostLever is how far a joined part may reach from its join, in distances of the
// two marks on it: of a part of 270 mm they are 45 mm apart, and a slip of 0.1 mm
// at one moves the far end by 0.6 mm. The number is our own.
const MostLever = 6

// seam is where two tiles are joined.
type seam struct {
	from, to geometry.Point
	reach    Length // how far the template goes from the join, on the farther side
	marks    [2]geometry.Point
}

// lever returns how far the farther part reaches, in distances of the marks.
func (s seam) lever() float64 { return (s.reach / s.marks[0].Distance(s.marks[1])).MM() }

// seams returns the joins of a template's tiles with their marks: off the lines drawn
// of it, and as far apart as MostLever asks where the join is long enough.
func seams(outline geometry.Box, tiles []Tile, drawn []line) (out []seam) {
	for _, tile := range tiles {
		for _, next := range tiles {
			c, n := tile.Core, next.Core
			s := seam{from: geometry.Pt(c.Min.X, c.Min.Y), to: geometry.Pt(c.Max.X, c.Min.Y)}
			switch {
			case next.Row == tile.Row && next.Col == tile.Col+1:
				s.from, s.to = geometry.Pt(c.Max.X, c.Max.Y), geometry.Pt(c.Max.X, c.Min.Y)
				s.reach = max(c.Intersect(outline).Width(), n.Intersect(outline).Width())
			case next.Row == tile.Row+1 && next.Col == tile.Col:
				s.reach = max(c.Intersect(outline).Height(), n.Intersect(outline).Height())
			default:
				continue
			}
			s.mark(drawn)
			out = append(out, s)
		}
	}
	return out
}

// mark finds the places of both marks: the outermost that keep off all lines. Where
// these are too close together for the lever, the two that are far enough apart and
// farthest from any line; where the join is too short for that, its ends.
func (s *seam) mark(drawn []line) {
	const steps = 120
	long := s.from.Distance(s.to)
	end := min(markFromEnd, long/4)
	step := (long - 2*end) / steps
	near := nearby(drawn, geometry.Around(s.from, s.to).Grow(markFromLine))
	var at [steps + 1]geometry.Point
	var clear [steps + 1]Length
	for i := range at {
		at[i] = s.from.Add(s.to.Sub(s.from).Mul(((end + step*Length(i)) / long).MM()))
		clear[i] = min(nearest(at[i], near), markFromLine)
	}
	first, last := 0, steps
	for first < steps && clear[first] < markFromLine {
		first++
	}
	for last > 0 && clear[last] < markFromLine {
		last--
	}
	apart := int(math.Ceil((max(s.reach/MostLever, end) / step).MM() - 1e-9))
	if last-first < apart {
		first, last = 0, steps
		for i, best := 0, Length(-1); i+apart <= steps; i++ {
			for k := i + apart; k <= steps; k++ {
				if c := min(clear[i], clear[k]); c > best {
					first, last, best = i, k, c
				}
			}
		}
	}
	s.marks = [2]geometry.Point{at[first], at[last]}
}

// line is a straight line from one point to another.
type line [2]geometry.Point

// flatLines returns the lines of a template as straight ones.
func flatLines(lines []geometry.Path) (drawn []line) {
	for _, l := range lines {
		points := l.Flatten(0.1)
		if l.Closed {
			points = append(points, points[0])
		}
		for i := range points[1:] {
			drawn = append(drawn, line(points[i:i+2]))
		}
	}
	return drawn
}

// addMarks puts two marks on every join of two tiles. Joins are named from the number
// given on; it returns the next.
func (t *Tiling) addMarks(join int) int {
	for _, s := range seams(t.Piece.Outline.Bounds(), t.Tiles, flatLines(t.Piece.Lines())) {
		for i, at := range s.marks {
			t.Marks = append(t.Marks, Mark{At: at, Name: wording.Letters(join+1) + string(rune('1'+i))})
		}
		join++
	}
	return join
}

// nearby returns the lines that may come into a box.
func nearby(lines []line, b geometry.Box) (out []line) {
	for _, l := range lines {
		if around := geometry.Around(l[0], l[1]); around.Max.X >= b.Min.X && around.Min.X <= b.Max.X && around.Max.Y >= b.Min.Y && around.Min.Y <= b.Max.Y {
			out = append(out, l)
		}
	}
	return out
}

// nearest returns how far a point is from the nearest of some lines.
func nearest(p geometry.Point, lines []line) Length {
	near := Length(math.Inf(1))
	for _, l := range lines {
		near = min(near, p.ToLine(l[0], l[1]))
	}
	return near
}
