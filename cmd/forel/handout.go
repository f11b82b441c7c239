package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"

	"forel/cmd/jobfile"
	"forel/render/handout"
)

const aboutHandout = `
usage: forel handout [JOB.toml] [flags]

Writes handout.pdf into a folder, for someone who makes the case: the worksheet
with every piece and its size, drawings of the pieces, the steps in order, each
with a figure drawn from this job, when to dry, what to check, cautions. With the
prints of forel templates it is all that is needed.

With --blank it writes worksheet.pdf instead: the worksheet empty, with the rule
of every line, to be filled in by hand. It needs no job; what --set says of the
kind of case counts, and --units. It has no sizes of a book, no title and no
figures: flags that give them are refused.

example:
  forel handout case.toml --out case/
  forel handout --blank --units in --out case/
  forel handout --blank --set construction=card
`

// The files that forel handout writes.
const (
	handoutName   = "handout.pdf"
	worksheetName = "worksheet.pdf"
)

func runHandout(args []string, out io.Writer, say voice) error {
	f := flagSet("handout", aboutHandout, out)
	job := addJobFlags(f)
	folder := f.String("out", "handout", "`folder` to write into; made if it is not there")
	job.addPrint()
	blank := f.Bool("blank", false, "the worksheet alone and empty, to be filled in by hand")
	tints := f.Bool("tints", false, "tint board, cloth and paper in the figures; without, they are in greys")
	if err := parseFlags(f, args); err != nil {
		return err
	}
	if err := checkOut(f, *folder, "case/"); err != nil {
		return err
	}
	if *blank {
		if err := notBlank(f, job); err != nil {
			return err
		}
		job.assume()
	}
	l, err := job.load(say)
	if err != nil {
		return err
	}
	name, made := handoutName, handout.Booklet
	if *blank {
		name, made = worksheetName, handout.Worksheet
	}
	data, err := made(subjectOf(l), handout.Options{Options: l.printed(), Tinted: *tints})
	if err != nil {
		return failure{err, ""}
	}
	if err := writeInto(*folder, []output{{name, data}}); err != nil {
		return err
	}
	fmt.Fprint(out, wrote(*folder, name))
	return nil
}

// notBlank refuses flags that an empty worksheet has no use for.
func notBlank(f *pflag.FlagSet, job *jobFlags) error {
	var wrong []error
	for _, k := range keyFlags {
		if f.Changed(k.name) && k.key != "units" {
			wrong = append(wrong, refusal{"--" + k.name + " with --blank", "leave one of them out: the worksheet is filled in by hand"})
		}
	}
	for _, kv := range job.keys {
		key, _, _ := strings.Cut(kv, "=")
		if key = strings.TrimSpace(key); key == "title" || strings.HasPrefix(key, "book.") {
			wrong = append(wrong, refusal{"--set " + key + " with --blank", "leave one of them out: the worksheet is filled in by hand"})
		}
	}
	if f.Changed("tints") {
		wrong = append(wrong, refusal{"--tints with --blank", "leave one of them out: the empty worksheet has no figures"})
	}
	return errors.Join(wrong...)
}

// subjectOf gives what a handout is for: a case of boards or of card.
func subjectOf(l loaded) handout.Subject {
	if l.file.Construction == jobfile.Card {
		return handout.OfCard(l.card)
	}
	return handout.Of(l.boards)
}

// assumed is a book that stands in for one where none is given and no length of
// it is shown.
var assumed = []struct{ name, value string }{{"height", "220 mm"}, {"width", "150 mm"}, {"thickness", "30 mm"}}

// assume gives the job a book where it has none.
func (j *jobFlags) assume() {
	if j.example || len(j.set.Args()) > 0 {
		return
	}
	for _, a := range assumed {
		if v := j.values[a.name]; len(*v) == 0 {
			*v = []string{a.value}
		}
	}
}
