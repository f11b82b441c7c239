package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/pflag"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/slipcase"
)

// flagSet starts the flags of a command. about is its help: usage, what it
// does, an example.
func flagSet(name, about string, out io.Writer) *pflag.FlagSet {
	f := pflag.NewFlagSet(name, pflag.ContinueOnError)
	f.SortFlags = false
	f.Usage = func() {
		fmt.Fprint(out, strings.TrimPrefix(about, "\n"))
		fmt.Fprint(out, "\nflags:\n", f.FlagUsages())
	}
	f.SetOutput(io.Discard)
	return f
}

// parseFlags parses a command's words; help that was asked for is printed.
func parseFlags(f *pflag.FlagSet, args []string) error {
	err := f.Parse(args)
	switch {
	case err == pflag.ErrHelp:
		return errHelp
	case err != nil:
		return refusal{clean(err.Error()), "forel " + f.Name() + " --help lists the flags"}
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

// flags gives what was set, as the job file package takes it.
func (j *jobFlags) flags() ([]jobfile.Flag, error) {
	var out []jobfile.Flag
	for _, k := range keyFlags {
		if v := *j.values[k.name]; len(v) > 0 {
			out = append(out, jobfile.Flag{Name: "--" + k.name, Key: k.key, Value: strings.Join(v, ";")})
		}
	}
	for _, kv := range j.keys {
		key, value, ok := strings.Cut(kv, "=")
		if !ok {
			return nil, refusal{fmt.Sprintf("--set %.40q has no value", kv), "write it as key=value, such as board.thickness=1.9"}
		}
		key = strings.TrimSpace(key)
		out = append(out, jobfile.Flag{Name: "--set " + key, Key: key, Value: value})
	}
	return append(out, j.extra...), nil
}

// load reads the job from the file named, if any, and the flags.
func (j *jobFlags) load(say voice) (jobfile.File, slipcase.Case, geometry.Rounding, error) {
	var none geometry.Rounding
	flags, err := j.flags()
	if err != nil {
		return jobfile.File{}, slipcase.Case{}, none, err
	}
	var file jobfile.File
	var suspects jobfile.Issues
	switch args := j.set.Args(); {
	case j.example && len(args) > 0:
		return file, slipcase.Case{}, none, refusal{"both --example and a job file", "give one of them"}
	case j.example:
		if file, suspects, err = jobfile.ParseWith("example", jobfile.Starter(), flags); err != nil {
			return file, slipcase.Case{}, none, err
		}
	case len(args) > 1:
		return file, slipcase.Case{}, none, refusal{fmt.Sprintf("more than one job file: %.60q", args), "give one"}
	case len(args) == 1:
		data, err := os.ReadFile(args[0])
		if err != nil {
			return file, slipcase.Case{}, none, failure{err, "forel new " + args[0] + " writes a starter job"}
		}
		file, suspects, err = jobfile.ParseWith(args[0], data, flags)
		if err != nil {
			return file, slipcase.Case{}, none, err
		}
	case len(flags) == 0:
		return file, slipcase.Case{}, none, refusal{"no job", "name a job file, or give --height, --width and --thickness"}
	default:
		if file, suspects, err = jobfile.FromFlags(flags); err != nil {
			return file, slipcase.Case{}, none, err
		}
	}
	round := geometry.ToTenthMM
	if file.Job.Unit == geometry.IN {
		round = geometry.To64th
	}
	if j.round != "" {
		if round, err = geometry.ParseRounding(j.round, file.Job.Unit); err != nil {
			return file, slipcase.Case{}, none, fmt.Errorf("--round: %w", err)
		}
	}
	c, err := slipcase.Make(file.Job)
	if err != nil {
		return file, c, none, err
	}
	say.warn(suspects)
	return file, c, round, nil
}
