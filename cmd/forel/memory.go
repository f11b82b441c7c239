package main

import "fmt"

// leastMemory is the address space that a run may need, most of it only set aside by the
// Go runtime: measured with a class of 100, 1.4 GiB, or with cgo 2.2 GiB.
const leastMemory = 2.5 * (1 << 30)

// enough tells why a run that may take no more address space than a limit would end in
// the middle, nil if it has enough.
func enough(limit uint64) error {
	if float64(limit) >= leastMemory {
		return nil
	}
	return fmt.Errorf("a program may take no more than %.2g GiB of memory here, and forel may need %.2g GiB; raise the limit: ulimit -v unlimited", float64(limit)/(1<<30), leastMemory/(1<<30))
}
