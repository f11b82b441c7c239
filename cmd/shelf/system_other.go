//go:build !linux && !darwin

package shelf

import "errors"

// swaps tells whether two folders can change places at once.
const swaps = false

func exchange(a, b string) error { return errors.ErrUnsupported }

func alike(a, b string) bool { return false }
