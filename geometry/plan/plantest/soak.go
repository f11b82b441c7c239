package plantest

import (
	"os"
	"strconv"
	"sync"
	"testing"
)

// Soak tells whether tests are to try all that they can, as make soak does, and not a part.
func Soak() bool {
	checks, _ := strconv.Atoi(os.Getenv("RAPID_CHECKS"))
	return checks >= 100
}

// Few returns all of some cases by their names, but with -short, as make test has it, those
// that are named as usual.
func Few[T any](all map[string]T, usual ...string) map[string]T {
	if !testing.Short() {
		return all
	}
	out := map[string]T{}
	for _, name := range usual {
		c, ok := all[name]
		if !ok {
			panic("no case " + strconv.Quote(name))
		}
		out[name] = c
	}
	return out
}

// Once returns a function that works out each thing once, for all tests of a package that
// ask for it: what it returns must not be changed.
func Once[K comparable, V any](work func(K) V) func(K) V {
	var guard sync.Mutex
	made := map[K]func() V{}
	return func(of K) V {
		guard.Lock()
		make, ok := made[of]
		if !ok {
			make = sync.OnceValue(func() V { return work(of) })
			made[of] = make
		}
		guard.Unlock()
		return make()
	}
}
