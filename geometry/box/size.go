package box

import (
	"math"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/laidflat"
	"forel/geometry/plan"
)

// or returns the first of two lengths, or the second where that is 0: "auto".
func or(l, usual Length) Length {
	if l > 0 {
		return l
	}
	return usual
}

// caseBoard returns b, and the next K, q and F: what is not said is what the trays
// have.
func (j Job) caseBoard() Length  { return or(j.CaseBoard, j.Board) }
func (j Job) caseCloth() Length  { return or(j.CaseCloth, j.Cloth) }
func (j Job) hingeCloth() Length { return or(j.HingeCloth, j.Cloth) }
func (j Job) lidLining() Length  { return or(j.LidLining, j.Lining) }

// thicker returns m, the thicker of the cloths that lie in a joint.
func (j Job) thicker() Length { return max(j.caseCloth(), j.hingeCloth()) }

// tray is one of the two trays with its inside from board to board: B from the open
// edge to the fore-edge wall, L from the head wall to the tail wall, d from floor to
// rim.
type tray struct {
	name    string
	b, l, d Length
}

// The names of the trays.
const (
	smallName = "small tray"
	largeName = "large tray"
)

// covered returns what a tray measures outside with its cloth on. There is none on the
// open edge that counts: base and case board are flush there.
func (j Job) covered(t tray) plan.Size {
	k := j.Cloth
	return plan.Size{Height: t.l + 2*j.Board + 2*k, Width: t.b + j.Board + k, Thickness: t.d + j.Board + 2*k}
}

// small returns the small tray.
func (j Job) small() tray {
	b := j.Book()
	return tray{smallName, b.Width.Largest() + j.Clearance.Width + j.Cloth, b.Height.Largest() + j.Clearance.Height + 2*j.Cloth,
		b.Thick() + j.Clearance.Thickness + j.Lining}
}

// large returns the large tray, which goes over the small one.
func (j Job) large() tray {
	s, k := j.covered(j.small()), j.Cloth
	return tray{largeName, s.Width + 2*k + j.Room.Width, s.Height + 4*k + j.Room.Height, s.Thickness + j.lidLining() + j.Room.Depth}
}

// off returns a, what a cut keeps off a corner of the board.
func (j Job) off() Length { return min(1, j.Board/3) }

// lap returns o, what the cloth of head and tail wall laps onto the fore-edge wall in an
// inner corner. In a thin tray it gives way.
func (j Job) lap(t tray) Length { return min(4, 2*j.Board+j.Cloth-0.5, t.d/2) }

// onHinge is how far cloth reaches under a hinge at least (common practice, no
// source).
const onHinge Length = 2

// reaches returns v0, the least that end flaps and floor turn-ins reach, so that
// nothing is bare beside the hinge. Only the difference of the large tray's inside and
// the hinge counts, so that it is alike for every book.
func (j Job) reaches() Length { return (j.large().l-j.hingeHigh())/2 + onHinge }

// ontoFloor returns n, the cloth turned onto the floor; in a small tray it gives way.
func (j Job) ontoFloor(t tray) Length { return min(j.OntoFloor, t.b-1, t.l/2-j.Cloth-0.5) }

// under returns u, the cloth turned under the base; in a small tray it gives way.
func (j Job) under(t tray) Length { return min(j.Under, t.b+j.Board-1, t.l/2+j.Board-1) }

// mostEndFlap returns the longest end flap of a tray.
func mostEndFlap(t tray) Length { return min(t.b/2, t.l/2-0.5) }

// endFlap returns v, what an end flap is longer than the wall is thick; in a small
// tray it gives way.
func (j Job) endFlap(t tray) Length {
	return min(or(j.EndFlap, max(job.Round(j.Unit, 10, 3./8), j.reaches())), mostEndFlap(t))
}

// mostHinge returns the most that a hinge can lie on the floor of the small tray.
func (j Job) mostHinge() Length { return j.small().b - 2*j.Cloth - j.LiningGap - onHinge }

// hinge returns w; in a narrow tray it gives way.
func (j Job) hinge() Length { return min(j.Hinge, j.mostHinge()) }

// hingeHigh returns Ah, the hinge from head to tail: it lies between the walls of the
// small tray.
func (j Job) hingeHigh() Length { return j.small().l - 4*j.Cloth - 2*j.LiningGap }

// spare is what is left between the spine and the ends of the walls (common practice,
// no source).
const spare Length = 0.2

