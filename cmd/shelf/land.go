package shelf

import (
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"forel/geometry/wording"
)

// Change tells what a landing did beside writing the files of the run, in names below the
// folder.
type Change struct {
	Took []string // files of an earlier run that are out of date: taken away
	Left []string // likewise, but not as forel wrote them: left alone
}

// Land puts all files of the run into the folder at once. Files of the same owner that
// are not made again are taken away, unless the run is only a part of what there is.
// Ready, which may be nil, is called when nothing stands in the way any more; where it
// fails, nothing lands.
func (s *Shelf) Land(part bool, ready func() error) (Change, error) {
	j, next, c, err := s.plan(part)
	if err == nil && ready != nil {
		err = ready()
	}
	if err != nil {
		return Change{}, err
	}
	if len(j.new) > 0 || len(j.old) > 0 {
		if err := s.land(j); err != nil {
			return Change{}, err
		}
	}
	s.old, s.landed = next, true
	return c, nil
}

func (s *Shelf) land(j journal) error {
	if err := s.prune(j); err != nil {
		return s.cant(ListName, err)
	}
	if j.one() {
		name := j.new[0].name
		if err := rename(s.inWork(newName, name), s.at(name)); err != nil {
			return s.cant(name, err)
		}
		syncDir(s.dir)
		return nil
	}
	if filepath.Dir(s.work) != s.dir && s.fill(j) == nil {
		j.swap = true
		if err := j.write(s); err != nil {
			return s.cant(ListName, err)
		}
		if s.swap() == nil {
			s.discard(j) // where that fails, the next run does it
			return nil
		}
		j.swap = false // the system or the disk can't
	}
	if err := s.prune(j); err != nil {
		return s.cant(ListName, err)
	}
	if err := j.write(s); err != nil {
		return s.cant(ListName, err)
	}
	return s.follow(j)
}

// plan works out which files come and which give way, and the list that there is then.
func (s *Shelf) plan(part bool) (j journal, next []set, c Change, err error) {
	wrote := maps.Clone(s.taken) // or by earlier runs
	for _, set := range s.old {
		maps.Copy(wrote, digests(set.files))
	}
	now := map[string]digest{}
	for _, set := range s.fresh {
		maps.Copy(now, digests(set.files))
		next = append(next, set)
	}
	for _, set := range s.old {
		stays := set
		stays.files = nil
		for _, f := range set.files {
			_, again := now[f.name]
			switch gone := s.owns(set.name) && !part; {
			case again:
			case !gone:
				stays.files = append(stays.files, f)
			default:
				sum, err := digestOf(s.at(f.name))
				switch {
				case err == nil && sum == f.digest:
					j.old, c.Took = append(j.old, f), append(c.Took, f.name)
				case exists(s.at(f.name)):
					stays.files, c.Left = append(stays.files, f), append(c.Left, f.name)
				}
			}
		}
		if len(stays.files) > 0 {
			next = join(next, stays)
		}
	}
	var way []string
	for _, set := range s.fresh {
		for _, f := range set.files {
			if !f.staged {
				continue
			}
			switch is, err := digestOf(s.at(f.name)); {
			case err != nil && !exists(s.at(f.name)):
				j.new = append(j.new, f)
			case err == nil && is == f.digest:
			case err == nil && is == wrote[f.name]:
				j.old, j.new = append(j.old, entry{name: f.name, digest: is}), append(j.new, f)
			default:
				way = append(way, f.name)
			}
		}
	}
	if way != nil {
		return j, nil, c, s.inTheWay(way, wrote)
	}
	if s.owner != "" {
		err = s.renewList(&j, next)
	}
	byName := func(a, b entry) int { return strings.Compare(a.name, b.name) }
	slices.SortFunc(j.old, byName)
	slices.SortFunc(j.new, byName)
	slices.Sort(c.Took)
	slices.Sort(c.Left)
	return j, next, c, err
}

// join adds files to the set of the same name, or the set where there is none.
func join(sets []set, more set) []set {
	for i, set := range sets {
		if set.name == more.name {
			sets[i].files = append(set.files[:len(set.files):len(set.files)], more.files...)
			return sets
		}
	}
	return append(sets, more)
}

// renewList adds the new list to what lands, where it is another.
func (s *Shelf) renewList(j *journal, next []set) error {
	sum, err := writeWith(s.inWork(newName, ListName), func(w io.Writer) { writeList(w, next) })
	if err != nil {
		return s.cant(ListName, err)
	}
	is, err := digestOf(s.at(ListName))
	switch {
	case err == nil && is == sum:
		return nil
	case err == nil:
		j.old = append(j.old, entry{name: ListName, digest: is})
	}
	j.new = append(j.new, entry{name: ListName, digest: sum})
	return nil
}

// inTheWay tells of files that forel did not write, or that were changed since.
func (s *Shelf) inTheWay(names []string, wrote map[string]digest) error {
	slices.Sort(names)
	what := "is there already and not from forel"
	if _, ok := wrote[names[0]]; ok {
		what = "was changed since forel wrote it"
	}
	if info, err := os.Stat(s.at(names[0])); err == nil && info.IsDir() {
		what = "is a folder"
	}
	if len(names) > 1 {
		for i, n := range names {
			names[i] = s.path(n)
		}
		return Obstacle{wording.Some(names, 3) + " are not as forel wrote them", "move them away"}
	}
	return Obstacle{s.path(names[0]) + " " + what, "move it away"}
}

// prune leaves only what lands in the working folder.
func (s *Shelf) prune(j journal) error {
	comes := digests(j.new)
	root := s.inWork(newName, "")
	var folders []string
	err := filepath.WalkDir(root, func(at string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name := below(root, at)
		switch _, stays := comes[name]; {
		case d.IsDir() && name != ".":
			folders = append(folders, at)
		case !d.IsDir() && !stays:
			return remove(at)
		}
		return nil
	})
	for _, dir := range slices.Backward(folders) {
		os.Remove(dir) // one that holds files stays
	}
	return err
}
