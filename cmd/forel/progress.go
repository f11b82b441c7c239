package main

import (
	"io"
	"os"
	"time"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"
)

// bar shows how far a long search has come; a nil one shows nothing.
type bar struct{ bar *progressbar.ProgressBar }

// progress starts a bar on standard error where that is a terminal. It is seen
// only when the work takes longer than a moment, and goes away when it is done.
func (v voice) progress(what string) *bar {
	f, ok := v.w.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return nil
	}
	return newBar(f, what)
}

const barSteps = 1000

func newBar(w io.Writer, what string) *bar {
	return &bar{progressbar.NewOptions(barSteps,
		progressbar.OptionSetWriter(w), progressbar.OptionSetDescription(what), progressbar.OptionThrottle(100*time.Millisecond),
		progressbar.OptionSetPredictTime(true), progressbar.OptionClearOnFinish())}
}

// at shows how much of the work is done, from 0 to 1.
func (b *bar) at(fraction float64) {
	if b != nil {
		b.bar.Set(int(fraction * barSteps)) // what a terminal does not show is no loss
	}
}

// done takes the bar away.
func (b *bar) done() {
	if b != nil {
		b.bar.Finish()
	}
}
