package main

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What isn't a terminal gets no bar; a terminal gets one that says what is done
// and takes itself away.
func TestProgress(t *testing.T) {
	var b bytes.Buffer
	quiet := voice{&b}.progress("laying out")
	quiet.at(0.5)
	quiet.Finish()
	assert.Empty(t, b.String())

	shown := newBar(&b, "laying out", true)
	shown.at(0.5)
	assert.Contains(t, b.String(), "laying out")
	shown.Finish()
	assert.NotContains(t, b.String(), "\n")
}
