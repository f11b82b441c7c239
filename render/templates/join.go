package templates

import (
	"fmt"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/pattern"
	"forel/render/typeset"
)

// joinStroke is the line on which two sheets meet.
var joinStroke = render.Stroke{Width: 0.15, Dash: []geometry.Length{9, 2}, Color: render.Grey}

// joins draws the lines where a sheet meets its neighbours and tells what to
// do at each: the sheet above or on the left stays whole, the sheet below or
// on the right is cut on the line and laid over it.
func (b *booklet) joins(s sheets, tile paper.Tile, core geometry.Box) []pattern.Join {
	t := s.tiling
	area := t.Area
	corner := geometry.Rectangle(core).Vertices // upper left, upper right, lower right, lower left
	var out []pattern.Join
	for _, j := range []struct {
		row, col int
		under    bool // this sheet stays whole
		line     geometry.Path
		from, to geometry.Point
	}{
		{tile.Row, tile.Col + 1, true, geometry.Line(geometry.Pt(core.Max.X, area.Min.Y), geometry.Pt(core.Max.X, area.Max.Y)), corner[2].Point, corner[1].Point},
		{tile.Row, tile.Col - 1, false, geometry.Line(geometry.Pt(core.Min.X, area.Min.Y), geometry.Pt(core.Min.X, area.Max.Y)), corner[0].Point, corner[3].Point},
		{tile.Row + 1, tile.Col, true, geometry.Line(geometry.Pt(area.Min.X, core.Max.Y), geometry.Pt(area.Max.X, core.Max.Y)), corner[3].Point, corner[2].Point},
		{tile.Row - 1, tile.Col, false, geometry.Line(geometry.Pt(area.Min.X, core.Min.Y), geometry.Pt(area.Max.X, core.Min.Y)), corner[1].Point, corner[0].Point},
	} {
		if _, ok := t.Neighbour(j.row, j.col); !ok {
			continue
		}
		page := s.page(j.row, j.col)
		text := fmt.Sprintf("cut on this line, lay on page %d (row %d, column %d)", page, j.row, j.col)
		if j.under {
			text = fmt.Sprintf("page %d (row %d, column %d) is laid up to this line", page, j.row, j.col)
		}
		b.Stroke(j.line, joinStroke)
		out = append(out, pattern.Join{From: j.from, To: j.to, Text: text})
	}
	return out
}

// page gives the page number of a tile.
func (s sheets) page(row, col int) int { return s.first + (row-1)*s.tiling.Cols + col - 1 }

// marks draws the registration marks of a sheet and gives the places they
// take: a cross in a circle on the join, its name on the side that stays.
func (b *booklet) marks(t paper.Tiling, tile paper.Tile, core geometry.Box, dx, dy geometry.Length) []geometry.Box {
	const arm, ring = 4, 1.8
	stroke := render.Stroke{Width: 0.2, Color: render.Black}
	var taken []geometry.Box
	window := t.Area
	for _, m := range t.Marks {
		at := geometry.Pt(m.At.X+dx, dy-m.At.Y)
		if !window.Contains(geometry.Box{Min: at, Max: at}) {
			continue
		}
		b.Stroke(geometry.Line(at.Add(geometry.Pt(-arm, 0)), at.Add(geometry.Pt(arm, 0))), stroke)
		b.Stroke(geometry.Line(at.Add(geometry.Pt(0, -arm)), at.Add(geometry.Pt(0, arm))), stroke)
		b.Stroke(geometry.Circle(at, ring), stroke)
		name := render.Text{String: m.Name, Size: render.SmallSize, Bold: true, Color: render.Black}
		up := typeset.Ascent(name.Size)
		switch { // toward the middle of what stays of this sheet
		case at.X >= core.Max.X-1e-6:
			name.At, name.Align = at.Add(geometry.Pt(-ring-0.8, -0.8)), render.End
		case at.X <= core.Min.X+1e-6:
			name.At = at.Add(geometry.Pt(ring+0.8, -0.8))
		case at.Y >= core.Max.Y-1e-6:
			name.At = at.Add(geometry.Pt(0.8, -ring-0.8))
		default:
			name.At = at.Add(geometry.Pt(0.8, ring+0.8+up))
		}
		b.Text(name)
		taken = append(taken, geometry.Box{Min: at, Max: at}.Grow(arm), typeset.Box(name))
	}
	return taken
}
