package cutter

import (
	"fmt"
	"slices"
	"strings"

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
		name(on, names(i+1, p), p.Outline, p.Room, lines[i], o.Theme[render.Legend].Color)
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

// name sets the fullest of some names near the middle of a room within an outline, as large
// as it fits off every line, level or else turned upright, and tells whether there was room
// for any. No word is broken.
func name(on render.Surface, names []string, outline geometry.Path, room geometry.Box, lines []geometry.Path, color render.Color) bool {
	within := shape.Area{Rings: [][]geometry.Point{outline.Flatten(0.05)}}
	for _, words := range names {
		for _, turned := range []bool{false, true} {
			for _, size := range []render.Points{render.BodySize, render.NoteSize, render.SmallSize} {
				if setName(on, words, size, turned, within, room, lines, color) {
					return true
				}
			}
		}
	}
	return false
}

// setName sets words of a size in a room, where they fit.
func setName(on render.Surface, words string, size render.Points, turned bool, within shape.Area, room geometry.Box, lines []geometry.Path, color render.Color) bool {
	along, across := room.Width(), room.Height()
	if turned {
		along, across = across, along
	}
	for _, word := range strings.Fields(words) {
		if typeset.Width(word, size, false) > along*0.85 {
			return false
		}
	}
	broken := typeset.Break(words, size, false, along*0.85)
	var wide Length
	for _, l := range broken {
		wide = max(wide, typeset.Width(l, size, false))
	}
	tall := typeset.LineHeight(size) * Length(len(broken))
	if tall >= across || wide >= along*0.9 {
		return false
	}
	w, h := wide, tall
	if turned {
		w, h = h, w
	}
	for _, at := range places {
		mid := room.Center().Add(geometry.Pt((room.Width()-w)*at.X, (room.Height()-h)*at.Y))
		box := geometry.Bx(mid.X-w/2, mid.Y-h/2, mid.X+w/2, mid.Y+h/2).Grow(offLines)
		if !within.Holds(mid) || slices.ContainsFunc(lines, func(l geometry.Path) bool { return len(l.Clip(box, 0.05)) > 0 }) {
			continue
		}
		base := typeset.Ascent(size) - tall/2
		for _, l := range broken {
			line := render.Text{At: mid.Add(geometry.Pt(0, base)), String: l, Size: size, Align: render.Middle, Turned: turned, Color: color}
			if turned {
				line.At = mid.Add(geometry.Pt(base, 0))
			}
			on.Text(line)
			base += typeset.LineHeight(size)
		}
		return true
	}
	return false
}

// offLines is how far words stay from any line.
const offLines Length = 0.4

// places are where words are tried in a room, in parts of what it has beyond them,
// from its middle: the middle first.
var places = func() (out []geometry.Point) {
	for _, y := range []Length{0, -0.2, 0.2, -0.35, 0.35, -0.45, 0.45} {
		for _, x := range []Length{0, -0.2, 0.2, -0.4, 0.4} {
			out = append(out, geometry.Pt(x, y))
		}
	}
	return out
}()
