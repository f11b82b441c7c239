package timetable

import (
	"cmp"
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"time"
)

// Timetable tells what is done when.
type Timetable struct {
	Cases    []Case
	Entries  []Entry   // in order of time
	Ready    []Ready   // of each case
	Earliest time.Time // before which no order of work has the last case ready
	Hours    Hours
}

// Entry is a block of work of a case at its time.
type Entry struct {
	Case, Block int // their indexes
	From, To    time.Time
	Dry         time.Time // when it has dried; zero where nothing must
}

// Ready tells when a case is.
type Ready struct {
	Done time.Time // when it is made and dry
	Over time.Time // when it can be handed over: the bench is open
}

// Last returns when the last case is ready.
func (t Timetable) Last() (last time.Time) {
	for _, r := range t.Ready {
		if r.Done.After(last) {
			last = r.Done
		}
	}
	return last
}

// Limits of a timetable.
const (
	mostEntries = 500_000
	lastDay     = 9999
)

// The reasons why there is no timetable.
var (
	ErrTooMuch = errors.New("too much work for a timetable")
	ErrTooFar  = errors.New("the work goes on for thousands of years")
)

// Make makes the timetable of cases from a start on. Of one case no other is ready
// earlier. Of several, it is the best of a number of tries: each takes, of the work that
// could be begun next, that whose case has longest to go. A context that ends early ends
// the tries.
func Make(ctx context.Context, cases []Case, h Hours, start time.Time) (Timetable, error) {
	c := newCalendar(h, start)
	t := Timetable{Hours: h}
	entries := 0
	for _, one := range cases {
		if one.Work() > mostEntries*leastOpen {
			return t, ErrTooMuch
		}
		one = one.parted(h.longest())
		if entries += len(one.Blocks); entries > mostEntries {
			return t, ErrTooMuch
		}
		t.Cases = append(t.Cases, one)
	}
	s := newSearch(c, t.Cases)
	if c.time(s.bound).Year() > lastDay-1 {
		return t, ErrTooFar
	}
	best := s.best(ctx)
	if c.time(best.last).Year() > lastDay-1 {
		return t, ErrTooFar
	}
	t.Earliest = c.time(s.bound)
	for _, d := range best.done {
		t.Ready = append(t.Ready, Ready{c.time(d), c.time(c.over(d))})
	}
	for _, e := range best.entries {
		b := t.Cases[e.of].Blocks[e.block]
		entry := Entry{Case: e.of, Block: e.block, From: c.time(e.from), To: c.time(e.from + b.Work())}
		if b.Dry > 0 {
			entry.Dry = entry.To.Add(time.Duration(b.Dry) * time.Minute)
		}
		t.Entries = append(t.Entries, entry)
	}
	return t, nil
}

// block is work as the search sees it, in minutes.
type block struct {
	work, dry int
	after     int // what is to go when it is done, hours of the bench apart
	first     int // a number for what it begins with, and for what it ends with: alike in alike work
	end       int
}

// search looks for the order of work.
type search struct {
	calendar *calendar
	cases    [][]block
	total    int // blocks
	longest  int // to go, when its first block is done
	bound    int
}

// try is an order of work.
type try struct {
	entries []placed
	done    []int // of each case
	last    int   // the latest of them
	changes int   // how often other work is begun than was done before
	sum     int   // of all in done
}

type placed struct{ of, block, from int }

func newSearch(c *calendar, cases []Case) *search {
	s := &search{calendar: c}
	numbers := map[string]int{}
	numbered := func(title string) int {
		if _, ok := numbers[title]; !ok {
			numbers[title] = len(numbers)
		}
		return numbers[title]
	}
	for _, one := range cases {
		all := make([]block, len(one.Blocks))
		after := 0
		for i := len(all) - 1; i >= 0; i-- {
			b := one.Blocks[i]
			after += b.Dry
			all[i] = block{b.Work(), b.Dry, after, numbered(b.Parts[0].Title), numbered(b.Parts[len(b.Parts)-1].Title)}
			after += all[i].work
		}
		if len(all) > 0 {
			s.longest = max(s.longest, all[0].after)
		}
		s.cases = append(s.cases, all)
		s.total += len(all)
	}
	s.bound = s.lower()
	return s
}

