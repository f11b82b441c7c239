//go:build linux || darwin

package shelf

import (
	"bytes"
	"os"
	"syscall"

	"golang.org/x/sys/unix"
)

// alike tells whether nobody but its maker can tell one folder from the other: they
// have the same owner, group and names of extended attributes, and the same rights.
func alike(a, b string) bool {
	is, err := os.Stat(a)
	if err != nil {
		return false
	}
	other, err := os.Stat(b)
	if err != nil || is.Mode() != other.Mode() {
		return false
	}
	s, t := is.Sys().(*syscall.Stat_t), other.Sys().(*syscall.Stat_t)
	return s.Uid == t.Uid && s.Gid == t.Gid && bytes.Equal(attributes(a), attributes(b))
}

// attributes returns the names of a folder's extended attributes, such as that of an
// access control list.
func attributes(path string) []byte {
	var names [4096]byte
	n, err := unix.Listxattr(path, names[:])
	if err != nil {
		return nil
	}
	return names[:n]
}
