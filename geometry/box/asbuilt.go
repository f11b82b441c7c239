package box

import (
	"fmt"
	"slices"

	"forel/geometry/job"
)

// AsBuilt is the covered small tray on the bench, measured outside. A dimension
// without a reading is as planned.
type AsBuilt struct{ Height, Width, Thickness job.Readings }

// builtBy is how far the small tray may measure otherwise than planned before it is
// told of (common practice, no source).
const builtBy Length = 1

// settings returns the settings of what was measured. A wall added to the limits of
// a book, so that no tray of a book that is allowed is refused.
func (a *AsBuilt) settings() job.Settings {
	return job.Settings{
		job.ReadingsOf("as_built.height", "the covered small tray from head to tail, outside", 40, 800, &a.Height),
		job.ReadingsOf("as_built.width", "the covered small tray from the open edge to the fore-edge, outside", 20, 800, &a.Width),
		job.ReadingsOf("as_built.thickness", "the covered small tray from bench to rim", 3, 400, &a.Thickness),
	}
}

// measured tells whether anything was.
func (a AsBuilt) measured() bool { return len(a.Height)+len(a.Width)+len(a.Thickness) > 0 }

// standing returns the job whose small tray measures what stands on the bench: the room
// in it, and so the clearance, is what came of it, and the large tray and the case
// follow. Where nothing was measured it is the job itself.
func (j Job) standing() Job {
	s := j
	s.AsBuilt, s.measured = AsBuilt{}, j.AsBuilt.measured()
	for _, d := range j.builds() {
		*d.room(&s) += d.readings.Largest() - d.planned
	}
	return s
}

// built is a dimension of the small tray that was measured.
type built struct {
	key, name string
	readings  job.Readings
	planned   Length
	room      func(*Job) *Length // what it settles
	takes     Length             // what of the room is not the book's
	where     string             // the book has the rest
}

// builds returns the dimensions of the small tray that were measured.
func (j Job) builds() []built {
	s, q := j.covered(j.small()), j.hingeCloth()
	return slices.DeleteFunc([]built{
		{"as_built.height", "height", j.AsBuilt.Height, s.Height, func(j *Job) *Length { return &j.Clearance.Height },
			2 * j.Cloth, "from head to tail at the open end"},
		{"as_built.width", "width", j.AsBuilt.Width, s.Width, func(j *Job) *Length { return &j.Clearance.Width },
			j.Cloth, "in the corners at the fore-edge"},
		{"as_built.thickness", "depth", j.AsBuilt.Thickness, s.Thickness, func(j *Job) *Length { return &j.Clearance.Thickness },
			2*q - j.Room.Depth, "under the hinge on the floor of the large tray"},
	}, func(d built) bool { return len(d.readings) == 0 })
}

// builtSuspects tells where the small tray measures otherwise than planned, and what
// that means for the book.
func (j Job) builtSuspects() job.Problems {
	var ps job.Problems
	show := func(l Length) string { return job.Show(l, j.Unit, 0) }
	s := j.standing()
	for _, d := range j.builds() {
		off := d.readings.Largest() - d.planned
		if off.Abs() <= builtBy {
			continue
		}
		than := "more"
		if off < 0 {
			than = "less"
		}
		p := job.Problem{Key: d.key, Of: "the " + d.name + " of the small tray as built", Value: show(d.readings.Largest()),
			Reason: fmt.Sprintf("is %s %s than planned", show(off.Abs()), than),
			Fix:    fmt.Sprintf("the large tray and the case are cut for it; %s has %s %s", j.Whose(0), show(*d.room(&s)-d.takes), d.where)}
		if off > 0 {
			p.Fix += ": lay a pad in where it is loose"
		}
		ps = append(ps, p)
	}
	return ps
}
