package paper

import (
	"math"

	"forel/geometry"
)

// Tiling lays one pattern over as few sheets as one grid allows. Rows count
// from the top, columns from the left. Neighbours overlap; they are joined on
// a line in the middle of the overlap.
type Tiling struct {
	Width, Height Length       // the sheet as it lies
	Area          geometry.Box // what may be printed for the pattern, from the sheet's upper left corner, Y downward
	Rows, Cols    int
	Overlap       Length
	Tiles         []Tile // row by row
	Marks         []Mark
}

// Tile is the part of a pattern on one sheet.
type Tile struct {
	Row, Col int          // from 1
	Window   geometry.Box // what the sheet shows of the pattern, in the pattern's coordinates
	Core     geometry.Box // what is left of it once the sheets are joined
}

// Mark is a registration mark: a place in the pattern that is printed on two
// neighbouring sheets and lies on the line where they are joined.
type Mark struct {
	At   geometry.Point
	Name string
}

// pads are the widths of white around a pattern that are tried: as much as
// costs no sheet, so that words fit beside a narrow piece.
var pads = []Length{9, 5, 1}

// Tile lays a pattern with the given bounding box over sheets. The sheet is
// upright unless lying takes fewer. Joins and registration marks keep off the
// lines given, where they can.
func (s Setup) Tile(pattern geometry.Box, lines ...geometry.Path) Tiling {
	var best Tiling
	for i, pad := range pads {
		for _, lying := range []bool{false, true} {
			t := s.grid(pattern, pad, lying, lines)
			if i == 0 && !lying || t.Rows*t.Cols < best.Rows*best.Cols {
				best = t
			}
		}
	}
	best.addMarks(lines)
	return best
}

// usable gives what of a sheet can take a pattern, from its upper left corner.
func (s Setup) usable(lying bool) (width, height Length, area geometry.Box) {
	width, height = s.Size(lying)
	area = s.Printable(lying)
	area.Max.Y -= Foot
	return width, height, area
}

func (s Setup) grid(pattern geometry.Box, pad Length, lying bool, lines []geometry.Path) Tiling {
	t := Tiling{Overlap: s.Overlap}
	t.Width, t.Height, t.Area = s.usable(lying)
	w, h := t.Area.Width(), t.Area.Height()
	t.Cols = count(pattern.Width()+2*pad, w, s.Overlap)
	t.Rows = count(pattern.Height()+2*pad, h, s.Overlap)

	// The grid covers more than the pattern: the pattern lies in the middle, or
	// as near to it as keeps the joins off its lines.
	stepX, stepY := w-s.Overlap, h-s.Overlap
	wide, high := w+Length(t.Cols-1)*stepX, h+Length(t.Rows-1)*stepY
	left := pattern.Center().X - wide/2
	top := pattern.Center().Y + high/2
	xs, ys := places(lines)
	left += shift(left+w-s.Overlap/2, stepX, t.Cols-1, (wide-pattern.Width())/2-pad, xs)
	top += shift(top-h+s.Overlap/2, -stepY, t.Rows-1, (high-pattern.Height())/2-pad, ys)
	for r := range t.Rows {
		for c := range t.Cols {
			x, y := left+Length(c)*stepX, top-Length(r)*stepY
			window := geometry.Bx(x, y-h, x+w, y)
			core := window
			half := s.Overlap / 2
			if c > 0 {
				core.Min.X += half
			}
			if c < t.Cols-1 {
				core.Max.X -= half
			}
			if r > 0 {
				core.Max.Y -= half
			}
			if r < t.Rows-1 {
				core.Min.Y += half
			}
			t.Tiles = append(t.Tiles, Tile{Row: r + 1, Col: c + 1, Window: window, Core: core})
		}
	}
	return t
}

// places gives where the lines of a pattern have corners, across and up: a
// join there would fall on a fold, an apex or the start of a slit.
func places(lines []geometry.Path) (xs, ys []Length) {
	for _, l := range lines {
		for _, v := range l.Vertices {
			xs, ys = append(xs, v.X), append(ys, v.Y)
		}
	}
	return xs, ys
}

// shift gives how far to move a grid whose first join is at a place, the others
// a step further each, so that none is near one of the places to keep off: as
// little as will do, and no more than the room there is.
func shift(first, step Length, joins int, room Length, off []Length) Length {
	const fine = 0.5
	best, most := Length(0), Length(-1)
	for n := Length(0); n*fine <= max(room, 0); n++ {
		for _, by := range []Length{n * fine, -n * fine} {
			clear := Length(math.Inf(1))
			for k := range joins {
				at := first + by + Length(k)*step
				for _, p := range off {
					clear = min(clear, (p - at).Abs())
				}
			}
			if clear >= markFromLine {
				return by
			}
			if clear > most {
				best, most = by, clear
			}
		}
	}
	return best
}

// count gives how many sheets side by side cover a length.
func count(length, sheet, overlap Length) int {
	if length <= sheet {
		return 1
	}
	return int(math.Ceil(float64((length-overlap)/(sheet-overlap)) - 1e-9))
}

// Marks keep this far from the ends of a join and from the lines of a pattern,
// so that neither their arms nor their names touch anything.
const (
	markFromEnd  Length = 12
	markFromLine Length = 9
)

// addMarks puts two marks on every join of two sheets, as far apart as the
// sheets allow, off the lines of the pattern.
func (t *Tiling) addMarks(lines []geometry.Path) {
	var drawn [][]geometry.Point
	for _, l := range lines {
		points := l.Flatten(0.1)
		if l.Closed {
			points = append(points, points[0])
		}
		drawn = append(drawn, points)
	}
	add := func(from, to geometry.Point) {
		name := letters(len(t.Marks) / 2)
		long := from.Distance(to)
		at := func(along Length) geometry.Point { return from.Add(to.Sub(from).Mul((along / long).MM())) }
		first := free(at, markFromEnd, long/2-markFromEnd/2, drawn)
		last := free(at, long-markFromEnd, long/2+markFromEnd/2, drawn)
		for i, along := range []Length{first, last} {
			t.Marks = append(t.Marks, Mark{At: at(along), Name: name + string(rune('1'+i))})
		}
	}
	for _, tile := range t.Tiles {
		c := tile.Core
		if tile.Col < t.Cols {
			add(geometry.Pt(c.Max.X, c.Max.Y), geometry.Pt(c.Max.X, c.Min.Y))
		}
		if tile.Row < t.Rows {
			add(geometry.Pt(c.Min.X, c.Min.Y), geometry.Pt(c.Max.X, c.Min.Y))
		}
	}
}

// free gives the place for a mark on a join between two places along it: the
// first from the outer one that keeps off all lines, or else the one furthest
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

// ToPage gives the step from pattern coordinates (Y upward) to the sheet's
// (Y downward): page = (x + dx, dy - y).
func (t Tiling) ToPage(tile Tile) (dx, dy Length) {
	return t.Area.Min.X - tile.Window.Min.X, t.Area.Min.Y + tile.Window.Max.Y
}

// Neighbour gives the tile at a row and column, if there is one.
func (t Tiling) Neighbour(row, col int) (Tile, bool) {
	if row < 1 || col < 1 || row > t.Rows || col > t.Cols {
		return Tile{}, false
	}
	return t.Tiles[(row-1)*t.Cols+col-1], true
}
