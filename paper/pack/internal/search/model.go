// Package search finds layouts in whole numbers: pieces and sheets have the gap
// in their sizes already.
package search

import (
	"forel/paper/pack/internal/maxrects"
	"forel/paper/pack/internal/slicing"
)

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
	Roll  bool // H is more than enough: as little as can be is to be used
}

// Problem is what is to be laid out.
type Problem struct {
	Items []Item
	Kinds []Kind
	Free  bool // pieces may lie anywhere
	Step  int  // what all sides are multiples of, for a roll
}

// Bin is a sheet in use.
type Bin struct {
	Kind int
	sheet
	size int // its area
}

func (p *Problem) bin(kind int, free bool) *Bin {
	k := p.Kinds[kind]
	b := &Bin{Kind: kind, sheet: &cutSheet{}, size: k.W * k.H}
	if free {
		b.sheet = &freeSheet{}
	}
	b.Reset(k.W, k.H)
	return b
}

// Solution is a layout; Left are the items that found no sheet.
type Solution struct {
	Bins  []*Bin
	Left  []int32
	Cost  float64 // of a roll the length used, the gap past the last piece included
	Bound float64
}

// better tells whether s leaves less out than o, or costs less.
func (s *Solution) better(o *Solution) bool {
	if len(s.Left) != len(o.Left) {
		return len(s.Left) < len(o.Left)
	}
	return s.Cost < o.Cost
}

func (s *Solution) proved() bool { return len(s.Left) == 0 && s.Cost <= s.Bound*(1+1e-9) }

func (p *Problem) roll() bool { return len(p.Kinds) == 1 && p.Kinds[0].Roll }

// cost returns what sheets cost.
func (p *Problem) cost(bins []*Bin) float64 {
	c := 0.0
	for _, b := range bins {
		if p.Kinds[b.Kind].Roll {
			c += float64(b.Used())
		} else {
			c += p.Kinds[b.Kind].Cost
		}
	}
	return c
}

func (p *Problem) clone(bins []*Bin) []*Bin {
	to := make([]*Bin, len(bins))
	for i, b := range bins {
		_, free := b.sheet.(*freeSheet)
		to[i] = p.bin(b.Kind, free)
		to[i].copyFrom(b.sheet)
	}
	return to
}

func (p *Problem) fits(it *Item, kind int) bool {
	k := p.Kinds[kind]
	return it.W <= k.W && it.H <= k.H || it.Turn && it.H <= k.W && it.W <= k.H
}

// Tree returns a sheet's cuts, nil where pieces lie anywhere.
func (b *Bin) Tree() *slicing.Tree {
	if c, ok := b.sheet.(*cutSheet); ok {
		return &c.Tree
	}
	return nil
}

// Rects returns a sheet's places, nil where it is cut edge to edge.
func (b *Bin) Rects() *maxrects.Sheet {
	if c, ok := b.sheet.(*freeSheet); ok {
		return &c.Sheet
	}
	return nil
}

// Used returns how far along Y the pieces on a roll reach, which is cut edge to edge.
func (b *Bin) Used() int { return b.Tree().Length(0) }
