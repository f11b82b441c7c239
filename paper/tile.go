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
// upright unless lying takes fewer.
func (s Setup) Tile(pattern geometry.Box) Tiling {
	var best Tiling
	for i, pad := range pads {
		for _, lying := range []bool{false, true} {
			t := s.grid(pattern, pad, lying)
			if i == 0 && !lying || t.Rows*t.Cols < best.Rows*best.Cols {
				best = t
			}
		}
	}
	best.addMarks(pattern)
	return best
}

// usable gives what of a sheet can take a pattern, from its upper left corner.
func (s Setup) usable(lying bool) (width, height Length, area geometry.Box) {
	width, height = s.Sheet.Width, s.Sheet.Height
	if lying {
		width, height = height, width
	}
	return width, height, geometry.Bx(s.Margin, s.Margin, width-s.Margin, height-s.Margin-Foot)
}

func (s Setup) grid(pattern geometry.Box, pad Length, lying bool) Tiling {
	t := Tiling{Overlap: s.Overlap}
	t.Width, t.Height, t.Area = s.usable(lying)
	w, h := t.Area.Width(), t.Area.Height()
	t.Cols = count(pattern.Width()+2*pad, w, s.Overlap)
	t.Rows = count(pattern.Height()+2*pad, h, s.Overlap)

	// The grid covers more than the pattern: the pattern lies in the middle.
	stepX, stepY := w-s.Overlap, h-s.Overlap
	left := pattern.Center().X - (w+Length(t.Cols-1)*stepX)/2
	top := pattern.Center().Y + (h+Length(t.Rows-1)*stepY)/2
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

// count gives how many sheets side by side cover a length.
func count(length, sheet, overlap Length) int {
	if length <= sheet {
		return 1
	}
	return int(math.Ceil(float64((length-overlap)/(sheet-overlap)) - 1e-9))
}

// addMarks puts two marks on every join of two sheets, a quarter of the way in
// from both ends of what they share of the pattern.
func (t *Tiling) addMarks(pattern geometry.Box) {
	add := func(ends [2]geometry.Point) {
		name := letters(len(t.Marks) / 2)
		for i, part := range []float64{0.25, 0.75} {
			at := ends[0].Add(ends[1].Sub(ends[0]).Mul(part))
			t.Marks = append(t.Marks, Mark{At: at, Name: name + string(rune('1'+i))})
		}
	}
	for _, tile := range t.Tiles {
		shared := tile.Core.Intersect(pattern)
		if tile.Col < t.Cols {
			x := tile.Core.Max.X
			add([2]geometry.Point{geometry.Pt(x, shared.Max.Y), geometry.Pt(x, shared.Min.Y)})
		}
		if tile.Row < t.Rows {
			y := tile.Core.Min.Y
			add([2]geometry.Point{geometry.Pt(shared.Min.X, y), geometry.Pt(shared.Max.X, y)})
		}
	}
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
