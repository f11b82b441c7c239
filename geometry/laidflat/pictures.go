package laidflat

import (
	"forel/geometry"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// The groups of a covering's folds, as it is turned in: over the edge of the board up to 90
// degrees, onto its inside up to 180.
const (
	HeadAndTail = iota
	Ends
)

// Hung returns the covering of the boards, under the name of an object. It must be one that
// was folded over them before.
func (b Boards) Hung(covering geometry.Piece, object string) draft.Folding {
	sheet, _ := b.Body().Hang(covering, 0)
	return draft.Hung{Sheet: sheet, Piece: covering, Object: object}.Grouped(Ends, func(leaf int) int {
		for ; sheet.Leaves[leaf].On >= 0; leaf = sheet.Leaves[leaf].On {
			if f := sheet.Leaves[leaf].Face; f == b.Left || f == b.Right {
				return Ends
			}
		}
		return HeadAndTail
	})
}

// Slabs returns the bare boards, moved up from where they lie on the covering, and a note
// at each.
func (b Boards) Slabs(up Length) (faces []stage.Face, notes []stage.Note) {
	for i, p := range b.All {
		faces = append(faces, draft.Slab(p.Name, b.From[i], 0, up, p.Wide, b.High, b.Thick, stage.Board)...)
		notes = append(notes, stage.Note{Name: stage.Words(p.Name), At: stage.Vec{X: b.From[i] + p.Wide/2, Y: b.High * 0.5, Z: up + b.Thick}})
	}
	return faces, notes
}
