package main

import (
	"io"

	"forel/render/cutlist"
)

const aboutCutlist = `
usage: forel cutlist [JOB.toml] [flags]

Prints every piece with its size, what the case measures inside and outside,
and how to check the fit. As text and Markdown in your unit, rounded; as JSON
and CSV in millimetres, exact to 0.001.

example:
  forel cutlist case.toml
  forel cutlist --height 221 --width 148.5 --thickness 32 --format json
`

func runCutlist(args []string, out io.Writer, say voice) error {
	f := flagSet("cutlist", aboutCutlist, out)
	job := addJobFlags(f)
	format := f.String("format", "text", "`format` of the list: text, json, csv or markdown")
	outlines := f.Bool("outlines", false, "with json: each piece's outline, slits, folds and guide lines too")
	if err := parseFlags(f, args); err != nil {
		return err
	}
	if err := checkFormat(*format, "text", "json", "csv", "markdown"); err != nil {
		return err
	}
	if *outlines && *format != "json" {
		return refusal{"--outlines goes with json only", "add --format json"}
	}
	l, err := job.load(say)
	if err != nil {
		return err
	}
	var data []byte
	switch *format {
	case "json":
		data, err = cutlist.JSON(l.plan, *outlines)
	case "csv":
		data, err = cutlist.CSV(l.plan, l.round)
	case "markdown":
		data = cutlist.Markdown(l.plan, l.round)
	default:
		data = cutlist.Text(l.plan, l.round)
	}
	if err == nil {
		_, err = out.Write(data)
	}
	if err != nil {
		return failure{err, ""}
	}
	return nil
}
