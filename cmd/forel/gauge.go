package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper"
	"forel/render/document"
	"forel/render/gauge"
)

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

func runGauge(args []string, out io.Writer, _ voice) error {
	f := flagSet("gauge", aboutGauge, out)
	folder := f.String("out", "gauge", "`folder` to write into; made if it is not there")
	sheet := f.String("paper", "", paperUsage)
	units := f.String("units", "", "the `unit` you measure in: mm or in")
	keys := f.StringArray("set", nil, "any `key=value` of [print], such as print.margin_left=6")
	check := f.Bool("check", false, "draw the sheet corrected by what was measured")
	if err := parseFlags(f, args); err != nil {
		return err
	}
	switch {
	case *folder == "":
		return refusal{"--out names no folder", "such as --out gauge/"}
	case f.NArg() > 1:
		return refusal{fmt.Sprintf("more than one job file: %.60q", f.Args()), "give one"}
	}
	date, err := fileDate()
	if err != nil {
		return err
	}
	var source string
	var data []byte
	var usual, flags []jobfile.Flag
	if f.NArg() == 1 {
		source = f.Arg(0)
		if data, err = readJob(source); err != nil {
			return err
		}
	} else {
		usual = append(usual, jobfile.Flag{Name: "--margin", Key: "print.margin", Value: fmt.Sprintf("%g mm", gauge.Margin.MM())})
	}
	for _, k := range []struct{ name, key, value string }{{"--paper", "print.paper", *sheet}, {"--units", "units", *units}} {
		if k.value != "" {
			flags = append(flags, jobfile.Flag{Name: k.name, Key: k.key, Value: k.value})
		}
	}
	var wrong []error
	for _, kv := range *keys {
		set, err := setFlag(kv)
		if err != nil {
			wrong = append(wrong, err)
			continue
		}
		flags = append(flags, set)
	}
	if wrong = append(wrong, contradictions(flags)...); wrong != nil {
		return errors.Join(wrong...)
	}
	setup, unit, err := jobfile.Print(source, data, append(usual, flags...))
	if err != nil {
		return err
	}
	return writeGauge(*folder, gauge.Options{Options: document.Options{Setup: setup, Round: geometry.Rounding{Unit: unit}, Date: date}, Corrected: *check}, out)
}

func writeGauge(folder string, o gauge.Options, out io.Writer) error {
	if o.Corrected && o.Setup.Measured == (paper.Measured{}) {
		return refusal{"--check: nothing was measured", "set print.measured_across and print.measured_along to what the gauge measured"}
	}
	if err := o.Check(); err != nil {
		return err
	}
	doc, err := gauge.PDF(o)
	if err != nil {
		return failure{err, ""}
	}
	name := "gauge.pdf"
	files := []output{{"gauge.svg", gauge.SVG(o)}}
	if o.Corrected {
		name, files = "gauge-check.pdf", nil
	}
	files = append(files, output{name, doc})
	if err := writeInto(folder, files); err != nil {
		return err
	}
	if _, err = fmt.Fprintf(out, "%sprint %s at actual size (100 %%) on %s, then measure its rules\n", wrote(folder, namesOf(files)...), wording.Printable(filepath.Join(folder, name)), o.Setup.Sheet); err != nil {
		return failure{err, ""}
	}
	return nil
}
