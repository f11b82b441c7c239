// Package packtest is for tests: it tells whether a layout of package pack is sound. It takes the
// types of that package and none of its code: everything is worked out again
// from the rectangles alone.
package packtest

import (
	"errors"
	"fmt"
	"math"

	"forel/paper/pack"
)

// slack is how far a place may be off, in millimetres: lengths are whole
// multiples of an eighth of a micrometre in a layout, and those given
// need not be.
const slack = 0.0003

// box is a rectangle by its edges, in millimetres.
type box struct{ x0, y0, x1, y1 float64 }

func edges(b pack.Box) box {
	return box{b.X.MM(), b.Y.MM(), b.X.MM() + b.Width.MM(), b.Y.MM() + b.Height.MM()}
}

func (b box) w() float64 { return b.x1 - b.x0 }
func (b box) h() float64 { return b.y1 - b.y0 }

func same(a, b float64) bool { return math.Abs(a-b) <= slack }

func (b box) within(o box) bool {
	return b.x0 >= o.x0-slack && b.y0 >= o.y0-slack && b.x1 <= o.x1+slack && b.y1 <= o.y1+slack
}

// faults gathers what is wrong.
type faults []error

func (f *faults) add(format string, a ...any) { *f = append(*f, fmt.Errorf(format, a...)) }

// Verify returns the faults of a layout of a problem's items on its stock, nil if it
// is sound: every item once, or told as left, of its size, turned only where it may be,
// within a sheet, at least the gap from every other; no more sheets than there
// are. Of a guillotine layout the tree of cuts must yield the pieces where they lie, each cut
// from edge to edge, and nothing twice.
func Verify(l *pack.Layout, p pack.Problem) error {
	if l == nil {
		return errors.New("there is no layout")
	}
	items, stock := p.Items, p.Stock
	var f faults
	want := make([]int, len(items))
	for i := range want {
		want[i]++
	}
	for _, i := range l.Left {
		want[i]--
	}
	used := make([]int, len(stock))
	for i := range l.Sheets {
		s := &l.Sheets[i]
		if s.Stock < 0 || s.Stock >= len(stock) {
			f.add("sheet %d: there is no stock %d", i+1, s.Stock)
			continue
		}
		used[s.Stock]++
		v := sheet{faults: &f, at: i + 1, s: s, items: items, gap: p.Gap.MM()}
		v.verify(stock[s.Stock], want, p.Free)
	}
	for i, n := range used {
		if stock[i].Count > 0 && n > stock[i].Count {
			f.add("stock %d: %d sheets used of %d", i, n, stock[i].Count)
		}
	}
	for i, n := range want {
		if n > 0 {
			f.add("item %d is missing", i)
		} else if n < 0 {
			f.add("item %d lies there %d times too often", i, -n)
		}
	}
	return errors.Join(f...)
}
