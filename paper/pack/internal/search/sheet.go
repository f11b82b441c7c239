package search

import (
	"math"
	"math/rand/v2"
)

// sheet is what a layout is made on: cut edge to edge, or freely.
type sheet interface {
	Reset(w, h int) // empties it
	copyFrom(sheet)
	used() int                                         // area of the pieces
	scan(q *quest, bin int, w, h float64, turned bool) // offer places to q
	Insert(node, item int32, w, h int, how int8)
	ruin(r *rand.Rand, most int, out []int32) []int32 // take some pieces out
	items(out []int32) []int32
	worth(full float64) float64 // of the free room: more for large rectangles
	settings() int              // of the fence, as far as there is one
}

// place is where a piece would go.
type place struct {
	bin   int
	node  int32
	turn  bool
	how   int8
	score float64
}

// quest looks for the place with the least score, and overlooks one in some.
type quest struct {
	place
	rule, corner int
	wink         int // places until one is overlooked, if over 0
	rnd          *rand.Rand
}

func (q *quest) begin() { q.score = math.Inf(1) }

func (q *quest) found() bool { return !math.IsInf(q.score, 1) }

func (q *quest) overlook() bool {
	if q.wink--; q.wink != 0 {
		return false
	}
	q.wink = q.rnd.IntN(2*blink) + 1
	return true
}
