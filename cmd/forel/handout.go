package main

import "forel/cmd/pipeline"

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

func flagsHandout(f *flags) action {
	var h pipeline.Handout
	f.job(&h.Job)
	f.out("handout", "case/", "`folder` to write into; made if it is not there", nil)
	f.prints()
	f.BoolVar(&h.Blank, "blank", false, "the worksheet alone and empty, to be filled in by hand")
	f.BoolVar(&h.Tints, "tints", false, "tint board, cloth and paper in the figures; without, they are in greys")
	return f.makes(&h)
}
