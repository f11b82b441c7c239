package roster

import (
	"slices"

	"forel/cmd/jobfile"
)

// common tells whether an issue is of what all rows have in common, the base or a
// flag.
func (t *table) common(i jobfile.Issue) bool {
	if i.Source != "" {
		return true // no row has a name
	}
	return slices.ContainsFunc(t.Flags, func(f jobfile.Flag) bool { return f.Name == i.Key })
}

// tally counts in how many rows an issue was found.
type tally struct {
	times map[jobfile.Issue]int
	order jobfile.Issues // as they were first met
}

func (c *tally) count(found jobfile.Issues, which func(jobfile.Issue) bool) {
	for _, i := range found {
		if !which(i) {
			continue
		}
		if c.times[i] == 0 {
			c.order = append(c.order, i)
		}
		c.times[i]++
	}
}

// inAll returns what was found in each of n rows.
func (c *tally) inAll(n int) (all jobfile.Issues) {
	for _, i := range c.order {
		if c.times[i] == n {
			all = append(all, i)
		}
	}
	return all
}
