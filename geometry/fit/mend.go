package fit

import (
	"math"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/wording"
)

// Once is the chance of a fit that is too tight, or too loose, that a maker can
// live with: 1 case in 50 (common practice, no source).
const Once = 1.0 / 50

// Mend is something to do about the fit, by itself.
type Mend struct {
	What    plan.Remark  // a sentence, without capital and full stop
	Sets    []job.Change // what to write in the job file when it is done
	Chance  Chance       // of the whole case afterwards
	Advised bool         // the first that is enough, where the job as it is is not
}

// Better is the least that more cases must be snug for a mend to be worth telling of
// (common practice, no source).
const Better = 0.005

// mends returns what can be done, the least effort first: what the chain tells of,
// each by itself, then clearance, changed when the materials are measured. All of it
// together comes last, where nothing else is enough.
func (r Report) mends(c plan.Chain) []Mend {
	var out []Mend
	done := r.Settled.Enough()
	add := func(m Mend) {
		told := slices.ContainsFunc(out, func(o Mend) bool { return slices.Equal(o.Sets, m.Sets) })
		if told || m.Chance.Snug < r.Settled.Snug+Better {
			return
		}
		m.Advised = m.Chance.Enough() && !done
		done = done || m.Advised
		out = append(out, m)
	}
	var before []plan.Mend
	for _, m := range c.Mends {
		what := m.What
		if m.Moves != "" {
			what = plan.Say(what.Text+": it alone moves the fit by %s", append(slices.Clone(what.Lengths), r.moves(m.Moves))...)
		}
		add(tried(c, what, m.Sets))
		if m.Before {
			before = append(before, m)
		}
	}
	if done {
		return out
	}
	add(with(c, before))
	if !done {
		add(with(c, c.Mends))
	}
	return out
}

// with makes a mend of all of some mends, and of the clearance that is then needed.
func with(c plan.Chain, mends []plan.Mend) Mend {
	var what []string
	var lengths []Length
	var sets []job.Change
	for _, m := range mends {
		what, lengths, sets = append(what, m.What.Text), append(lengths, m.What.Lengths...), append(sets, m.Sets...)
	}
	gaps, _ := gapsOf(c.With(sets))
	if room := roomier(c.With(sets), gaps); len(room) > 0 {
		set := setting(room)
		what, lengths, sets = append(what, set.Text), append(lengths, set.Lengths...), append(sets, room...)
	}
	return tried(c, plan.Say(strings.Join(what, "; then "), lengths...), sets)
}

// tried makes a mend of changes to a job.
func tried(c plan.Chain, what plan.Remark, sets []job.Change) Mend {
	return Mend{What: what, Sets: sets, Chance: Chances(c.With(sets), nil)}
}

// moves returns how far an error can move the gap that it moves most, from end
// to end.
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

// roomier returns the clearances that bring a case that is too tight, or too
// loose, too often to no more than Once. The dimension that is most often too
// tight is made roomier first, by as little as a maker can set, then the one that
// is so then; likewise the other way for dimensions that were not.
func roomier(c plan.Chain, gaps []Gap) []job.Change {
	now := append([]Gap(nil), gaps...)
	by := map[string]Length{}
	clearance, fixed := map[string]Length{}, map[string]bool{}
	for _, d := range c.Dimensions {
		clearance[d.Name], fixed[d.Name] = d.Clearance, d.Key == ""
	}
	move := func(d string, up bool) {
		is, little := clearance[d]+by[d], grid(c.Unit)/100 // enough to leave the grid's line
		if !up {
			little = -little
		}
		by[d] += max(0, onGrid(is+little, up, c.Unit)) - is
		for i, g := range now {
			if g.Dimension == d {
				now[i].Distribution.Mean = gaps[i].Distribution.Mean + by[d]
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
				p, here := g.Chance.Loose, by[g.Dimension] <= 0
				if tight {
					p, here = g.Chance.Tight, g.Decides
				}
				if here && !fixed[g.Dimension] && p > most {
					worst, most = i, p
				}
			}
			if worst < 0 {
				break
			}
			move(now[worst].Dimension, tight)
		}
	}
	var sets []job.Change
	for _, d := range c.Dimensions {
		if by[d.Name] != 0 {
			sets = append(sets, job.Change{Key: d.Key, Value: d.Clearance + by[d.Name]})
		}
	}
	return sets
}

// setting says which lengths are set.
func setting(sets []job.Change) plan.Remark {
	parts, lengths := make([]string, len(sets)), make([]Length, len(sets))
	for i, s := range sets {
		parts[i], lengths[i] = s.Key+" to %s", s.Value
	}
	return plan.Say("set "+wording.And(parts), lengths...)
}

// mostSteps is how many steps of clearance are tried.
const mostSteps = 600

// grid is the step in which a maker sets a clearance: a tenth of a millimetre
// or a 32nd of an inch.
func grid(u geometry.Unit) Length { return job.Round(u, 0.1, 1./32) }

// onGrid returns the next length up, or down, that a maker can set.
func onGrid(l Length, up bool, u geometry.Unit) Length {
	n := float64(l / grid(u))
	if up {
		return Length(math.Ceil(n)) * grid(u)
	}
	return Length(math.Floor(n)) * grid(u)
}
