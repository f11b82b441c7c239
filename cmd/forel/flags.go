package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/typeset"
)

// flagSet starts the flags of a command. about is its help: usage, what it
// does, an example.
func flagSet(name, about string, out io.Writer) *pflag.FlagSet {
	f := pflag.NewFlagSet(name, pflag.ContinueOnError)
	f.SortFlags = false
	f.Usage = func() { help(out, about, f) }
	f.SetOutput(io.Discard)
	return f
}

// parseFlags parses a command's words; help that was asked for is printed. A flag
// of one value that is given two is refused.
func parseFlags(f *pflag.FlagSet, args []string) error {
	first := map[string]string{}
	var twice []error
	err := f.ParseAll(args, func(flag *pflag.Flag, value string) error {
		was, seen := first[flag.Name]
		if flag.Value.Type() != "stringArray" {
			if seen && was != value {
				twice = append(twice, contradiction("--"+flag.Name, was, "--"+flag.Name, value))
			}
			first[flag.Name] = value
		}
		return f.Set(flag.Name, value)
	})
	if err == nil && twice != nil {
		return errors.Join(twice...)
	}
	switch {
	case err == pflag.ErrHelp:
		return errHelp
	case err != nil:
		return refusal{wording.OneLine(err.Error()), "forel " + f.Name() + " --help lists the flags"}
	}
	return nil
}

// jobFlags are the flags that give a job without a file, or change one.
type jobFlags struct {
	set     *pflag.FlagSet
	values  map[string]*[]string // by flag name
	keys    []string             // --set key=value
	extra   []jobfile.Flag       // flags of one command
	round   string
	example bool
	paper   *string // of commands that print; nil for others
	black   *bool
	date    time.Time // of their documents
}

// The flags that stand for one key of a job file.
var keyFlags = []struct{ name, key, usage string }{
	{"height", "book.height", "the book from head to tail, a `length` such as 221, \"23,5 cm\" or \"9 1/4 in\"; may be given again for another reading"},
	{"width", "book.width", "the book from spine to fore-edge, a `length`"},
	{"thickness", "book.thickness", "the book's thickness, a `length`"},
	{"title", "title", "`title` of the job"},
	{"units", "units", "what a bare number means, a `unit`: mm or in"},
}

func addJobFlags(f *pflag.FlagSet) *jobFlags {
	j := &jobFlags{set: f, values: map[string]*[]string{}}
	for _, k := range keyFlags {
		j.values[k.name] = f.StringArray(k.name, nil, k.usage)
	}
	f.StringArrayVar(&j.keys, "set", nil, "any `key=value` of a job file, such as board.thickness=1.9")
	f.BoolVar(&j.example, "example", false, "take the invented example that forel new writes")
	f.StringVar(&j.round, "round", "", "`step` that shown sizes are rounded to: 0.5 or 0.1 mm, 1/32 or 1/64 in (default 0.1 mm or 1/64 in)")
	return j
}

// blackUsage is the help of --black.
const blackUsage = "print in black alone: lines told apart by dash and weight; drawings keep their colours"

// addPrint adds the flags of a command that prints.
func (j *jobFlags) addPrint() {
	j.paper = j.set.String("paper", "", paperUsage)
	j.black = j.set.Bool("black", false, blackUsage)
}

// checkOut refuses a folder without a name.
func checkOut(f *pflag.FlagSet, folder, such string) error {
	if f.Changed("out") && folder == "" {
		return refusal{"--out names no folder", "such as --out " + such}
	}
	return nil
}

// checkFormat refuses a format that a command does not have.
func checkFormat(format string, known ...string) error {
	if !slices.Contains(known, format) {
		return refusal{fmt.Sprintf("--format: unknown format %.20q", format), "give " + wording.Or(known)}
	}
	return nil
}

