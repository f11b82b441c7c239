package handout

import (
	"strings"

	"github.com/peterstace/simplefeatures/geom"

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
		name, _, _ := strings.Cut(r.Name, ":")
		areas := shape.AreasOf(meetOf(polygon.Box(room), polygon.Of(whole)))
		if len(areas) == 0 {
			continue
		}
		for _, try := range []struct {
			size   render.Points
			turned bool
		}{{render.NoteSize, false}, {render.NoteSize, true}, {render.SmallSize, false}, {render.SmallSize, true}} {
			w, h := typeset.Width(name, try.size, false)+0.8, typeset.Ascent(try.size)+typeset.Descent(try.size)+0.6
			if try.turned {
				w, h = h, w
			}
			c, ok := areas[0].Room(w, h, off)
			if !ok {
				continue
			}
			t := render.Text{String: name, Size: try.size, Align: render.Middle, Turned: try.turned, Color: render.Black}
			down := (typeset.Ascent(try.size) - typeset.Descent(try.size)) / 2
			t.At = c.Add(geometry.Pt(0, down))
			if try.turned {
				t.At = c.Add(geometry.Pt(down, 0))
			}
			b.Text(t)
			off.Boxes = append(off.Boxes, typeset.Box(t).Grow(0.5))
			break
		}
	}
}

func meetOf(a, b geom.Geometry) geom.Geometry { return shape.Meet(a, b) }
