package bench

import (
	"forel/geometry"
	"forel/paper/bench"
	"forel/render"
)

// DrawSheet draws one sheet as on a page and returns the numbers left out, and the
// room it was given.
func DrawSheet(on render.Surface, p bench.Plan, g bench.Group, i int, o Options) (missed []string, room geometry.Box) {
	f := newFigure(p, g, i, o)
	room = f.room()
	s := f.split(room)
	y := f.draw(on, room, s)
	f.legend(on, geometry.Bx(room.Min.X, y, room.Max.X, room.Max.Y), f.rows[:s.rows], s.across)
	return f.missed, room
}
