package jobfile

import (
	_ "embed"
	"slices"
)

//go:embed starter.toml
var starter []byte

// Starter gives a job file to begin with: an invented book, every key with its
// default, and what each means. It can be read as it is.
func Starter() []byte { return slices.Clone(starter) }
