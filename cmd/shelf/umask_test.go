//go:build unix

package shelf

import "syscall"

func umask(mask int) int { return syscall.Umask(mask) }
