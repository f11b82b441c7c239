package pipeline

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/plan"
	"forel/render"
	"forel/render/document"
)

// worked is a job that was read and worked out.
type worked struct {
	name  string // of the file, where there are several
	file  *jobfile.File
	unit  geometry.Unit // of the job
	plan  plan.Plan
	round geometry.Rounding
	date  time.Time // of documents; zero: none
}

// printed returns how its documents are made.
func (w worked) printed() document.Options {
	return document.Options{Setup: w.file.Print, Round: w.round, Theme: render.DefaultTheme(), Black: w.file.Black, Date: w.date}
}

// work works out the case of a job that was read, for sizes rounded as asked.
func work(file *jobfile.File, round string, date time.Time) (w worked, err error) {
	w.file, w.unit, w.date = file, file.Job.Shared().Unit, date
	if w.round, err = rounding(round, w.unit); err != nil {
		return w, err
	}
	w.plan, err = file.Case.Make()
	return w, err
}

// read reads the one job there is and works it out. bad is what is wrong with the
// settings of the command; all is told together.
func (j Job) read(r *Result, bad jobfile.Issues) (worked, error) {
	if err := j.one(bad); err != nil {
		return worked{}, err
	}
	all, err := j.readAll(r, bad)
	if err != nil {
		return worked{}, err
	}
	return all[0], nil
}

// ofOneBook are the keys that can't hold for several jobs.
var ofOneBook = []string{"title", "book.height", "book.width", "book.thickness"}

// readAll is read for any number of job files, the flags holding for each. Beside an error
// the jobs are returned that can be made, with the changes that it names where need be.
func (j Job) readAll(r *Result, bad jobfile.Issues) (all []worked, err error) {
	shop, wrong := j.shop(&bad)
	if !j.Example && len(j.Files)+len(j.Flags) == 0 {
		return nil, refuse(bad, "no job", "name a job file, or give --height, --width and --thickness")
	}
	several := len(j.Files) > 1
	for _, f := range j.Flags {
		if several && slices.Contains(ofOneBook, f.Key) {
			bad = refuse(bad, f.Name+" with several job files", "leave it out, or give one job file")
		}
	}
	for _, f := range j.toRead(&bad) {
		var file jobfile.File
		var suspects jobfile.Issues
		if f.Name == "" {
			file, suspects, err = shop.FromFlags(j.Flags)
		} else {
			file, suspects, err = shop.Parse(f.Name, f.Data, j.Flags...)
		}
		if err != nil {
			bad = append(bad, Problems(err)...)
			var ok bool
			if file, ok = shop.Mended(f.Name, f.Data, j.Flags...); !ok {
				continue
			}
		}
		w, wrong := work(&file, j.Round, j.Date)
		if several {
			w.name = f.Name
		}
		if err == nil {
			for _, p := range Problems(wrong) {
				p.Source = w.name
				bad = append(bad, p)
			}
			r.Warnings = append(r.Warnings, suspects...)
		}
		if wrong == nil {
			all = append(all, w)
		}
	}
	if shop != nil {
		r.With = "with the habits of " + j.Shop.Name
		var lent []string
		for _, w := range all {
			for _, l := range w.file.Lent {
				if !slices.Contains(lent, l) {
					lent = append(lent, l)
				}
			}
		}
		if len(lent) > 0 {
			r.With = "with " + strings.Join(lent, ", ") + " of " + j.Shop.Name
		}
	}
	return all, eachOnce(bad, wrong).Err()
}

// toRead returns the files of jobs; where there are none, one without a name, for which the
// flags say it all. What is no job is added to bad.
func (j Job) toRead(bad *jobfile.Issues) (files []File) {
	switch {
	case j.Example && len(j.Files) > 0:
		*bad = refuse(*bad, "both --example and a job file", "give one of them")
	case j.Example:
		return []File{{"example", jobfile.Starter()}}
	case len(j.Files) == 0:
		return []File{{}}
	}
	for _, f := range j.Files {
		if isRoster(f) {
			*bad = append(*bad, noJob(f))
		} else {
			files = append(files, f)
		}
	}
	return files
}

// eachOnce leaves out what is told already, as of a flag for each of several files. What is
// wrong with the shop file is told of a job too, which asks for more; that is left of it, but
// where there is nothing to read.
func eachOnce(bad, ofShop jobfile.Issues) (out jobfile.Issues) {
	on := func(all jobfile.Issues, i jobfile.Issue, key bool) bool {
		return slices.ContainsFunc(all, func(o jobfile.Issue) bool {
			return o.Source == i.Source && o.Line == i.Line && (!key || o.Key == i.Key)
		})
	}
	nothing := func(i jobfile.Issue) bool { return i.Value == `""` }
	inJobs := slices.DeleteFunc(slices.Clone(bad), func(i jobfile.Issue) bool { return slices.Contains(ofShop, i) || nothing(i) })
	for _, b := range bad {
		if shop := slices.Contains(ofShop, b); slices.Contains(out, b) || shop && on(inJobs, b, true) || !shop && nothing(b) && on(ofShop, b, false) {
			continue
		}
		out = append(out, b)
	}
	return out
}

// rounding returns how shown sizes are rounded: as asked, or as suits the unit.
func rounding(asked string, unit geometry.Unit) (geometry.Rounding, error) {
	r := geometry.ToTenthMM
	if unit == geometry.IN {
		r = geometry.To32nd
	}
	if asked == "" {
		return r, nil
	}
	r, err := geometry.ParseRounding(asked, unit)
	if err != nil {
		err = fmt.Errorf("--round: %w", err)
	}
	return r, err
}
