package proof

import (
	"cmp"
	"math"
	"slices"

	"forel/geometry/foldup"
	"forel/geometry/polygon"
)

// ordered returns the layers of a face from the board up. Pieces lie in the order
// they are glued. Of one piece the part that hangs on more folds is folded
// first and lies beneath: a side flap under the spine flap, a side tab under
// the middle tab; of those that hang on equally many, the one that is turned first.
func ordered(f foldup.FaceReport) []foldup.Patch {
	rank := map[string]int{}
	for _, l := range f.Layers {
		if _, ok := rank[l.Piece]; !ok {
			rank[l.Piece] = len(rank)
		}
	}
	out := slices.Clone(f.Layers)
	slices.SortStableFunc(out, func(a, b foldup.Patch) int {
		return cmp.Or(cmp.Compare(rank[a.Piece], rank[b.Piece]), cmp.Compare(b.Order, a.Order), cmp.Compare(a.Turn, b.Turn))
	})
	return out
}

// cell is a part of a face on which the same layers lie.
type cell struct {
	shape polygon.Shape
	on    []int // indices of the layers, from the board up
}

// cellsOf parts a face by the layers on it.
func cellsOf(face polygon.Shape, layers []foldup.Patch) []cell {
	cells := []cell{{shape: face}}
	for i, l := range layers {
		var next []cell
		for _, c := range cells {
			if out := without(c.shape, l.Shape); len(out) > 0 {
				next = append(next, cell{out, c.on})
			}
			if in := meet(c.shape, l.Shape); len(in) > 0 {
				next = append(next, cell{in, append(slices.Clone(c.on), i)})
			}
		}
		cells = next
	}
	return cells
}

// percent writes a part in percent, to a tenth, never rounded up to the whole.
func percent(v float64) float64 {
	if v > 99.9 && v < 100 {
		return 99.9
	}
	return math.Round(v*10) / 10
}
