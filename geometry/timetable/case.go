package timetable

import (
	"forel/geometry/plan"
	"forel/geometry/work"
)

// Case is a case that is to be made: its work in the order that it is done in.
type Case struct {
	Name   string
	Blocks []Block
	Parted []Parted // work that is longer than the bench is open at a stretch
}

// Block is work that is not put down once begun, and what must dry before the next.
type Block struct {
	Parts []Part
	Dries work.Drying
	Dry   int // minutes that it must dry for at least
}

// Part is the part of a block that is of one step.
type Part struct {
	Step  int    // its number, from 1
	Title string // of the step, and what is done of it
	Work  int    // minutes
}

// Parted is work that had to be parted.
type Parted struct {
	Title      string
	Work, Open int // minutes: of the work, and that the bench is open at a stretch
}

// Work returns the minutes of work of a block.
func (b Block) Work() (sum int) {
	for _, p := range b.Parts {
		sum += p.Work
	}
	return sum
}

// Work returns the minutes of work of a case.
func (c Case) Work() (sum int) {
	for _, b := range c.Blocks {
		sum += b.Work()
	}
	return sum
}

// Drying returns the minutes of drying of a case.
func (c Case) Drying() (sum int) {
	for _, b := range c.Blocks {
		sum += b.Dry
	}
	return sum
}

// Of returns a case with the work of its steps. What is done while glue is wet makes one
// block.
func Of(name string, steps []plan.Step, times work.Times) Case {
	c := Case{Name: name}
	wet := false
	for i, s := range steps {
		for _, spell := range s.Spells {
			title := s.Title
			if spell.Says != "" {
				title += ": " + spell.Says
			}
			part := Part{Step: i + 1, Title: title, Work: work.Minutes(times.Of(spell))}
			if !wet {
				c.Blocks = append(c.Blocks, Block{})
			}
			b := &c.Blocks[len(c.Blocks)-1]
			b.Parts = append(b.Parts, part)
			b.Dries, b.Dry = spell.Dries, work.Minutes(times.Drying(spell))
			wet = spell.Wet
		}
	}
	return c
}

// parted returns the case with work in blocks that are done while the bench is open.
func (c Case) parted(open int) Case {
	out := Case{Name: c.Name}
	for _, b := range c.Blocks {
		if b.Work() <= open {
			out.Blocks = append(out.Blocks, b)
			continue
		}
		out.Parted = append(out.Parted, Parted{b.Parts[0].Title, b.Work(), open})
		left := open
		var now Block
		for _, p := range b.Parts {
			for p.Work > left {
				if left > 0 {
					now.Parts = append(now.Parts, Part{p.Step, p.Title, left})
				}
				out.Blocks = append(out.Blocks, now)
				now, p.Work, left = Block{}, p.Work-left, open
			}
			now.Parts = append(now.Parts, p)
			left -= p.Work
		}
		now.Dries, now.Dry = b.Dries, b.Dry
		out.Blocks = append(out.Blocks, now)
	}
	return out
}
