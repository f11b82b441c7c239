package pack

import (
	"context"
	"fmt"
	"math"
	"sort"

	"forel/geometry"
	"forel/paper/pack/internal/search"
	"forel/paper/pack/internal/slice"
)

// unit is what lengths are whole multiples of.
const unit Length = 0.000125

func whole(l Length) int  { return int(math.Round(float64(l / unit))) }
func length(n int) Length { return Length(n) / 8000 }

// Solve lays the items out. The error is an *InputError that names every fault,
// or a *ShortError, beside which there is a layout of what went in.
func Solve(ctx context.Context, p Problem, e Effort) (*Layout, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	m := newModel(&p)
	s := m.in.First()
	l := m.layout(s)
	if len(s.Left) > 0 {
		err := &ShortError{Of: len(p.Items)}
		for _, item := range s.Left {
			err.Left = append(err.Left, m.members[item]...)
		}
		sort.Ints(err.Left)
		err.describe(&p)
		return l, err
	}
	return l, nil
}

// model is a problem in whole numbers, and the way back.
type model struct {
	p       *Problem
	gap     int
	in      search.Problem
	members [][]int // of each item there, the items of p that it stands for
}

func newModel(p *Problem) *model {
	m := &model{p: p, gap: whole(p.Gap)}
	for i, it := range p.Items {
		m.in.Items = append(m.in.Items, search.Item{W: whole(it.Width) + m.gap, H: whole(it.Height) + m.gap, Turn: it.Turn})
		m.members = append(m.members, []int{i})
	}
	costless := true
	for _, s := range p.Stock {
		costless = costless && s.Cost == 0
	}
	for _, s := range p.Stock {
		k := search.Kind{
			W:     whole(s.Width) - whole(s.Trim.Left) - whole(s.Trim.Right) + m.gap,
			H:     whole(s.Height) - whole(s.Trim.Top) - whole(s.Trim.Bottom) + m.gap,
			Count: s.Count, Cost: s.Cost,
		}
		if costless {
			k.Cost = float64(s.Width) * float64(s.Height) / 1e6
		}
		if s.Roll && s.Height == 0 {
			k.Count, k.H = 1, m.gap
			for _, it := range m.in.Items {
				k.H += max(it.W, it.H)
			}
		}
		m.in.Kinds = append(m.in.Kinds, k)
	}
	return m
}

func (m *model) layout(s *search.Solution) *Layout {
	l := &Layout{Mode: m.p.Mode, Gap: m.p.Gap}
	for _, b := range s.Bins {
		st := m.p.Stock[b.Kind]
		sh := Sheet{Stock: b.Kind, Width: st.Width, Height: st.Height}
		w := &writer{model: m, sheet: &sh, tree: &b.Tree}
		k := m.in.Kinds[b.Kind]
		root := w.part(0, whole(st.Trim.Left), whole(st.Trim.Top), k.W-m.gap, k.H-m.gap)
		if st.Roll {
			end := Length(0)
			for _, pl := range sh.Places {
				end = max(end, pl.Y+pl.Height)
			}
			sh.Height = length(whole(end) + whole(st.Trim.Bottom))
			shorten(&root, end)
			l.Value += sh.Height.MM()
		}
		if m.p.Mode == Guillotine {
			sh.Cuts = &root
		}
		sh.Offcuts = offcuts(&root, nil)
		sort.SliceStable(sh.Offcuts, func(a, b int) bool { return sh.Offcuts[a].Area() > sh.Offcuts[b].Area() })
		l.Sheets = append(l.Sheets, sh)
	}
	switch {
	case len(m.p.Stock) == 1 && m.p.Stock[0].Roll:
	case len(m.p.Stock) == 1:
		l.Value = float64(len(l.Sheets))
	default:
		l.Value = s.Cost
	}
	return l
}

func offcuts(p *Part, to []Box) []Box {
	if p.Offcut() {
		return append(to, p.Box)
	}
	for i := range p.Parts {
		to = offcuts(&p.Parts[i], to)
	}
	return to
}

// shorten ends a part at y, below which it has no piece.
func shorten(p *Part, y Length) {
	if p.Y+p.Height <= y {
		return
	}
	p.Height = length(whole(y) - whole(p.Y))
	kept := p.Parts[:0]
	for _, c := range p.Parts {
		if c.Y < y {
			shorten(&c, y)
			kept = append(kept, c)
		}
	}
	p.Parts = kept
	if len(kept) == 1 && kept[0].Box == p.Box {
		*p = kept[0]
	}
}

