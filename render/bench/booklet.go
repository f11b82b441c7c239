package bench

import "forel/paper/bench"

// Drawing is one file.
type Drawing struct {
	Name string
	SVG  []byte
}

func Booklet(p bench.Plan, o Options) ([]byte, error) { return nil, nil }
func Drawings(p bench.Plan, o Options) []Drawing     { return nil }
