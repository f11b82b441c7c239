package search

import (
	"math/rand/v2"
	"slices"
)

// state is a set of sheets, which stays, and the items that are not on them.
// The search takes some items off and lays them and those left out again, better
// each time by a little or, for a while, worse. After Gardeyn and Wauters
// (2022), "A goal-driven ruin and recreate heuristic for the 2D
// variable-sized bin packing problem with guillotine constraints".
type state struct {
	p     *Problem
	bins  []*Bin
	value []float64 // of each bin's free room
	out   []int32
	rnd   *rand.Rand
	q     quest

	outArea  float64
	room     float64 // sum of value
	polish   bool    // everything is laid and stays so: mind settings and offcuts
	set      []int   // settings of each bin
	settings int     // their sum
	late     []float64
	at       int
	steps    int // since start

	saved   []*Bin // as they were before this step; nil where not touched
	touched []int
	spare   []*Bin
	oldOut  []int32
	key     []float64
	full    float64
}

func newState(p *Problem, seed uint64) *state {
	s := &state{p: p, rnd: rand.New(rand.NewPCG(seed, 1)), key: make([]float64, len(p.Items))}
	s.q.rnd = s.rnd
	s.q.wink = 1
	return s
}

func (s *state) start(bins []*Bin, out []int32) {
	s.bins, s.out = bins, out
	s.spare = s.spare[:0]
	s.saved = make([]*Bin, len(bins))
	s.value = make([]float64, len(bins))
	s.touched = s.touched[:0]
	s.full = 0
	for _, b := range bins {
		s.full = max(s.full, float64(b.size))
	}
	s.set = make([]int, len(bins))
	s.room, s.settings = 0, 0
	for i, b := range bins {
		s.value[i] = b.worth(s.full)
		s.room += s.value[i]
		s.set[i] = b.settings()
		s.settings += s.set[i]
	}
	s.outArea = s.areaOut()
	s.late, s.at, s.steps = s.late[:0], 0, 0
	for range lateSize {
		s.late = append(s.late, s.cost())
	}
}

// What the steps go by: found by trial on the published instances.
const (
	lateSize = 50   // costs remembered at first: a step may be as bad as one of them
	lateMost = 400  // and at most
	lateGrow = 200  // rounds of the memory until it doubles
	roomRate = 0.05 // of a sheet's area left out against its room in one piece
	blink    = 50   // places of which one is overlooked
	maxNodes = 3    // of one sheet taken out at once
	maxBins  = 2    // sheets to take from
	noise    = 0.5  // in the order of laying
)

func (s *state) areaOut() float64 {
	a := 0.0
	for _, i := range s.out {
		a += s.p.Items[i].area()
	}
	return a / s.full
}

func (s *state) cost() float64 {
	if s.polish {
		return float64(s.settings) - 0.9*s.room/float64(len(s.bins))
	}
	return s.outArea - roomRate*s.room
}

func (s *state) touch(bin int) {
	if s.saved[bin] != nil {
		return
	}
	var c *Bin
	if k := len(s.spare); k > 0 {
		c, s.spare = s.spare[k-1], s.spare[:k-1]
	} else {
		_, free := s.bins[bin].sheet.(*freeSheet)
		c = s.p.bin(s.bins[bin].Kind, free)
	}
	c.Kind, c.size = s.bins[bin].Kind, s.bins[bin].size
	c.copyFrom(s.bins[bin].sheet)
	s.saved[bin] = c
	s.touched = append(s.touched, bin)
}

// ruin takes some parts out of some bins.
func (s *state) ruin() {
	for range 1 + s.rnd.IntN(min(maxBins, len(s.bins))) {
		b := s.rnd.IntN(len(s.bins))
		if s.bins[b].used() == 0 {
			continue
		}
		s.touch(b)
		s.out = s.bins[b].ruin(s.rnd, maxNodes, s.out)
	}
}

// recreate lays what is out, as far as it goes.
func (s *state) recreate() {
	key := keys[s.rnd.IntN(4)]
	for _, i := range s.out {
		s.key[i] = key(s.p.Items[i]) * (1 + noise*(s.rnd.Float64()-0.5))
	}
	slices.SortFunc(s.out, func(a, b int32) int {
		switch {
		case s.key[a] > s.key[b]:
			return -1
		case s.key[a] < s.key[b]:
			return 1
		}
		return int(a - b)
	})
	s.q.rule = 0
	if s.polish && s.rnd.IntN(2) == 0 {
		s.q.rule = anyWay
	}
	if s.bins[0].Rects() != nil {
		s.q.rule, s.q.corner = s.rnd.IntN(3), s.rnd.IntN(4)
	}
	left := s.out[:0]
	for _, i := range s.out {
		if !s.lay(i) {
			left = append(left, i)
		}
	}
	s.out = left
}

// lay puts an item in its best place, and tells whether there is one.
func (s *state) lay(i int32) bool {
	it := &s.p.Items[i]
	refused := -1
	for range 3 {
		s.q.begin()
		for b, bin := range s.bins {
			if b != refused {
				bin.offer(&s.q, b, it)
			}
		}
		if !s.q.found() {
			return false
		}
		s.touch(s.q.bin)
		s.bins[s.q.bin].lay(s.q.place, i, it)
		if s.p.Free || s.bins[s.q.bin].apart() {
			return true
		}
		refused = s.q.bin
	}
	return false
}

// offer offers the places for an item in a bin, which is number b.
func (bin *Bin) offer(q *quest, b int, it *Item) {
	if bin.used()+it.W*it.H > bin.size {
		return
	}
	bin.scan(q, b, float64(it.W), float64(it.H), false)
	if it.Turn && it.W != it.H {
		bin.scan(q, b, float64(it.H), float64(it.W), true)
	}
}

// lay puts an item where it was found to fit.
func (b *Bin) lay(at place, i int32, it *Item) {
	w, h := it.W, it.H
	if at.turn {
		w, h = h, w
	}
	b.Insert(at.node, i, w, h, at.how)
}

// step does one round and tells whether it changed anything.
func (s *state) step() bool {
	before, room, outArea, settings := s.cost(), s.room, s.outArea, s.settings
	s.oldOut = append(s.oldOut[:0], s.out...)
	s.ruin()
	s.recreate()
	s.outArea = s.areaOut()
	for _, b := range s.touched {
		s.room += s.bins[b].worth(s.full) - s.value[b]
		if s.polish {
			s.settings += s.bins[b].settings() - s.set[b]
		}
	}
	now := s.cost()
	at := s.at
	if s.at++; s.at == len(s.late) {
		s.at = 0
		if n := len(s.late); n < lateMost && s.steps > lateGrow*n {
			s.late = append(s.late, s.late...)
		}
	}
	l := &s.late[at]
	s.steps++
	ok := now <= before || now <= *l
	if s.polish {
		ok = ok && len(s.out) == 0
	} else {
		ok = ok || len(s.out) == 0
	}
	for _, b := range s.touched {
		if ok {
			s.value[b] = s.bins[b].worth(s.full)
			if s.polish {
				s.set[b] = s.bins[b].settings()
			}
			s.spare = append(s.spare, s.saved[b])
		} else {
			s.spare = append(s.spare, s.bins[b])
			s.bins[b] = s.saved[b]
		}
		s.saved[b] = nil
	}
	s.touched = s.touched[:0]
	if ok {
		*l = min(*l, now)
		return true
	}
	s.room, s.outArea, s.settings = room, outArea, settings
	s.out = append(s.out[:0], s.oldOut...)
	*l = min(*l, before)
	return false
}
