package jobfile

import (
	"slices"
	"strings"

	"forel/geometry/job"
)

// Adopted returns the text of the shop file with habits set: keys of a job file that are not
// of one book. The shop may be nil. An error of type Issues tells what keeps them from being
// set.
func (s *Shop) Adopted(habits []Change) ([]byte, error) {
	for _, c := range habits {
		table, _, _ := strings.Cut(c.Key, ".")
		if of, _, listed := strings.Cut(table, "["); listed || c.Gone || c.Swap != "" || lists[of].most > 0 || slices.Contains(notHabits, of) || !Known(c.Key) {
			return nil, Issues{{Source: s.named(), Problem: job.Problem{Key: c.Key, Reason: "is no habit", Fix: "set it in the job file"}}}
		}
	}
	data, err := shopWords.changed(s.named(), s.begun(), habits)
	if err != nil {
		return nil, err
	}
	_, err = ReadShop(s.named(), data)
	return data, err
}

// Habit returns what the shop file has for a key of a job file, as typed; "" where it has
// nothing. The shop may be nil.
func (s *Shop) Habit(key string) string {
	if s == nil {
		return ""
	}
	return s.r.file[key].typed()
}
