package slipcase

import (
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
)

// builtSettings returns the settings of the bare carcass on the bench.
func (j *Job) builtSettings() job.Settings {
	return j.AsBuilt.Settings([3]string{"the bare carcass from head to tail, outside", "the bare carcass from spine to mouth, outside", "the bare carcass from side to side, outside"},
		Size{Height: 750, Width: 750, Thickness: 600})
}

// built returns the readings of a dimension of the carcass.
func (j Job) built(dimension string) job.Readings {
	return j.AsBuilt.Each()[slices.Index([]string{plan.Height, plan.Depth, plan.Thickness}, dimension)]
}

// standing returns the job whose carcass measures what stands on the bench: the
// room in it, and so the clearance, is what came of it. A thumb hole is as it was cut.
// Where nothing was measured it is the job itself.
func (j Job) standing() Job {
	if !j.AsBuilt.Measured() {
		return j
	}
	s, more := j, j.AsBuilt.Beyond(j.Outside())
	if j.hasHole() {
		s.ThumbHole.Radius = j.hole()
	}
	more.Thickness /= Length(j.compartments())
	s.Clearance = s.Clearance.Plus(more)
	return s
}

// planned returns the case of boards as it is cut, to tell of what is done until it
// stands.
func (c Case) planned() Case {
	j := c.Job
	if !j.AsBuilt.Measured() {
		return c
	}
	c.Stands = j
	c.lying = j.pieces()
	c.Proof.Carcass, _ = Build(c.lying, j.Edge())
	return c
}

// fitted returns the pieces to cut: boards, linings and dividers as planned, and
// what covers the carcass for the carcass as it stands.
func fitted(planned, standing []geometry.Piece) []geometry.Piece {
	out := slices.Clone(standing)
	for i, p := range planned {
		if p.Material == geometry.Board || p.Material == geometry.Lining || ofDivider(p) {
			out[i] = p
		}
	}
	return out
}

// builtSuspects tells where the carcass measures otherwise than planned, and what that
// means for the fit.
func (j Job) builtSuspects() job.Problems {
	s := j.standing()
	m := s.Mouth()
	left := [3]Length{m.Height, s.Clearance.Width, m.Thickness}
	return j.AsBuilt.Suspects("carcass", [3]string{"height", "width", "thickness"}, j.Outside(), j.Unit, func(i int, off Length) string {
		has := job.Show(left[i], j.Unit, 0)
		switch {
		case i == 1 && left[i] < 0:
			return fmt.Sprintf("the spine of %s stands %s out of the mouth", j.whose("deepest"), job.Show(-left[i], j.Unit, 0))
		case i == 1:
			return fmt.Sprintf("the spine of %s lies %s within the mouth", j.whose("deepest"), has)
		case off < 0:
			return fmt.Sprintf("covered, the mouth leaves %s %s of room: try it with offcuts of the covering at the mouth before you cover", j.inCase(), has)
		}
		return fmt.Sprintf("covered, the mouth leaves %s %s of room: line a side with paper if it rattles", j.inCase(), has)
	})
}

// limitMouth: the mouth is the tightest place. s is the job as it stands.
func (j Job) limitMouth(l *job.Limits, s Job) {
	m := s.Mouth()
	for _, d := range []struct {
		clearance, built string
		readings         job.Readings
		is, left         Length
		why              string
	}{
		{"clearance.height", "as_built.height", j.AsBuilt.Height, s.Clearance.Height, m.Height, "leaves no room at the mouth, where the covering is turned in at head and tail"},
		{"clearance.thickness", "as_built.thickness", j.AsBuilt.Thickness, s.Clearance.Thickness, m.Thickness, "leaves no room at the mouth, where the covering is turned in on both sides"},
	} {
		if d.built == "as_built.height" && j.Covering == SidesOnly {
			continue
		}
		key, is, missing := d.clearance, d.is, leastSlack-d.left
		if len(d.readings) > 0 {
			key, is, d.why = d.built, d.readings.Largest(), d.why+": take a thinner covering, or make the carcass anew"
			if d.built == "as_built.thickness" {
				missing *= Length(j.compartments())
			}
		}
		l.AtLeast(key, is, is+missing, d.why)
	}
}
