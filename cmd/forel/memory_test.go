//go:build linux

package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Where a program may take too little memory, a run ends with one line before it begins,
// and leaves nothing; with enough it makes its files. (With less than 0.8 GiB, and with cgo
// 1.5 GiB, the Go runtime may not start at all.)
func TestLittleMemory(t *testing.T) {
	for _, c := range []struct {
		kib  int
		runs bool
	}{{2_000_000, false}, {2_600_000, false}, {2_700_000, true}} {
		t.Run(fmt.Sprint(c.kib), func(t *testing.T) {
			cmd := exec.Command("sh", "-c", fmt.Sprintf(`ulimit -v %d && exec "$0" templates --example`, c.kib), os.Args[0])
			cmd.Dir, cmd.Env = t.TempDir(), append(os.Environ(), asProgram+"=1")
			var says bytes.Buffer
			cmd.Stderr = &says
			err := cmd.Run()
			left, _ := os.ReadDir(cmd.Dir)
			if c.runs {
				require.NoError(t, err, says.String())
				assert.NotEmpty(t, left)
				return
			}
			assert.Equal(t, statusFailed, cmd.ProcessState.ExitCode())
			assert.Regexp(t, `^error: a program may take no more than [0-9.]+ GiB of memory here, and forel may need 2.5 GiB; raise the limit: ulimit -v unlimited\n$`, says.String())
			assert.Empty(t, left)
		})
	}
}
