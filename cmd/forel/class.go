package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"syscall"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/cmd/roster"
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
look for the plan, in steps or as a time; left out, %d steps for a class of up to
%d, and the first good plan for more.

Stopped with Ctrl-C, it leaves whole folders only, and goes on from there when
it is run again: a folder that is up to date is left as it is.

example:
  forel class roster.csv --out class/
  forel class roster.csv --job common.toml --paper letter --out class/
`, pipeline.StockSteps, pipeline.LargeClass)

func flagsClass(f *flags) action {
	var c pipeline.Class
	f.source = &c.Source
	f.read = func(name string) ([]byte, error) {
		const named = "name the roster, a table that starts with a line such as name,title,height,width,thickness"
		return readInput(name, named, named)
	}
	f.out("class", "class/", "`folder` to write into; made if it is not there", nil)
	job := f.String("job", "", "job `file` that gives what the roster leaves out")
	f.prints()
	f.StringVar(&c.Round, "round", "", "`step` that shown sizes are rounded to: 0.5 or 0.1 mm, 1/32 or 1/64 in")
	f.StringVar(&c.Effort, "effort", "", "how long to search for the plan: `steps`, or a time such as 20s; 0: the first good plan")
	f.IntVar(&c.Workers, "workers", runtime.NumCPU(), "`number` of students worked on at a time")
	return func(out io.Writer, say voice) error {
		if c.Workers < 1 {
			return refuse(fmt.Sprintf("--workers %d", c.Workers), "give 1 or more")
		}
		if err := f.gather(); err != nil {
			return err
		}
		if *job != "" {
			data, err := readJob(*job)
			if err != nil {
				return err
			}
			c.Base = &roster.Base{Source: *job, Data: data}
		}
		roll, err := c.Read()
		if err != nil {
			return err
		}
		return makeClass(roll, shelf(*f.folder), out, say)
	}
}

// makeClass makes the files of a class into a folder and tells of it.
func makeClass(roll *pipeline.Roll, to shelf, out io.Writer, say voice) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	undo, err := makeFolder(string(to))
	if err != nil {
		return elsewhere(err)
	}
	debug.SetGCPercent(collect(len(roll.Students)))
	bar := say.progress("making")
	roll.Make(ctx, to, bar.at)
	bar.done()
	debug.SetGCPercent(100) // the plan of all sheets is large itself
	var unplanned error
	if roll.Count(pipeline.Made)+roll.Count(pipeline.Kept) == 0 {
		undo() // an empty folder would be no use
	} else if ctx.Err() == nil {
		bar := say.progress("laying out")
		var r pipeline.Result
		r, unplanned = roll.Finish(ctx, bar.at)
		bar.done()
		say.warn(r.Warnings)
		if err := cmp.Or(writeInto(string(to), r.Files), to.bind(roll)); err != nil { // the index is there all the same
			return err
		}
	}
	return tellClass(ctx, roll, unplanned, to, out, say)
}

// collect returns by how many percent the heap may grow before garbage is
// collected: what is kept of every student adds up.
func collect(students int) int { return min(400, max(100, 300_000/max(1, students))) }

// tellClass says what became of the rows, and why there is no plan of all sheets.
func tellClass(ctx context.Context, roll *pipeline.Roll, unplanned error, to shelf, out io.Writer, say voice) error {
	var refused jobfile.Issues
	var failed []error
	for _, s := range roll.Students {
		say.warn(s.Suspects)
		switch s.State {
		case pipeline.Refused:
			refused = append(refused, s.Refused...)
		case pipeline.Failed:
			failed = append(failed, hinted(fmt.Errorf("%s: %w", s.Folder, s.Err), "mend that and run it again: what is done is kept"))
		}
	}
	switch foreseen := roll.Foreseen(); {
	case foreseen != nil:
		refused = append(refused, foreseen...)
	case errors.As(unplanned, new(jobfile.Issues)):
		refused = append(refused, unplanned.(jobfile.Issues)...)
	case unplanned != nil:
		failed = append(failed, unplanned)
	}
	made, kept := roll.Count(pipeline.Made), roll.Count(pipeline.Kept)
	fmt.Fprintf(out, "files of %d of %d students are in %s", made+kept, len(roll.Students), wording.Printable(string(to)))
	if kept > 0 {
		fmt.Fprintf(out, ", %d of them from before", kept)
	}
	fmt.Fprintln(out)
	to.warnEarlier(roll, say)
	if ctx.Err() != nil {
		failed = []error{hinted(errors.New("stopped before the end"), "run it again to go on from here")}
	}
	switch {
	case failed != nil:
		if refused != nil {
			say.status(refused)
		}
		return errors.Join(failed...)
	case refused != nil:
		return refused
	}
	fmt.Fprintf(out, "open %s\n", wording.Printable(filepath.Join(string(to), pipeline.IndexName)))
	return nil
}
