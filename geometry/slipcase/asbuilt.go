package slipcase

import (
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
)

// AsBuilt is a bare carcass that stands on the bench, measured outside. A
// dimension without a reading is as planned.
type AsBuilt struct{ Height, Width, Thickness job.Readings }

// builtBy is how far a carcass may measure otherwise than planned before it is told
// of (common practice, no source).
const builtBy Length = 1

// settings returns the settings of what was measured. A wall added to the limits of
// a book, so that no carcass of a book that is allowed is refused.
func (a *AsBuilt) settings() []job.Setting {
	return []job.Setting{
		job.ReadingsOf("as_built.height", "the bare carcass from head to tail, outside", 40, 750, &a.Height),
		job.ReadingsOf("as_built.width", "the bare carcass from spine to mouth, outside", 20, 750, &a.Width),
		job.ReadingsOf("as_built.thickness", "the bare carcass from side to side, outside", 3, 600, &a.Thickness),
	}
}

// measured tells whether anything was.
func (a AsBuilt) measured() bool { return len(a.Height)+len(a.Width)+len(a.Thickness) > 0 }

// of returns the readings of a dimension.
func (a AsBuilt) of(dimension string) job.Readings {
	switch dimension {
	case plan.Height:
		return a.Height
	case plan.Depth:
		return a.Width
	}
	return a.Thickness
}

// standing returns the job whose carcass measures what stands on the bench: the
// room in it, and so the clearance, is what came of it. A thumb hole is as it was cut.
// Where nothing was measured it is the job itself.
func (j Job) standing() Job {
	if !j.AsBuilt.measured() {
		return j
	}
	drawn := j.Outside()
	more := func(r job.Readings, planned Length) Length {
		if len(r) == 0 {
			return 0
		}
		return r.Largest() - planned
	}
	s := j
	if j.hasHole() {
		s.ThumbHole.Radius = j.hole()
	}
	s.Clearance.Height += more(j.AsBuilt.Height, drawn.Height)
	s.Clearance.Width += more(j.AsBuilt.Width, drawn.Width)
	s.Clearance.Thickness += more(j.AsBuilt.Thickness, drawn.Thickness) / Length(j.compartments())
	return s
}

// planned returns the case of boards as it is cut, to tell of what is done until it
// stands.
func (c Case) planned() Case {
	j := c.Job
	if !j.AsBuilt.measured() {
		return c
	}
	c.stands = j
	c.lying = j.pieces()
	c.Proof.Carcass, _ = Build(c.lying, j.Edge())
	c.Outside, c.Cavity = j.Outside(), j.Cavity()
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
	var ps job.Problems
	s, drawn := j.standing(), j.Outside()
	m := s.Mouth()
	for _, d := range []struct {
		name          string
		readings      job.Readings
		planned, left Length
	}{
		{"height", j.AsBuilt.Height, drawn.Height, m.Height},
		{"width", j.AsBuilt.Width, drawn.Width, s.Clearance.Width},
		{"thickness", j.AsBuilt.Thickness, drawn.Thickness, m.Thickness},
	} {
		off := d.readings.Largest() - d.planned
		if len(d.readings) == 0 || off.Abs() <= builtBy {
			continue
		}
		show := func(l Length) string { return job.Show(l, j.Unit, 0) }
		p := job.Problem{Key: "as_built." + d.name, Of: "the " + d.name + " of the carcass as built", Value: show(d.readings.Largest())}
		than := "more"
		if off < 0 {
			than = "less"
		}
		p.Reason = fmt.Sprintf("is %s %s than planned", show(off.Abs()), than)
		switch {
		case d.name == "width" && d.left < 0:
			p.Fix = fmt.Sprintf("the spine of %s stands %s out of the mouth", j.whose("deepest"), show(-d.left))
		case d.name == "width":
			p.Fix = fmt.Sprintf("the spine of %s lies %s within the mouth", j.whose("deepest"), show(d.left))
		case off < 0:
			p.Fix = fmt.Sprintf("covered, the mouth leaves %s %s of room: try it with offcuts of the covering at the mouth before you cover", j.inCase(), show(d.left))
		default:
			p.Fix = fmt.Sprintf("covered, the mouth leaves %s %s of room: line a side with paper if it rattles", j.inCase(), show(d.left))
		}
		ps = append(ps, p)
	}
	return ps
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
