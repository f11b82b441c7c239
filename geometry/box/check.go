package box

import (
	"slices"

	"forel/geometry/job"
	"forel/geometry/plan"
)

// Least lengths that keep a box makeable (common practice, no source).
const (
	leastUnder           = 5.
	leastHinge           = 6.
	mostClearance        = 40.
	leastLapped   Length = 1    // beyond the cloth, of each lap in a corner
	slack         Length = 0.05 // what must be left for the book
)

// Check tells whether the job can be made; see plan.Job.
func (j Job) Check() (sound plan.Checked, refused, suspect job.Problems) {
	refused = j.CheckRanges(j.Settings())
	if len(j.Books) > 1 {
		refused = append(refused, job.Problem{Key: job.BookKey(1, "height"), Reason: "a drop-spine box holds one book; several with dividers are not made yet", Fix: "keep one [[book]]"})
	}
	if len(refused) > 0 {
		return nil, refused, nil
	}
	refused, suspect = j.together(), j.suspects()
	if j.AsBuilt.Measured() && len(refused) == 0 {
		refused = j.standing().held(j.AsBuilt)
	}
	refused = append(refused, j.CheckLimits()...)
	if len(refused) > 0 {
		return nil, refused, suspect
	}
	return plan.Sound[made](j.work), nil, suspect
}

// together holds the job, as it is cut, against the invariants of a sound box.
func (j Job) together() job.Problems {
	if most := j.Board / 2; j.Cloth > most {
		l := job.NewLimits(j.Unit)
		l.AtMost("box.cloth", j.Cloth, most, "is too thick to lap in the corners of so thin a board")
		return l.Broken // the rest is reckoned from these
	}
	return j.held(job.AsBuilt{})
}

// needs are lengths that must be larger and are not, those of one setting together.
type needs struct {
	all   []need
	built job.AsBuilt // what of the small tray was measured: then it is that which is too small
}

type need struct {
	key       string
	is, least Length
	why       string
}

// add holds a setting against what it must be at least.
func (n *needs) add(key string, is, least Length, why string) {
	if is >= least-1e-6 {
		return
	}
	for i, r := range n.built.Each() {
		if len(r) > 0 && key == [3]string{heightKey, widthKey, thicknessKey}[i] {
			key, least, is, why = job.AsBuiltKeys[i], r.Largest()+least-is, r.Largest(), why+": make the small tray anew"
		}
	}
	if at := slices.IndexFunc(n.all, func(o need) bool { return o.key == key }); at >= 0 {
		n.all[at].least, n.all[at].why = max(n.all[at].least, least), n.all[at].why+"; and "+why
		return
	}
	n.all = append(n.all, need{key, is, least, why})
}

// The keys of the room for the book.
const (
	heightKey    = "box.clearance_height"
	widthKey     = "box.clearance_width"
	thicknessKey = "box.clearance_thickness"
)

// held holds the job against the lengths that a sound box needs; measured is what of the
// small tray was.
func (j Job) held(measured job.AsBuilt) job.Problems {
	n := needs{built: measured}
	k, q, room, s := j.Cloth, j.hingeCloth(), j.Clearance, j.small()
	height := func(lack Length, why string) { n.add(heightKey, room.Height, room.Height+lack, why) }
	width := func(lack Length, why string) { n.add(widthKey, room.Width, room.Width+lack, why) }
	thickness := func(lack Length, why string) { n.add(thicknessKey, room.Thickness, room.Thickness+lack, why) }
	height(2*k+slack-room.Height, "leaves "+j.Whose(0)+" no room at the open end, where two layers of cloth lie on head and tail wall")
	width(k-room.Width, "leaves "+j.Whose(0)+" no room in the corners at the fore-edge, where two layers of cloth lie")
	thickness(2*q-j.Room.Depth+slack-room.Thickness, "leaves "+j.Whose(0)+" no room at the open end, where the hinge lies under and over it")
	thickness(2*(k+leastLapped)-s.d, "leaves walls too low to lap the cloth in their corners")

	least := j.reaches()
	n.add("box.onto_floor", j.OntoFloor, least, "does not reach under the hinge")
	if j.EndFlap > 0 {
		n.add("box.end_flap", j.EndFlap, least, "does not reach under the hinge")
	}
	height(2*(least+k)+1-s.l, "leaves so short a tray that its flaps do not reach under the hinge; pad the difference")
	width(2*least-s.b, "leaves so narrow a tray that its flaps do not reach under the hinge; pad the difference")
	width(leastHinge-j.mostHinge(), "leaves no floor for the hinge")

	if j.Joint > 0 {
		n.add("box.joint", j.Joint, j.leastJoint(), "presses the spine hard on the ends of the walls")
	}
	if j.TurnIn > 0 {
		n.add("box.turn_in", j.TurnIn, j.leastTurnIn(), "does not reach under the hinge and the small tray")
	}
	width(j.leastTurnIn()-j.mostTurnIn(), "leaves case boards too narrow for a turn-in that reaches under the hinge and the small tray")

	l := job.NewLimits(j.Unit)
	for _, a := range n.all {
		l.AtLeast(a.key, a.is, a.least, a.why)
	}
	return l.Broken
}
