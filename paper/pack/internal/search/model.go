// Package search finds layouts in whole numbers: pieces and sheets have the gap
// in their sizes already.
package search

import "slices"

// Item is a piece.
type Item struct {
	W, H int
	Turn bool
}

func (it *Item) area() float64 { return float64(it.W) * float64(it.H) }

// Kind is a kind of sheet.
type Kind struct {
	W, H  int
	Count int // 0: no limit
	Cost  float64
}

// Problem is what is to be laid out.
type Problem struct {
	Items []Item
	Kinds []Kind
	Free  bool // pieces may lie anywhere
}

// Bin is a sheet in use.
type Bin struct {
	Kind int
	sheet
}

func (p *Problem) bin(kind int) *Bin { return p.binOf(kind, p.Free) }

func (p *Problem) binOf(kind int, free bool) *Bin {
	b := &Bin{Kind: kind, sheet: &cutSheet{}}
	if free {
		b.sheet = &bedSheet{}
	}
	b.empty(p.Kinds[kind].W, p.Kinds[kind].H)
	return b
}

// Solution is a layout; Left are the items that found no sheet.
type Solution struct {
	Bins []*Bin
	Left []int
	Cost float64
}

func (p *Problem) clone(bins []*Bin) []*Bin {
	to := make([]*Bin, len(bins))
	for i, b := range bins {
		_, free := b.sheet.(*bedSheet)
		to[i] = p.binOf(b.Kind, free)
		to[i].copyFrom(b.sheet)
	}
	return to
}

func (p *Problem) fits(item, kind int) bool {
	it, k := p.Items[item], p.Kinds[kind]
	return it.W <= k.W && it.H <= k.H || it.Turn && it.H <= k.W && it.W <= k.H
}

var _ = slices.Delete[[]int]
