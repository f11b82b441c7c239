package search

import (
	"os"
	"strconv"
)

func envF(k string, p *float64) {
	if v, err := strconv.ParseFloat(os.Getenv(k), 64); err == nil {
		*p = v
	}
}
func envI(k string, p *int) {
	if v, err := strconv.Atoi(os.Getenv(k)); err == nil {
		*p = v
	}
}
func init() {
	envI("LATE", &lateSize)
	envF("ROOM", &roomRate)
	envI("BLINK", &blink)
	envI("NODES", &maxNodes)
	envI("BINS", &maxBins)
	envF("NOISE", &noise)
}
