package main

import (
	"fmt"
	"io"
	"path/filepath"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/wording"
	"forel/paper/stock"
	renderfit "forel/render/fit"
)

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

// fitName is the file that is printed.
const fitName = "fit.pdf"

func runFit(args []string, out io.Writer, say voice) error {
	f := flagSet("fit", aboutFit, out)
	job := addJobFlags(f)
	format := f.String("format", "text", "`format` of the report: text or json (in millimetres, exact to 0.001)")
	folder := f.String("out", "", "`folder` to draw fit.pdf and the fit-*.svg plots into; made if it is not there")
	job.addPrint()
	swell := f.String("swell", "", "`percent` the book may grow thicker when damp, such as 1.5")
	if err := parseFlags(f, args); err != nil {
		return err
	}
	if err := checkFormat(*format, "text", "json"); err != nil {
		return err
	}
	if err := checkOut(f, *folder, "case/"); err != nil {
		return err
	}
	if f.Changed("swell") {
		job.extra = append(job.extra, jobfile.Flag{Name: "--swell", Key: "fit.swell", Value: *swell})
	}
	l, err := job.load(say)
	if err != nil {
		return err
	}
	r := fitOf(l)
	report := renderfit.Text(r, l.round)
	if *format == "json" {
		if report, err = renderfit.JSON(r); err != nil {
			return failure{err, ""}
		}
	}
	var told string
	if *folder != "" {
		if told, err = drawFit(*folder, r, l.printed()); err != nil {
			return err
		}
	}
	if _, err := out.Write(report); err != nil {
		return failure{err, ""}
	}
	if *format == "json" {
		out = say.w // standard output holds the report alone
	}
	fmt.Fprint(out, told)
	return nil
}

// fitOf gives the report on a case of boards or of card.
func fitOf(l loaded) fit.Report {
	if l.file.Construction == jobfile.Card {
		return fit.OfCard(l.card, l.file.Job).WeighedCard(l.card, scaleOf(l))
	}
	return fit.Of(l.boards).Weighed(l.boards, scaleOf(l))
}

// scaleOf weighs a job's materials: by the grammage or density of its stock, where
// that tells of one, else by a usual density.
func scaleOf(l loaded) fit.Scale {
	return func(m geometry.Material, area float64, thickness geometry.Length) (float64, string) {
		of := stock.Stock{Material: m}
		for _, s := range l.file.Stock {
			if s.Material == m && (s.Density > 0 || s.Grammage > 0) && (s.Thickness == 0 || s.Thickness.Near(thickness)) {
				of = s
				break
			}
		}
		return of.Grams(area, thickness)
	}
}

// drawFit writes all drawings into a folder, or none, and says what it wrote.
func drawFit(folder string, r fit.Report, o renderfit.Options) (string, error) {
	doc, err := renderfit.PDF(r, o)
	if err != nil {
		return "", failure{err, ""}
	}
	var files []output
	for _, p := range renderfit.Plots(r, o) {
		files = append(files, output{p.File, p.SVG})
	}
	files = append(files, output{fitName, doc})
	if err := writeInto(folder, files); err != nil {
		return "", err
	}
	return fmt.Sprintf("%sprint %s at actual size (100 %%) on %s for its paper strips\n",
		wrote(folder, namesOf(files)...), wording.Printable(filepath.Join(folder, fitName)), o.Setup.Sheet), nil
}
