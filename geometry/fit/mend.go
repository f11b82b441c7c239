package fit

import (
	"math"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
	"forel/geometry/wording"
)

// Once is the chance of a fit that is too tight, or too loose, that a maker can
// live with: 1 case in 50 (common practice, no source).
const Once = 1.0 / 50

// Setting is a key of the job file and what to set it to: a length, or a word.
type Setting struct {
	Key   string
	Value Length
	Word  string // "" for a length
}

// Mend is something to do about the fit, by itself.
type Mend struct {
	What    plan.Remark // a sentence, without capital and full stop
	Sets    []Setting   // what to write in the job file when it is done
	Chance  Chance      // of the whole case afterwards
	Enough  bool        // that is no more than Once, too tight or too loose
	Advised bool        // the first that is enough, where the job as it is is not
}

// What careful work brings an uncertainty down to (common practice, no source).
const (
	careful     Length = 0.15 // a reading between two squares, or with a caliper
	carefulStep Length = 0.1
	testCut     Length = 0.15 // a strip cut for a try, measured, and the fence set again
	carefulSet  Length = 0.1  // walls set against a square block
)

// mends gives what can be done, the least effort first: measuring costs minutes
// before anything is cut, a true setting of the fence costs care, more clearance
// costs nothing but fit. Each is tried by itself; all of them together only
// where none is enough.
func (s subject) mends(r Report) []Mend {
	var out []Mend
	all, allSets := s, []Setting(nil)
	try := func(what plan.Remark, change func(*slipcase.Uncertainty), sets ...Setting) {
		change(&all.job.Uncertainty)
		allSets = append(allSets, sets...)
		t := s
		change(&t.job.Uncertainty)
		out = append(out, t.tried(what, sets))
	}
	u, card := s.job.Uncertainty, s.card != nil
	ofCard := func(boards, card string) string {
		if s.card != nil {
			return card
		}
		return boards
	}
	if low, high, _ := boardRange(s.thick, u, card); high-low > 2*measured+1e-9 {
		try(plan.Say("measure the "+ofCard("board", "card")+" with a caliper, several layers together: it alone moves the fit by %s", r.moves("uncertainty.board")),
			func(u *slipcase.Uncertainty) { u.Board = measured }, Setting{Key: "uncertainty.board", Value: measured})
	}
	if u.Measuring > careful || u.ReadingStep > carefulStep {
		m, step := min(u.Measuring, careful), min(u.ReadingStep, carefulStep)
		try(plan.Say("measure the book again, between two squares or with a caliper, and write down every %s: the measuring moves the fit by %s", step, r.moves("uncertainty.measuring")),
			func(u *slipcase.Uncertainty) { u.Measuring, u.ReadingStep = m, step },
			Setting{Key: "uncertainty.measuring", Value: m}, Setting{Key: "uncertainty.reading_step", Value: step})
	}
	if u.Settings == slipcase.EachBySelf && !card {
		try(plan.Say("cut the walls off one strip at one setting of the fence, sides and spine wall at another"),
			func(u *slipcase.Uncertainty) { u.Settings = slipcase.OneSetting }, Setting{Key: "uncertainty.settings", Word: slipcase.OneSetting})
	}
	if u.Cutting > testCut {
		try(plan.Say(ofCard("at each setting cut a strip for a try, measure it and set the fence again, true to %s",
			"mark, score and fold a strip for a try, measure it and correct the marks, true to %s"), testCut),
			func(u *slipcase.Uncertainty) { u.Cutting = testCut }, Setting{Key: "uncertainty.cutting", Value: testCut})
	}
	if u.Placing > carefulSet && !card {
		try(plan.Say("set the walls flush with the edges against a square block, true to %s", carefulSet),
			func(u *slipcase.Uncertainty) { u.Placing = carefulSet }, Setting{Key: "uncertainty.placing", Value: carefulSet})
	}
	if r.Enough() {
		return out
	}
	if m, ok := s.roomier(r.Gaps); ok {
		out = append(out, m)
	}
	advised := false // the first that is enough
	for i := range out {
		if out[i].Enough && !advised {
			out[i].Advised, advised = true, true
		}
	}
	if advised || len(out) < 2 {
		return out
	}
	gaps, _ := all.gaps()
	last := all.tried(plan.Say("do all of it, with the clearance as it is"), allSets)
	if m, ok := all.roomier(gaps); ok {
		m.What.Text = "do all of it, but " + m.What.Text
		m.Sets = append(allSets, m.Sets...)
		last = m
	}
	last.Advised = last.Enough
	return append(out, last)
}

