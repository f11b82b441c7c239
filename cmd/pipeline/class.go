package pipeline

import (
	"cmp"
	"context"
	"crypto/sha256"
	"fmt"
	"io"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"

	"forel/cmd/jobfile"
	"forel/cmd/merge"
	"forel/cmd/roster"
	"forel/geometry"
	"forel/geometry/fit"
	"forel/geometry/wording"
	"forel/paper/bench"
	"forel/render"
	draw "forel/render/bench"
	"forel/render/cutlist"
	"forel/render/document"
	look "forel/render/fit"
	"forel/render/handout"
	"forel/render/index"
	"forel/render/kit"
	"forel/render/offcuts"
)

// Class makes the files of a whole class from a roster: Read reads it, Roll.Make
// makes every student's, Roll.Finish what belongs to the class.
type Class struct {
	Source         // its one file is the roster; the flags hold for every row
	Base    *File  // a job file that gives what the roster leaves out; nil: none
	Round   string // as in Job
	Effort  string // how long to search for the plan of all sheets; "": StockSteps up to LargeClass, above it the first good plan
	Workers int    // students worked on at a time, 1 or more
	Program string // which makes the files: another makes them again
	Ledger         // of the sheets of all students
}

// LargeClass is the most students whose sheets are planned together, and whose plan is
// searched for beyond the first.
const LargeClass = 100

// IndexName is the page that leads to all files of a class.
const IndexName = "index.html"

// Roll is a class as it is worked on.
type Roll struct {
	Students []Student // in the order of the roster
	Took     Result    // with Ledger.Take, once it is finished: the shop file as it is to be, and what to say of it
	class    Class
}

// State is what became of a row of the roster.
type State int

// What a row comes to.
const (
	Left    State = iota // not come to
	Made                 // its files were made and put away
	Kept                 // its files were there already
	Refused              // it can't be made
	Failed               // its files could not be made
)

// Student is a row of the roster and what became of it. Its Suspects and Refused
// tell what to look at and what is wrong.
type Student struct {
	roster.Row
	Title   string // of the book
	State   State
	Err     error
	Picture []byte    // of the finished case, SVG; only where the roll was looked at
	Fit     index.Fit // how the book will fit
	*worked           // only while it is of use
}

// Shelf keeps the students' files. It is called from several goroutines. Made tells
// what a student's files are made of: of the same come the same files.
type Shelf interface {
	Has(folder, made string) bool
	Put(folder, made string, files []File) error
}

// Count returns how many students came to a state.
func (r *Roll) Count(s State) (n int) {
	for _, a := range r.Students {
		if a.State == s {
			n++
		}
	}
	return n
}

// Read reads the roster. The error tells what is wrong with the settings and with
// the table as a whole.
func (c Class) Read() (*Roll, error) {
	_, bad := effortOf(c.Effort, 0)
	bad = append(bad, c.Ledger.wrong(c.Source)...)
	_, mm := rounding(c.Round, geometry.MM)
	if _, in := rounding(c.Round, geometry.IN); mm != nil && in != nil {
		bad = refuse(bad, fmt.Sprintf("--round: %.20q is no rounding", c.Round), "give 0.5 or 0.1 for mm, 1/32 or 1/64 for in")
	}
	if len(c.Files) != 1 {
		return nil, refuse(bad, "class takes one roster", "such as forel class roster.csv")
	}
	rows, wrong := c.roster(c.Base, &bad)
	r := &Roll{Students: make([]Student, len(rows)), class: c}
	for i, row := range rows {
		r.Students[i].Row = row
	}
	if len(bad) > 0 {
		return nil, append(eachOnce(bad, wrong), r.Foreseen()...)
	}
	return r, nil
}

// Foreseen tells of what the stock will not take once refused rows are mended as they are
// told. Where no row is refused, the plan tells it; a large class is not looked through twice.
func (r *Roll) Foreseen() jobfile.Issues {
	refused := func(s Student) bool { return s.Refused != nil }
	if len(r.Students) > LargeClass || !slices.ContainsFunc(r.Students, refused) { // before cases are worked out again
		return nil
	}
	var all []worked
	for _, s := range r.Students {
		if refused(s) && !s.Mended {
			continue
		}
		if w, err := work(s.File, r.class.Round, r.class.Date); err == nil {
			w.plan.Title = s.Name
			all = append(all, w)
		}
	}
	if len(all) == 0 {
		return nil
	}
	return unstocked(context.Background(), all, bench.Options{})
}

// Make makes the files of every student, several at a time, and puts them away one
// student by one, until all are done or the context ends. It stops where the shelf fails.
func (r *Roll) Make(ctx context.Context, shelf Shelf, p Progress) error {
	together, until := errgroup.WithContext(ctx)
	together.SetLimit(max(1, r.class.Workers))
	for i := range r.Students {
		if until.Err() != nil {
			break
		}
		p.at(float64(i) / float64(len(r.Students)))
		together.Go(func() error {
			s := &r.Students[i]
			err := s.make(until, r.class, shelf)
			if len(r.Students) > LargeClass {
				s.File = nil // Foreseen does not ask for it
			}
			return err
		})
	}
	return together.Wait()
}

