package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/geometry/wording"
)

// flags are a command's flags, and where what they say goes.
type flags struct {
	*pflag.FlagSet
	source   *pipeline.Source                           // the files named and the keys set
	read     func(name string) (data []byte, err error) // reads a file named
	several  bool                                       // takes more than one file
	shop     *string                                    // what --shop says; nil without it
	noShop   bool                                       // it is not known which shop file is meant
	based    *string                                    // the job file that --job or the like names; nil: it has no such flag
	basis    **pipeline.File                            // where that file goes
	baseFlag string                                     // the name of that flag
	records  func(args []string) ([]string, error)      // the records that the words stand for; nil: they name the files
	old      **pipeline.File                            // where the record beside the job goes; nil: none is asked for
	dated    bool                                       // its documents bear the date, if there is one

	folder *string // what --out says; empty without it
	such   string  // an example of it
	draw   *bool   // set where --out is given; may be nil

	doing    string             // what a long command does
	progress *pipeline.Progress // set to show how far it has come
}

func newFlags(name string) *flags {
	f := &flags{FlagSet: pflag.NewFlagSet(name, pflag.ContinueOnError), read: readJob, folder: new(string)}
	f.SortFlags = false
	f.Usage = func() {}
	f.SetOutput(io.Discard)
	return f
}

// parse parses a command's words. A flag of one value that is given two is refused.
func (f *flags) parse(args []string) error {
	var given []jobfile.Flag
	err := f.ParseAll(args, func(flag *pflag.Flag, value string) error {
		if flag.Value.Type() != "stringArray" {
			given = append(given, jobfile.Flag{Name: "--" + flag.Name, Key: flag.Name, Value: value})
		}
		return f.Set(flag.Name, value)
	})
	switch twice := pipeline.Contradictions(given); {
	case errors.Is(err, pflag.ErrHelp):
		return err
	case isNumber(err):
		var wrong *pflag.InvalidValueError
		errors.As(err, &wrong)
		return refuse(fmt.Sprintf("--%s: %s is no whole number", wrong.GetFlag().Name, wording.Quote(wrong.GetValue())), "give one such as 3")
	case err != nil: // on one line
		return refuse(wording.OneLine(err.Error()), "forel "+f.Name()+" --help lists the flags")
	case twice != nil:
		return twice
	}
	return nil
}

// isNumber tells of an error of a flag that takes a whole number and was given something else.
func isNumber(err error) bool {
	var wrong *pflag.InvalidValueError
	var number *strconv.NumError
	return errors.As(err, &wrong) && errors.As(wrong, &number)
}

// key adds a flag that stands for a key of a job file. Given again for a book it is
// another reading.
func (f *flags) key(name, key, usage string) {
	f.StringArray(name, nil, usage)
	f.Lookup(name).Annotations = map[string][]string{keyOf: {key}}
}

// keyOf is the annotation of a flag that has the key it stands for.
const keyOf = "key"

// setFlag is a flag that is given any key with its value, and blackFlag one that is on or off.
const (
	setFlag   = "set"
	blackFlag = "black"
)

// keys returns what the flags set of a job file, in the order they were defined.
func (f *flags) keys() (out []jobfile.Flag, bad jobfile.Issues) {
	f.VisitAll(func(flag *pflag.Flag) {
		var given []string
		if list, ok := flag.Value.(pflag.SliceValue); ok {
			given = list.GetSlice()
		}
		name, key := "--"+flag.Name, strings.Join(flag.Annotations[keyOf], "")
		switch {
		case flag.Name == blackFlag && flag.Value.String() == "true":
			key, given = "print.ink", []string{"black"}
		case strings.HasPrefix(key, "book.") && len(given) > 0:
			given = []string{strings.Join(given, ";")}
		}
		for _, value := range given {
			switch of, text, ok := strings.Cut(value, "="); {
			case flag.Name == setFlag && (!ok || strings.TrimSpace(of) == ""):
				bad = append(bad, refuse(fmt.Sprintf("--set %.40q gives no key and value", value), "write it as key=value, such as board.thickness=1.9")...)
			case flag.Name == setFlag:
				of = strings.TrimSpace(of)
				out = append(out, jobfile.Flag{Name: "--set " + of, Key: of, Value: text})
			case key != "":
				out = append(out, jobfile.Flag{Name: name, Key: key, Value: value})
			}
		}
	})
	return out, bad
}

