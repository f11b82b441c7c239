package slipcase

import (
	"fmt"
	"strings"

	"forel/geometry/job"
)

// looseBy is how much room beyond its clearance makes a volume stand loose.
const looseBy Length = 3

// suspects lists what is possible but more often a slip, and where the carcass measures
// otherwise than planned.
func (j Job) suspects() job.Problems {
	ps := j.Suspects()
	all := j.Contents()
	show := func(l Length) string { return job.Show(l, j.Unit, 0) }
	for i, b := range j.Books {
		if b.Taper() > looseBy {
			ps = append(ps, j.Taper(i))
		}
		var by []string
		if low := all.Height - b.Height.Largest(); low > looseBy {
			by = append(by, show(low)+" lower")
		}
		if shallow := all.Width - b.Width.Largest(); shallow > looseBy {
			by = append(by, show(shallow)+" shallower")
		}
		if by != nil {
			ps = append(ps, job.Problem{Key: job.BookKey(i, "height"), Reason: fmt.Sprintf("volume %d stands loose: %s than the largest", i+1, strings.Join(by, " and ")),
				Fix: "pad its place, or make it a case of its own"})
		}
	}
	if j.Compartments == EachItsOwn && len(j.Books) == 1 {
		ps = append(ps, job.Problem{Key: "compartments", Reason: "one book needs no divider", Fix: "add the other volumes, each a [[book]], or leave it out"})
	}
	if out := j.Outside().Height; j.Covering == ClothAndPaper && 2*j.Cloth.Overlap > out {
		ps = append(ps, job.Problem{Key: "cloth.overlap", Reason: "head and tail cloth overlap on the sides of so low a case",
			Fix: "at most " + job.Show(out/2, j.Unit, -1) + " keeps them apart"})
	}
	return append(ps, j.builtSuspects()...)
}
