package main

import (
	"fmt"
	"io"

	"forel/cmd/jobfile"
	"forel/render/document"
	"forel/render/proof"
)

const aboutProve = `
usage: forel prove [JOB.toml] [flags]

Folds the case up from its flat pieces and reports what it finds: whether it is
sound, face by face what lies there, and the clearance left in the body and at
the mouth. A job that is not sound is refused with its faults.

With --out it draws the proof too, into the folder: proof.svg, all figures one
below the other, and proof.pdf, the same on pages. They show the case from
outside at an angle, then every face with its layers. They are figures, not at
true size: cut from the templates, not from them.

example:
  forel prove case.toml
  forel prove case.toml --out case/
  forel prove --height 221 --width 148.5 --thickness 32 --format json
`

func runProve(args []string, out io.Writer, say voice) error {
	f := flagSet("prove", aboutProve, out)
	job := addJobFlags(f)
	format := f.String("format", "text", "`format` of the report: text or json (in millimetres, exact to 0.001)")
	folder := f.String("out", "", "`folder` to draw proof.svg and proof.pdf into; made if it is not there")
	job.addPrint()
	if err := parseFlags(f, args); err != nil {
		return err
	}
	if err := checkFormat(*format, "text", "json"); err != nil {
		return err
	}
	if err := checkOut(f, *folder, "case/"); err != nil {
		return err
	}
	l, err := job.load(say)
	if err != nil {
		return err
	}
	o := l.printed()
	if *folder != "" {
		if err := proof.Check(o); err != nil {
			return refusal{err.Error(), "draw it on another sheet, such as --paper a4"}
		}
	}
	made := proofOf(l, o)
	report := made.text()
	if *format == "json" {
		if report, err = made.json(); err != nil {
			return failure{err, ""}
		}
	}
	if *folder != "" {
		if err := drawProof(*folder, made.draw()); err != nil {
			return err
		}
	}
	if _, err := out.Write(report); err != nil {
		return failure{err, ""}
	}
	if *folder != "" {
		told := out
		if *format == "json" {
			told = say.w // standard output holds the report alone
		}
		fmt.Fprint(told, wrote(*folder, "proof.svg", "proof.pdf"))
	}
	return nil
}

// drawProof writes both drawings into a folder, or neither.
func drawProof(folder string, drawing *document.Document) error {
	doc, err := drawing.PDF()
	if err != nil {
		return failure{err, ""}
	}
	return writeInto(folder, []output{{"proof.svg", drawing.SVG()}, {"proof.pdf", doc}})
}

// proved is a proof in each form it is given in.
type proved struct {
	text func() []byte
	json func() ([]byte, error)
	draw func() *document.Document
}

// proofOf gives the proof of a case of boards or of card.
func proofOf(l loaded, o proof.Options) proved {
	if l.file.Construction == jobfile.Card {
		return proved{
			text: func() []byte { return proof.CardText(l.card, l.round) },
			json: func() ([]byte, error) { return proof.CardJSON(l.card) },
			draw: func() *document.Document { return proof.DrawCard(l.card, o) },
		}
	}
	s := proof.Of(l.boards)
	return proved{
		text: func() []byte { return proof.Text(s, l.round) },
		json: func() ([]byte, error) { return proof.JSON(s) },
		draw: func() *document.Document { return proof.Draw(s, o) },
	}
}
