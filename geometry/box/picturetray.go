package box

import (
	"slices"

	"forel/geometry"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// trayModel is a tray with its cloth, to be shown at any stage of its covering.
type trayModel struct {
	s     standing
	cloth draft.Folding
}

// trayModel returns the model of a tray from its pieces. Its cloth is folded by the turns of
// its regions.
func (c made) trayModel(name string) *trayModel {
	t := &trayModel{}
	t.s, _ = stand(c.pieces, name, c.job.Board, c.job.Walls)
	p, _ := geometry.Find(c.pieces, ofTray(name, clothOf))
	sheet, _ := t.s.body().Hang(p, 0)
	t.cloth = draft.Hung{Sheet: sheet, Piece: p, Object: "cloth"}.Grouped(inwards, func(leaf int) int {
		i := slices.IndexFunc(p.Regions, func(r geometry.Region) bool { return sheet.Leaves[leaf].Holds(r.Room.Center()) })
		return p.Regions[max(0, i)].Turn
	})
	return t
}

// inwards is the first turn that comes to lie inside, over the rest.
const inwards = 3

// covered is a tray with all of its cloth turned: round the walls, under the base, at the
// ends, head and tail wall inside, the fore-edge wall inside.
var covered = draft.Folded{90, 90, 180, 270, 270}

// boards returns boards by their names, as they stand.
func (t *trayModel) boards(names ...string) (out []stage.Face) {
	for _, name := range names {
		for _, b := range t.s.solids() {
			if b.Name == t.s.name+", "+name {
				for _, f := range b.Block(name) {
					f.Name = name
					out = append(out, f)
				}
			}
		}
	}
	return out
}

// bare returns all boards.
func (t *trayModel) bare() []stage.Face {
	return t.boards("base", "fore-edge wall", "head wall", "tail wall")
}

// whole returns the covered tray, all of it one object, placed in space: at returns where
// a place of the tray lies.
func (t *trayModel) whole(object string, at func(space.Vec) space.Vec) []stage.Face {
	return placed(slices.Concat(t.cloth.At(covered, false), t.bare()), object, at)
}

// placed returns faces as one object, placed in space.
func placed(faces []stage.Face, object string, at func(space.Vec) space.Vec) []stage.Face {
	faces = stage.Placed(faces, at)
	for i := range faces {
		faces[i].Object = object
		if faces[i].Front != stage.Board {
			faces[i].Name = object + ": " + faces[i].Name
		}
	}
	return faces
}

// nearEnd returns what is to be seen of the open end of the wall that is near.
func (t *trayModel) nearEnd() []stage.Vec {
	reach := min(1.2*t.s.high, 0.5*t.s.wide, 0.4*t.s.long)
	return draft.Corners(stage.Vec{X: -0.4 * reach}, stage.Vec{X: reach, Y: reach, Z: t.s.high + t.s.t})
}
