package main

import (
	"forel/cmd/pipeline"
	"forel/geometry/wording"
)

var aboutRescue = `
usage: forel rescue JOB.toml [flags]

Tells the way back where the book does not fit the case that was made for it, too tight
or too loose: which is the least work, how much of it, what to keep, what to cut again,
and whether the book then fits, by the errors that forel fit reckons with. The play is
given as it was measured with the book in, or taken from the record of the job
(JOB.record.toml). With --unfinished it was measured before the case was covered, when
more can be done.

With --out it writes the templates of what is cut again, for the case as it stands.

` + careful(wording.Knife, wording.Adhesive) + `

example:
  forel rescue case.toml --play-height 0.1
  forel rescue case.toml --play-thickness -0.8 --unfinished --out again/
`

func flagsRescue(f *flags) action {
	var r pipeline.Rescue
	f.writes(&r, &r.Job, "again/", "`folder` to write the templates of what is cut again into", &r.Draw)
	f.old = &r.Old
	return f.makes(&r)
}
