package main

import (
	"io"
	"os"
	"time"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"
)

// bar shows how far a long search has come.
type bar struct{ *progressbar.ProgressBar }

// progress starts a bar on standard error, which is seen where that is a terminal, and only
// when the work takes longer than a moment. Finish takes it away.
func (v voice) progress(what string) bar {
	f, ok := v.w.(*os.File)
	return newBar(v.w, what, ok && term.IsTerminal(int(f.Fd())))
}

const barSteps = 1000

func newBar(w io.Writer, what string, seen bool) bar {
	return bar{progressbar.NewOptions(barSteps, progressbar.OptionSetVisibility(seen),
		progressbar.OptionSetWriter(w), progressbar.OptionSetDescription(what), progressbar.OptionThrottle(100*time.Millisecond),
		progressbar.OptionSetPredictTime(true), progressbar.OptionClearOnFinish())}
}

// at shows how much of the work is done, from 0 to 1.
func (b bar) at(fraction float64) {
	b.Set(int(fraction * barSteps)) // what a terminal does not show is no loss
}
