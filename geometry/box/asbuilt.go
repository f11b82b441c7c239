package box

import (
	"fmt"

	"forel/geometry/job"
)

// builtSettings returns the settings of the covered small tray on the bench.
func (j *Job) builtSettings() job.Settings {
	return j.AsBuilt.Settings([3]string{"the covered small tray from head to tail, outside", "the covered small tray from the open edge to the fore-edge, outside", "the covered small tray from bench to rim"},
		job.Size{Height: 800, Width: 800, Thickness: 400})
}

// standing returns the job whose small tray measures what stands on the bench: the room
// in it, and so the clearance, is what came of it, and the large tray and the case
// follow. Where nothing was measured it is the job itself.
func (j Job) standing() Job {
	s := j
	s.AsBuilt, s.measured = job.AsBuilt{}, j.AsBuilt.Measured()
	s.Clearance = s.Clearance.Plus(j.AsBuilt.Beyond(j.covered(j.small())))
	return s
}

// suspects lists what is possible but more often a slip, and where the small tray measures
// otherwise than planned, and what that means for the book.
func (j Job) suspects() job.Problems {
	s, q := j.standing(), j.hingeCloth()
	where := [3]string{"from head to tail at the open end", "in the corners at the fore-edge", "under the hinge on the floor of the large tray"}
	has := s.Clearance.Less(job.Size{Height: 2 * j.Cloth, Width: j.Cloth, Thickness: 2*q - j.Room.Depth})
	return append(j.Suspects(), j.AsBuilt.Suspects("small tray", [3]string{"height", "width", "depth"}, j.covered(j.small()), j.Unit, func(i int, off Length) string {
		means := fmt.Sprintf("the large tray and the case are cut for it; %s has %s %s", j.Whose(0), job.Show(has.Each()[i], j.Unit, 0), where[i])
		if off > 0 {
			means += ": lay a pad in where it is loose"
		}
		return means
	})...)
}
