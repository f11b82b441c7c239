package templates

import (
	"fmt"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/labelled"
	"forel/render/shape"
	"forel/render/typeset"
)

// joinStroke is the line on which two sheets meet. It is cut along: black, and not
// finer than a poor printer keeps.
var joinStroke = render.Stroke{Width: render.Finest, Dash: []geometry.Length{9, 2}, Color: render.Black}

// overlapStroke is the end of what a tile shows beyond a join.
var overlapStroke = render.Stroke{Width: 0.15, Dash: []geometry.Length{0.5, 1.5}, Color: render.Grey}

// joins draws the lines where a tile meets its neighbours and tells what to
// do at each: the tile above or on the left stays whole, the tile below or on
// the right is cut on the line and laid over it. It returns the lines it draws, and
// where words may stand: within the joins.
func (d *doc) joins(t paper.Tiling, tile paper.Tile, core, window geometry.Box) (out []labelled.Join, drawn []geometry.Path, safe geometry.Box) {
	safe = tile.Room.Grow(-1)
	for _, j := range []struct {
		row, col int
		under    bool             // this tile stays whole
		from, to geometry.Point   // of the core's side, the tile on its left (seen with Y upward)
		out      geometry.Point   // the way out of the tile
		end      *geometry.Length // of where words may stand
		at       geometry.Length
	}{
		{tile.Row, tile.Col + 1, true, core.Max, geometry.Pt(core.Max.X, core.Min.Y), geometry.Pt(1, 0), &safe.Max.X, core.Max.X - 1},
		{tile.Row, tile.Col - 1, false, core.Min, geometry.Pt(core.Min.X, core.Max.Y), geometry.Pt(-1, 0), &safe.Min.X, core.Min.X + 1},
		{tile.Row + 1, tile.Col, true, geometry.Pt(core.Min.X, core.Max.Y), core.Max, geometry.Pt(0, 1), &safe.Max.Y, core.Max.Y - 1},
		{tile.Row - 1, tile.Col, false, geometry.Pt(core.Max.X, core.Min.Y), core.Min, geometry.Pt(0, -1), &safe.Min.Y, core.Min.Y + 1},
	} {
		if j.row < 1 || j.col < 1 || j.row > t.Rows || j.col > t.Cols {
			continue
		}
		*j.end = j.at
		next, ok := t.Neighbour(j.row, j.col)
		where := fmt.Sprintf("row %d, column %d", j.row, j.col)
		if !ok {
			out = append(out, labelled.Join{From: j.from, To: j.to, Text: where + " would be blank and is not printed"})
			continue
		}
		page := fmt.Sprintf("page %d (%s)", d.pageOf(next), where)
		if next.Page == tile.Page {
			page = "the other part on this page (" + where + ")"
		}
		text := "cut on this line, lay on " + page
		if j.under {
			text = page + " is laid up to this line"
		}
		// The join and the end of the overlap, over the whole window.
		line := geometry.Around(j.from, j.to)
		if j.out.X != 0 {
			line.Min.Y, line.Max.Y = window.Min.Y, window.Max.Y
		} else {
			line.Min.X, line.Max.X = window.Min.X, window.Max.X
		}
		past := line.Move(j.out.Mul((t.Overlap / 2).MM()))
		join, end := geometry.Line(line.Min, line.Max), geometry.Line(past.Min, past.Max)
		d.Stroke(join, joinStroke)
		d.Stroke(end, overlapStroke)
		drawn = append(drawn, join, end)
		out = append(out, labelled.Join{From: j.from, To: j.to, Text: text})
	}
	return out, drawn, safe
}

// marks draws the registration marks of a tile and returns the places they
// take: a cross in a circle on the join, its name on the side that stays, clear
// of the lines of the joins.
func (d *doc) marks(t paper.Tiling, core, window geometry.Box, dx, dy geometry.Length, joins []geometry.Path) []geometry.Box {
	stroke := render.Stroke{Width: 0.2, Color: render.Black}
	var taken []geometry.Box
	var off shape.Taken // what names keep off
	for _, j := range joins {
		off.Lines = append(off.Lines, j.Straight(0.05)...)
	}
	for _, l := range t.Piece.Lines() {
		off.Lines = append(off.Lines, l.FlipY(dy).Move(geometry.Pt(dx, 0)).Straight(0.05)...)
	}
	off = off.Near(window, 0, 1)
	type mark struct {
		name string
		at   geometry.Point
	}
	var here []mark
	for i, m := range t.Marks {
		at := geometry.Pt(m.At.X+dx, dy-m.At.Y)
		// Those of other joins that a wide overlap shows are not this tile's.
		if !core.Grow(0.01).Contains(geometry.Around(at)) {
			continue
		}
		here = append(here, mark{m.Name, at})
		// Arms touch neither the other mark of a short join nor the window's end.
		arm := min(markArm, at.X-window.Min.X, window.Max.X-at.X, at.Y-window.Min.Y, window.Max.Y-at.Y, m.At.Distance(t.Marks[i^1].At)/2-0.4)
		d.Stroke(geometry.Line(at.Add(geometry.Pt(-arm, 0)), at.Add(geometry.Pt(arm, 0))), stroke)
		d.Stroke(geometry.Line(at.Add(geometry.Pt(0, -arm)), at.Add(geometry.Pt(0, arm))), stroke)
		d.Stroke(geometry.Circle(at, markRing), stroke)
		taken = append(taken, geometry.Around(at).Grow(arm))
		off.Boxes = append(off.Boxes, geometry.Around(at).Grow(markRing),
			geometry.Bx(at.X-arm, at.Y-stroke.Width, at.X+arm, at.Y+stroke.Width),
			geometry.Bx(at.X-stroke.Width, at.Y-arm, at.X+stroke.Width, at.Y+arm))
	}
	for i, m := range here {
		var others []geometry.Point
		for k, o := range here {
			if k != i {
				others = append(others, o.at)
			}
		}
		if name, ok := markName(m.name, m.at, core, window, off, others); ok {
			d.Text(name)
			taken, off.Boxes = append(taken, typeset.Box(name)), append(off.Boxes, typeset.Box(name).Grow(nameGap))
		}
	}
	return taken
}

// nameGap is the least white between the names of two marks, the width of a letter.
const nameGap geometry.Length = 1.5

// A registration mark: the radius of its circle; the length of its arms, or
// half the overlap where that is less.
const (
	markRing geometry.Length = 1.8
	markArm  geometry.Length = 4
)
