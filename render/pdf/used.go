package pdf

import "slices"

// used is a set of characters, small for those that texts are mostly made of:
// every page has two.
type used struct {
	low  [10]uint64 // by bit, those below 640
	rest map[rune]bool
}

func (u *used) add(r rune) {
	if r >= 0 && int(r) < 64*len(u.low) {
		u.low[r/64] |= 1 << (r % 64)
		return
	}
	if u.rest == nil {
		u.rest = map[rune]bool{}
	}
	u.rest[r] = true
}

func (u *used) addAll(o used) {
	for i, bits := range o.low {
		u.low[i] |= bits
	}
	for r := range o.rest {
		u.add(r)
	}
}

// runes gives the characters in their order.
func (u *used) runes() []rune {
	var all []rune
	for r := range rune(64 * len(u.low)) {
		if u.low[r/64]&(1<<(r%64)) != 0 {
			all = append(all, r)
		}
	}
	for r := range u.rest {
		all = append(all, r)
	}
	slices.Sort(all)
	return all
}