// flags gives what was set, as the job file package takes it. All that is wrong
// with it is told: a --set that is none, what contradicts itself.
func (j *jobFlags) flags() ([]jobfile.Flag, error) {
	var out []jobfile.Flag
	for _, k := range keyFlags {
		v := *j.values[k.name]
		if strings.HasPrefix(k.key, "book.") && len(v) > 0 { // its readings
			v = []string{strings.Join(v, ";")}
		}
		for _, value := range v {
			out = append(out, jobfile.Flag{Name: "--" + k.name, Key: k.key, Value: value})
		}
	}
	var wrong []error
	for _, kv := range j.keys {
		set, err := setFlag(kv)
		if err != nil {
			wrong = append(wrong, err)
			continue
		}
		out = append(out, set)
	}
	if j.paper != nil {
		var err error
		if j.date, err = fileDate(); err != nil {
			return nil, err
		}
	}
	if j.paper != nil && *j.paper != "" {
		out = append(out, jobfile.Flag{Name: "--paper", Key: "print.paper", Value: *j.paper})
	}
	if j.black != nil && *j.black {
		out = append(out, jobfile.Flag{Name: "--black", Key: "print.ink", Value: "black"})
	}
	out = append(out, j.extra...)
	if wrong = append(wrong, contradictions(out)...); wrong != nil {
		return nil, errors.Join(wrong...)
	}
	return out, nil
}

// setFlag reads what --set was given.
func setFlag(kv string) (jobfile.Flag, error) {
	key, value, ok := strings.Cut(kv, "=")
	if key = strings.TrimSpace(key); !ok || key == "" {
		return jobfile.Flag{}, refusal{fmt.Sprintf("--set %.40q gives no key and value", kv), "write it as key=value, such as board.thickness=1.9"}
	}
	return jobfile.Flag{Name: "--set " + key, Key: key, Value: value}, nil
}

// loaded is a job that was read and worked out.
type loaded struct {
	name   string // of the file; empty where there is none
	file   jobfile.File
	boards slipcase.Case // of a case of boards
	card   onepiece.Case // of a case of card
	plan   plan.Plan
	round  geometry.Rounding
	date   time.Time // of documents, of a command that prints; zero: none
}

// printed returns how its documents are made.
func (l loaded) printed() document.Options {
	return document.Options{Setup: l.file.Print, Round: l.round, Theme: render.DefaultTheme(), Black: l.file.Black, Date: l.date}
}

// load reads the job from the file named, if any, and the flags, and works it
// out.
func (j *jobFlags) load(say voice) (loaded, error) {
	flags, err := j.flags()
	if err != nil {
		return loaded{}, err
	}
	file, suspects, err := j.read(flags)
	if err != nil {
		return loaded{}, err
	}
	return j.worked(file, suspects, say)
}

// loadAll is load for any number of job files, the flags holding for each. All
// that is wrong with any of them is told.
func (j *jobFlags) loadAll(say voice) ([]loaded, error) {
	names := j.set.Args()
	if len(names) < 2 {
		l, err := j.load(say)
		return []loaded{l}, err
	}
	for _, k := range keyFlags {
		if strings.HasPrefix(k.key, "book.") && len(*j.values[k.name]) > 0 || k.key == "title" && len(*j.values[k.name]) > 0 {
			return nil, refusal{"--" + k.name + " with several job files", "leave it out, or give one job file"}
		}
	}
	if j.example {
		return nil, refusal{"both --example and a job file", "give one of them"}
	}
	flags, err := j.flags()
	if err != nil {
		return nil, err
	}
	var all []loaded
	var bad []error
	for _, name := range names {
		data, err := readJob(name)
		if err != nil {
			return nil, err
		}
		file, suspects, err := jobfile.ParseWith(name, data, flags)
		if err != nil {
			bad = append(bad, err)
			continue
		}
		l, err := j.worked(file, suspects, say)
		if err != nil {
			bad = append(bad, fmt.Errorf("%s: %w", name, err))
			continue
		}
		l.name = name
		all = append(all, l)
	}
	return all, errors.Join(bad...)
}

// worked works out a job that was read, and warns of what looks like a slip.
func (j *jobFlags) worked(file jobfile.File, suspects jobfile.Issues, say voice) (loaded, error) {
	l, err := workOut(file, j.round)
	if err != nil {
		return l, err
	}
	l.date = j.date
	say.warn(suspects)
	say.warnTitle(l.plan.Title)
	return l, nil
}

