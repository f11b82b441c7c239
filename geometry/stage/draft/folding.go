package draft

import (
	"forel/geometry"
	"forel/geometry/stage"
)

// Folding is a hung piece that is folded group by group. Of the leaves of a group that hang
// on each other one is turned after the other.
type Folding struct {
	Hung
	group, step []int // of each leaf; how many of its group it hangs on
}

// Folded is how far each group of leaves is folded, in degrees: 90 for each of its leaves
// that hang on each other.
type Folded [6]float64

// Grouped returns the piece with its leaves in groups, from 0; late is the first group that
// lies over the rest.
func (h Hung) Grouped(late int, group func(leaf int) int) Folding {
	f := Folding{Hung: h}
	for i := range h.Leaves {
		f.group = append(f.group, group(i))
	}
	for i := range h.Leaves {
		n := 0
		for on := h.Leaves[i].On; on >= 0 && h.Leaves[on].On >= 0; on = h.Leaves[on].On {
			if f.group[on] == f.group[i] {
				n++
			}
		}
		f.step = append(f.step, n)
	}
	f.Late = func(leaf int) bool { return f.group[leaf] >= late }
	return f
}

func (f Folding) angle(to Folded) Angle {
	return func(leaf int) float64 { return max(0, min(90, to[f.group[leaf]]-90*float64(f.step[leaf]))) }
}

// At returns the faces of the piece as it is folded so far; plain: it is not what the
// picture is about.
func (f Folding) At(to Folded, plain bool) []stage.Face { return f.Faces(f.angle(to), 1, plain) }

// Swings returns the arrows of parts of the piece, by the names of their regions, from one
// stage of the folding to another; of several of one name that of the topmost.
func (f Folding) Swings(from, to Folded, names ...string) (out []stage.Arrow) {
	for _, name := range names {
		a, ok := f.Swing(from, to, f.angle, nil, func(leaf int) float64 {
			if f.Leaves[leaf].On >= 0 && f.NameOf(leaf) == name {
				return geometry.Polygon(f.Leaves[leaf].Outline...).Bounds().Max.Y.MM()
			}
			return 0
		})
		if ok {
			out = append(out, a)
		}
	}
	return out
}
