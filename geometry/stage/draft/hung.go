package draft

import (
	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/stage"
)

// Hung is a piece whose parts hang on each other, to be shown at any stage of its
// folds.
type Hung struct {
	fold.Sheet
	Piece  geometry.Piece
	Object string              // its name in a picture
	Late   func(leaf int) bool // tells what is folded last and lies over the rest; nil: nothing is
}

// Angle tells by how many degrees a leaf is turned about its hinge.
type Angle = func(leaf int) float64

// Sides returns what a sheet of a material is made of, on its face and on its back;
// of card outside and inside.
func Sides(m geometry.Material) (face, back stage.Stuff) {
	switch m.Like() {
	case geometry.Cloth:
		return stage.Cloth, stage.ClothBack
	case geometry.Paper:
		return stage.Paper, stage.PaperBack
	case geometry.Lining:
		return stage.Lining, stage.Blank
	case geometry.Board:
		return stage.Board, stage.Board
	}
	return stage.Card, stage.CardInside
}

// Faces returns the faces of the parts as they are turned, the first on a layer.
// Plain ones are not what the picture is about.
func (h Hung) Faces(angle Angle, layer int, plain bool) []stage.Face {
	face, back := Sides(h.Piece.Material)
	posed := h.Pose(angle)
	grain := geometry.Pt(0, 1)
	if h.Piece.Grain == geometry.GrainWidth {
		grain = geometry.Pt(1, 0)
	}
	flat := true
	for _, q := range posed {
		flat = flat && q.Turned == 0
	}
	var out []stage.Face
	for i, q := range posed {
		if len(q.Outline) < 3 || q.Web && !flat || q.Tab && q.Turned >= 90 {
			continue
		}
		at := func(g geometry.Point) stage.Vec { return q.At(g) }
		f := stage.Face{
			Object: h.Object, Name: h.NameOf(i), Front: back, Back: face, Plain: plain,
			Layer: layer + h.depth(i), Grain: q.Along(grain),
		}
		for _, g := range q.Outline {
			f.Points = append(f.Points, at(g))
		}
		// A hair within the leaf, so that it is on this and not its neighbour.
		on := func(path geometry.Path, kind stage.LineKind) {
			pts := path.Flatten(0.2)
			for k := 1; k < len(pts); k++ {
				a, b := pts[k-1], pts[k]
				if a.Near(b) {
					continue
				}
				side := b.Sub(a).Mul(0.03 / a.Distance(b).MM())
				for _, d := range []geometry.Point{geometry.Pt(-side.Y, side.X), geometry.Pt(side.Y, -side.X)} {
					if q.Holds(a.Add(b).Mul(0.5).Add(d)) {
						f.Lines = append(f.Lines, stage.Line{Points: []stage.Vec{at(a.Add(d)), at(b.Add(d))}, Kind: kind})
					}
				}
			}
		}
		for _, s := range h.Piece.Slits {
			on(s, stage.Slit)
		}
		if q.On >= 0 && q.Turned == 0 && !q.Tab {
			from, to := q.Hinge()
			on(geometry.Line(from, to), stage.Fold)
		}
		out = append(out, f)
	}
	return out
}

// late is how many layers what is folded last lies higher.
const late = 5

// depth returns how many folds a leaf is from the one laid first, more for what is
// folded last.
func (h Hung) depth(i int) int {
	n := 0
	for k := i; h.Leaves[k].On >= 0; k = h.Leaves[k].On {
		n++
	}
	if n > 0 && h.Late != nil && h.Late(i) {
		n += late
	}
	return n
}

// NameOf returns the name of the region that a leaf is, or of its piece.
func (h Hung) NameOf(leaf int) string {
	for _, r := range h.Piece.Regions {
		if h.Leaves[leaf].Holds(r.Room.Center()) {
			return r.Name
		}
	}
	return h.Piece.Name
}