// mostPressed is how much narrower than clear a joint is taken: published joints count
// on three layers of cloth that give way.
const mostPressed Length = 1.2

// inJoint returns what lies between the spine board and the ends of the walls: the
// pleat on the end of a wall and the spine's turn-in, or tab, hinge and hinge again.
func (j Job) inJoint() Length {
	k, kk, q := j.Cloth, j.caseCloth(), j.hingeCloth()
	return max(3*k+kk, k+2*q+kk)
}

// clearJoint returns j0, the least joint that keeps the spine off the walls.
func (j Job) clearJoint() Length { return j.caseBoard() + 2*j.thicker() + j.inJoint() + spare }

// leastJoint returns the narrowest joint that is taken: in it the turn-in and the
// hinge have room.
func (j Job) leastJoint() Length {
	return max(j.clearJoint()-mostPressed, j.caseBoard()+2*j.thicker()+j.caseCloth()+j.hingeCloth())
}

// joint returns j: two boards (Bibliocat 2007), or more where that is not clear; in
// inches the next 32nd.
func (j Job) joint() Length {
	if j.Joint > 0 {
		return j.Joint
	}
	suits := max(2*j.caseBoard(), j.clearJoint())
	if step := geometry.Inch / 32; j.Unit == geometry.IN {
		return step * Length(math.Ceil(float64(suits/step)-1e-9))
	}
	return suits
}

// stand returns x, what a joint leaves beside a board when the case is closed.
func (j Job) stand() Length { return j.joint() - j.caseBoard() - 2*j.thicker() }

// caseSize returns Wc and Hc, a case board.
func (j Job) caseSize() (wide, high Length) {
	l := j.covered(j.large())
	return l.Width + j.Square, l.Height + 2*j.Square
}

// between returns D, what lies between the case boards: the large tray on its turn-in,
// and the turn-in that its rim stands on.
func (j Job) between() Length { return j.covered(j.large()).Thickness + 2*j.caseCloth() }

// spine returns S, the width of the spine.
func (j Job) spine() Length { return j.between() + 2*j.caseBoard() - 4*j.thicker() }

// laid returns the boards of the case as they lie flat.
func (j Job) laid() laidflat.Boards {
	w, high := j.caseSize()
	return names.Row(j.joint(), j.caseBoard(), high, laidflat.Board{Name: frontBoard, Wide: w}, laidflat.Board{Name: spineName, Wide: j.spine()}, laidflat.Board{Name: backBoard, Wide: w})
}

// beyondHinge returns mh, what the hinge leaves of the spine at each end.
func (j Job) beyondHinge() Length {
	_, high := j.caseSize()
	return (high - j.hingeHigh()) / 2
}

// underHinge is how far the case's turn-in reaches under the hinge at least, and under
// a tray (common practice, no source).
const underHinge Length = 3

// leastTurnIn returns e0: the turn-in reaches under the hinge, and at the fore-edge under
// the small tray.
func (j Job) leastTurnIn() Length {
	wide, _ := j.caseSize()
	return j.caseBoard() + max(j.beyondHinge(), wide-j.covered(j.small()).Width) + underHinge
}

// mostTurnIn returns the longest turn-in of the case: those of head and tail do not
// meet, and that of a fore-edge stays on its board.
func (j Job) mostTurnIn() Length {
	w, high := j.caseSize()
	return min(high/2, w+j.caseBoard()) - 1
}

// turnIn returns e: 3/4 in (Reese), or more where that does not reach under the hinge.
func (j Job) turnIn() Length {
	return min(or(j.TurnIn, max(job.Round(j.Unit, 19.05, 3./4), j.leastTurnIn())), j.mostTurnIn())
}

// corner returns how far beyond a board's corner the ends of a mitre lie: one board,
// square to the cut (Bibliocat 2007), and no less than 2.1 mm.
func (j Job) corner() Length { return max(j.caseBoard()*Length(math.Sqrt2), 2.1) }

// outside returns the closed box.
func (j Job) outside() plan.Size {
	w, high := j.caseSize()
	b, k := j.caseBoard(), j.caseCloth()
	return plan.Size{Height: high + 2*k, Width: w + j.stand() + b + 2*k, Thickness: j.between() + 2*b + 2*k}
}

// lining returns the lining of a tray's floor: from the open edge to the fore-edge, and
// from head to tail.
func (j Job) lining(t tray) (wide, high Length) {
	return t.b - 2*j.Cloth - j.LiningGap - j.LiningEdge, t.l - 4*j.Cloth - 2*j.LiningGap
}
