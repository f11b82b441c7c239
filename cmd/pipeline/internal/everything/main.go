// Command everything makes the files of every command for the invented example and
// prints a digest of each. Built for this machine and for a browser, it shows whether
// the pipeline makes the same in both.
package main

import (
	"cmp"
	"context"
	"crypto/sha256"
	"fmt"
	"os"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
)

func main() {
	ctx := context.Background()
	job := pipeline.Job{Example: true}
	cases := pipeline.Cases{Job: job}
	cutter := pipeline.Cutter{}
	cutter.Job, cutter.Bed, cutter.Effort = job, "600x300", "100"
	for _, c := range []pipeline.Command{
		pipeline.Templates{Job: job}, pipeline.Gauge{}, pipeline.Measure{Job: job}, pipeline.Choose{Job: job}, pipeline.Cutlist{Job: job, Format: "json"}, pipeline.Handout{Job: job}, pipeline.Timetable{Cases: cases, Start: "2026-12-01", Draw: true},
		pipeline.Stock{Job: job, Effort: "100", Draw: true}, pipeline.Order{Cases: cases, Effort: "100", Draw: true}, pipeline.Quote{Cases: cases, Effort: "100", Draw: true}, cutter,
		pipeline.Prove{Job: job, Draw: true}, pipeline.Fit{Job: job, Draw: true},
		pipeline.Rescue{Job: job, Lengths: pipeline.Lengths{Readings: []string{"play-thickness=-0.4"}}, Unfinished: true, Draw: true},
		pipeline.Lessons{Source: pipeline.Source{Files: []pipeline.File{{Name: "case.record.toml", Data: []byte("version = 1\n")}}}},
		pipeline.Record{Job: job, Show: true, Draw: true},
		pipeline.Record{Job: pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "case.toml", Data: jobfile.Starter()}}}}, Lengths: pipeline.Lengths{Readings: []string{"play-height=1.4", "board=1.98; 2.02"}}},
	} {
		r, err := c.Make(ctx)
		tell(fmt.Sprintf("%T", c), append(r.Files, pipeline.File{Name: "report", Data: r.Report}), err)
	}
	shop := pipeline.File{Name: "shop.toml", Data: jobfile.ShopStarter()}
	named := pipeline.File{Name: "case.toml", Data: []byte("board = \"grey board 2 mm\"\n[[book]]\nheight = 221\nwidth = 148.5\nthickness = 32\n")}
	plain, err := pipeline.Plain{Job: pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{named}, Shop: shop}}}.Make(ctx)
	tell("Plain", []pipeline.File{{Name: "report", Data: plain.Report}}, err)
	roster := pipeline.File{Name: "roster.csv", Data: []byte("name,height,width,thickness\nAna,221,148.5,32\n")}
	roll, err := pipeline.Class{Source: pipeline.Source{Files: []pipeline.File{roster}}, Effort: "0"}.Read()
	tell("Class", nil, err)
	tell("Class", nil, roll.Make(ctx, teller{}, nil))
	_, unplanned, err := roll.Finish(ctx, teller{}, nil)
	tell("Class", nil, cmp.Or(unplanned, err))
}

// tell prints a digest of each file.
func tell(of string, files []pipeline.File, err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, of, err)
		os.Exit(1)
	}
	for _, f := range files {
		fmt.Printf("%s %s %x\n", of, f.Name, sha256.Sum256(f.Data))
	}
}

// teller tells of students' files.
type teller struct{}

func (teller) Has(string, string) bool { return false }

func (teller) Put(folder, _ string, files []pipeline.File) error {
	tell(folder, files, nil)
	return nil
}
