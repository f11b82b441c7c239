package search

// random is the generator xorshift64* (Marsaglia 2003, Vigna 2016): the same
// numbers for the same seed on every machine.
type random uint64

func newRandom(seed uint64) random {
	r := random(seed*0x9e3779b97f4a7c15 + 0x632be59bd9b4e019)
	if r == 0 {
		r = 1
	}
	for range 4 {
		r.next()
	}
	return r
}

func (r *random) next() uint64 {
	x := uint64(*r)
	x ^= x >> 12
	x ^= x << 25
	x ^= x >> 27
	*r = random(x)
	return x * 0x2545f4914f6cdd1d
}

// n returns a number from 0 to n-1.
func (r *random) n(n int) int { return int((r.next() >> 32) * uint64(n) >> 32) }

// f returns a number from 0 to under 1.
func (r *random) f() float64 { return float64(r.next()>>11) / (1 << 53) }
