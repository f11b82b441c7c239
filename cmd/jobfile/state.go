package jobfile

import (
	"forel/geometry"
	"forel/geometry/plan"
)

// State is what a job file sets, whether or not a case can be made of it.
type State struct {
	Kind   plan.Kind
	Unit   geometry.Unit
	Values map[string]string // by key, as a maker types them
	Books  int               // how many [[book]] there are
	Lists  map[string]int    // how many of each list there are: stock, extra
}

// Read returns what a job file sets. An error of type Issues tells what keeps it from
// being read at all; what else is wrong is for Parse to tell.
func Read(source string, data []byte) (State, error) {
	r := newReader(source, true, jobWords)
	if issues := r.readTOML(data); issues != nil {
		return State{}, issues
	}
	s := State{Values: map[string]string{}, Books: r.counts["book"], Lists: r.counts}
	for key, v := range r.file {
		s.Values[key] = v.typed()
	}
	r.units()
	s.Unit, s.Kind = r.fileUnit, r.kind()
	return s, nil
}

// Unchecked reads a job, whose books need not be measured yet where it is unbooked; data may
// be nil. What is wrong by itself is told. The File has no Case: whether one can be made is
// not checked. The shop may be nil.
func (s *Shop) Unchecked(source string, data []byte, unbooked bool, flags ...Flag) (File, error) {
	r, issues := s.open(source, data, flags)
	if issues != nil {
		return File{}, issues
	}
	r.unbooked = unbooked
	f := r.settings()
	r.sheetTooSmall(f.Print)
	if issues := r.told(); len(issues) > 0 {
		return File{}, issues
	}
	return f, nil
}
