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
	"time"

	"forel/cmd/jobfile"
	"forel/cmd/roster"
	"forel/geometry/wording"
	"forel/paper/bench"
	"forel/paper/pack"
	draw "forel/render/bench"
	"forel/render/index"
)

var aboutClass = fmt.Sprintf(`
usage: forel class ROSTER.csv [flags]

Makes the files of a whole class from a table with a row for each student: a
folder each with the templates, the drawings, the cut list and the handout; for
the teacher stock.pdf and shopping.txt, one plan of all sheets to buy and to cut;
and index.html, a page that leads to all of them.

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
`, defaultSteps, largeClass)

// largeClass is the most students whose plan is searched for beyond the first.
const largeClass = 100

// indexName is the page that leads to all folders.
const indexName = "index.html"

func runClass(args []string, out io.Writer, say voice) error {
	f := flagSet("class", aboutClass, out)
	var c class
	f.StringVar(&c.folder, "out", "class", "`folder` to write into; made if it is not there")
	job := f.String("job", "", "job `file` that gives what the roster leaves out")
	sheet := f.String("paper", "", paperUsage)
	black := f.Bool("black", false, blackUsage)
	f.StringVar(&c.round, "round", "", "`step` that shown sizes are rounded to: 0.5 or 0.1 mm, 1/32 or 1/64 in")
	effort := f.String("effort", "", "how long to search for the plan: `steps`, or a time such as 20s; 0: the first good plan")
	f.IntVar(&c.workers, "workers", runtime.NumCPU(), "`number` of students worked on at a time")
	if err := parseFlags(f, args); err != nil {
		return err
	}
	switch {
	case f.NArg() != 1:
		return refusal{"class takes one roster", "such as forel class roster.csv"}
	case c.folder == "":
		return refusal{"--out names no folder", "such as --out class/"}
	case c.workers < 1:
		return refusal{fmt.Sprintf("--workers %d", c.workers), "give 1 or more"}
	}
	if *sheet != "" {
		c.flags = append(c.flags, jobfile.Flag{Name: "--paper", Key: "print.paper", Value: *sheet})
	}
	if *black {
		c.flags = append(c.flags, jobfile.Flag{Name: "--black", Key: "print.ink", Value: "black"})
	}
	var err error
	if *effort != "" {
		if c.effort, err = effortOf(*effort); err != nil {
			return err
		}
	}
	if c.date, err = fileDate(); err != nil {
		return err
	}
	if err := roundsAny(c.round); err != nil {
		return err
	}
	rows, err := readRoster(f.Arg(0), *job, c.flags)
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	undo, err := makeFolder(c.folder)
	if err != nil {
		return elsewhere(err)
	}
	debug.SetGCPercent(collect(len(rows)))
	done := c.make(ctx, rows, say)
	debug.SetGCPercent(100) // the plan of all sheets is large itself
	if *effort == "" && len(rows) <= largeClass {
		c.effort.Iterations = defaultSteps
	}
	if made := count(done, rowMade) + count(done, rowKept); made == 0 {
		undo() // an empty folder would be no use
	} else if ctx.Err() == nil {
		if err := c.finish(done, say); err != nil {
			return err
		}
	}
	return c.tell(ctx, done, out, say)
}

// collect gives by how many percent the heap may grow before garbage is
// collected: what is kept of every student adds up.
func collect(students int) int { return min(400, max(100, 300_000/max(1, students))) }

// warnStale tells of folders that an earlier run left and this one did not make:
// of students who are no longer in the roster, or whose row is now refused.
func (c *class) warnStale(done []student, say voice) {
	now := map[string]bool{}
	for _, s := range done {
		now[s.Folder] = s.state != rowRefused
	}
	entries, _ := os.ReadDir(c.folder) // what can't be read has been told of
	for _, e := range entries {
		if _, err := os.Stat(filepath.Join(c.folder, e.Name(), stampName)); err == nil && !now[e.Name()] {
			fmt.Fprintf(say.w, "warning: %s is from an earlier roster and not part of this one; take it away\n", wording.Printable(filepath.Join(c.folder, e.Name())))
		}
	}
}

// readRoster reads the roster and the job file that goes with it.
func readRoster(name, job string, flags []jobfile.Flag) ([]roster.Row, error) {
	const named = "name the roster, a table that starts with a line such as name,title,height,width,thickness"
	data, err := readInput(name, named, named)
	if err != nil {
		return nil, err
	}
	var base *roster.Base
	if job != "" {
		b, err := readJob(job)
		if err != nil {
			return nil, err
		}
		base = &roster.Base{Source: job, Data: b}
	}
	return roster.Read(name, data, base, flags...)
}

