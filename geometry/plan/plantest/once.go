package plantest

import (
	"fmt"
	"sync"
)

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

// Must is a test for what is worked out outside of one: what fails ends the program.
type Must struct{}

// Errorf panics with what failed.
func (Must) Errorf(format string, args ...any) { panic(fmt.Sprintf(format, args...)) }

// FailNow is never come to.
func (Must) FailNow() {}
