package templates

import (
	"fmt"
	"slices"

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
func (b *booklet) marks(s sheets, core geometry.Box, dx, dy geometry.Length) []geometry.Box {
	stroke := render.Stroke{Width: 0.2, Color: render.Black}
	var taken []geometry.Box
	t, window := s.tiling, s.tiling.Area
	var lines []geometry.Path
	for _, l := range s.piece.Lines() {
		lines = append(lines, l.FlipY(dy).Move(geometry.Pt(dx, 0)))
	}
	for _, m := range t.Marks {
		at := geometry.Pt(m.At.X+dx, dy-m.At.Y)
		if !window.Contains(geometry.Box{Min: at, Max: at}) {
			continue
		}
		b.Stroke(geometry.Line(at.Add(geometry.Pt(-markArm, 0)), at.Add(geometry.Pt(markArm, 0))), stroke)
		b.Stroke(geometry.Line(at.Add(geometry.Pt(0, -markArm)), at.Add(geometry.Pt(0, markArm))), stroke)
		b.Stroke(geometry.Circle(at, markRing), stroke)
		name := b.markName(m.Name, at, core, window, lines)
		b.Text(name)
		taken = append(taken, geometry.Box{Min: at, Max: at}.Grow(markArm), typeset.Box(name))
	}
	return taken
}

// A registration mark: the radius of its circle, the length of its arms.
const (
	markRing geometry.Length = 1.8
	markArm  geometry.Length = 4
)

// markName sets a mark's name beside it: toward the middle of what stays of the
// sheet where no line of the pattern is in the way, else on another side.
func (b *booklet) markName(name string, at geometry.Point, core, window geometry.Box, lines []geometry.Path) render.Text {
	const gap = 0.8
	up := typeset.Ascent(render.SmallSize)
	place := func(right, below bool) render.Text {
		t := render.Text{String: name, Size: render.SmallSize, Bold: true, Color: render.Black, At: at.Add(geometry.Pt(-markRing-gap, -gap)), Align: render.End}
		if right {
			t.At.X, t.Align = at.X+markRing+gap, render.Start
		}
		if below {
			t.At.Y = at.Y + gap + up
		}
		return t
	}
	c := core.Center()
	right, below := at.X < c.X, at.Y < c.Y
	// Past the end of an markArm, hard by the join, where lines beside it are near.
	past := func(below bool) render.Text {
		t := place(right, below)
		t.At.X, t.Align = at.X+gap, render.Start
		if below {
			t.At.Y = at.Y + markArm + gap + up
		} else {
			t.At.Y = at.Y - markArm - gap
		}
		return t
	}
	best := place(right, below)
	for _, t := range []render.Text{best, place(right, !below), place(!right, below), place(!right, !below), past(below), past(!below)} {
		box := typeset.Box(t).Grow(0.4)
		if window.Contains(box) && !slices.ContainsFunc(lines, func(l geometry.Path) bool { return len(l.Clip(box, 0.1)) > 0 }) {
			return t
		}
	}
	return best
}
