package page

import (
	"forel/geometry/stage"
	"forel/geometry/wording"
)

// Pictures are the drawings of a case.
type Pictures struct {
	Case string `json:"case"` // SVG
}

// Step is one step of the work.
type Step struct {
	Title   string   `json:"title"`
	Short   string   `json:"short,omitempty"` // in a sentence or two
	Text    []string `json:"text"`            // paragraph by paragraph
	Figures []string `json:"figures"`         // SVG
	Checks  []Check  `json:"checks,omitempty"`
	Care    []string `json:"care,omitempty"` // cautions for the work of this step
}

// Check is what to try before the next step.
type Check struct {
	Name  string   `json:"name"`
	When  string   `json:"when"`
	See   []string `json:"see"`
	Fails string   `json:"fails"`
}

// pictures draws the case of a job.
func (d *Desk) pictures(a *Response, q Request) error {
	c, err := d.work(q.Source, q.Text)
	if err == nil {
		a.Pictures = &Pictures{Case: string(c.Picture())}
	}
	return err
}

// steps tells how the case of a job is made.
func (d *Desk) steps(a *Response, q Request) error {
	c, err := d.work(q.Source, q.Text)
	if err != nil {
		return err
	}
	said := func(s stage.Say) string { return s.In(c.Round().Pretty) }
	figures := c.Figures()
	for i, s := range c.Plan().Steps {
		step := Step{Title: s.Title, Short: said(s.Short), Text: []string{}, Figures: []string{}}
		for _, t := range s.Text {
			step.Text = append(step.Text, said(t))
		}
		for _, f := range figures[i] {
			step.Figures = append(step.Figures, string(f))
		}
		for _, k := range s.Checks {
			check := Check{Name: k.Name, When: k.When, Fails: said(k.Fails)}
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