// workOut makes the case of a job that was read, for sizes rounded as asked.
func workOut(file jobfile.File, round string) (l loaded, err error) {
	l.file = file
	if l.round, err = rounding(round, file.Job.Unit); err != nil {
		return l, err
	}
	if file.Construction == jobfile.Card {
		if l.card, err = onepiece.Make(file.Card); err != nil {
			return l, err
		}
		l.plan = l.card.Plan()
		return l, nil
	}
	if l.boards, err = slipcase.Make(file.Job); err != nil {
		return l, err
	}
	l.plan = l.boards.Plan()
	return l, nil
}

// warnTitle tells of a title that the PDF can't show whole.
func (v voice) warnTitle(title string) {
	if typeset.Settable(title) != title {
		fmt.Fprintf(v.w, "warning: title: the PDF's typeface lacks some of its characters and shows %c for each; the drawings have them all\n", typeset.Missing)
	}
}

// read reads the job from where the words say.
func (j *jobFlags) read(flags []jobfile.Flag) (jobfile.File, jobfile.Issues, error) {
	switch args := j.set.Args(); {
	case j.example && len(args) > 0:
		return jobfile.File{}, nil, refusal{"both --example and a job file", "give one of them"}
	case j.example:
		return jobfile.ParseWith("example", jobfile.Starter(), flags)
	case len(args) > 1:
		return jobfile.File{}, nil, refusal{fmt.Sprintf("more than one job file: %.60q", args), "give one"}
	case len(args) == 1:
		data, err := readJob(args[0])
		if err != nil {
			return jobfile.File{}, nil, err
		}
		return jobfile.ParseWith(args[0], data, flags)
	case len(flags) == 0:
		return jobfile.File{}, nil, refusal{"no job", "name a job file, or give --height, --width and --thickness"}
	}
	return jobfile.FromFlags(flags)
}

// readJob reads a job file.
func readJob(name string) ([]byte, error) {
	missing := "put a length with a space in quotes"
	if strings.HasSuffix(name, ".toml") {
		missing = "forel new " + name + " writes a starter job"
	}
	return readInput(name, missing, "name a job file")
}

// readInput reads a regular file, no more of it than could be a job; it is told
// what to do where there is none, or where it is something else.
func readInput(name, missing, other string) ([]byte, error) {
	f, err := os.Open(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, failure{fmt.Errorf("%s: no such file", name), missing}
	}
	if err != nil {
		return nil, failure{fmt.Errorf("%s: %w", name, cause(err)), ""}
	}
	defer f.Close()
	info, err := f.Stat()
	if err == nil && !info.Mode().IsRegular() {
		err = errors.New("not a file")
	}
	if err != nil {
		return nil, failure{fmt.Errorf("%s: %w", name, cause(err)), other}
	}
	data, err := io.ReadAll(io.LimitReader(f, jobfile.MostBytes+1))
	if err != nil {
		return nil, failure{fmt.Errorf("%s: %w", name, cause(err)), ""}
	}
	return data, nil
}

// roundsAny refuses a rounding that suits no unit.
func roundsAny(asked string) error {
	_, err := rounding(asked, geometry.MM)
	if _, inches := rounding(asked, geometry.IN); err != nil && inches != nil {
		return refusal{fmt.Sprintf("--round: %.20q is no rounding", asked), "give 0.5 or 0.1 for mm, 1/32 or 1/64 for in"}
	}
	return nil
}

// rounding gives how shown sizes are rounded: as asked, or as suits the unit.
func rounding(asked string, unit geometry.Unit) (geometry.Rounding, error) {
	if asked != "" {
		r, err := geometry.ParseRounding(asked, unit)
		if err != nil {
			return r, fmt.Errorf("--round: %w", err)
		}
		return r, nil
	}
	if unit == geometry.IN {
		return geometry.To64th, nil
	}
	return geometry.ToTenthMM, nil
}
