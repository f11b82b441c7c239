package main

import "forel/cmd/pipeline"

const aboutCutlist = `
usage: forel cutlist [JOB.toml] [flags]

Prints every piece with its size, what the case measures inside and outside,
and how to check the fit. As text and Markdown in your unit, rounded; as JSON
and CSV in millimetres, exact to 0.001.

example:
  forel cutlist case.toml
  forel cutlist --height 221 --width 148.5 --thickness 32 --format json
`

func flagsCutlist(f *flags) action {
	var c pipeline.Cutlist
	f.job(&c.Job)
	f.StringVar(&c.Format, "format", "text", "`format` of the list: text, json, csv or markdown")
	f.BoolVar(&c.Outlines, "outlines", false, "with json: each piece's outline, slits, folds and guide lines too")
	return f.makes(&c)
}
