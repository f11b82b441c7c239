package main

import (
	"crypto/sha256"
	"fmt"

	"forel/cmd/pipeline"
	"forel/cmd/shelf"
)

// classShelf is the folder of a class. What a student's files are made of is told by this
// program's version too: another may make them in another way.
type classShelf struct{ *shelf.Shelf }

func stamp(made string) string { return fmt.Sprintf("%x", sha256.Sum256([]byte(version()+"\n"+made))) }

func (s classShelf) Has(folder, made string) bool { return s.Shelf.Has(folder, stamp(made)) }

func (s classShelf) Put(folder, made string, files []pipeline.File) error {
	if made != "" {
		made = stamp(made)
	}
	return s.Shelf.Put(folder, made, files)
}

// bind puts the pages of all students into one file, in order of names.
func (s classShelf) bind(roll *pipeline.Roll) error {
	out, err := s.Create(pipeline.PrintName)
	if err != nil {
		return err
	}
	if err := roll.Bind(out, s.Read); err != nil {
		return err
	}
	return out.Close()
}
