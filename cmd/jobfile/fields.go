package jobfile

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/paper"
)

const (
	mostReadings = 100 // of one dimension
	mostTitle    = 200 // characters
)

// printFields are the lengths of a Setup, like slipcase.Fields.
var printFields = []struct {
	key, what string
	min, max  Length
	at        func(*paper.Setup) *Length
}{
	{"print.margin", "what the printer leaves white on every side", 0, paper.MostMargin,
		func(s *paper.Setup) *Length { return &s.Margin }},
	{"print.overlap", "how far neighbouring sheets overlap", paper.LeastOverlap, paper.MostOverlap,
		func(s *paper.Setup) *Length { return &s.Overlap }},
}

// knownKeys are all the keys of a job file in its order; those without a dot
// stand at the top, and book.* stands in [[book]].
var knownKeys = func() []string {
	keys := []string{"title", "units", "book.title"}
	for _, f := range slipcase.BookFields {
		keys = append(keys, "book."+f.Key)
	}
	for _, f := range slipcase.Fields {
		keys = append(keys, f.Key)
	}
	keys = append(keys, "print.paper")
	for _, f := range printFields {
		keys = append(keys, f.key)
	}
	return keys
}()

// knownTables are all the tables of a job file in its order, book among them.
var knownTables = func() []string {
	var tables []string
	for _, key := range knownKeys {
		name, _, dotted := strings.Cut(key, ".")
		if dotted && !slices.Contains(tables, name) {
			tables = append(tables, name)
		}
	}
	return tables
}()

// settings makes a File of all that was set, noting what is wrong.
func (r *reader) settings() File {
	f := File{Job: slipcase.DefaultJob(), Print: paper.DefaultSetup()}
	r.units()
	f.Job.Unit = r.flagUnit
	r.title("title", &f.Job.Title)
	f.Job.Books = r.book()
	for _, field := range slipcase.Fields {
		if v, ok := r.get(field.Key); ok {
			*field.At(&f.Job) = r.length(v, field.Key, field.What, field.Min, field.Max)
		}
	}
	for _, field := range printFields {
		if v, ok := r.get(field.key); ok {
			*field.at(&f.Print) = r.length(v, field.key, field.what, field.min, field.max)
		}
	}
	if v, ok := r.get("print.paper"); ok {
		f.Print.Sheet = r.sheet(v)
	}
	return f
}

// units settles what bare numbers mean, which the rest needs.
func (r *reader) units() {
	if v, ok := r.file["units"]; ok {
		r.fileUnit = r.unit(v)
	}
	r.flagUnit = r.fileUnit
	if v, ok := r.flags["units"]; ok {
		r.flagUnit = r.unit(v)
	}
}

func (r *reader) unit(v value) geometry.Unit {
	for _, u := range []geometry.Unit{geometry.MM, geometry.IN} {
		if v.kind == textKind && v.text == u.String() {
			return u
		}
	}
	r.refuse(v.at, written(v)+" is no unit of a job", `give "mm" or "in"`)
	if v.kind == textKind && strings.HasPrefix(strings.ToLower(v.text), "in") {
		return geometry.IN // inches were meant: don't go on about every number
	}
	return geometry.MM
}

func (r *reader) title(key string, to *string) {
	v, ok := r.get(key)
	switch {
	case !ok:
	case v.kind != textKind:
		r.refuse(v.at, written(v)+" is no title", `give text in quotes, such as "Harbour log"`)
	case strings.IndexFunc(v.text, unicode.IsControl) >= 0:
		r.refuse(v.at, quote(v.text)+" is not one line of text", "write the title without line ends, tabs and other control characters")
	case len([]rune(v.text)) > mostTitle:
		r.refuse(v.at, "the title is too long", fmt.Sprintf("write no more than %d characters", mostTitle))
	default:
		*to = v.text
	}
}

// book reads the book; where there is none, it says what to write.
func (r *reader) book() []slipcase.Book {
	var book slipcase.Book
	r.title("book.title", &book.Title)
	set := 0
	for _, f := range slipcase.BookFields {
		if v, ok := r.get("book." + f.Key); ok {
			set++
			*f.At(&book) = r.readings(v, f)
		}
	}
	if set == 0 && slices.ContainsFunc(r.issues, func(i Issue) bool { return i.Key == "book" }) {
		return nil // the file holds something that is no book
	}
	if r.hasFile && r.books == 0 && set == 0 {
		r.refuse(r.at(0, "book"), "no book", "write [[book]] and below it height, width and thickness")
		return nil
	}
	for _, f := range slipcase.BookFields {
		key := "book." + f.Key
		if _, ok := r.get(key); ok {
			continue
		}
		at := r.at(r.tables["book"], key)
		if !r.hasFile {
			at = place{name: "--" + f.Key, flag: true}
		}
		r.refuse(at, "missing", "measure "+f.What)
	}
	return []slipcase.Book{book}
}

