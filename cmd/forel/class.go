package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"runtime"
	"runtime/debug"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/cmd/shelf"
	"forel/geometry/wording"
)

var aboutClass = fmt.Sprintf(`
usage: forel class ROSTER.csv [flags]

Makes the files of a whole class from a table with a row for each student: a
folder each with the templates, the drawings, the cut list and the handout; for
the teacher print.pdf, every student's handout and templates in order of names,
to print at actual size; labels.pdf, a slip for each kit; stock.pdf and
shopping.txt, one plan of all sheets to buy and to cut; and index.html, a page that
leads to all of them and shows how each case will fit.

The first line of the roster names its columns: name, height, width and
thickness, and any of title, units or a key of a job file, such as
board.thickness or covering. What a row leaves out comes from the job file given
with --job, or is at its default. A row that can't be made is reported with its
line, and the others go on; the exit status is then 2.

[[stock]] in that job file tells what sheets there are. --effort is how long to
look for the plan, in steps or as a time; left out, %d steps. A class of more than
%d is planned in lots, stock-01.pdf and so on, each with sheets of its own and
with the first good plan; --effort is then for each lot. What is counted is there once
for all lots.

--take takes what the plan uses off the counts of the shop file and keeps its offcuts
there, with labels in offcuts.pdf, as forel stock --take does; without it the plan is
only shown. --undo takes the last taking back: do that before you take again for the
same class. Where a row can't be made nothing is taken.

All files come into the folder together at the end. Stopped with Ctrl-C, it leaves
the folder as it was, keeps what is made, and goes on from there when it is run
again. What is up to date is not made again; what is no longer in the roster is
taken away, as far as forel wrote it.

example:
  forel class roster.csv --out class/
  forel class roster.csv --job common.toml --paper letter --out class/
`, pipeline.StockSteps, pipeline.LargeClass)

func flagsClass(f *flags) action {
	c := pipeline.Class{Program: version()}
	f.source = &c.Source
	f.read = func(name string) ([]byte, error) {
		const named = "name the roster, a table that starts with a line such as name,title,height,width,thickness"
		return readInput(name, named, named)
	}
	f.out("class/", intoFolder, nil)
	f.base("job", "job `file` that gives what the roster leaves out", &c.Base)
	f.shop = f.String("shop", "", shopUsage)
	f.prints()
	f.StringVar(&c.Round, "round", "", "`step` that shown sizes are rounded to: 0.5 or 0.1 mm, 1/32 or 1/64 in")
	f.StringVar(&c.Effort, "effort", "", "how long to search for the plan: `steps`, or a time such as 20s; 0: the first good plan")
	f.settings(c.Taking())
	f.IntVar(&c.Workers, "workers", runtime.NumCPU(), "`number` of students worked on at a time")
	return func(out io.Writer, say voice) error {
		if c.Undo {
			s := pipeline.Stock{Ledger: c.Ledger, Draw: f.Changed("out")}
			f.source = &s.Source
			return f.makes(&s)(out, say)
		}
		bad, err := f.gather(say)
		if err != nil {
			return err
		}
		if c.Workers < 1 {
			bad = append(bad, refuse(fmt.Sprintf("--workers %d", c.Workers), "give 1 or more")...)
		}
		roll, err := c.Read()
		if bad = append(bad, pipeline.Problems(err)...); len(bad) > 0 {
			return bad
		}
		if err := makeClass(roll, *f.folder, out, say); err != nil || roll.Took.Shop == nil {
			return err
		}
		return f.takes(roll.Took, out)
	}
}

// makeClass makes the files of a class into a folder and tells of it.
func makeClass(roll *pipeline.Roll, folder string, out io.Writer, say voice) error {
	ctx, stop := stoppable()
	defer stop()
	s, err := shelf.Open(ctx, folder, classSet)
	if err != nil {
		return elsewhere(err)
	}
	change, unplanned, err := fill(ctx, roll, s, say)
	s.Close(ctx.Err() != nil) // what is made is kept, to go on from there
	switch {
	case ctx.Err() != nil:
		made := roll.Count(pipeline.Made) + roll.Count(pipeline.Kept)
		return hinted(fmt.Errorf("stopped when %d of %d students were made; %s is as it was", made, len(roll.Students), folder), "run it again to go on from here")
	case err != nil:
		return elsewhere(err)
	}
	return tellClass(roll, unplanned, folder, change, out, say)
}

// classSet is the name of the set that the files of a class are.
const classSet = "class"

// fill makes the files of a class and lands them. What keeps the sheets from being planned
// keeps no other file from landing.
func fill(ctx context.Context, roll *pipeline.Roll, s *shelf.Shelf, say voice) (c shelf.Change, unplanned, err error) {
	debug.SetMemoryLimit(mostMemory)
	bar := say.progress("making")
	err = roll.Make(ctx, s, bar.at)
	bar.Finish()
	if err != nil || ctx.Err() != nil || len(roll.Done()) == 0 {
		return c, nil, err
	}
	bar = say.progress("laying out")
	warnings, unplanned, err := roll.Finish(ctx, s, bar.at)
	bar.Finish()
	if err != nil || ctx.Err() != nil {
		return c, nil, err
	}
	say.warn(warnings)
	if err = bind(roll, s); err != nil || ctx.Err() != nil {
		return c, nil, err
	}
	c, err = s.Land(false, nil)
	return c, unplanned, err
}

// bind puts the pages of all students into one file, in order of names.
func bind(roll *pipeline.Roll, s *shelf.Shelf) error {
	out, err := s.Create(pipeline.PrintName)
	if err != nil {
		return err
	}
	if err := roll.Bind(out, s.Read); err != nil {
		return err
	}
	return out.Close()
}

// mostMemory is what the collector of garbage keeps to, in bytes: with the program itself it
// is less than 200 MB, whatever the number of students.
const mostMemory = 144 << 20

// tellClass says what became of the rows, and why there is no plan of all sheets.
func tellClass(roll *pipeline.Roll, unplanned error, folder string, c shelf.Change, out io.Writer, say voice) error {
	var refused jobfile.Issues
	var failed []error
	for _, s := range roll.Students {
		say.warn(s.Suspects)
		switch s.State {
		case pipeline.Refused:
			refused = append(refused, s.Refused...)
		case pipeline.Failed:
			failed = append(failed, fmt.Errorf("%s: %w", s.Folder, s.Err))
		}
	}
	var lacking jobfile.Issues
	switch foreseen := roll.Foreseen(); {
	case foreseen != nil:
		refused = append(refused, foreseen...)
	case errors.As(unplanned, &lacking):
		refused = append(refused, lacking...)
	case unplanned != nil:
		failed = append(failed, unplanned)
	}
	made, kept := roll.Count(pipeline.Made), roll.Count(pipeline.Kept)
	fmt.Fprintf(out, "files of %d of %d students are in %s", made+kept, len(roll.Students), wording.Printable(folder))
	if kept > 0 {
		fmt.Fprintf(out, ", %d of them from before", kept)
	}
	fmt.Fprintln(out)
	io.WriteString(out, took(folder, c))
	say.left(folder, c)
	switch {
	case failed != nil:
		if refused != nil {
			say.status(refused)
		}
		return errors.Join(failed...)
	case refused != nil:
		return refused
	}
	fmt.Fprintf(out, "open %s\n", wording.Printable(filepath.Join(folder, pipeline.IndexName)))
	return nil
}