// Look works every student's case out without making a file, one after the other, until all
// are done or the context ends. Made students then have a fit and a Picture.
func (r *Roll) Look(ctx context.Context, p Progress) {
	for i := range r.Students {
		if ctx.Err() != nil {
			return
		}
		p.at(float64(i) / float64(len(r.Students)))
		if s := &r.Students[i]; s.settle(r.class) {
			s.State, s.Picture = Made, index.Picture(s.plan)
			s.slim()
		}
	}
}

// settle works one student's case out, and returns whether it can be made.
func (s *Student) settle(c Class) bool {
	var w worked
	if w, s.Refused = workRow(s.Row, c.Round, c.Date); s.Refused != nil {
		s.State = Refused
		return false
	}
	s.worked = &w
	s.Title = s.plan.Title
	r := fit.Of(s.plan)
	s.Fit = index.Fit{Says: look.ChancesOf(r.Settled), Advice: look.Advice(r, s.round.Unit), Risk: !r.Settled.Enough()}
	return true
}

// slim leaves of a case worked out what is asked for of the class, which are no steps.
func (s *Student) slim() {
	s.worked.slim()
	s.plan.Steps = nil
}

// make makes one student's files. The error is the shelf's.
func (s *Student) make(ctx context.Context, c Class, shelf Shelf) error {
	if !s.settle(c) {
		return nil
	}
	defer s.slim()
	made := fmt.Sprintf("%x", sha256.Sum256(fmt.Appendf(nil, "%s\n%x\n%s\n%d\n", c.Program, s.Given, c.Round, c.Date.Unix())))
	if shelf.Has(s.Folder, made) {
		s.State = Kept
		return nil
	}
	files, err := s.worked.ofStudent()
	switch {
	case err != nil:
		s.State, s.Err = Failed, err
		return nil
	case ctx.Err() != nil:
		return nil // left for another time
	}
	s.State = Made
	return shelf.Put(s.Folder, made, files)
}

// ofStudent makes all that a student gets.
func (w worked) ofStudent() ([]File, error) {
	var r Result
	if _, err := r.templates(w, render.DefaultTheme(), 0, false, false); err != nil {
		return nil, err
	}
	steps, err := handout.Document(w.plan, handout.Options{Options: w.printed(), Times: w.file.Times}).PDF()
	if err != nil {
		return nil, err
	}
	return append(r.Files,
		File{handoutName, steps},
		File{"cutlist.txt", cutlist.Text(w.plan, w.round, document.Plain)},
		File{"cutlist.json", cutlist.JSON(w.plan, true)},
		File{index.PictureName, index.Picture(w.plan)},
	), nil
}

const (
	shoppingName = "shopping.txt"
	labelsName   = "labels.pdf"

	// PrintName is the file with all that is printed for every student.
	PrintName = "print.pdf"
)

// printed are the files of a student that belong in it.
var printed = []string{handoutName, templatesName}

// studentFiles is what the index leads to in every folder.
var studentFiles = []index.File{{Name: handoutName, Says: "handout"}, {Name: templatesName, Says: "templates"}, {Name: "cutlist.txt", Says: "cut list"}}

// Finish makes what belongs to the class as a whole and puts it away: the plan of all
// sheets, the labels, the page that leads to all files. Where the sheets can't be planned,
// the others are made all the same. The last error is the shelf's. It comes last: what was
// worked out is let go.
func (r *Roll) Finish(ctx context.Context, shelf Shelf, p Progress) (warnings jobfile.Issues, unplanned, err error) {
	page := index.Page{Files: []index.File{{Name: PrintName, Says: "every student's pages, in order of names, to print at actual size"}, {Name: labelsName, Says: "labels for the kits"}}}
	var all []*worked
	for i := range r.Students {
		s := &r.Students[i]
		if s.State != Made && s.State != Kept {
			page.Missing = append(page.Missing, fmt.Sprintf("%s (line %d of the roster)", cmp.Or(s.Name, "no name"), s.Line))
			continue
		}
		s.plan.Title = s.Name // for the plan of the sheets
		page.Entries = append(page.Entries, index.Entry{Name: s.Name, Title: s.Title, Folder: s.Folder, Plan: &s.plan, Round: s.round, Fit: s.Fit, Files: studentFiles})
		all = append(all, s.worked)
	}
	put := func(name string, data []byte, wrong error) {
		if err = cmp.Or(err, wrong); err == nil {
			err = shelf.Put("", "", []File{{name, data}})
		}
	}
	var stock []index.File
	stock, warnings, unplanned = r.plan(ctx, all, put, p)
	page.Files = append(page.Files, stock...)
	if len(all) > 0 {
		labels, wrong := kit.Document(r.kitsOf(), all[0].printed()).PDF()
		put(labelsName, labels, wrong)
	}
	put(IndexName, index.HTML(page), nil)
	for i := range r.Students {
		r.Students[i].worked = nil
	}
	return warnings, unplanned, err
}