type writer struct {
	*model
	sheet *Sheet
	tree  *slice.Tree
}

// part writes a node at x, y, of w by h without the gap past it. Pieces come
// before parts before what is free, larger first.
func (wr *writer) part(n int32, x, y, w, h int) Part {
	node := wr.tree.N[n]
	p := Part{Box: Box{length(x), length(y), length(w), length(h)}, Item: -1}
	switch {
	case node.Item >= 0:
		p.Item = int(node.Item)
		it := wr.p.Items[p.Item]
		turned := wr.in.Items[node.Item].W != node.W || wr.in.Items[node.Item].H != node.H
		wr.sheet.Places = append(wr.sheet.Places, Place{Item: p.Item, Box: p.Box, Turned: turned && it.Turn})
	case node.Item == slice.Inner:
		var parts []int32
		wr.tree.Parts(n, func(c int32) { parts = append(parts, c) })
		size := func(c int32) int {
			if node.Dir == slice.X {
				return wr.tree.N[c].W
			}
			return wr.tree.N[c].H
		}
		open := func(c int32) bool { return wr.tree.N[c].Item == slice.Open }
		sort.SliceStable(parts, func(a, b int) bool {
			if open(parts[a]) != open(parts[b]) {
				return open(parts[b])
			}
			return size(parts[a]) > size(parts[b])
		})
		p.Cut = AlongY
		if node.Dir == slice.Y {
			p.Cut = AlongX
		}
		for _, c := range parts {
			d := size(c)
			if d > wr.gap || !open(c) {
				if node.Dir == slice.X {
					p.Parts = append(p.Parts, wr.part(c, x, y, d-wr.gap, h))
				} else {
					p.Parts = append(p.Parts, wr.part(c, x, y, w, d-wr.gap))
				}
			}
			if node.Dir == slice.X {
				x += d
			} else {
				y += d
			}
		}
	}
	return p
}

// check gives every fault of the input.
func (p *Problem) check() error {
	var faults []string
	bad := func(format string, a ...any) { faults = append(faults, fmt.Sprintf(format, a...)) }
	if !(p.Gap >= 0) {
		bad("a gap of %.6g mm; give 0 or more", p.Gap.MM())
	}
	if len(p.Stock) == 0 {
		bad("no stock; give at least one kind of sheet")
	}
	var sheets string
	for i, s := range p.Stock {
		name := s.Name
		if name == "" {
			name = fmt.Sprintf("stock %d", i+1)
		}
		size := fmt.Sprintf("%s (%.6g x %.6g mm)", name, s.Width.MM(), s.Height.MM())
		if s.Roll && s.Height == 0 {
			size = fmt.Sprintf("%s (a roll %.6g mm wide)", name, s.Width.MM())
		}
		if sheets != "" {
			sheets += ", "
		}
		sheets += size
		if !(s.Width > 0) || !(s.Height > 0 || s.Roll && s.Height == 0) {
			bad("%s: sides must be over 0", size)
		}
		if !(s.Trim.Left >= 0 && s.Trim.Right >= 0 && s.Trim.Top >= 0 && s.Trim.Bottom >= 0) {
			bad("%s: a trim is under 0", size)
		} else if s.Trim.Left+s.Trim.Right >= s.Width || s.Height > 0 && s.Trim.Top+s.Trim.Bottom >= s.Height {
			bad("%s: the trim leaves nothing", size)
		}
		if s.Count < 0 || !(s.Cost >= 0) {
			bad("%s: count and cost must be 0 or more", size)
		}
		if s.Roll && len(p.Stock) > 1 {
			bad("%s: a roll can't be mixed with other stock", size)
		}
	}
	for i, it := range p.Items {
		if !(it.Width > 0 && it.Height > 0) {
			bad("%s: sides must be over 0", p.name(i))
			continue
		}
		fits := len(p.Stock) == 0
		for _, s := range p.Stock {
			w := whole(s.Width) - whole(s.Trim.Left) - whole(s.Trim.Right)
			h := whole(s.Height) - whole(s.Trim.Top) - whole(s.Trim.Bottom)
			if s.Roll && s.Height == 0 {
				h = math.MaxInt
			}
			iw, ih := whole(it.Width), whole(it.Height)
			fits = fits || iw <= w && ih <= h || it.Turn && ih <= w && iw <= h
		}
		if !fits {
			bad("%s fits none of the sheets within their trim: %s", p.name(i), sheets)
		}
	}
	if faults != nil {
		return &InputError{faults}
	}
	return nil
}

var _ = geometry.Millimetre
