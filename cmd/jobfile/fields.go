package jobfile

import (
	"fmt"
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
