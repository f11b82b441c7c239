package main

import "forel/cmd/pipeline"

const aboutFit = `
usage: forel fit [JOB.toml] [flags]

Follows the chain of dimensions from the measured book and materials to the
clearance that is left in the body and at the mouth. With what measuring,
cutting and materials can be off (the job's [uncertainty]) it tells the worst
case, the chance that the book sticks, is snug or rattles, what eats most of the
clearance, the cheapest mend, and what is left if the board is really another
that is sold by the same name; and the weight of the case and, where the job tells
it, of the book. Then the checks to make at the bench.

With --out it draws the fit too, into the folder: fit-height.svg, fit-depth.svg
and fit-thickness.svg with the distributions, limits and chains, and fit.pdf with
all of it, the checks, and paper strips at true size to try round the book
before any board is cut. Print fit.pdf at actual size (100 %).

example:
  forel fit case.toml
  forel fit case.toml --swell 1.5 --out case/
  forel fit case.toml --set board.thickness=1.93 --set uncertainty.board=0.05
`

func flagsFit(f *flags) action {
	var c pipeline.Fit
	f.job(&c.Job)
	f.StringVar(&c.Format, "format", "text", "`format` of the report: text or json (in millimetres, exact to 0.001)")
	f.out("", "case/", "`folder` to draw fit.pdf and the fit-*.svg plots into; made if it is not there", &c.Draw)
	f.prints()
	f.key("swell", "fit.swell", "`percent` the book may grow thicker when damp, such as 1.5")
	return f.makes(&c)
}
