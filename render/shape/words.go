package shape

import (
	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Words sets lines in the middle of the room that an area has for them, clear of what
// is taken, in the size and the weight of a text, turned as it is; nil where there is
// no room. gap is the white between two lines, spare what the room must be taller than
// the lines.
func Words(a Area, lines []string, like render.Text, gap, spare Length, off Taken) []render.Text {
	var wide Length
	for _, l := range lines {
		wide = max(wide, typeset.Width(l, like.Size, like.Bold))
	}
	lead := typeset.Ascent(like.Size) + typeset.Descent(like.Size) + gap
	wide, tall := wide+0.8, lead*Length(len(lines))+spare
	if like.Turned {
		wide, tall = tall, wide
	}
	at, ok := Room(a, wide, tall, off)
	if !ok {
		return nil
	}
	like.Align, like.Color = render.Middle, render.Black
	out := make([]render.Text, len(lines))
	for i, l := range lines {
		// From the middle of the room to this line's baseline.
		down := geometry.Pt(0, (Length(i)-Length(len(lines))/2)*lead+typeset.Ascent(like.Size))
		if like.Turned {
			down = geometry.Pt(down.Y, 0)
		}
		out[i] = like
		out[i].String, out[i].At = l, at.Add(down)
	}
	return out
}
