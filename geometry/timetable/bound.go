package timetable

import (
	"cmp"
	"slices"
)

// mostBounded is how many blocks are looked at one by one for the bound; of more the
// hands alone make it.
const mostBounded = 400

// lower returns a minute before which no order of work has the last case ready: no case is
// ready before it would be alone, and no hands have done what can't be begun before a time,
// and what must follow it, before they would with every opening filled.
func (s *search) lower() int {
	type op struct{ head, work, after, of, block int }
	var ops []op
	bound := s.calendar.from
	for i, all := range s.cases {
		at := s.calendar.from
		for k, b := range all {
			at = s.calendar.fit(at, b.work)
			ops = append(ops, op{at, b.work, b.after, i, k})
			at += b.work + b.dry
		}
		bound = max(bound, at)
	}
	slices.SortStableFunc(ops, func(a, b op) int { return cmp.Compare(b.after, a.after) })
	heads := []int{s.calendar.from}
	if len(ops) <= mostBounded {
		for _, o := range ops {
			heads = append(heads, o.head)
		}
		slices.Sort(heads)
		heads = slices.Compact(heads)
	}
	for _, head := range heads {
		sum := 0
		for i, o := range ops {
			if o.head < head {
				continue
			}
			sum += o.work
			if i+1 < len(ops) && ops[i+1].after == o.after {
				continue // one more of the same
			}
			// One of these is the last, and the least that follows is what follows this one.
			bound = max(bound, s.calendar.full(head, sum)+o.after)
		}
	}
	return s.ends(bound)
}

// ends returns when the last case can be ready at the earliest that is not ready before a
// minute: where each case ends with work, that is when the bench is open.
func (s *search) ends(minute int) int {
	least := minutesADay
	for _, all := range s.cases {
		if len(all) == 0 || all[len(all)-1].dry > 0 {
			return minute
		}
		least = min(least, all[len(all)-1].work)
	}
	if least == 0 || least > minute {
		return minute
	}
	return max(minute, s.calendar.fit(minute-least, least)+least)
}
