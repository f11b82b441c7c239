// Package pipeline is every command of forel from bytes to bytes: what a maker
// wrote and asked for goes in, files and what to say of them come out. It opens no
// file, reads no clock and knows no terminal, so that a program and a page in a
// browser can both be thin.
//
// Each command is a struct with the settings that its flags give; Make does it.
package pipeline

import (
	"context"
	"fmt"
	"slices"
	"time"

	"forel/cmd/jobfile"
	"forel/render/document"
)

// Command is one of forel's commands with its settings. An error of type
// jobfile.Issues is bad input, all that is wrong with it; any other is a failure of
// our own. The warnings of the Result hold beside an error too. A context that ends
// early ends a long search with the best until then.
type Command interface {
	Make(context.Context) (Result, error)
}

// File is a file that was read or is to be written. What is read has the name that
// messages call it by; what is made has no folder in it.
type File struct {
	Name string
	Data []byte
}

// Result is what a command makes.
type Result struct {
	Report   []byte   // a list or a report to be read
	Files    []File   // to be written, all or none
	Wrote    []string // what to call the files in a sentence; none: they are not told of
	Notes    []string // what to know of them, a line each
	With     string   // what was taken from the shop file, in a sentence; "": there is none
	Print    Print
	Document *document.Document   // the document among the files, so that its pages can be looked at; nil: none
	Beside   []*document.Document // other documents among the files
	Warnings jobfile.Issues       // what can be made, but should be looked at
	Advised  []Advised            // what to set, in a job file or as a habit
	Shop     *File                // the shop file as it is to be from now on; nil: as it is
	Set      string               // what the files are together: the next of the same name take their place
	Part     bool                 // they are a part of it: the others are not out of date
}

// Advised are settings that a report advises.
type Advised struct {
	What  string // they are about, in a few words
	Sets  []jobfile.Change
	Habit bool // they hold for all jobs, in the shop file
}

// Print is the file to be printed at actual size, if there is one.
type Print struct {
	File  string
	Paper string
	Then  string // how the sentence goes on, such as ", then measure its rulers"
}

// Source is what a command reads.
type Source struct {
	Files []File
	Flags []jobfile.Flag // take the place of what the files say
	Date  time.Time      // of documents; zero: none
	Shop  File           // what the maker has, for jobs to name; without a name there is none
}

// shop reads the shop file, where there is one; beside what is wrong with it, it holds what is
// sound. That is added to bad, with what is wrong with the flags.
func (s Source) shop(bad *jobfile.Issues) (shop *jobfile.Shop, wrong jobfile.Issues) {
	if s.Shop.Name != "" {
		var err error
		shop, err = jobfile.ReadShop(s.Shop.Name, s.Shop.Data)
		wrong = Problems(err)
	}
	*bad = slices.Concat(*bad, Contradictions(s.Flags), wrong)
	return shop, wrong
}

// one refuses more than one file.
func (s Source) one(bad jobfile.Issues) error {
	if len(s.Files) > 1 {
		return refuse(bad, fmt.Sprintf("more than one job file: %.60q", namesOf(s.Files)), "give one")
	}
	return nil
}

// Reads is a command, by its address, that reads files, for which a shop file can be lent.
type Reads interface {
	From(...File)
	Lend(shop File)
}

// From makes files what is read.
func (s *Source) From(f ...File) { s.Files = f }

// Lend makes a file the shop file.
func (s *Source) Lend(shop File) { s.Shop = shop }

// Job is a job, or several, with how they are shown.
type Job struct {
	Source
	Example bool   // take the invented example
	Round   string // the step that shown sizes are rounded to; "": as suits the unit
}

// Progress is called with how much of the work is done, from 0 to 1; nil where
// nobody asks.
type Progress func(fraction float64)

func (p Progress) at(fraction float64) {
	if p != nil {
		p(fraction)
	}
}

// Part is the progress of a part of the work.
func (p Progress) Part(from, to float64) Progress {
	return func(fraction float64) { p.at(from + fraction*(to-from)) }
}

// namesOf returns the names of files.
func namesOf(files []File) []string {
	names := make([]string, len(files))
	for i, f := range files {
		names[i] = f.Name
	}
	return names
}
