package page

import (
	"fmt"

	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/wording"
)

// Pictures are the drawings of a case.
type Pictures struct {
	Case     string `json:"case"`     // SVG
	Tightest string `json:"tightest"` // SVG; its numbers are those of Gap.Chain
}

// Step is one step of the work.
type Step struct {
	Title   string   `json:"title"`
	Short   string   `json:"short,omitempty"` // in a sentence or two
	Text    []string `json:"text"`            // paragraph by paragraph
	Figures int      `json:"figures"`         // how many there are
	Checks  []Check  `json:"checks,omitempty"`
	Care    []string `json:"care,omitempty"` // cautions for the work of this step
}

// Check is what to try before the next step.
type Check struct {
	Name  string     `json:"name"`
	When  string     `json:"when"`
	See   []string   `json:"see"`
	Fails string     `json:"fails,omitempty"`
	Found [][]string `json:"found,omitempty"` // what may be found, what it means, what to do
}

// pictures draws the case of a job.
func (d *Desk) pictures(a *Response, q Request) error {
	c, err := d.work(q)
	if err == nil {
		a.Pictures = &Pictures{Case: string(c.Picture()), Tightest: string(c.Tightest())}
	}
	return err
}

// steps tells how the case of a job is made.
func (d *Desk) steps(a *Response, q Request) error {
	c, err := d.work(q)
	if err != nil {
		return err
	}
	said := func(s stage.Say) string { return onPage(s.In(c.Round.Pretty)) }
	for _, s := range c.Plan.Steps {
		step := Step{Title: s.Title, Short: said(s.Short), Text: []string{}}
		for _, t := range s.Text {
			step.Text = append(step.Text, said(t))
		}
		for _, row := range s.Pictures {
			step.Figures += len(row)
		}
		for _, k := range s.Checks {
			check := Check{Name: k.Name, When: k.When, Fails: said(k.Fails), Found: plan.Told(k.Found, c.Round.Pretty)}
			for _, see := range k.See {
				check.See = append(check.See, said(see))
			}
			step.Checks = append(step.Checks, check)
		}
		step.Care = wording.CareFor(append(step.Text, s.Title)...)
		a.Steps = append(a.Steps, step)
	}
	return nil
}

// figures draws the pictures of a step.
func (d *Desk) figures(a *Response, q Request) error {
	c, err := d.work(q)
	if err != nil {
		return err
	}
	if n := len(c.Plan.Steps); q.Step < 0 || q.Step >= n {
		return fmt.Errorf("no step %d: there are %d", q.Step, n)
	}
	for _, f := range c.Figures(q.Step) {
		a.Figures = append(a.Figures, string(f))
	}
	return nil
}