// tried makes a mend of a job as it is changed.
func (s subject) tried(what plan.Remark, sets []Setting) Mend {
	gaps, _ := s.gaps()
	c := settled(gaps)
	return Mend{What: what, Sets: sets, Chance: c, Enough: enough(c)}
}

// moves gives how far an error can move the clearance that it moves most, from
// end to end.
func (r Report) moves(key string) Length {
	var most Length
	for _, e := range r.Errors {
		for _, f := range e.Effects {
			if e.Key == key {
				most = max(most, f.Moves())
			}
		}
	}
	return most
}

// enough tells whether a case is neither too tight nor too loose more than
// Once.
func enough(c Chance) bool { return c.Tight <= Once && c.Loose <= Once }

// Enough tells whether the case as it is is neither too tight nor too loose more
// than Once.
func (r Report) Enough() bool { return enough(r.Settled) }

// roomier gives the clearances that bring a case that is too tight, or too
// loose, too often to no more than Once. The dimension that is most often too
// tight is made roomier first, by as little as a maker can set, then the one that
// is so then; likewise the other way for dimensions that were not.
func (s subject) roomier(gaps []Gap) (Mend, bool) {
	now := append([]Gap(nil), gaps...)
	tightest := Tightest(gaps)
	by := map[Dimension]Length{}
	move := func(d Dimension, up bool) {
		_, l := clearanceOf(d, &s.job)
		to := onGrid(*l+by[d]+smallStep(up, s.job.Unit), up, s.job.Unit)
		step := max(0, to) - *l - by[d]
		by[d] += step
		for i, g := range now {
			if g.Dimension == d {
				now[i].Distribution.Mean += step
				now[i].Chance = now[i].chance()
			}
		}
	}
	for _, tight := range []bool{true, false} { // what was made roomier stays so
		for range mostSteps {
			c, worst, most := settled(now), -1, 0.0
			if tight && c.Tight <= Once || !tight && c.Loose <= Once {
				break
			}
			for i, g := range now {
				p, here := g.Chance.Loose, g.Place == Body && by[g.Dimension] <= 0
				if tight {
					p, here = g.Chance.Tight, tightest[i]
				}
				if here && p > most {
					worst, most = i, p
				}
			}
			if worst < 0 {
				break
			}
			move(now[worst].Dimension, tight)
		}
	}
	var parts []string
	var lengths []Length
	var sets []Setting
	for _, d := range []Dimension{Height, Depth, Thickness} {
		if by[d] == 0 {
			continue
		}
		key, l := clearanceOf(d, &s.job)
		*l += by[d]
		parts, lengths, sets = append(parts, key+" to %s"), append(lengths, *l), append(sets, Setting{Key: key, Value: *l})
	}
	if len(parts) == 0 {
		return Mend{}, false
	}
	return s.tried(plan.Say("set "+wording.And(parts), lengths...), sets), true
}

// mostSteps is how many steps of clearance are tried.
const mostSteps = 600

// clearanceOf gives the key of a dimension's clearance and where it is kept.
func clearanceOf(d Dimension, j *slipcase.Job) (string, *Length) {
	switch d {
	case Height:
		return "clearance.height", &j.Clearance.Height
	case Depth:
		return "clearance.width", &j.Clearance.Width
	}
	return "clearance.thickness", &j.Clearance.Thickness
}

// grid is the step in which a maker sets a clearance: a tenth of a millimetre
// or a 64th of an inch.
func grid(u geometry.Unit) Length {
	if u == geometry.IN {
		return geometry.Inch / 64
	}
	return 0.1
}

// smallStep is a little up or down, enough to leave the grid's line.
func smallStep(up bool, u geometry.Unit) Length {
	if up {
		return grid(u) / 100
	}
	return -grid(u) / 100
}

// onGrid gives the next length up, or down, that a maker can set.
func onGrid(l Length, up bool, u geometry.Unit) Length {
	n := float64(l / grid(u))
	if up {
		return Length(math.Ceil(n)) * grid(u)
	}
	return Length(math.Floor(n)) * grid(u)
}
