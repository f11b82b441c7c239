package main

import "forel/cmd/pipeline"

const aboutTemplates = `
usage: forel templates [JOB.toml] [flags]

Writes the patterns into a folder: templates.pdf with every piece at true size
on the paper your printer takes, and one SVG drawing a piece in millimetres.
Print the PDF at actual size (100 %) and measure the rulers on its pages; where
they are a little off, forel gauge has them corrected. The PDF has no date unless
SOURCE_DATE_EPOCH is set, to seconds since 1970.

Before feeding a laser or a drag knife: read the maker's manual, never put
chlorinated plastics under a laser, never leave it running alone, use fume
extraction, and follow local rules.

example:
  forel templates case.toml --out case/
  forel templates --height 221 --width 148.5 --thickness 32 --out case/
`

func flagsTemplates(f *flags) action {
	var t pipeline.Templates
	f.job(&t.Job)
	f.out("templates", "case/", "`folder` to write into; made if it is not there", nil)
	f.prints()
	f.BoolVar(&t.Separate, "separate", false, "no two pieces on one sheet")
	f.StringArrayVar(&t.Colour, "colour", nil, "`line=#rrggbb`: colour of a kind of line, such as creasing=#0072b2 (cutting, creasing, positions, legend)")
	return f.makes(&t)
}
