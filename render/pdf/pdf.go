// Package pdf writes drawings as pages of a PDF (ISO 32000-1), at true size:
// user space is 1/72 in. The typeface is embedded, and a viewer is asked to
// print without scaling, on one side. Lines and fills keep their order; words lie
// above them all, in the order in which they were set.
package pdf

import (
	"fmt"
	"slices"
	"time"

	"forel/geometry"
	"forel/paper"
	"forel/render"
)

// Document is a PDF under construction.
type Document struct {
	title     string
	date      time.Time
	black     bool
	setup     *paper.Setup
	pages     []*Page
	bookmarks []bookmark
	labels    []label
}

// bookmark is an entry of the viewer's list of contents.
type bookmark struct {
	title string
	page  int // its index
	above int // the index of the bookmark it is under, -1 for none
}

// label is where a run of page labels starts.
type label struct {
	page     int // its index
	numerals render.Numerals
	first    int
}

// New starts a document with the title that viewers show.
func New(title string) *Document {
	return &Document{title: title}
}

// PrintedOn says what the pages to come are printed with: pages are drawn in
// true millimetres and the file is scaled by what the printer was measured to
// be off (see paper.Setup.InFile), words and all. Nothing reaches out of
// paper.Setup.Printable. Without it pages are drawn as they are.
func (d *Document) PrintedOn(s paper.Setup) { d.setup = &s }

// Dated gives the document a date of creation, written in UTC to the second.
// Without one, or with the zero time, the file has no date.
func (d *Document) Dated(t time.Time) { d.date = t.UTC() }

// BlackOnly makes all that is drawn on pages to come pure black: every line and
// every word, and those fills that are no light tint, which are left out. No
// line is finer than render.Finest.
func (d *Document) BlackOnly() { d.black = true }

// AddPage starts a page of the given size. One that is wider than high lies: in
// the file it is an upright sheet with all that is on it turned a quarter
// anticlockwise, its left at the sheet's bottom. A printer's driver turns a page
// that lies either way, and a margin would come to the wrong side.
func (d *Document) AddPage(width, height geometry.Length) {
	d.pages = append(d.pages, newPage(width, height, d.setup, d.black))
}

// Page returns the last page. It may be drawn on after others are added, and by
// another goroutine than they are, until Bytes.
func (d *Document) Page() render.Surface { return d.pages[len(d.pages)-1] }

// Bookmark names the last page in the viewer's list of contents.
func (d *Document) Bookmark(title string) {
	d.bookmarks = append(d.bookmarks, bookmark{title, len(d.pages) - 1, -1})
}

// Under names the last page in the list of contents under the bookmark of the
// title given, which is made where there is none.
func (d *Document) Under(above, title string) {
	is := func(b bookmark) bool { return b.title == above && b.above < 0 }
	if !slices.ContainsFunc(d.bookmarks, is) {
		d.Bookmark(above)
	}
	d.bookmarks = append(d.bookmarks, bookmark{title, len(d.pages) - 1, slices.IndexFunc(d.bookmarks, is)})
}

// Label says how viewers number the last page and those after it: with these
// numerals, from a number on. Without it they count pages from 1.
func (d *Document) Label(n render.Numerals, first int) {
	d.labels = append(d.labels, label{len(d.pages) - 1, n, first})
}

// Bytes ends the document and returns the file.
func (d *Document) Bytes() ([]byte, error) {
	file, err := d.written()
	if err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	return file, nil
}