// job adds the flags that give a job without a file, or change one.
func (f *flags) job(j *pipeline.Job) {
	f.source = &j.Source
	f.book()
	f.key("units", "units", "what a bare number means, a `unit`: mm or in")
	f.key("board-known", "board.known", "how the board's thickness is known, a `word`: measured, or \"as sold\"")
	f.StringArray(setFlag, nil, "any `key=value` of a job file, such as board.thickness=1.9")
	f.shop = f.String("shop", "", shopUsage)
	f.BoolVar(&j.Example, "example", false, "take the invented book that forel new --example writes")
	f.settings(j.Showing())
}

// materials adds flags for materials of the shop file; elsewhere --set names them.
func (f *flags) materials() {
	for _, m := range []struct{ name, key, what string }{{"board", "board.material", "board"}, {"lining", "lining.material", "lining paper"}, {"cloth", "cloth.material", "book cloth"}, {"side-paper", "side_paper.material", "paper of the sides"}} {
		f.key(m.name, m.key, "the "+m.what+", a `name` of the shop file")
	}
}

// shopUsage is the help of --shop.
const shopUsage = "the shop `file` with materials, printers and habits; none: without (default " + jobfile.ShopName + " beside the job, if it is there)"

// settings adds a flag for each setting.
func (f *flags) settings(all []pipeline.Setting) {
	for _, s := range all {
		switch to := s.To.(type) {
		case *string:
			f.StringVar(to, s.Name, *to, s.Usage)
			if s.Usual != "" {
				f.Lookup(s.Name).DefValue = s.Usual // for the help
			}
		case *bool:
			f.BoolVar(to, s.Name, *to, s.Usage)
		case *int:
			f.IntVar(to, s.Name, *to, s.Usage)
		case *[]string:
			if s.Commas {
				f.StringSliceVar(to, s.Name, *to, s.Usage)
			} else {
				f.StringArrayVar(to, s.Name, *to, s.Usage)
			}
		}
	}
}

// book adds the flags for the book and its title.
func (f *flags) book() {
	f.key("height", "book.height", "the book from head to tail, a `length` such as 221, \"23,5 cm\" or \"9 1/4 in\"; may be given again for another reading")
	f.key("width", "book.width", "the book from spine to fore-edge, a `length`")
	f.key("thickness", "book.thickness", "the book's thickness, a `length`")
	f.key("title", "title", "`title` of the job")
}

// paperUsage is the help of --paper.
const paperUsage = "`sheet` to print on: a4, another of a0 to a5 or b0 to b5, letter, legal, tabloid, or its size, such as \"210 x 297 mm\""

// printerUsage is the help of --printer.
const printerUsage = "the printer, a `name` of the shop file"

// prints adds the flags of a command that prints.
func (f *flags) prints() {
	f.dated = true
	f.key("paper", "print.paper", paperUsage)
	f.key("printer", "print.printer", printerUsage)
	f.Bool(blackFlag, false, "print in black alone: lines told apart by dash and weight; drawings keep their colours")
}

// out adds --out. Where draw is given, files are made only if it is; else they go into a
// folder of the command's name.
func (f *flags) out(such, usage string, draw *bool) {
	folder := f.Name()
	if draw != nil {
		folder = ""
	}
	f.folder, f.such, f.draw = f.String("out", folder, usage+"; made if it is not there"), such, draw
}

// writes adds the flags of a command that writes documents of jobs.
func (f *flags) writes(c pipeline.Settable, j *pipeline.Job, such, usage string, draw *bool) {
	f.job(j)
	f.out(such, usage, draw)
	f.prints()
	f.settings(c.Settings())
}

// base adds a flag that names a job file beside what the words name. A shop file is looked for
// beside it then.
func (f *flags) base(name, usage string, to **pipeline.File) {
	f.based, f.basis, f.baseFlag = f.String(name, "", usage), to, name
}

// readBase reads that job file, if one is named.
func (f *flags) readBase() (bad jobfile.Issues, err error) {
	switch {
	case f.based == nil || !f.Changed(f.baseFlag):
		return nil, nil
	case *f.based == "":
		return refuse("--"+f.baseFlag+" names no file", "such as --"+f.baseFlag+" old.toml"), nil
	}
	data, err := readJob(*f.based)
	*f.basis = &pipeline.File{Name: *f.based, Data: data}
	return nil, err
}

// beside returns the files that a shop file is looked for beside.
func (f *flags) beside() []string {
	if f.based != nil && *f.based != "" {
		return []string{*f.based}
	}
	return f.Args()
}

// long marks a command that may take long: it shows how far it has come, and an
// interrupt ends it with the best until then.
func (f *flags) long(doing string, p *pipeline.Progress) { f.doing, f.progress = doing, p }