func (r *reader) readings(v value, f slipcase.ReadingsField) slipcase.Readings {
	items := v.items
	switch {
	case v.kind != listKind:
		items = []value{v}
	case len(items) == 0:
		r.refuse(v.at, "an empty list", "give one reading or several ("+f.What+")")
	case len(items) > mostReadings:
		r.refuse(v.at, fmt.Sprintf("more than %d readings", mostReadings), "keep the largest")
		return nil
	}
	var readings slipcase.Readings
	for _, item := range items {
		readings = append(readings, r.length(item, "book."+f.Key, f.What, f.Min, f.Max))
	}
	return readings
}

// length reads a length and holds it against its limits.
func (r *reader) length(v value, key, what string, lo, hi Length) Length {
	unit := r.fileUnit
	if v.at.flag {
		unit = r.flagUnit
	}
	limits := slipcase.CheckRange(key, what, Length(math.NaN()), lo, hi, unit).Right
	var l Length
	switch v.kind {
	case numberKind:
		l = Length(float(v.text)) * unit.Length()
		if math.IsNaN(l.MM()) || math.IsInf(l.MM(), 0) {
			r.refuse(v.at, written(v)+" is not a length", limits)
			return 0
		}
	case textKind:
		var err error
		if l, err = geometry.ParseLength(v.text, unit); err != nil {
			wrong, right := halves(err)
			r.refuse(v.at, wrong, right)
			return 0
		}
	default:
		r.refuse(v.at, written(v)+" is not a length", limits)
		return 0
	}
	if p := slipcase.CheckRange(key, what, l, lo, hi, unit); p != (slipcase.Problem{}) {
		// A length is easier to find again as it was written.
		if _, how, ok := strings.Cut(p.Wrong, " is too "); ok {
			p.Wrong = written(v) + " is too " + how
			if v.kind == numberKind {
				p.Wrong = written(v) + " " + unit.String() + " is too " + how
			}
		}
		r.refuse(v.at, p.Wrong, p.Right)
	}
	return l
}

func (r *reader) sheet(v value) paper.Sheet {
	unit := r.fileUnit
	if v.at.flag {
		unit = r.flagUnit
	}
	s, err := paper.ParseSheet(v.text, unit)
	if v.kind != textKind {
		_, err = paper.ParseSheet("", unit)
		_, right := halves(err)
		r.refuse(v.at, written(v)+" is no sheet", right)
	} else if err != nil {
		wrong, right := halves(err)
		r.refuse(v.at, wrong, right)
	}
	return s
}

// leastStep is what each further sheet of a tiled pattern must add to it, the
// words at the foot of the sheet included, or the sheets would be countless.
const leastStep Length = 60

func (r *reader) sheetTooSmall(s paper.Setup) (Issue, bool) {
	need := 2*s.Margin + s.Overlap + leastStep
	if s.Sheet.Width >= need {
		return Issue{}, false
	}
	at := r.where("print.paper")
	return Issue{
		Source: at.source, Line: at.line, Key: at.name,
		Wrong: s.Sheet.String() + " is too small for its margins and overlap",
		Right: fmt.Sprintf("at least %g mm on the short side, or a smaller print.margin or print.overlap", math.Ceil(need.MM())),
	}, true
}

// written gives a value as the maker wrote it, or what it is.
func written(v value) string {
	switch v.kind {
	case textKind:
		return quote(v.text)
	case listKind:
		return "a list"
	case tableKind:
		return "a table"
	}
	return shorten(v.text)
}

// halves parts an error into what is wrong and what would be right.
func halves(err error) (wrong, right string) {
	var e *geometry.ParseError
	if errors.As(err, &e) {
		return e.Wrong, e.Right
	}
	wrong = err.Error()
	if i := strings.LastIndex(wrong, "; "); i >= 0 {
		return wrong[:i], wrong[i+2:]
	}
	return wrong, ""
}