// effort is about how many blocks are looked at in all tries together.
const effort = 20_000_000

// mostTries is how many are made at most.
const mostTries = 400

// rule is how a try chooses among work that could be begun: by what is to go after it, by
// a number drawn, and by whether it is what was done just before, of another case.
type rule struct {
	draw, alike float64 // in parts of the longest to go
	waits       bool    // it may wait for work that is more urgent
}

// rules are tried one after the other, and again with other numbers.
var rules = []rule{
	{0, 0, false}, {0, 0, true}, {0, 1, false}, {0, 1, true}, {0, 10, false}, {0, 10, true},
	{0.1, 0, false}, {0.1, 0, true}, {0.1, 1, false}, {0.3, 0, true}, {0.3, 1, false}, {1, 0, true}, {1, 10, false}, {3, 0, true}, {3, 0, false}, {3, 10, true},
}

// best returns the best of some tries: the one with the last case ready first, then the one
// with the fewest changes from one work to another.
func (s *search) best(ctx context.Context) (best try) {
	draw := rand.New(rand.NewPCG(1, 2)) // the same each time
	tries := min(mostTries, 1+effort/max(1, s.total*len(s.cases)))
	if len(s.cases) == 1 {
		tries = 1
	}
	for n := range tries {
		t := s.place(rules[n%len(rules)], draw)
		if n == 0 || cmp.Or(cmp.Compare(t.last, best.last), cmp.Compare(t.changes, best.changes), cmp.Compare(t.sum, best.sum)) < 0 {
			best = t
		}
		if ctx.Err() != nil {
			break
		}
	}
	return best
}

// place makes one try. Where waits is set, work that can begin a little later may come
// before work that could begin now but would be in its way (Giffler and Thompson 1960, from
// memory: one of these orders is best).
func (s *search) place(r rule, draw *rand.Rand) try {
	urgent := func(b block) float64 {
		key := float64(b.after)
		if r.draw > 0 {
			key += r.draw * float64(s.longest) * draw.Float64()
		}
		return key
	}
	alike := r.alike * float64(s.longest)
	type state struct {
		block               // that is next
		of, next, ready int // from when on it can be worked at
		at              int // when it can begin, the hands' time thought of
		key             float64
	}
	t := try{done: make([]int, len(s.cases))}
	open := make([]state, 0, len(s.cases))
	for i, all := range s.cases {
		t.done[i] = s.calendar.from
		if len(all) > 0 {
			open = append(open, state{block: all[0], of: i, ready: s.calendar.from, at: -1, key: urgent(all[0])})
		}
	}
	hands, did := s.calendar.from, -1
	for len(open) > 0 {
		first, soonest := -1, math.MaxInt
		for i := range open {
			o := &open[i]
			if at := max(hands, o.ready); o.at < at {
				o.at = s.calendar.fit(at, o.work)
			}
			limit := o.at
			if r.waits {
				limit += o.work
			}
			if limit < soonest {
				first, soonest = i, limit
			}
		}
		best := math.Inf(-1)
		for i := range open {
			o := &open[i]
			if o.at > soonest || r.waits && o.at == soonest && i != first {
				continue
			}
			key := o.key
			if o.block.first == did {
				key += alike
			}
			if key > best || key == best && o.of < open[first].of {
				first, best = i, key
			}
		}
		o := &open[first]
		t.entries = append(t.entries, placed{o.of, o.next, o.at})
		if o.block.first != did {
			t.changes++
		}
		hands, did = o.at+o.work, o.end
		o.ready, o.at = hands+o.dry, -1
		t.done[o.of] = o.ready
		if o.next++; o.next == len(s.cases[o.of]) {
			open = slices.Delete(open, first, first+1)
		} else {
			o.block = s.cases[o.of][o.next]
			o.key = urgent(o.block)
		}
	}
	for _, d := range t.done {
		t.last, t.sum = max(t.last, d), t.sum+d
	}
	return t
}
