package cutter

import (
	"fmt"

	"forel/geometry"
	"forel/paper/bed"
	"forel/render"
	"forel/render/hairline"
	"forel/render/shape"
	"forel/render/svg"
	"forel/render/typeset"
)

// label draws the lines to rule and the names of the parts.
func label(c *svg.Canvas, b bed.Bed, o Options) {
	ruling := render.Stroke{Width: o.Line, Color: o.Theme[render.Positions].Color}
	ruled := false
	if ticks := ticksOf(b); len(ticks) > 0 {
		c.Begin(render.Positions)
		ruled = true
		c.BeginPart("Positions.pattern", "where lines of the pattern come at the edges of the bed")
		for _, t := range ticks {
			c.Stroke(t, ruling)
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
			c.Stroke(r, ruling)
		}
		c.EndPart()
	}
	if ruled {
		c.End()
	}
	c.Begin(render.Legend)
	defer c.End()
	lines := make([][]geometry.Path, len(b.Parts))
	for i, p := range b.Parts {
		lines[i] = append(ticksOf(b), p.Rulings...)
	}
	for _, step := range b.Steps {
		lines[step.Part] = append(lines[step.Part], step.Paths...)
	}
	on := hairline.Surface{Surface: c, Width: o.Line}
	for i, p := range b.Parts {
		begin(c, b, render.Legend, i, 1)
		name(on, names(i+1, p), p.Outline, lines[i], o.Theme[render.Legend].Color)
		c.EndPart()
	}
}

// Length is a distance in millimetres.
type Length = geometry.Length

// tick is how long the marks at the edges of the bed are.
const tick Length = 4

// ticksOf returns marks at all four edges of a bed where lines of its stock's
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

// names are what a part can be called by, the fullest first.
func names(number int, p bed.Part) []string {
	return []string{fmt.Sprintf("%d %s", number, p.Name()), fmt.Sprintf("%d %s", number, p.Piece.Name), fmt.Sprint(number)}
}

// name sets the fullest of some names near the middle of an outline, as large
// as it fits off every line, level or else turned upright, and tells whether there was room
// for any. No word is broken.
func name(on render.Surface, names []string, outline geometry.Path, lines []geometry.Path, color render.Color) bool {
	const gap, spare = 0.9, 0.8 // between the lines of a name, and round it
	within := shape.Area{Rings: [][]geometry.Point{outline.Flatten(0.05)}}
	var off shape.Taken
	for _, l := range lines {
		off.Lines = append(off.Lines, l.Straight(0.05)...)
	}
	for _, words := range names {
		for _, turned := range []bool{false, true} {
			along := outline.Bounds().Width()
			if turned {
				along = outline.Bounds().Height()
			}
			for _, size := range []render.Points{render.BodySize, render.NoteSize, render.SmallSize} {
				texts := shape.Words(within, typeset.Wrap(words, size, false, along*0.85), render.Text{Size: size, Turned: turned}, gap, spare, off)
				for _, t := range texts {
					t.Color = color
					on.Text(t)
				}
				if texts != nil {
					return true
				}
			}
		}
	}
	return false
}
