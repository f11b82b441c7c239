// Package search finds layouts in whole numbers: pieces and sheets have the gap
// in their sizes already.
package search

import "forel/paper/pack/internal/slice"

// Item is a piece.
type Item struct {
	W, H int
	Turn bool
}

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
}

// Bin is a sheet in use.
type Bin struct {
	Kind int
	Tree slice.Tree
}

// Solution is a layout; Left are the items that found no sheet.
type Solution struct {
	Bins []*Bin
	Left []int
	Cost float64
}

func (p *Problem) fits(item, kind int) bool {
	it, k := p.Items[item], p.Kinds[kind]
	return it.W <= k.W && it.H <= k.H || it.Turn && it.H <= k.W && it.W <= k.H
}
