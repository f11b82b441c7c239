package handout

import (
	"strings"

	"forel/geometry"
	"forel/geometry/polygon"
	"forel/render"
	"forel/render/shape"
	"forel/render/typeset"
)

// partNames sets the names of a piece's parts where there is room for them
// between its lines.
func (b *book) partNames(p geometry.Piece, at geometry.Box, place func(geometry.Path) geometry.Path) {
	if len(p.Folds) == 0 {
		return
	}
	off := shape.Taken{}
	for _, path := range p.Lines() {
		pts := place(path).Flatten(0.05)
		if path.Closed {
			pts = append(pts, pts[0])
		}
		for i := 1; i < len(pts); i++ {
			off.Lines = append(off.Lines, [2]geometry.Point{pts[i-1], pts[i]})
		}
	}
	whole := place(p.Outline).Flatten(0.05)
	for _, r := range p.Regions {
		room := place(geometry.Rectangle(r.Room)).Bounds()
		name := r.Name
		areas, err := polygon.Meet(polygon.Box(room), polygon.Of(whole))
		if err != nil || len(areas) == 0 {
			continue
		}
		one := []string{name}
		for _, try := range []struct {
			lines  []string
			size   render.Points
			turned bool
		}{
			{one, render.NoteSize, false}, {one, render.NoteSize, true}, {strings.Fields(name), render.NoteSize, false},
			{one, render.SmallSize, false}, {one, render.SmallSize, true}, {strings.Fields(name), render.SmallSize, false},
		} {
			if texts := inRoom(areas[0], try.lines, try.size, try.turned, off); texts != nil {
				for _, t := range texts {
					b.Text(t)
					off.Boxes = append(off.Boxes, typeset.Box(t).Grow(0.5))
				}
				break
			}
		}
	}
}

// inRoom sets lines in the middle of the room an area has for them; none where
// there is no room.
func inRoom(a shape.Area, lines []string, size render.Points, turned bool, off shape.Taken) []render.Text {
	var wide Length
	for _, l := range lines {
		wide = max(wide, typeset.Width(l, size, false))
	}
	lead := typeset.Ascent(size) + typeset.Descent(size)
	w, h := wide+0.8, lead*Length(len(lines))+0.6
	if turned {
		w, h = h, w
	}
	at, ok := shape.Room(a, w, h, off)
	if !ok {
		return nil
	}
	var out []render.Text
	for i, l := range lines {
		down := (Length(i)-Length(len(lines))/2)*lead + typeset.Ascent(size)
		t := render.Text{At: at.Add(geometry.Pt(0, down)), String: l, Size: size, Align: render.Middle, Turned: turned, Color: render.Black}
		if turned {
			t.At = at.Add(geometry.Pt(down, 0))
		}
		out = append(out, t)
	}
	return out
}
