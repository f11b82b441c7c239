// Package merge puts PDFs one behind the other into one. It holds one of them at a time, so
// that a class of any size takes little memory. The syntax is that of ISO 32000-1, whose
// sections are given. What is merged is what render/pdf writes, and is read as that writes it:
// a library that reads any PDF would add 2 MB to what a browser is sent.
package merge

import (
	"bufio"
	"cmp"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf16"

	"forel/render/pdf"
)

// The numbers of the objects that each file has; others follow. The catalog's is also that of
// what is merged.
const (
	catalog = 1 + iota
	pages
	outlines
	first
)

// Merger writes a PDF as the files to be merged come.
type Merger struct {
	out    *bufio.Writer
	at     int64
	starts []int64 // of objects, by number
	pages  []int   // their numbers
	marks  []mark  // in the list of contents
	err    error   // the first there was
}

type mark struct {
	title string
	page  int // its object
}

// New starts a file.
func New(to io.Writer) *Merger {
	b := &Merger{out: bufio.NewWriter(to), starts: make([]int64, first)}
	b.write("%%PDF-1.7\n")
	return b
}

func (m *Merger) write(form string, a ...any) {
	if m.err == nil {
		var n int
		n, m.err = fmt.Fprintf(m.out, form, a...)
		m.at += int64(n)
	}
}

// object writes an object.
func (m *Merger) object(n int, content string) {
	m.starts[n] = m.at
	m.write("%d 0 obj\n%s\nendobj\n", n, content)
}

// Add puts the pages of a PDF behind those that are there. A title names the first of them in
// the list of contents; an empty one names none.
func (m *Merger) Add(title string, data []byte) error {
	objects, err := pdf.Objects(data)
	if err != nil {
		return err
	}
	c := copier{Merger: m, objects: objects, number: map[int]int{}}
	for i, page := range c.kids() {
		n := m.number()
		m.object(n, parent.ReplaceAllString(c.moved(parent.ReplaceAllString(c.content(page), "/Parent")), fmt.Sprintf("/Parent %d 0 R", pages)))
		m.pages = append(m.pages, n)
		if i == 0 && title != "" {
			m.marks = append(m.marks, mark{title, n})
		}
	}
	c.rest()
	return cmp.Or(c.err, m.err)
}

func (m *Merger) number() int {
	m.starts = append(m.starts, 0)
	return len(m.starts) - 1
}

// copier copies the objects of one file that its pages need.
type copier struct {
	*Merger
	objects [][]byte    // of the file, by number
	number  map[int]int // in what is merged, by that in the file
	asked   []int       // in the file: to be written yet
	err     error
}

// How an object refers to others (7.3.10).
var (
	reference = regexp.MustCompile(`\b(\d+) 0 R\b`)
	parent    = regexp.MustCompile(`/Parent( \d+ 0 R)?`)
	tree      = regexp.MustCompile(`/Pages (\d+) 0 R`)
	list      = regexp.MustCompile(`/Kids \[([^]]*)\]`)
)

// content returns an object of the file without the lines round it.
func (c *copier) content(n int) string {
	if n > 0 && n < len(c.objects) {
		_, rest, _ := strings.Cut(string(c.objects[n]), "obj\n")
		if end := strings.LastIndex(rest, "\nendobj"); end >= 0 {
			return rest[:end]
		}
	}
	c.err = cmp.Or(c.err, fmt.Errorf("the file has no object %d", n))
	return ""
}

// kids returns the pages of the file, which are all in one list (7.7.3).
func (c *copier) kids() (pages []int) {
	root := tree.FindStringSubmatch(c.content(catalog))
	if root == nil {
		c.err = cmp.Or(c.err, errors.New("the file has no pages"))
		return nil
	}
	n, _ := strconv.Atoi(root[1])
	kids := list.FindStringSubmatch(c.content(n))
	if kids == nil {
		c.err = cmp.Or(c.err, errors.New("the file has no list of its pages"))
		return nil
	}
	for _, m := range reference.FindAllStringSubmatch(kids[1], -1) {
		n, _ := strconv.Atoi(m[1])
		pages = append(pages, n)
	}
	return pages
}

// moved returns what an object says with the numbers that others have in what is merged. What
// a stream holds is left as it is.
func (c *copier) moved(content string) string {
	says, stream, streams := strings.Cut(content, "stream\n")
	says = reference.ReplaceAllStringFunc(says, func(to string) string {
		n, _ := strconv.Atoi(strings.TrimSuffix(to, " 0 R"))
		if c.number[n] == 0 {
			c.number[n] = c.Merger.number()
			c.asked = append(c.asked, n)
		}
		return fmt.Sprintf("%d 0 R", c.number[n])
	})
	if streams {
		says += "stream\n" + stream
	}
	return says
}

// rest writes what pages asked for, and what that asks for.
func (c *copier) rest() {
	for len(c.asked) > 0 && c.err == nil {
		n := c.asked[0]
		c.asked = c.asked[1:]
		c.object(c.number[n], c.moved(c.content(n)))
	}
}

// Close ends the file: its tree of pages, its list of contents and its cross-reference table
// (7.5.4). Like what it merges it is printed at actual size on one side of the sheet (12.2).
func (m *Merger) Close() error {
	var kids strings.Builder
	for _, n := range m.pages {
		fmt.Fprintf(&kids, "%d 0 R ", n)
	}
	m.object(pages, fmt.Sprintf("<</Type/Pages/Count %d/Kids[%s]>>", len(m.pages), kids.String()))
	top := len(m.starts)
	for i, k := range m.marks {
		text := fmt.Sprintf("<</Title %s/Parent %d 0 R/Dest[%d 0 R/Fit]", literal(k.title), outlines, k.page)
		if i > 0 {
			text += fmt.Sprintf("/Prev %d 0 R", top+i-1)
		}
		if i < len(m.marks)-1 {
			text += fmt.Sprintf("/Next %d 0 R", top+i+1)
		}
		m.object(m.number(), text+">>")
	}
	contents := "<</Type/Outlines>>"
	if len(m.marks) > 0 {
		contents = fmt.Sprintf("<</Type/Outlines/Count %d/First %d 0 R/Last %d 0 R>>", len(m.marks), top, top+len(m.marks)-1)
	}
	m.object(outlines, contents)
	m.object(catalog, fmt.Sprintf("<</Type/Catalog/Pages %d 0 R/Outlines %d 0 R/Lang(en)/ViewerPreferences<</PrintScaling/None/Duplex/Simplex/PickTrayByPDFSize true>>>>", pages, outlines))
	table := m.at
	m.write("xref\n0 %d\n0000000000 65535 f \n", len(m.starts))
	for _, at := range m.starts[1:] {
		m.write("%010d 00000 n \n", at)
	}
	m.write("trailer\n<</Size %d/Root %d 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(m.starts), catalog, table)
	if m.err == nil {
		m.err = m.out.Flush()
	}
	return m.err
}

// literal writes a text string (7.9.2.2): in UTF-16 with the mark of its order, as hexadecimals.
func literal(s string) string {
	var out strings.Builder
	out.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&out, "%04X", u)
	}
	return out.String() + ">"
}
