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
	"forel/render/record"
)

// Document is what is written as a PDF.
type Document struct {
	Title string    // that viewers show
	Date  time.Time // of its creation, written in UTC to the second; zero: the file has none
	// Black makes all that is drawn pure black: every line and every word, and those
	// fills that are no light tint, which are left out. No line is finer than
	// render.Finest.
	Black bool
	Pages []*Page
}

// Page is a page with all that is drawn on it. One that is wider than high lies: in
// the file it is an upright sheet with all that is on it turned a quarter
// anticlockwise, its left at the sheet's bottom. A printer's driver turns a page
// that lies either way, and a margin would come to the wrong side.
type Page struct {
	record.Surface
	Width, Height geometry.Length
	// Setup is what the page is printed with: it is drawn in true millimetres and
	// scaled in the file by what the printer was measured to be off (see
	// paper.Setup.InFile), words and all, and nothing reaches out of
	// paper.Setup.Printable. Nil: the page is as it is drawn.
	Setup *paper.Setup
	Marks []Mark
	label *label
}

// Mark names a page in a viewer's list of contents, under the mark whose title is
// Above where that is not empty.
type Mark struct{ Above, Title string }

// Bookmark names the page in the viewer's list of contents.
func (p *Page) Bookmark(title string) { p.Marks = append(p.Marks, Mark{Title: title}) }

// Under names the page in the list of contents under the bookmark of the title
// given, which is made where there is none.
func (p *Page) Under(above, title string) { p.Marks = append(p.Marks, Mark{above, title}) }

// Label says how viewers number this page and those after it: with these numerals,
// from a number on. Without it they count pages from 1.
func (p *Page) Label(n render.Numerals, first int) { p.label = &label{n, first} }

// label is where a run of page labels starts.
type label struct {
	numerals render.Numerals
	first    int
}

// bookmark is an entry of the viewer's list of contents.
type bookmark struct {
	title string
	page  int // its index
	above int // the index of the bookmark it is under, -1 for none
}

// bookmarks returns the list of contents, in the order of the pages.
func (d Document) bookmarks() (all []bookmark) {
	for i, p := range d.Pages {
		for _, m := range p.Marks {
			above := -1
			if m.Above != "" {
				is := func(b bookmark) bool { return b.title == m.Above && b.above < 0 }
				if above = slices.IndexFunc(all, is); above < 0 {
					above = len(all)
					all = append(all, bookmark{m.Above, i, -1})
				}
			}
			all = append(all, bookmark{m.Title, i, above})
		}
	}
	return all
}

// Bytes returns the document as a file.
func (d Document) Bytes() ([]byte, error) {
	file, err := d.written()
	if err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	return file, nil
}
