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
	s    standing
	hung draft.Hung
	turn []int // of each leaf of the cloth: when it is turned
	step []int // how many leaves of the same turn it hangs on
}

// trayModel returns the model of a tray from its pieces.
func (c made) trayModel(name string) *trayModel {
	t := &trayModel{}
	t.s, _ = stand(c.pieces, name, c.job.Board, c.job.Walls)
	p, _ := geometry.Find(c.pieces, ofTray(name, clothOf))
	sheet, _ := t.s.body().Hang(p, 0)
	t.hung = draft.Hung{Sheet: sheet, Piece: p, Object: "cloth", Late: func(leaf int) bool { return t.turn[leaf] > 2 }, Hinge: t.hinge}
	t.turn, t.step = make([]int, len(sheet.Leaves)), make([]int, len(sheet.Leaves))
	for i, l := range sheet.Leaves {
		for _, r := range p.Regions {
			if l.Holds(r.Room.Center()) {
				t.turn[i] = r.Turn
			}
		}
	}
	for i := range sheet.Leaves {
		for on := sheet.Leaves[i].On; on >= 0; on = sheet.Leaves[on].On {
			if t.turn[on] == t.turn[i] {
				t.step[i]++
			}
		}
	}
	return t
}

// turns is how far a covering is folded, each part from 0 to 1: round the walls, under the
// base, at the ends, head and tail wall inside, the fore-edge wall inside.
type turns [5]float64

// covered is a tray with all of its cloth turned.
var covered = turns{1, 1, 1, 1, 1}

// angle tells how far the part of each leaf is folded.
func (t *trayModel) angle(part turns) draft.Angle {
	return func(leaf int) float64 { return part[t.turn[leaf]] }
}

// hinge returns by how many degrees a leaf is turned: one after the other of those that hang
// on each other.
func (t *trayModel) hinge(leaf int, part float64) float64 {
	folds := turns{1, 1, 2, 3, 3} // of each turn, one behind the other
	n := t.turn[leaf]
	if n == 0 {
		return 90 * part
	}
	return max(0, min(90, 90*(part*folds[n]-float64(t.step[leaf]))))
}

// cloth returns the cloth at a stage.
func (t *trayModel) cloth(s turns) []stage.Face { return t.hung.Faces(t.angle(s), 1, false) }

// swing returns the arrows of parts of the cloth, by their names, from a stage to
// another.
func (t *trayModel) swing(from, to turns, parts ...string) []stage.Arrow {
	var counts []func(int) bool
	for _, name := range parts {
		counts = append(counts, func(leaf int) bool { return t.hung.NameOf(leaf) == name })
	}
	return t.hung.Swings(t.angle(from), t.angle(to), counts...)
}

// boards returns the boards by their names.
func (t *trayModel) boards() map[string][]stage.Face {
	out := map[string][]stage.Face{}
	for _, b := range t.s.solids() {
		name := b.Name[len(t.s.name)+2:]
		faces := b.Block(name)
		for i := range faces {
			faces[i].Name = name
		}
		out[name] = faces
	}
	return out
}

// bare returns all boards as they stand.
func (t *trayModel) bare() []stage.Face {
	b := t.boards()
	return slices.Concat(b["base"], b["fore-edge wall"], b["head wall"], b["tail wall"])
}

// whole returns the covered tray, all of it one object, placed in space: at returns where
// a place of the tray lies.
func (t *trayModel) whole(object string, at func(space.Vec) space.Vec) []stage.Face {
	return placed(slices.Concat(t.cloth(covered), t.bare()), object, at)
}

// placed returns faces as one object, placed in space.
func placed(faces []stage.Face, object string, at func(space.Vec) space.Vec) []stage.Face {
	for i := range faces {
		f := &faces[i]
		f.Object = object
		if f.Front != stage.Board {
			f.Name = object + ": " + f.Name
		}
		f.Points = each(f.Points, at)
		if f.Grain != (stage.Vec{}) {
			f.Grain = at(f.Grain).Sub(at(stage.Vec{}))
		}
		lines := slices.Clone(f.Lines)
		for k := range lines {
			lines[k].Points = each(lines[k].Points, at)
		}
		f.Lines = lines
	}
	return faces
}

func each(ps []stage.Vec, at func(space.Vec) space.Vec) []stage.Vec {
	out := make([]stage.Vec, len(ps))
	for i, p := range ps {
		out[i] = at(p)
	}
	return out
}

// nearEnd returns what is to be seen of the open end of the wall that is near.
func (t *trayModel) nearEnd() []stage.Vec {
	reach := min(1.2*t.s.high, 0.5*t.s.wide, 0.4*t.s.long)
	return draft.Corners(stage.Vec{X: -0.4 * reach}, stage.Vec{X: reach, Y: reach, Z: t.s.high + t.s.t})
}