// baseName returns a file's name without its folder, whatever system it is of.
func baseName(name string) string { return name[strings.LastIndexAny(name, `/\`)+1:] }

// kitsOf returns what each student gets, in order of names.
func (r *Roll) kitsOf() (kits []kit.Kit) {
	for _, s := range r.Done() {
		kits = append(kits, kit.Kit{Name: s.Name, Title: s.Title, Pieces: s.plan.Pieces, Stock: s.stocked()})
	}
	return kits
}

// Done returns the students who have files, in order of names.
func (r *Roll) Done() (out []Student) {
	for _, s := range r.Students {
		if s.State == Made || s.State == Kept {
			out = append(out, s)
		}
	}
	slices.SortStableFunc(out, func(a, b Student) int { return strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)) })
	return out
}

// Bind writes PrintName, the pages of all students in order of names. read returns a file
// that was put away.
func (r *Roll) Bind(to io.Writer, read func(folder, name string) ([]byte, error)) error {
	b := merge.New(to)
	for _, s := range r.Done() {
		title := s.Name
		for _, name := range printed {
			data, err := read(s.Folder, name)
			if err == nil {
				err = b.Add(title, data)
			}
			if err != nil {
				return err
			}
			title = "" // it names the first page
		}
	}
	return b.Close()
}

// plan lays the pieces of all students out on the sheets to buy, in lots of LargeClass
// students: nobody cuts thousands of sheets at one setting of the fence. What is put away
// is what the index leads to.
func (r *Roll) plan(ctx context.Context, all []*worked, put func(string, []byte, error), p Progress) (files []index.File, warnings jobfile.Issues, err error) {
	lots := slices.Collect(slices.Chunk(all, LargeClass))
	steps := StockSteps
	if len(lots) > 1 {
		steps = 0
	}
	effort, _ := effortOf(r.class.Effort, steps) // Read has told what is wrong with it
	var result Result
	var plans []bench.Plan
	var lists [][]byte
	var taken []lot
	for i, of := range lots {
		some := make([]worked, len(of))
		for k, w := range of {
			some[k] = *w
		}
		effort.Progress = func(done float64) { p.at((float64(i) + done) / float64(len(lots))) }
		laid, err := layOut(ctx, some, bench.Options{Effort: effort, Keep: some[0].file.Keep, Lot: len(lots) > 1, Before: plans}, &result)
		if err != nil {
			return nil, result.Warnings, err
		}
		name, whose, called := stockName, "", "the plan"
		if len(lots) > 1 {
			name = fmt.Sprintf("stock-%0*d.pdf", max(2, len(fmt.Sprint(len(lots)))), i+1)
			whose = fmt.Sprintf(" for %s to %s", some[0].plan.Title, some[len(some)-1].plan.Title)
			called = name
		}
		doc, wrong := draw.Document(laid, some[0].printed()).PDF()
		put(name, doc, wrong)
		files = append(files, index.File{Name: name, Says: "sheets to cut and the order of the cuts" + whose})
		plans, lists = append(plans, laid.Slim()), append(lists, draw.Text(laid, all[0].round, false, document.Plain))
		taken = append(taken, lot{plans[i], called})
	}
	if len(plans) > 0 {
		put(shoppingName, draw.Shopping(plans, lists, all[0].round), nil)
		files = append([]index.File{{Name: shoppingName, Says: "shopping list"}}, files...)
	}
	if r.class.Take && len(plans) > 0 {
		labels, wrong, err := r.take(taken, all[0].printed(), put)
		if err != nil {
			return nil, result.Warnings, err
		}
		files, result.Warnings = append(files, labels...), append(result.Warnings, wrong...)
	}
	return files, result.Warnings, nil
}

// take takes the sheets of all students from the shop, and puts away the labels of what is
// left. Where a student is missing, nothing is taken: it would be taken again with the next run.
func (r *Roll) take(lots []lot, o document.Options, put func(string, []byte, error)) (files []index.File, missing jobfile.Issues, err error) {
	if n := len(r.Students) - r.Count(Made) - r.Count(Kept); n > 0 {
		return nil, refuse(nil, fmt.Sprintf("--take: nothing is taken off %s, as %s can't be made", r.class.Shop.Name, wording.Count(n, "row")), "put that right and run it again"), nil
	}
	var kept []offcuts.Label
	r.Took.Shop, r.Took.Report, kept, err = r.class.take(r.class.Source, "the class of "+baseName(r.class.Files[0].Name), lots, o.Round)
	if err != nil || len(kept) == 0 {
		return nil, nil, err
	}
	labels, wrong := offcuts.Document(kept, o).PDF()
	put(offcutsName, labels, wrong)
	return []index.File{{Name: offcutsName, Says: "labels for the offcuts worth keeping"}}, nil, nil
}
