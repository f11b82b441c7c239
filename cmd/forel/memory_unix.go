//go:build unix

package main

import "syscall"

// memory tells why there is too little memory to run, nil if there is enough.
func memory() error {
	var limit syscall.Rlimit
	if syscall.Getrlimit(syscall.RLIMIT_AS, &limit) != nil {
		return nil // it can't be known
	}
	return enough(uint64(limit.Cur))
}
