package plantest

import (
	"os"
	"strconv"
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