// gather reads what the flags say and the files they name. It returns all that is wrong
// with the words, or tells it and returns every file that can't be read.
func (f *flags) gather(say voice) (bad jobfile.Issues, err error) {
	if f.Changed("out") && *f.folder == "" {
		bad = refuse("--out names no folder", "such as --out "+f.such)
	}
	set, wrong := f.keys()
	f.source.Flags, bad = append(f.source.Flags, set...), append(bad, wrong...)
	if f.dated {
		date, wrong := fileDate()
		f.source.Date, bad = date, append(bad, wrong...)
	}
	if f.draw != nil {
		*f.draw = *f.folder != ""
	}
	var unread []error
	names := f.Args()
	if f.records != nil {
		names, err = f.records(names)
		unread = append(unread, err)
	}
	for _, name := range names {
		file := pipeline.File{Name: name}
		if f.several || len(names) == 1 { // others are refused by their names
			if file.Data, err = f.read(name); err != nil {
				unread = append(unread, err)
			}
		}
		f.source.Files = append(f.source.Files, file)
	}
	if f.old != nil {
		*f.old, err = f.record()
		unread = append(unread, err)
	}
	wrong, err = f.readBase()
	bad, unread = append(bad, wrong...), append(unread, err)
	if f.shop != nil && (f.records == nil || *f.based != "") { // records ask for none
		shop, wrong, err := f.readShop()
		f.source.Shop, bad, unread = shop, append(bad, wrong...), append(unread, err)
		f.noShop = wrong != nil
	}
	if err = errors.Join(unread...); err != nil {
		say.status(bad.Err())
	}
	return bad, err
}

// makes is the action of a command of the pipeline: read, make, write, tell.
func (f *flags) makes(c pipeline.Command) action {
	return func(out io.Writer, say voice) error {
		bad, err := f.gather(say)
		if err != nil {
			return err
		}
		if bad != nil { // what else is wrong is told with it
			return append(bad, f.wrong(c)...)
		}
		r, err := f.run(c, say)
		say.warn(r.Warnings)
		if err != nil {
			return err
		}
		ready := func() error { _, err := out.Write(r.Report); return err }
		switch {
		case len(r.Files) == 0 && r.Shop != nil:
			return f.takes(r, out)
		case len(r.Files) == 0:
			return ready()
		case r.Shop != nil: // what is written for a taking lands with it or not at all, and it is told once it is done
			if err := writeShop(f.source.Shop, *r.Shop, true); err != nil {
				return err
			}
			ready = nil
		}
		change, err := writeInto(*f.folder, r, ready)
		if err != nil {
			return elsewhere(err)
		}
		if r.Shop != nil {
			if err := f.takes(r, out); err != nil {
				return err
			}
		}
		say.left(*f.folder, change)
		if format := f.Lookup("format"); format != nil && format.Value.String() == "json" {
			out = say.w // standard output holds the report alone
		}
		_, err = io.WriteString(out, told(*f.folder, r, change))
		return err
	}
}

// takes writes the shop file as it is to be, and then tells of it.
func (f *flags) takes(r pipeline.Result, out io.Writer) error {
	if err := writeShop(f.source.Shop, *r.Shop, false); err != nil {
		return err
	}
	_, err := out.Write(r.Report)
	return err
}

// wrong tells what a command refuses, without a search.
func (f *flags) wrong(c pipeline.Command) (bad jobfile.Issues) {
	if len(f.source.Files) == 0 && len(f.source.Flags) == 0 {
		return nil // what the job would be is among what is wrong
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := c.Make(ctx); !errors.As(err, &bad) {
		return nil
	}
	if f.noShop { // what is wrong with a job may hang on it
		bad = slices.DeleteFunc(bad, func(i jobfile.Issue) bool { return i.Source != "" })
	}
	return bad
}

// run makes what a command makes, telling how it goes on a terminal where it may
// take long.
func (f *flags) run(c pipeline.Command, say voice) (pipeline.Result, error) {
	ctx := context.Background()
	if f.progress != nil {
		bar := say.progress(f.doing)
		defer bar.Finish()
		*f.progress = bar.at
		var stop func()
		ctx, stop = signal.NotifyContext(ctx, os.Interrupt)
		defer stop()
	}
	return c.Make(ctx)
}

// says is the action of a command that takes no words and prints a text.
func (f *flags) says(text func() string) action {
	return func(out io.Writer, _ voice) error {
		if f.NArg() > 0 {
			return refuse(fmt.Sprintf("%s takes no words: %.40q", f.Name(), f.Args()), "forel "+f.Name())
		}
		_, err := io.WriteString(out, text())
		return err
	}
}
