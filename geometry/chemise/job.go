package chemise

import (
	"forel/geometry"
	"forel/geometry/job"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// What stands at the fore-edge.
const (
	Lapped     = "lapped"              // the back wall with a flap inside the front cover, the front wall over it
	LappedOnly = "lapped without flap" // the front wall over the back wall
	Walls      = "walls"               // two walls that meet in the middle
	Hooks      = "hooks"               // a wall and a flap at each cover, hooked over the book's own covers
	None       = "none"                // a back and two covers
)

// ForeEdges lists what may stand at the fore-edge; the first is the default.
var ForeEdges = []string{Lapped, LappedOnly, Walls, Hooks, None}

// knownKey says whether the board was measured.
const knownKey = "chemise.board_known"

// Job is everything a maker settles before cutting. Its thicknesses are as
// measured.
type Job struct {
	job.Common              // its clearance is what the inside has beyond the book
	Board, Covering, Lining Length
	Known                   string // how the board's thickness is known: as measured, or as sold
	ForeEdge                string
	TurnIn                  Length // of the covering
	Margin                  Length // what the lining stays back from every edge
	Joint                   Length // 0: what suits
	Flap                    Length // spine to fore-edge; 0: what suits
	BookCover               Length // hooks only: the thickness of the book's own cover
	CoverPlay               Length // hooks only: play on the book's cover
	LapPlay                 Length // between two walls that lap
	Middle                  Length // between two walls that meet
}

// DefaultJob returns a job with no book and every default set, round in the
// maker's unit (common practice, no source, but for the turn-in: Reliure d'art d'Are
// 2018).
func DefaultJob(u geometry.Unit) Job {
	j := Job{
		Common: job.Default(u),
		Board:  job.Round(u, 1, 0.04), Covering: job.Round(u, 0.35, 0.014), Lining: job.Round(u, 0.15, 0.006),
		Known:    job.KnownAsSold,
		ForeEdge: Lapped,
		TurnIn:   job.Round(u, 15, 5./8), Margin: job.Round(u, 3, 1./8),
		CoverPlay: job.Round(u, 0.3, 1./64), LapPlay: job.Round(u, 0.3, 1./64), Middle: job.Round(u, 0.5, 1./64),
	}
	room := job.Round(u, 1, 1./32)
	j.Clearance = job.Clearance{Height: room, Width: room, Thickness: room}
	return j
}

// Shared returns what jobs of every kind have.
func (j *Job) Shared() *job.Common { return &j.Common }

// Settings returns every setting of a chemise.
func (j *Job) Settings() job.Settings {
	return append(job.Settings{
		job.WordOf("chemise.fore_edge", "what stands at the chemise's fore-edge", ForeEdges, &j.ForeEdge),
		job.LengthOf("chemise.board", "the chemise's board, as measured", 0.3, 4, &j.Board),
		job.WordOf(knownKey, "how the thickness of the chemise's board is known", []string{job.KnownAsSold, job.KnownMeasured}, &j.Known),
		job.LengthOf("chemise.covering", "the chemise's covering, as measured", 0.03, 1.5, &j.Covering),
		job.LengthOf("chemise.lining", "the chemise's lining, as measured", 0.02, 1, &j.Lining),
		job.LengthOf("chemise.clearance_height", "the room above the book", 0, mostClearance.MM(), &j.Clearance.Height),
		job.LengthOf("chemise.clearance_width", "the room before the fore-edge", 0, mostClearance.MM(), &j.Clearance.Width),
		job.LengthOf("chemise.clearance_thickness", "the room beside the book", 0, mostClearance.MM(), &j.Clearance.Thickness),
		job.LengthOf("chemise.turn_in", "the covering turned in", 4, 100, &j.TurnIn),
		job.LengthOf("chemise.lining_margin", "what the lining stays back from every edge", 1, 12, &j.Margin),
		job.LengthOf("chemise.joint", "the gap between two boards", 0.5, 20, &j.Joint).OrAuto(),
		job.LengthOf("chemise.flap", "a flap, spine to fore-edge", 5, 400, &j.Flap).OrAuto(),
		job.LengthOf("chemise.book_cover", "the thickness of the book's own cover, for hooks", 0.5, 15, &j.BookCover).OrAuto().OnBook(),
		job.LengthOf("chemise.cover_play", "play of a hook on the book's cover", 0, 5, &j.CoverPlay),
		job.LengthOf("chemise.lap_play", "play between two walls that lap", 0, 5, &j.LapPlay),
		job.LengthOf("chemise.middle", "the gap between two walls that meet", 0, 10, &j.Middle),
	}, j.FitSettings()...)
}
