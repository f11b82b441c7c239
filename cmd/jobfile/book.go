package jobfile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
)

const mostReadings = 100 // of one dimension

// readBooks reads every book; where there is none, it says what to write.
func (r *reader) readBooks() []job.Book {
	measured := func(f job.Dimension) bool { return r.has("book." + f.Key) }
	if !r.unbooked && r.hasFile && r.counts["book"] == 0 && !slices.ContainsFunc(job.Dimensions, measured) {
		r.refuse(r.at(0, "book"), "no book", "write [[book]] and below it height, width and thickness")
		return nil
	}
	var books []job.Book
	for n := range min(max(r.counts["book"], 1), job.MostBooks) {
		books = append(books, r.readBook(n+1))
	}
	return books
}

// readBook reads the nth book.
func (r *reader) readBook(n int) job.Book {
	var book job.Book
	name := numbered("book", n)
	r.title(name+".title", &book.Title)
	r.keep(name+".weight", kept{bookWeight, &book.Weight})
	as, set := r.rough(name), false
	for _, f := range job.Dimensions {
		key := name + "." + f.Key
		if v, ok := r.get(key); ok {
			set = true
			*f.At(&book) = r.readings(v, key, f.What, f.Min, f.Max, as.Far(f))
		}
	}
	r.maybeInches(name+".thickness", book.Thickness.Largest())
	if !set && slices.ContainsFunc(r.issues, func(i Issue) bool { return i.Key == name }) {
		return book // it was told that this is no book
	}
	for _, f := range job.Dimensions {
		key := name + "." + f.Key
		if f.Optional || r.unbooked || r.has(key) {
			continue
		}
		at := r.at(r.tables[name], key)
		if !r.hasFile {
			at = place{name: "--" + f.Key, flag: true}
		}
		r.refuse(at, "missing", "measure "+f.What)
	}
	return book
}

// thinnestBook is the thickness in mm below which a bare number is more often one of inches
// (common practice, no source).
const thinnestBook Length = 2

// maybeInches warns of a thickness in a job in millimetres that looks like one of inches.
func (r *reader) maybeInches(key string, thick Length) {
	v, _ := r.get(key)
	if v.kind == listKind && len(v.items) > 0 {
		v = v.items[0]
	}
	if thick > 0 && thick < thinnestBook && r.unitOf(v) == geometry.MM && v.bare() {
		r.suspects = append(r.suspects, job.Problem{Key: key, Reason: "thinner than " + job.Show(thinnestBook, geometry.MM, 0),
			Fix: "right for a few leaves; if it was inches, write " + strconv.Quote(v.text+" in")})
	}
}

// rough returns a book with its dimensions as they are written, each as far as it is a
// length, also out of its limits.
func (r *reader) rough(name string) (book job.Book) {
	for _, f := range job.Dimensions {
		v, _ := r.get(name + "." + f.Key)
		if v.kind != listKind {
			v.items = []value{v}
		}
		for _, item := range v.items {
			l, _, _ := r.measure(item, f.Key, f.What, f.Min, f.Max, nil)
			*f.At(&book) = append(*f.At(&book), l)
		}
	}
	return book
}

// readings reads one measurement or a list of them.
func (r *reader) readings(v value, key, what string, least, most Length, far job.Far) job.Readings {
	items := v.items
	switch {
	case blank(v) && r.unbooked:
		return nil
	case blank(v) && !v.at.flag:
		r.refuse(v.at, "is not filled in", "type in the "+spoken(key)+" you measured ("+what+")")
		return nil
	case v.kind != listKind:
		items = []value{v}
	case len(items) == 0:
		r.refuse(v.at, "an empty list", "give one reading or several ("+what+")")
	case len(items) > mostReadings:
		r.refuse(v.at, fmt.Sprintf("more than %d readings", mostReadings), "keep the largest")
		return nil
	}
	var readings job.Readings
	for _, item := range items {
		l, p, ok := r.measure(item, key, what, least, most, far)
		if !ok {
			r.tell(item.at, p)
			continue
		}
		readings = append(readings, l)
	}
	return readings
}

// spoken returns the last word of a key as it is spoken: "thickness at fore edge".
func spoken(key string) string {
	return strings.ReplaceAll(key[strings.LastIndex(key, ".")+1:], "_", " ")
}
