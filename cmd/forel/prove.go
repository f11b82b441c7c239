package main

import "forel/cmd/pipeline"

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

func flagsProve(f *flags) action {
	var p pipeline.Prove
	f.job(&p.Job)
	f.StringVar(&p.Format, "format", "text", "`format` of the report: text or json (in millimetres, exact to 0.001)")
	f.out("", "case/", "`folder` to draw proof.svg and proof.pdf into; made if it is not there", &p.Draw)
	f.prints()
	return f.makes(&p)
}
