// Package jobfile reads what a maker wrote, in a TOML job file or as flags,
// into the job of a case and the paper.Setup it is printed with. It opens no
// files. All that is wrong is told at once, each with its line and key.
package jobfile

import (
	"slices"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/timetable"
	"forel/geometry/work"
	"forel/paper"
	"forel/paper/order"
	"forel/paper/quote"
	"forel/paper/stock"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// File is a job file that was read.
type File struct {
	Kind  plan.Kind
	Job   plan.Job     // of that kind
	Case  plan.Checked // what makes the case of the job
	Print paper.Setup
	Black bool                         // print in black alone
	Times work.Times                   // how long work and drying take
	Hours timetable.Hours              // when the bench is open
	Stock []stock.Stock                // what pieces are cut from; where a material has none it is for the caller to choose
	Names map[geometry.Material]string // what the maker calls a material, where it has a name

	Order    order.Terms
	Adhesive order.Adhesive
	Quote    quote.Terms
	Machine  Machine  // what it is cut on
	Keep     Length   // the least shorter side of an offcut worth keeping; 0: as usual
	Lent     []string // what was taken from the shop by its name: "board grey 2 mm"
}

// Parse reads a job file of no more than 1 MiB of UTF-8, with or without a
// byte order mark; source is its name, for messages. What it leaves out has
// the default of its kind and of paper.DefaultSetup. Without data the job is that of the
// flags alone; the Key of an issue is then the flag's name as typed.
//
// A job that can't be made returns an error of type Issues that holds all that
// is wrong; only a slip in the TOML itself comes alone. Where the changes that it names
// make a job, the File is that of this job, so that more can be told of it; else it is
// empty. The Issues returned beside it are what can be made but looks like a slip.
//
// Flags take the place of the file's keys; those for a book set the first. A bare
// number in the file is in the file's units whatever the flags say; units given as
// a flag are those of bare numbers in flags and of Job.Unit.
func Parse(source string, data []byte, flags ...Flag) (File, Issues, error) {
	return (*Shop)(nil).Parse(source, data, flags...)
}

// Parse is Parse with what the job names of the shop, and the shop's habits for what it
// leaves out. The shop may be nil.
func (s *Shop) Parse(source string, data []byte, flags ...Flag) (File, Issues, error) {
	r, issues := s.open(source, data, flags)
	if issues != nil {
		return File{}, nil, issues
	}
	f, issues, suspects := r.checked()
	if f.Case == nil {
		f = File{}
	}
	if len(issues) > 0 {
		f.Stock = slices.DeleteFunc(f.Stock, func(s stock.Stock) bool { return s.Width <= 0 || !s.Endless() && s.Height <= 0 })
	}
	return f, suspects, issues.Err()
}

// reader gathers what was set, then makes a File of it.
type reader struct {
	source    string
	words     *vocabulary
	shop      *Shop // may be nil
	hasFile   bool
	data      []byte            // of the file, without lines that have slips
	file      map[string]value  // by known key; those of each book and stock by numbered
	flags     map[string]value  // by known key
	lent      map[string]value  // of the shop file, by known key
	piles     map[string]string // where the shop file keeps count of the [[stock]] that it lends
	lentStock int               // how many [[stock]] it lends
	slots     map[string]entry  // the materials of the shop that the job is made from, by the keys of their names
	taken     []string          // what was taken from the shop by its name
	tables    map[string]int    // the line of each table; of each book and stock by numbered
	counts    map[string]int    // how many tables of each list the file holds
	owner     map[string]string // of a sheet in a shop file, its material
	fileUnit  geometry.Unit     // of bare numbers in the file
	flagUnit  geometry.Unit     // of bare numbers in flags
	usual     geometry.Unit     // that what is left out is round in: the file's, whatever the flags say
	issues    Issues
	slips     Issues       // in the writing of the file
	suspects  job.Problems // what another kind of job would need
	unbooked  bool         // its books need not be measured yet
}

func newReader(source string, hasFile bool, words *vocabulary) *reader {
	r := &reader{source: source, words: words, hasFile: hasFile, flags: map[string]value{}}
	r.clear()
	return r
}

// open returns a reader of a job file and flags, of flags alone without data, or what keeps
// the file from being read at all.
func (s *Shop) open(source string, data []byte, flags []Flag) (*reader, Issues) {
	r := s.reader(source, data != nil)
	if issues := r.readTOML(data); issues != nil {
		return nil, issues
	}
	r.readFlags(flags)
	return r, nil
}

// clear forgets what was read of the file, but for slips in its writing.
func (r *reader) clear() {
	r.file, r.tables, r.counts, r.issues = map[string]value{}, map[string]int{}, map[string]int{}, nil
	r.owner = map[string]string{}
}

// told returns all that is wrong, with the slips in the writing of the file; nothing else is
// told of the lines that have one.
func (r *reader) told() Issues {
	all := slices.Clone(r.slips)
	for _, i := range r.issues {
		if i.Source != r.source || !slices.ContainsFunc(r.slips, func(s Issue) bool { return s.Line == i.Line }) {
			all = append(all, i)
		}
	}
	all.sort(r.shop.name())
	return all
}

// checked makes a File of what was set, and all that is wrong with it. Where the changes
// that are named make a job of it, the File is that of this job.
func (r *reader) checked() (f File, issues, suspects Issues) {
	f = r.settings()
	suspects = r.placed(r.suspects)
	if measured(f.Job) {
		sound, refused, suspect := f.Job.Check()
		if len(refused) > 0 {
			told, mended := f.Kind.Mended(f.Job, refused)
			found := r.issues
			for _, i := range r.placed(told) {
				if !slices.ContainsFunc(found, func(have Issue) bool { return have.Key == i.Key }) {
					r.issues = append(r.issues, i)
				}
			}
			if mended != nil {
				f.Job = mended
				sound, _, _ = mended.Check()
			}
		}
		f.Case = sound
		suspects = append(suspects, r.placed(suspect)...)
	}
	r.sheetTooSmall(f.Print)
	suspects.sort(r.shop.name())
	return f, r.told(), suspects
}

// measured tells whether the books of a job can be reckoned with: a job without a
// measure is refused for that alone.
func measured(j plan.Job) bool {
	books := j.Shared().Books
	return len(books) > 0 && !slices.ContainsFunc(books, func(b job.Book) bool {
		return b.Height.Largest() <= 0 || b.Width.Largest() <= 0 || b.Thickness.Largest() <= 0
	})
}

// get finds a setting; a flag goes before the file, and the file before the shop.
func (r *reader) get(key string) (value, bool) {
	for _, from := range []map[string]value{r.flags, r.file, r.lent} {
		if v, ok := from[key]; ok {
			return v, true
		}
	}
	return value{}, false
}

func (r *reader) has(key string) bool {
	_, ok := r.get(key)
	return ok
}

// refuse notes what is wrong at a place, and what would do.
func (r *reader) refuse(at place, reason, fix string) {
	r.tell(at, job.Problem{Reason: reason, Fix: fix})
}

// reject notes what is wrong with a value.
func (r *reader) reject(v value, reason, fix string) {
	r.tell(v.at, job.Problem{Value: written(v), Reason: reason, Fix: fix})
}

// tell notes a problem at a place, whose name takes that of the key.
func (r *reader) tell(at place, p job.Problem) { r.issues = append(r.issues, at.issue(p)) }

// at is a place in the file.
func (r *reader) at(line int, key string) place {
	return place{source: r.source, line: line, name: key, shop: r.words == shopWords}
}
