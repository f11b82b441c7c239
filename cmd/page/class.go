package page

import (
	"bytes"
	"context"
	"fmt"
	"strings"

	"forel/cmd/pipeline"
	"forel/geometry"
	"forel/geometry/wording"
)

// Student is a row of a roster as it comes out.
type Student struct {
	Name     string  `json:"name"`
	Title    string  `json:"title"`
	Line     int     `json:"line"` // of the roster
	Says     string  `json:"says,omitempty"`
	Advice   string  `json:"advice,omitempty"`
	Risk     bool    `json:"risk,omitempty"`    // it may well be too tight or too loose
	Picture  string  `json:"picture,omitempty"` // of the finished case, SVG
	Faults   []Fault `json:"faults,omitempty"`  // why it can't be made
	Warnings []Fault `json:"warnings,omitempty"`
}

// classFolder is where the files of a class stand in their zip, as the command line has it.
const classFolder = "class/"

// classOf returns the class of a request.
func classOf(q Request) pipeline.Class {
	if q.Name == "" {
		q.Name = "roster.csv"
	}
	c := pipeline.Class{Source: pipeline.Source{Files: []pipeline.File{{Name: q.Name, Data: q.Data}}, Shop: q.shop()}, Workers: 1}
	if q.Text != "" {
		c.Base = &pipeline.File{Name: q.Source, Data: []byte(q.Text)}
	}
	return c
}

// lookAtRoster tells how every student's case comes out.
func lookAtRoster(ctx context.Context, a *Response, q Request, progress pipeline.Progress) error {
	roll, err := classOf(q).Read()
	if err != nil {
		return err
	}
	roll.Look(ctx, progress)
	a.Students = studentsOf(roll)
	return nil
}

func studentsOf(roll *pipeline.Roll) []Student {
	out := make([]Student, len(roll.Students))
	for i, s := range roll.Students {
		f := s.Fit()
		out[i] = Student{Name: s.Name, Title: s.Title, Line: s.Line, Says: wording.Sentence(f.Says), Advice: wording.Sentence(f.Advice), Risk: f.Risk, Picture: string(s.Picture)}
		if s.Refused != nil { // of type Issues, it would never be nil as an error
			out[i].Faults = faultsOf(s.Refused, geometry.MM)
		}
		if s.Err != nil {
			out[i].Faults = append(out[i].Faults, Fault{Says: s.Err.Error()})
		}
		if s.Suspects != nil {
			out[i].Warnings = faultsOf(s.Suspects, geometry.MM)
		}
	}
	return out
}

// classZip is the shelf of a class: a zip, and what is to be bound.
type classZip struct {
	*packer
	pdfs map[string][]byte
}

// Has tells that nothing is made yet.
func (z *classZip) Has(string, string) bool { return false }

// Put puts files into the zip.
func (z *classZip) Put(folder, _ string, files []pipeline.File) error {
	if folder != "" {
		folder += "/"
	}
	for _, f := range files {
		z.add(classFolder+folder+f.Name, f.Data)
		if strings.HasSuffix(f.Name, ".pdf") {
			z.pdfs[folder+f.Name] = f.Data
		}
	}
	return z.err
}

// makeClass makes the files of a class, as forel class does.
func makeClass(ctx context.Context, a *Response, q Request, progress pipeline.Progress) error {
	roll, err := classOf(q).Read()
	if err != nil {
		return err
	}
	const students = 0.8 // what they take of the time, about
	z := &classZip{newPacker(), map[string][]byte{}}
	if err := roll.Make(ctx, z, progress.Part(0, students)); err != nil {
		return err
	}
	a.Students = studentsOf(roll)
	if len(roll.Done()) == 0 {
		return nil
	}
	warnings, unplanned, err := roll.Finish(ctx, z, progress.Part(students, 1))
	if err != nil {
		return err
	}
	if warnings != nil {
		a.Warnings = faultsOf(warnings, geometry.MM)
	}
	if unplanned != nil {
		a.Warnings = append(a.Warnings, faultsOf(unplanned, geometry.MM)...)
		if len(a.Warnings) == 0 {
			a.Warnings = []Fault{{Says: fmt.Sprintf("the sheets could not be planned: %v", unplanned)}}
		}
	}
	var bound bytes.Buffer
	if err := roll.Bind(&bound, func(folder, name string) ([]byte, error) { return z.pdfs[folder+"/"+name], nil }); err != nil {
		return err
	}
	z.add(classFolder+pipeline.PrintName, bound.Bytes())
	data, err := z.bytes()
	a.Files = []File{{Name: "class.zip", Type: media(".zip"), Data: data}, {Name: pipeline.PrintName, Type: media(".pdf"), Data: bound.Bytes()}}
	return err
}
