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
func (d *doc) partNames(p geometry.Piece, at geometry.Box, place func(geometry.Path) geometry.Path) {
	if len(p.Folds) == 0 {
		return
	}
	off := shape.Taken{}
	for _, path := range p.Lines() {
		off.Lines = append(off.Lines, place(path).Straight(0.05)...)
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
			if texts := shape.Words(areas[0], try.lines, render.Text{Size: try.size, Turned: try.turned}, 0, 0.6, off); texts != nil {
				for _, t := range texts {
					d.Text(t)
					off.Boxes = append(off.Boxes, typeset.Box(t).Grow(0.5))
				}
				break
			}
		}
	}
}
