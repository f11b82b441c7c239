package box

import (
	"forel/geometry"
	"forel/geometry/job"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// How the walls of a tray stand.
const (
	Around = "around" // round the base, down to the bench (BPG 2020)
	On     = "on"     // on the base (A Binding Passion 2020)
)

// Whether the case boards are made level between the turn-ins.
const (
	NoFiller = "without"
	Filled   = "with"
)

// Whether the large tray is cut to the small one as that comes out.
const (
	AsMeasured = "as measured" // the small tray is covered and measured first
	AsPlanned  = "as planned"  // all is cut at once
)

// orderKey says which.
const orderKey = "box.large_tray"

// knownKey says whether the trays' board was measured.
const knownKey = "box.board_known"

// Job is everything a maker settles before cutting. Its thicknesses are as measured.
type Job struct {
	job.Common        // its clearance is what the small tray has beyond the book
	Walls      string // Around or On
	Board      Length // of the trays
	Known      string // how its thickness is known: as measured, or as sold
	CaseBoard  Length // 0: the trays' board
	Cloth      Length // of the trays
	CaseCloth  Length // 0: the trays' cloth
	HingeCloth Length // 0: the trays' cloth
	Lining     Length // or pad, on the floor of the small tray
	LidLining  Length // on the floor of the large tray; 0: as in the small one
	Room       Room
	Under      Length // cloth turned under the base
	OntoFloor  Length // cloth turned onto the floor
	EndFlap    Length // past the thickness of the wall; 0: what suits
	Hinge      Length // on each floor
	Square     Length // of the case at head, tail and fore-edge
	TurnIn     Length // of the case; 0: what suits
	Joint      Length // of the case; 0: what suits
	LiningGap  Length // a floor lining from the cloth on the walls
	LiningEdge Length // from the open edge
	Filler     string // NoFiller or Filled
	Order      string // AsMeasured or AsPlanned
	AsBuilt    job.AsBuilt

	measured bool // the small tray is as it was measured, not as it was cut
}

// Room is what is left between the two trays at the tightest, all layers counted.
// Height is that of head and tail together.
type Room struct{ Height, Width, Depth Length }

// DefaultJob returns a job with no book and every default set, round in the
// maker's unit (common practice, no source, but for the board: BPG 2020; cloth onto the
// floor, under the base and the hinge: A Binding Passion 2020; the square: Le Staret
// 2009). The large tray follows the small one as measured, as the order of work has it.
func DefaultJob(u geometry.Unit) Job {
	j := Job{
		Common: job.Default(u),
		Walls:  Around,
		Board:  job.Round(u, 2.5, 0.098), Known: job.KnownAsSold,
		Cloth: job.Round(u, 0.35, 0.014), Lining: job.Round(u, 0.15, 0.006),
		Room:  Room{Height: job.Round(u, 0.5, 1./64), Width: job.Round(u, 0.5, 1./64), Depth: job.Round(u, 0.3, 1./64)},
		Under: job.Round(u, 15, 5./8), OntoFloor: job.Round(u, 15, 5./8), Hinge: job.Round(u, 19.05, 3./4),
		Square: job.Round(u, 4, 5./32), LiningGap: job.Round(u, 0.5, 1./64), LiningEdge: job.Round(u, 1, 1./32),
		Filler: NoFiller, Order: AsMeasured,
	}
	j.Clearance = job.Clearance{Height: job.Round(u, 1.5, 1./16), Width: job.Round(u, 1, 1./32), Thickness: job.Round(u, 1, 1./32)}
	return j
}

// Shared returns what jobs of every kind have.
func (j *Job) Shared() *job.Common { return &j.Common }

// Settings returns every setting of a drop-spine box.
func (j *Job) Settings() job.Settings {
	return append(job.Settings{
		job.WordOf("box.walls", "how the walls of the trays stand: around the base, or on it", []string{Around, On}, &j.Walls),
		job.LengthOf("box.board", "the board of the trays, as measured", 0.75, 5, &j.Board),
		job.WordOf(knownKey, "how the thickness of the trays' board is known", []string{job.KnownAsSold, job.KnownMeasured}, &j.Known),
		job.LengthOf("box.case_board", "the board of the case, as measured", 0.75, 5, &j.CaseBoard).OrAuto(),
		job.LengthOf("box.cloth", "the cloth on the trays, as measured", 0.03, 1, &j.Cloth),
		job.LengthOf("box.case_cloth", "the cloth on the case, as measured", 0.03, 1, &j.CaseCloth).OrAuto(),
		job.LengthOf("box.hinge_cloth", "the cloth of the hinge, as measured", 0.03, 1, &j.HingeCloth).OrAuto(),
		job.LengthOf("box.lining", "the lining or pad on the floor of the small tray, its whole thickness", 0.02, 15, &j.Lining),
		job.LengthOf("box.lid_lining", "the lining or pad on the floor of the large tray, its whole thickness", 0.02, 15, &j.LidLining).OrAuto(),
		job.LengthOf("box.clearance_height", "what the small tray has beyond the book from head to tail, one layer of cloth on each wall", 0, mostClearance, &j.Clearance.Height),
		job.LengthOf("box.clearance_width", "what the small tray has beyond the book from the open edge to the fore-edge", 0, mostClearance, &j.Clearance.Width),
		job.LengthOf("box.clearance_thickness", "what the small tray has beyond the book from the lining to the rim", 0, mostClearance, &j.Clearance.Thickness),
		job.LengthOf("box.room_height", "the room between the trays from head to tail, both ends together", 0.1, 5, &j.Room.Height),
		job.LengthOf("box.room_width", "the room between the trays at the fore-edge", 0.1, 5, &j.Room.Width),
		job.LengthOf("box.room_depth", "the room between the small tray's rim and the large tray's floor", 0, 5, &j.Room.Depth),
		job.LengthOf("box.under", "the cloth turned under the base", leastUnder, 60, &j.Under),
		job.LengthOf("box.onto_floor", "the cloth turned onto the floor", 5, 60, &j.OntoFloor),
		job.LengthOf("box.end_flap", "the cloth past the end of a wall at the open end", 3, 60, &j.EndFlap).OrAuto(),
		job.LengthOf("box.hinge", "what the hinge lies on each floor", leastHinge, 120, &j.Hinge),
		job.LengthOf("box.square", "what the case stands out at head, tail and fore-edge", 0.5, 12, &j.Square),
		job.LengthOf("box.turn_in", "the case cloth turned in", 4, 100, &j.TurnIn).OrAuto(),
		job.LengthOf("box.joint", "the gap between a case board and the spine", 0.5, 30, &j.Joint).OrAuto(),
		job.LengthOf("box.lining_gap", "what a floor lining stays back from the cloth on the walls", 0, 5, &j.LiningGap),
		job.LengthOf("box.lining_edge", "what a floor lining stays back from the open edge", 0, 5, &j.LiningEdge),
		job.WordOf(orderKey, "whether the large tray is cut to the covered small tray as measured, or all at once as planned", []string{AsMeasured, AsPlanned}, &j.Order),
		job.WordOf("box.filler", "whether a filler levels the case boards between the turn-ins", []string{NoFiller, Filled}, &j.Filler),
	}, append(j.builtSettings(), j.FitSettings()...)...)
}
