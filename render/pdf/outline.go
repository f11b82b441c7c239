package pdf

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf16"

	"forel/render"
)

// bookmark is an entry of the viewer's list of contents, with those under it.
type bookmark struct {
	title string
	page  int // its index
	under []bookmark
}

// Bookmark names the last page in the viewer's list of contents.
func (d *Document) Bookmark(title string) {
	d.bookmarks = append(d.bookmarks, bookmark{title: title, page: len(d.pages) - 1})
}

// Under names the last page in the list of contents under the bookmark of the
// title given, which is made where there is none.
func (d *Document) Under(above, title string) {
	i := slices.IndexFunc(d.bookmarks, func(b bookmark) bool { return b.title == above })
	if i < 0 {
		d.Bookmark(above)
		i = len(d.bookmarks) - 1
	}
	d.bookmarks[i].under = append(d.bookmarks[i].under, bookmark{title: title, page: len(d.pages) - 1})
}

// label is where a run of page labels starts.
type label struct {
	page     int // its index
	numerals render.Numerals
	first    int
}

// Label says how viewers number the last page and those after it: with these
// numerals, from a number on. Without it they count pages from 1.
func (d *Document) Label(n render.Numerals, first int) {
	d.labels = append(d.labels, label{len(d.pages) - 1, n, first})
}

// outline writes the list of contents (ISO 32000-1, 12.3.3) and gives the number
// of its root. What is under an entry is folded away at first.
func (d *Document) outline(u *update) int {
	root := u.reserve()
	first, last := d.entries(u, root, d.bookmarks)
	u.dict(root, fmt.Sprintf("/Type /Outlines /First %d 0 R /Last %d 0 R /Count %d", first, last, len(d.bookmarks)))
	return root
}

// entries writes bookmarks beside each other under a parent.
func (d *Document) entries(u *update, parent int, all []bookmark) (first, last int) {
	numbers := make([]int, len(all))
	for i := range all {
		numbers[i] = u.reserve()
	}
	for i, b := range all {
		var e strings.Builder
		fmt.Fprintf(&e, "/Title %s /Parent %d 0 R /Dest [%d 0 R /Fit]", textString(b.title), parent, d.pages[b.page].object)
		if i > 0 {
			fmt.Fprintf(&e, " /Prev %d 0 R", numbers[i-1])
		}
		if i < len(all)-1 {
			fmt.Fprintf(&e, " /Next %d 0 R", numbers[i+1])
		}
		if len(b.under) > 0 {
			from, to := d.entries(u, numbers[i], b.under)
			fmt.Fprintf(&e, " /First %d 0 R /Last %d 0 R /Count -%d", from, to, len(b.under))
		}
		u.dict(numbers[i], e.String())
	}
	return numbers[0], numbers[len(numbers)-1]
}

// pageLabels writes the page labels as an entry of the catalog (12.4.2).
func (d *Document) pageLabels() string {
	var e strings.Builder
	e.WriteString("/PageLabels << /Nums [")
	if d.labels[0].page > 0 {
		e.WriteString(" 0 << /S /D >>") // the tree has to name the first page
	}
	for _, l := range d.labels {
		fmt.Fprintf(&e, " %d << /S /%s /St %d >>", l.page, l.numerals, l.first)
	}
	e.WriteString(" ] >>")
	return e.String()
}

// textString writes a text as UTF-16 in hexadecimal (7.9.2.2).
func textString(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, unit := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", unit)
	}
	b.WriteString(">")
	return b.String()
}
