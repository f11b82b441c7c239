package main

import (
	"context"
	"slices"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"

	"forel/cmd/page"
)

// Every flag of a command that the page has too is a setting there, or stands for a key of
// the job file, or is of no use to it: it has no folders, and reads one file.
func TestThePageHasEveryFlag(t *testing.T) {
	elsewhere := []string{"height", "width", "thickness", "title", "units", "board-known", "paper", "black", "swell", "set", "example", "out", "shop", "printer", "job", "undo", "cutter", "weight"}
	outputs := new(page.Desk).Answer(context.Background(), page.Request{Do: "outputs"}, nil).Outputs
	seen := 0
	for _, d := range describe() {
		i := slices.IndexFunc(outputs, func(o page.Output) bool { return o.Name == d.name })
		if i < 0 {
			continue
		}
		seen++
		d.flags.VisitAll(func(f *pflag.Flag) {
			there := slices.ContainsFunc(outputs[i].Settings, func(s page.Setting) bool { return s.Name == f.Name })
			assert.True(t, there || slices.Contains(elsewhere, f.Name), "%s --%s", d.name, f.Name)
		})
	}
	assert.Equal(t, len(outputs), seen)
}
