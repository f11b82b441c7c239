package main

import "forel/cmd/pipeline"

const aboutGauge = `
usage: forel gauge [JOB.toml] [flags]

Writes a sheet that tells how true your printer is, gauge.pdf and gauge.svg: a
rule across the sheet and one along it, in millimetres and inches. Print it at
actual size (100 %), measure both rules with a steel rule and type what they
measured into the job file:

  [print]
  measured_across = "199.2 mm"
  measured_along = "200.4 mm"

The patterns and the paper strips of forel fit, which have to be true, are then
corrected by it, and their pages state it. The sheet itself is not, so that it can be measured again; with --check
it is, as gauge-check.pdf, to see that the rules are true now.

Paper and margins are those of the job file. Without one the margins are 4.5 mm,
so that a rule of 200 mm finds room across A4 and Letter.

example:
  forel gauge --out gauge/
  forel gauge --paper letter --units in
  forel gauge case.toml --check
`

func flagsGauge(f *flags) action {
	var g pipeline.Gauge
	f.source, f.dated = &g.Source, true
	f.out("gauge", "gauge/", "`folder` to write into; made if it is not there", nil)
	f.key("paper", "print.paper", paperUsage)
	f.key("units", "units", "the `unit` you measure in: mm or in")
	f.sets("any `key=value` of [print], such as print.margin_left=6")
	f.BoolVar(&g.Check, "check", false, "draw the sheet corrected by what was measured")
	return f.makes(&g)
}
