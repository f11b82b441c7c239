package cutter

import (
	"fmt"

	"forel/geometry"
	"forel/paper/bed"
	"forel/render"
	"forel/render/svg"
	"forel/render/typeset"
)

// label draws the lines to rule and the names of the parts. Words are set level,
// since turned ones need a transform.
func label(c *svg.Canvas, b bed.Bed, theme render.Theme) {
	ruled := false
	if ticks := ticksOf(b); len(ticks) > 0 {
		c.Begin(render.Positions)
		ruled = true
		c.BeginPart("Positions.pattern", "where lines of the pattern come at the edges of the bed")
		for _, t := range ticks {
			c.Stroke(t, render.Stroke{Width: hairline, Color: theme[render.Positions].Color})
		}
		c.EndPart()
	}
	for i, p := range b.Parts {
		if len(p.Rulings) == 0 {
			continue
		}
		if !ruled {
			c.Begin(render.Positions)
			ruled = true
		}
		begin(c, b, render.Positions, i, 1)
		for _, r := range p.Rulings {
			c.Stroke(r, render.Stroke{Width: hairline, Color: theme[render.Positions].Color})
		}
		c.EndPart()
	}
	if ruled {
		c.End()
	}
	c.Begin(render.Legend)
	defer c.End()
	for i, p := range b.Parts {
		name(c, i+1, p, theme[render.Legend].Color)
	}
}

// tick is how long the marks at the edges of the bed are.
const tick geometry.Length = 4

// ticksOf gives marks at all four edges of a bed where lines of its stock's
// pattern come.
func ticksOf(b bed.Bed) []geometry.Path {
	var out []geometry.Path
	xs, ys := b.Register.Ticks(b.Width, b.Height)
	for _, x := range xs {
		out = append(out, geometry.Line(geometry.Pt(x, 0), geometry.Pt(x, tick)), geometry.Line(geometry.Pt(x, b.Height-tick), geometry.Pt(x, b.Height)))
	}
	for _, y := range ys {
		out = append(out, geometry.Line(geometry.Pt(0, y), geometry.Pt(tick, y)), geometry.Line(geometry.Pt(b.Width-tick, y), geometry.Pt(b.Width, y)))
	}
	return out
}

// name sets a part's number and name in the middle of its largest room, as large
// as it fits: or its number alone.
func name(c *svg.Canvas, number int, p bed.Part, color render.Color) {
	room := p.Room()
	full := fmt.Sprintf("%d %s", number, p.Name())
	for _, words := range []string{full, fmt.Sprintf("%d %s", number, p.Piece.Name), fmt.Sprint(number)} {
		for _, size := range []render.Points{render.BodySize, render.NoteSize, render.SmallSize} {
			lines := typeset.Break(words, size, false, room.Width()*0.85)
			tall := typeset.LineHeight(size) * geometry.Length(len(lines))
			fits := tall < room.Height()
			for _, l := range lines {
				fits = fits && typeset.Width(l, size, false) < room.Width()*0.9
			}
			if !fits {
				continue
			}
			y := room.Center().Y - tall/2 + typeset.Ascent(size)
			for _, l := range lines {
				c.Text(render.Text{At: geometry.Pt(room.Center().X, y), String: l, Size: size, Align: render.Middle, Color: color})
				y += typeset.LineHeight(size)
			}
			return
		}
	}
}
