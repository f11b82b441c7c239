// Package pdf writes drawings as pages of a PDF (ISO 32000-1), at true size:
// user space is 1/72 in. The typeface is embedded, and a viewer is asked to
// print without scaling. Lines and fills keep their order; words lie above
// them all.
package pdf

import (
	"fmt"
	"runtime"
	"time"

	"golang.org/x/sync/errgroup"

	"forel/geometry"
	"forel/paper"
	"forel/render"
)

// Document is a PDF under construction; its last page is a render.Surface.
type Document struct {
	title     string
	date      time.Time
	black     bool
	setup     *paper.Setup
	pages     []*Page
	bookmarks []bookmark
	labels    []label
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

// AddPage starts a page of the given size.
func (d *Document) AddPage(width, height geometry.Length) {
	if len(d.pages) > 0 && !d.last().open {
		d.last().done()
	}
	p := newPage(width, height, d.setup)
	p.black = d.black
	d.pages = append(d.pages, p)
}

// Page gives the last page. It may be drawn on after others are added, and by
// another goroutine than they are, until Bytes.
func (d *Document) Page() render.Surface {
	d.last().open = true
	return d.last()
}

// Pages gives the number of pages so far.
func (d *Document) Pages() int { return len(d.pages) }

// Bytes ends the document and gives the file.
func (d *Document) Bytes() ([]byte, error) {
	var chars [2]used
	for _, p := range d.pages {
		for weight := range chars {
			chars[weight].addAll(p.used[weight])
		}
	}
	var bones skeleton
	var made, pages errgroup.Group
	made.Go(func() (err error) { bones, err = skeletonWith(chars); return err })
	pages.SetLimit(runtime.GOMAXPROCS(0))
	for _, p := range d.pages {
		pages.Go(func() error { p.done(); return nil })
	}
	pages.Wait() // none gives an error
	err := made.Wait()
	var data []byte
	if err == nil {
		data, err = d.finish(bones)
	}
	if err != nil {
		return nil, fmt.Errorf("pdf: %w", err)
	}
	return data, nil
}

// Begin opens a layer of the last page; pages have none, so it does nothing.
func (d *Document) Begin(render.Layer) {}

// End closes a layer.
func (d *Document) End() {}

// Stroke is Page.Stroke of the last page.
func (d *Document) Stroke(p geometry.Path, s render.Stroke) { d.last().Stroke(p, s) }

// Fill is Page.Fill of the last page.
func (d *Document) Fill(p geometry.Path, c render.Color) { d.last().Fill(p, c) }

// Text is Page.Text of the last page.
func (d *Document) Text(t render.Text) { d.last().Text(t) }

func (d *Document) last() *Page { return d.pages[len(d.pages)-1] }
