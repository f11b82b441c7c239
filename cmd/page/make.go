package page

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"forel/cmd/pipeline"
	"forel/geometry/stage"
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
	Figures []string `json:"figures"`         // SVG
	Checks  []Check  `json:"checks,omitempty"`
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
		a.Pictures = &Pictures{Case: string(c.Picture()), Tightest: string(c.Tightest())}
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
		a.Steps = append(a.Steps, step)
	}
	return nil
}

// pages draws the pages of a document.
func (d *Desk) pages(a *Response, q Request) error {
	c, err := d.work(q.Source, q.Text)
	if err != nil {
		return err
	}
	drawn, err := c.Pages(q.Name)
	for _, p := range drawn {
		a.Pages = append(a.Pages, string(p))
	}
	return err
}

// make runs a command on the job.
func (d *Desk) make(ctx context.Context, a *Response, q Request, progress pipeline.Progress) error {
	command, err := commandOf(q, progress)
	if err != nil {
		return err
	}
	r, err := command.Make(ctx)
	if err != nil {
		return err
	}
	a.Report, a.Notes, a.Print = string(r.Report), r.Notes, r.Print.File
	for _, f := range r.Files {
		a.Files = append(a.Files, File{Name: f.Name, Type: media(f.Name), Data: f.Data})
	}
	return nil
}

// commands are the commands by name, with their usual settings.
var commands = map[string]func(pipeline.Progress) pipeline.Command{
	"templates": func(pipeline.Progress) pipeline.Command { return &pipeline.Templates{} },
	"gauge":     func(pipeline.Progress) pipeline.Command { return &pipeline.Gauge{} },
	"cutlist":   func(pipeline.Progress) pipeline.Command { return &pipeline.Cutlist{} },
	"handout":   func(pipeline.Progress) pipeline.Command { return &pipeline.Handout{} },
	"stock":     func(p pipeline.Progress) pipeline.Command { return &pipeline.Stock{Progress: p} },
	"cutter":    func(pipeline.Progress) pipeline.Command { c := pipeline.DefaultCutter(); return &c },
	"prove":     func(pipeline.Progress) pipeline.Command { return &pipeline.Prove{} },
	"fit":       func(pipeline.Progress) pipeline.Command { return &pipeline.Fit{} },
}

// commandOf returns the command that is asked for, with the job for what it reads.
func commandOf(q Request, progress pipeline.Progress) (pipeline.Command, error) {
	fresh, ok := commands[q.Name]
	if !ok {
		var names []string
		for n := range commands {
			names = append(names, n)
		}
		slices.Sort(names)
		return nil, fmt.Errorf("unknown command %.40q: give %s", q.Name, strings.Join(names, ", "))
	}
	c := fresh(progress)
	if len(q.Settings) > 0 {
		d := json.NewDecoder(bytes.NewReader(q.Settings))
		d.DisallowUnknownFields()
		if err := d.Decode(c); err != nil {
			return nil, fmt.Errorf("settings of %s: %w", q.Name, err)
		}
	}
	c.(pipeline.Reads).From(pipeline.File{Name: q.Source, Data: []byte(q.Text)})
	return c, nil
}
