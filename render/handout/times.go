package handout

import (
	"fmt"
	"strings"
	"time"

	"forel/geometry/plan"
	"forel/geometry/work"
)

// night is how long something dries that is left overnight (common practice, no source).
const night = 6 * time.Hour

// ownTimes is what is said of times; that they are common practice stands among the sources.
const ownTimes = "Times are habits, not facts: write your own under [times] in the job file."

// times returns how long work and drying take.
func (o Options) times() work.Times {
	if o.Times == nil {
		return work.UsualTimes()
	}
	return o.Times
}

// timeOf tells how long a step takes at the bench and what then dries how long: "paste them
// on, 20 min; dries 12 h at least (the paste of the linings, under boards and a weight)". It is
// empty where a step takes no time.
func (d *doc) timeOf(s plan.Step) string {
	var parts []string
	for i, spell := range s.Spells {
		if worked := d.takes.Of(spell); worked > 0 {
			words := work.Show(worked)
			if spell.Says != "" {
				words = spell.Says + ", " + words
			}
			parts = append(parts, words)
		}
		switch dries := d.takes.Drying(spell); {
		case spell.Wet && i == len(s.Spells)-1:
			parts = append(parts, "go on at once, while it is wet")
		case !spell.Wet && dries > 0:
			parts = append(parts, fmt.Sprintf("dries %s at least (%s)", work.Show(dries), spell.Dries.Words()))
		}
	}
	return strings.Join(parts, "; ")
}

// timeBriefly tells how long a step takes, and the longest that something of it dries: "20 min,
// dries 12 h"; or the drying alone.
func (d *doc) timeBriefly(s plan.Step, dryingAlone bool) string {
	var parts []string
	var dries time.Duration
	for _, spell := range s.Spells {
		if !spell.Wet {
			dries = max(dries, d.takes.Drying(spell))
		}
	}
	if worked := d.takes.Of(s.Spells...); worked > 0 && !dryingAlone {
		parts = append(parts, work.Show(worked))
	}
	if dries > 0 {
		parts = append(parts, "dries "+work.Show(dries))
	}
	return strings.Join(parts, ", ")
}

// allTime tells what the work comes to.
func (d *doc) allTime() string {
	var sum time.Duration
	for _, s := range d.plan.Steps {
		sum += d.takes.Of(s.Spells...)
	}
	return "All steps together: " + work.Show(sum) + " of work at the bench."
}

// overnight tells what must dry overnight; nothing where nothing must.
func (d *doc) overnight() []string {
	var over []string
	for i, s := range d.plan.Steps {
		for _, spell := range s.Spells {
			if !spell.Wet && d.takes.Drying(spell) >= night {
				over = append(over, fmt.Sprintf("%s (step %d)", spell.Dries.What, i+1))
			}
		}
	}
	if over == nil {
		return nil
	}
	return []string{"Overnight dry: " + strings.Join(over, "; ") + "."}
}
