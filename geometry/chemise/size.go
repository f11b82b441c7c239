package chemise

import (
	"forel/geometry/job"
	"forel/geometry/laidflat"
	"forel/geometry/plan"
	"slices"
)

// inside returns what lies inside a board where a turn-in lies under the lining.
func (j Job) inside() Length { return j.Covering + j.Lining }

// through returns a panel right through: board, covering outside, turn-in and
// lining inside.
func (j Job) through() Length { return j.Board + j.inside() + j.Covering }

// spare is what an automatic joint has beyond the least (common practice, no
// source).
const spare Length = 0.2

// leastJoint returns the narrowest joint that closes to a right angle.
func (j Job) leastJoint() Length { return j.Board + 4*j.inside() }

// joint returns the gap between two boards.
func (j Job) joint() Length {
	if j.Joint > 0 {
		return j.Joint
	}
	return j.leastJoint() + spare
}

// stand returns x, from the end of one board to the inner face of the board
// across it.
func (j Job) stand() Length { return j.joint() - j.Board - 2*j.inside() }

// room returns H', W', T': the book with its clearance.
func (j Job) room() plan.Size { return j.Book().Size().Plus(j.Clearance) }

// hasFlap tells whether a flap lies between the book and a cover, or in the
// book.
func (j Job) hasFlap() bool { return j.ForeEdge == Lapped || j.ForeEdge == Hooks }

// flap returns a flap from its wall to its free edge: hooks 20 (Reliure d'art
// d'Are 2018: cards W + 20), lapped a third of the book's width from 20 to 60; an
// automatic one is never over mostFlap.
func (j Job) flap() Length {
	if j.Flap > 0 {
		return j.Flap
	}
	suits := Length(20)
	if j.ForeEdge == Lapped {
		suits = min(60, max(20, j.Book().Width.Largest()/3))
	}
	return min(suits, j.mostFlap())
}

// mostFlap returns the longest flap that stays clear of the book's spine, and
// behind a wide joint of the chemise's own.
func (j Job) mostFlap() Length {
	w := j.Book().Width.Largest()
	return min(w-5, j.room().Width+j.Lining-j.stand())
}

// mostTurnIn returns the longest turn-in: those of head and tail do not meet, nor do
// the mitres at both ends of one.
func (j Job) mostTurnIn() Length { return min(j.room().Height/2, j.laid().Across/2+j.corner()) - 1 }

// turnIn returns the turn-in at head and tail.
func (j Job) turnIn() Length { return min(j.TurnIn, j.mostTurnIn()) }

// endTurnIn returns the turn-in at an end of the covering: it stays on the panel
// there.
func (j Job) endTurnIn(panel Length) Length { return min(j.turnIn(), panel+j.Board-1) }

// between returns Tc, the distance between the linings of the covers at the
// spine.
func (j Job) between() Length {
	if j.ForeEdge == Lapped {
		return j.room().Thickness + j.through()
	}
	return j.room().Thickness
}

// outsides returns the closed chemise with the book in it: its height, its depth
// from spine to fore-edge, and its thickness at the spine and at the fore-edge.
func (j Job) outsides() (height, width, atSpine, atForeEdge Length) {
	in, p := j.room(), j.through()
	height = in.Height + 2*j.Covering
	atSpine = j.between() + 2*p
	switch j.ForeEdge {
	case None:
		return height, in.Width + p + j.Covering, atSpine, atSpine
	case Walls:
		return height, in.Width + 2*p, atSpine, atSpine
	case Hooks:
		return height, in.Width + 2*p, atSpine, in.Thickness + 2*j.CoverPlay + 4*p
	}
	return height, in.Width + 3*p + j.LapPlay, atSpine, atSpine
}

// AsBook returns the book of a slipcase for the closed chemise.
func (j Job) AsBook() job.Book {
	h, w, spine, fore := j.outsides()
	b := job.Book{Height: job.Readings{h}, Width: job.Readings{w}, Thickness: job.Readings{spine}}
	if !spine.Near(fore) {
		b.ForeEdge = job.Readings{fore}
	}
	return b
}

// outside returns the closed chemise at its thickest.
func (j Job) outside() plan.Size {
	h, w, spine, fore := j.outsides()
	return plan.Size{Height: h, Width: w, Thickness: max(spine, fore)}
}

// The names of the panels.
const (
	spineName      = "chemise spine"
	backCoverName  = "back cover"
	frontCoverName = "front cover"
	backWallName   = "back wall"
	frontWallName  = "front wall"
	backFlapName   = "back flap"
	frontFlapName  = "front flap"
)

// panels returns the boards from left to right as they lie flat, inside up.
func (j Job) panels() []laidflat.Board {
	in, b, i, k, x := j.room(), j.Board, j.inside(), j.Covering, j.stand()
	board := func(name string, wide Length) laidflat.Board { return laidflat.Board{Name: name, Wide: wide} }
	spine := board(spineName, j.between()+2*b-2*i)
	cover := in.Width + 2*i - 2*x // a wall stands at its other end
	switch j.ForeEdge {
	case None:
		cover = in.Width + i - x
		return []laidflat.Board{board(frontCoverName, cover), spine, board(backCoverName, cover)}
	case Walls:
		wall := j.between()/2 + b - i - k - j.Middle/2
		return []laidflat.Board{board(frontWallName, wall), board(frontCoverName, cover), spine, board(backCoverName, cover), board(backWallName, wall)}
	case Hooks:
		wall, flap := j.BookCover+j.CoverPlay+2*b-2*i, j.flap()
		return []laidflat.Board{board(frontFlapName, flap), board(frontWallName, wall), board(frontCoverName, cover), spine,
			board(backCoverName, cover), board(backWallName, wall), board(backFlapName, flap)}
	}
	_, _, thick, _ := j.outsides()
	out := []laidflat.Board{board(frontWallName, thick-2*k-2*i), board(frontCoverName, cover+j.through()+j.LapPlay), spine, board(backCoverName, cover)}
	if j.ForeEdge == LappedOnly {
		return append(out, board(backWallName, in.Thickness+b-i-k-spare))
	}
	return append(out, board(backWallName, in.Thickness+2*b-2*i), board(backFlapName, j.flap()))
}

// boardAt returns which of some boards has a name; -1 where none has.
func boardAt(ps []laidflat.Board, name string) int {
	return slices.IndexFunc(ps, func(p laidflat.Board) bool { return p.Name == name })
}

// laid returns the boards as they lie flat.
func (j Job) laid() laidflat.Boards {
	return names.Row(j.joint(), j.Board, j.room().Height, j.panels()...)
}
