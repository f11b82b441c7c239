package bench

import (
	"cmp"
	"fmt"
	"slices"
)

// finish numbers the pieces of every sheet as they are read, from the upper
// left, sorts what is left over by size and names what is worth keeping.
func (s *shop) finish() {
	pieceAt := make([]int, len(s.seen)) // by what was cut first: its place among the sheet's pieces
	bySheet := make([][]int, len(s.Sheets))
	for n, p := range s.seen {
		bySheet[p.sheet] = append(bySheet[p.sheet], n)
	}
	for i := range s.Sheets {
		here := bySheet[i]
		slices.SortStableFunc(here, func(a, b int) int {
			p, q := s.seen[a].box, s.seen[b].box
			if (p.Min.Y - q.Min.Y).Abs() > slack {
				return cmp.Compare(p.Min.Y, q.Min.Y)
			}
			return cmp.Compare(p.Min.X, q.Min.X)
		})
		for n, at := range here {
			pieceAt[at] = n
			s.Sheets[i].Pieces = append(s.Sheets[i].Pieces, s.placed(s.seen[at], n+1))
		}
	}
	s.countCopies()
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

// countCopies numbers the copies of a piece in the order of the sheets.
func (s *shop) countCopies() {
	type kind struct {
		job  int
		name string
	}
	seen := map[kind]int{}
	for i := range s.Sheets {
		for n := range s.Sheets[i].Pieces {
			p := &s.Sheets[i].Pieces[n]
			k := kind{p.Job, p.Name}
			seen[k]++
			p.Copy = seen[k]
		}
	}
}

// placed tells of a piece that was cut.
func (s *shop) placed(p placedItem, number int) Placed {
	it := s.items[p.item]
	out := Placed{
		Number: number, Job: it.job, Name: it.piece.Name, Of: it.piece.Count,
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
	index := make([]int, len(sh.Offcuts))
	for i := range index {
		index[i] = i
	}
	slices.SortStableFunc(index, func(a, b int) int {
		p, q := sh.Offcuts[a], sh.Offcuts[b]
		if p.Kept() != q.Kept() {
			return less(q.Kept(), p.Kept())
		}
		return cmp.Compare(area(q.Clean), area(p.Clean))
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
