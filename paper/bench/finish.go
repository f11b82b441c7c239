package bench

import (
	"cmp"
	"fmt"
	"slices"
)

// finish numbers the pieces of every sheet as they are read, from the upper
// left, sorts what is left over by size and names what is worth keeping.
// Copies of a piece are numbered in the order of the sheets.
func (s *shop) finish() {
	order := numbers(len(s.seen))
	slices.SortStableFunc(order, func(a, b int) int {
		p, q := s.seen[a], s.seen[b]
		if p.sheet == q.sheet && (p.box.Min.Y-q.box.Min.Y).Abs() <= slack {
			return cmp.Compare(p.box.Min.X, q.box.Min.X)
		}
		return cmp.Or(cmp.Compare(p.sheet, q.sheet), cmp.Compare(p.box.Min.Y, q.box.Min.Y))
	})
	type kind struct {
		job  int
		name string
	}
	copies := map[kind]int{}
	pieceAt := make([]int, len(s.seen)) // of what was cut: its place among the sheet's pieces
	for _, n := range order {
		sh := &s.Sheets[s.seen[n].sheet]
		p := s.placed(s.seen[n])
		pieceAt[n], p.Number = len(sh.Pieces), len(sh.Pieces)+1
		copies[kind{p.Job, p.Name}]++
		p.Copy = copies[kind{p.Job, p.Name}]
		sh.Pieces = append(sh.Pieces, p)
	}
	offAt := make([][]int, len(s.Sheets))
	for i := range s.Sheets {
		offAt[i] = s.sortOffcuts(i)
	}
	for i := range s.Cuts {
		c := &s.Cuts[i]
		for _, r := range []*Result{&c.Takes, &c.Leaves} {
			switch r.Kind {
			case APiece:
				r.Piece = pieceAt[r.Piece]
			case AnOffcut, SomeWaste:
				r.Off = offAt[c.Sheet][r.Off]
			}
		}
	}
}

// numbers counts from 0.
func numbers(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// placed tells of a piece that was cut.
func (s *shop) placed(p placedItem) Placed {
	it := s.items[p.item]
	out := Placed{
		Job: it.job, Name: it.piece.Name, Of: it.piece.Count,
		Width: it.w, Height: it.h, Grain: it.piece.Grain, Box: p.box,
		Area:    float64(it.piece.Outline.SignedArea()),
		Turned:  !((p.box.Width()-it.w).Abs() <= slack && (p.box.Height()-it.h).Abs() <= slack),
		WidthBy: p.by[acrossX], HeightBy: p.by[acrossY], WidthCut: p.cut[acrossX], HeightCut: p.cut[acrossY],
	}
	if out.Turned {
		out.WidthBy, out.HeightBy = out.HeightBy, out.WidthBy
		out.WidthCut, out.HeightCut = out.HeightCut, out.WidthCut
	}
	return out
}

// sortOffcuts sorts and names what is left of a sheet and tells where each
// went.
func (s *shop) sortOffcuts(sheet int) []int {
	sh := &s.Sheets[sheet]
	index := numbers(len(sh.Offcuts))
	slices.SortStableFunc(index, func(a, b int) int {
		p, q := sh.Offcuts[a], sh.Offcuts[b]
		return cmp.Or(less(q.Kept(), p.Kept()), cmp.Compare(area(q.Clean), area(p.Clean)))
	})
	sorted, to, kept := make([]Offcut, len(index)), make([]int, len(index)), 0
	for n, i := range index {
		sorted[n], to[i] = sh.Offcuts[i], n
		if sorted[n].Kept() {
			kept++
			sorted[n].Name = fmt.Sprintf("%d.%d", sh.Number, kept)
		}
	}
	sh.Offcuts = sorted
	return to
}