// class is a run over a roster.
type class struct {
	folder  string
	round   string
	workers int
	flags   []jobfile.Flag // for every row
	effort  pack.Effort    // for the plan of all sheets
	date    time.Time      // of documents; zero: none
	begun   func(row int)  // called when a row is begun; may be nil
}

// rowState is what became of a row.
type rowState int

const (
	rowLeft    rowState = iota // not come to
	rowMade                    // its folder was written
	rowKept                    // its folder was up to date
	rowRefused                 // it can't be made
	rowFailed                  // its folder could not be written
)

// student is a row and what became of it.
type student struct {
	roster.Row
	loaded
	state rowState
	err   error // of one refused or failed
}

func count(all []student, s rowState) (n int) {
	for _, a := range all {
		if a.state == s {
			n++
		}
	}
	return n
}

// What is written for the class as a whole, beside the index.
const shoppingName = "shopping.txt"

// What the index leads to: in every folder, and for the teacher.
var (
	studentFiles = []index.File{{Name: handoutName, Says: "handout"}, {Name: bookletName, Says: "templates"}, {Name: "cutlist.txt", Says: "cut list"}}
	teacherFiles = []index.File{{Name: shoppingName, Says: "shopping list"}, {Name: benchName, Says: "sheets to cut and the order of the cuts"}}
)

// finish writes what belongs to the class as a whole. Where the sheets can't be
// planned, the index is written all the same.
func (c *class) finish(done []student, say voice) error {
	page := index.Page{Files: teacherFiles}
	var all []loaded
	for _, s := range done {
		if s.state != rowMade && s.state != rowKept {
			page.Missing = append(page.Missing, fmt.Sprintf("%s (line %d of the roster)", cmp.Or(s.Name, "no name"), s.Line))
			continue
		}
		page.Entries = append(page.Entries, index.Entry{Name: s.Name, Folder: s.Folder, Plan: s.plan, Round: s.loaded.round, Files: studentFiles})
		l := s.loaded
		l.plan.Title = s.Name // which is what a teacher looks for on a sheet
		if len(all) > 0 {
			l.file.Stock = nil // it is the same for all, and there once
		}
		all = append(all, l)
	}
	files, unplanned := c.plan(all, say)
	if unplanned != nil {
		page.Files = nil
	}
	index, err := index.HTML(page)
	if err != nil {
		return failure{err, ""}
	}
	files = append(files, output{indexName, index})
	for i := range files {
		files[i].name = filepath.Join(c.folder, files[i].name)
	}
	if err := writeFiles(files); err != nil {
		return elsewhere(err)
	}
	return unplanned
}

// plan lays the pieces of all students out on the sheets to buy.
func (c *class) plan(all []loaded, say voice) ([]output, error) {
	p, err := layOut(all, bench.Options{Effort: c.effort}, say)
	if err != nil {
		return nil, err
	}
	first := all[0]
	o := first.printed()
	doc, err := draw.Booklet(p, o)
	if err != nil {
		return nil, failure{err, ""}
	}
	return []output{{shoppingName, draw.Text(p, o.Round, false)}, {benchName, doc}}, nil
}

// tell says what became of the rows.
func (c *class) tell(ctx context.Context, done []student, out io.Writer, say voice) error {
	var refused jobfile.Issues
	var failed error
	for _, s := range done {
		say.warn(s.Suspects)
		switch s.state {
		case rowRefused:
			refused = append(refused, s.Refused...)
		case rowFailed:
			failed = errors.Join(failed, fmt.Errorf("%s: %w", s.Folder, s.err))
		}
	}
	fmt.Fprintf(out, "files of %d of %d students are in %s", count(done, rowMade)+count(done, rowKept), len(done), wording.Printable(c.folder))
	if n := count(done, rowKept); n > 0 {
		fmt.Fprintf(out, ", %d of them from before", n)
	}
	fmt.Fprintln(out)
	c.warnStale(done, say)
	if len(refused) > 0 && (failed != nil || ctx.Err() != nil) {
		say.status(refused)
	}
	switch {
	case ctx.Err() != nil:
		return failure{errors.New("stopped before the end"), "run it again to go on from here"}
	case failed != nil:
		return failure{failed, "mend that and run it again: what is done is kept"}
	case len(refused) > 0:
		return refused
	}
	fmt.Fprintf(out, "open %s\n", wording.Printable(filepath.Join(c.folder, indexName)))
	return nil
}
