package chemise

import (
	"forel/geometry/job"
	"forel/geometry/plan"
)

// Least lengths that keep a chemise makeable (common practice, no source).
const (
	leastPanel    Length = 3  // a wall between two joints, or a spine
	leastCover    Length = 10 // a cover
	leastLap      Length = 3  // the lining over a turn-in
	leastMargin   Length = 1  // what a lining stays back
	mostClearance Length = 25
	leastFree     Length = 4    // a free end beyond the margin of its lining
	apart         Length = 0.02 // between the least that is taken and the most, so that a length shown lies between
)

// Check tells whether the job can be made; see plan.Job.
func (j Job) Check() (sound plan.Checked, refused, suspect job.Problems) {
	refused = j.CheckRanges(j.Settings())
	if len(j.Books) > 1 {
		refused = append(refused, job.Problem{Key: job.BookKey(1, "height"), Reason: "a chemise holds one book", Fix: "keep one [[book]]"})
	}
	if j.ForeEdge == Hooks && j.BookCover == 0 {
		refused = append(refused, job.Problem{Key: "chemise.book_cover", Reason: "missing", Fix: "measure the thickness of the book's own cover, over which the hooks go"})
	}
	if len(refused) > 0 {
		return nil, refused, nil
	}
	refused, suspect = append(j.together(), j.CheckLimits()...), j.Suspects()
	if len(refused) > 0 {
		return nil, refused, suspect
	}
	return plan.Sound[made](func() (made, error) { return j.work(suspect) }), nil, suspect
}

// together holds the job against the invariants of a sound chemise.
func (j Job) together() job.Problems {
	l := job.NewLimits(j.Unit)
	l.AtLeast("chemise.board", j.Board, j.inside()+spare, "is no thicker than what is rubbed over its edge")
	if j.Joint > 0 {
		l.AtLeast("chemise.joint", j.Joint, j.leastJoint(), "does not close to a right angle")
	}
	if len(l.Broken) > 0 {
		return l.Broken // the rest is reckoned from these
	}
	j.limitTurnIn(l)
	if j.hasFlap() {
		w := j.mostFlap()
		least := j.Margin + leastFree
		switch {
		case w < least+apart:
			widest := max(leastMargin, min(j.Margin, j.Book().Width.Largest()-5-leastFree-apart))
			l.AtMost("chemise.lining_margin", j.Margin, widest, "leaves nothing of a flap that fits into so narrow a book")
			if lack := widest + leastFree + apart - w; lack > 0 && j.Joint > 0 {
				l.AtMost("chemise.joint", j.Joint, j.Joint-lack, "leaves no room for a flap")
			}
		case j.Flap > 0:
			l.AtLeast("chemise.flap", j.Flap, least, "leaves nothing of the lining on the flap")
			l.AtMost("chemise.flap", j.Flap, w, "reaches to the spine of the book")
		}
	}
	j.limitPanels(l)
	return l.Broken
}

// limitTurnIn: the lining has to reach the turn-in on every side.
func (j Job) limitTurnIn(l *job.Limits) {
	least := j.Board + j.Margin + leastLap
	room := j.mostTurnIn()
	switch {
	case j.turnIn() >= least:
	case least <= room:
		l.AtLeast("chemise.turn_in", j.TurnIn, least, "does not reach under the lining")
	case room-j.Board-leastLap >= leastMargin:
		l.AtMost("chemise.lining_margin", j.Margin, room-j.Board-leastLap, "leaves no turn-in under the lining of so low a chemise")
		l.AtLeast("chemise.turn_in", j.TurnIn, room, "does not reach under the lining")
	default:
		lack := 2 * (j.Board + leastLap + leastMargin - room)
		l.AtLeast("chemise.clearance_height", j.Clearance.Height, j.Clearance.Height+lack, "leaves no turn-in under the lining of so low a chemise")
	}
}

// limitPanels: no board is too narrow to be covered.
func (j Job) limitPanels(l *job.Limits) {
	ps := j.panels()
	thicker := func(lack Length, why string) {
		l.AtLeast("chemise.clearance_thickness", j.Clearance.Thickness, j.Clearance.Thickness+lack, why)
	}
	for n, p := range ps {
		free := n == 0 || n == len(ps)-1
		switch p.Name {
		case frontCoverName, backCoverName:
			lack, joints := leastCover-p.Wide, Length(2)
			if j.ForeEdge == None {
				joints = 1
			}
			switch {
			case lack <= 0 && free && p.Wide < j.Margin+leastFree:
				l.AtMost("chemise.lining_margin", j.Margin, p.Wide-leastFree, "leaves nothing of the lining on so narrow a cover")
				return // both covers are alike
			case lack <= 0:
			case j.Joint > 0 && j.Joint-lack/joints > j.leastJoint():
				l.AtMost("chemise.joint", j.Joint, j.Joint-lack/joints, "leaves too narrow a cover")
				return
			default:
				l.AtLeast("chemise.clearance_width", j.Clearance.Width, j.Clearance.Width+lack, "leaves too narrow a cover")
			}
		case spineName:
			if lack := leastPanel - p.Wide; lack > 0 {
				thicker(lack, "leaves too narrow a spine")
			}
		case frontWallName, backWallName:
			least := leastPanel
			if free {
				least = j.Margin + leastFree
			}
			lack := least - p.Wide
			switch {
			case lack <= 0:
			case j.ForeEdge == Hooks:
				l.AtLeast("chemise.cover_play", j.CoverPlay, j.CoverPlay+lack, "leaves too narrow a wall of the hook")
			case j.ForeEdge == Walls:
				l.Instead("chemise.fore_edge", Walls, "leaves walls too narrow to line on so thin a book", Lapped)
				return
			case j.ForeEdge == LappedOnly && p.Name == backWallName:
				l.Instead("chemise.fore_edge", LappedOnly, "leaves a back wall too narrow to line on so thin a book", Lapped)
				return
			case free && j.Clearance.Thickness+lack > mostClearance:
				l.AtMost("chemise.lining_margin", j.Margin, max(leastMargin, j.Margin-lack), "leaves nothing of the lining on a wall at the fore-edge")
				if left := leastMargin + leastFree - p.Wide; left > 0 {
					thicker(left, "leaves too narrow a wall at the fore-edge")
				}
			default:
				thicker(lack, "leaves too narrow a wall at the fore-edge")
			}
		}
	}
}
