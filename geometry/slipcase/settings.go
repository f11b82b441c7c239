package slipcase

import "forel/geometry/job"

// Shared returns what jobs of every kind have.
func (j *Job) Shared() *job.Common { return &j.Common }

// Settings returns every setting of a job in the order of a job file. The limits
// are generous; what fits together is for Check.
func (j *Job) Settings() job.Settings {
	own := job.Settings{
		job.WordOf("compartments", "how several volumes stand in the case", []string{OneCompartment, EachItsOwn}, &j.Compartments),
		job.WordOf("covering", "what the case is covered with", []string{ClothAndPaper, AllCloth, AllPaper, SidesOnly}, &j.Covering),
		job.LengthOf("board.thickness", "the board's thickness", 0.5, 6, &j.Board.Thickness),
		job.BoardKnown(&j.Board.Known),
		job.LengthOf("lining.thickness", "the lining paper's thickness, 0 for none", 0, 1, &j.Lining.Thickness),
		job.LengthOf("lining.trim", "what a lining is cut beyond its board", 0, 50, &j.Lining.Trim),
		job.WordOf("lining.order", "whether linings go in before or after the boards are joined", []string{LinedBefore, LinedAfter}, &j.Lining.Order),
		job.LengthOf("cloth.thickness", "the cloth's thickness", 0.05, 1.5, &j.Cloth.Thickness),
		job.LengthOf("cloth.overlap", "the cloth's margin on the sides", 5, 100, &j.Cloth.Overlap),
		job.LengthOf("cloth.turn_in", "the cloth turned over head and tail", 5, 100, &j.Cloth.TurnIn),
		job.LengthOf("cloth.mouth_turn_in", "the cloth turned in at the mouth", 5, 100, &j.Cloth.MouthTurnIn),
		job.LengthOf("cloth.spine_gap", "the gap from the spine edge to head and tail cloth", 0, 25, &j.Cloth.SpineGap),
		job.LengthOf("cloth.corner_distance", "how far from the corner a wedge stops", 1, 25, &j.Cloth.CornerDistance),
		job.WordOf("cloth.corners", "whether wedges, slits and tabs are cut by the template, or marked and cut on the case", []string{CornersCut, CornersMarked}, &j.Cloth.Corners),
		job.PercentOf("cloth.stretch", "how much the cloth grows across the grain when glued", 0, 5, &j.Cloth.Stretch),
		job.LengthOf("side_paper.thickness", "the side paper's thickness", 0.03, 1, &j.SidePaper.Thickness),
		job.LengthOf("side_paper.inset", "the side paper's inset", 0.5, 60, &j.SidePaper.Inset),
		job.LengthOf("side_paper.turn_in", "the side paper beyond the mouth", 3, 100, &j.SidePaper.TurnIn),
		job.PercentOf("side_paper.stretch", "how much the side paper grows across the grain when glued", 0, 5, &j.SidePaper.Stretch),
	}
	own = append(own, j.Pattern.settings(coveringPattern)...)
	own = append(own, j.LiningPattern.settings(liningPattern)...)
	own = append(own,
		job.LengthOf("thumb_hole.radius", "the thumb hole's radius, or how deep a triangle goes", 6, 60, &j.ThumbHole.Radius).OrAuto(),
		job.WordOf("thumb_hole.shape", "the thumb hole in both sides", []string{NoHole, Semicircle, Triangle}, &j.ThumbHole.Shape),
		job.LengthOf("divider.set_back", "how far a divider stands back from the mouth", 0, 60, &j.Divider.SetBack),
		job.LengthOf("divider.lap", "the strip round a divider's mouth edge on each face", 4, 60, &j.Divider.Lap),
	)
	own = append(own, j.builtSettings()...)
	return append(own, j.Common.Settings()...)
}

// The tables of a job file that tell of a pattern.
const (
	coveringPattern = "pattern"
	liningPattern   = "lining_pattern"
)

// settings returns those of a pattern, in its table of a job file.
func (p *Pattern) settings(table string) job.Settings {
	spine, tail := "the spine edge of a side", "the tail edge of a side"
	if table == liningPattern {
		spine, tail = "the inner corner of a side and the spine wall", "the inner corner at the tail"
	}
	return job.Settings{
		job.LengthOf(table+".repeat_across", "how far on the pattern comes again across the grain, 0 for not at all", 0, 1000, &p.Across),
		job.LengthOf(table+".repeat_along", "how far on the pattern comes again along the grain, 0 for not at all", 0, 1500, &p.Along),
		job.LengthOf(table+".from_spine", "where a line of the pattern falls, from "+spine, 0, 700, &p.FromSpine),
		job.LengthOf(table+".from_tail", "where a line of the pattern falls, from "+tail, 0, 700, &p.FromTail),
		job.WordOf(table+".direction", "whether the pattern has a top", []string{AnyWay, OneWay}, &p.Direction),
		job.WordOf(table+".match", "what of the pattern lines up", []string{MatchNothing, MatchHeight, MatchMirrored, MatchRound}, &p.Match),
	}
}
