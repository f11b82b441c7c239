package plan

import (
	"slices"

	"forel/geometry/job"
)

// mostRounds is how often a job is changed and checked again before it is given up.
const mostRounds = 20

// Mended returns the problems of a job that was refused, so that the job with the
// changes of all of them together is accepted: a change can bring up another problem,
// which is told with them, or ask for more of one of them. The job with the changes is
// returned too. Where no such changes are found, the problems are as they were and there
// is no job.
func (k Kind) Mended(j Job, refused job.Problems) (told job.Problems, mended Job) {
	trial, now := k.copied(j), refused
	told = slices.Clone(refused)
	for range mostRounds {
		for _, p := range now {
			if p.Mend.Key == "" {
				return refused, nil
			}
			known := false
			for i := range told {
				if told[i].Mend.Key == p.Mend.Key {
					told[i].Fix, told[i].Mend, known = p.Fix, p.Mend, true
				}
			}
			if !known {
				p.Reason = "then " + p.Reason
				told = append(told, p)
			}
			if trial.Shared().Measure(p.Mend) {
				continue
			}
			if _, known := trial.Settings().Find(p.Mend.Key); !known { // it makes another kind of the job
				return refused, nil
			}
			trial.Settings().Apply([]job.Change{p.Mend})
		}
		if _, now, _ = trial.Check(); len(now) == 0 {
			return once(told), trial
		}
	}
	return refused, nil
}

// once returns problems, each once: two of one setting can come to the same.
func once(ps job.Problems) (out job.Problems) {
	for _, p := range ps {
		if !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// copied returns a job of its own with the same settings.
func (k Kind) copied(j Job) Job {
	c := k.New(j.Shared().Unit)
	*c.Shared() = *j.Shared()
	c.Settings().Take(j.Settings())
	return c
}
