// Package bind puts PDFs one behind the other into one. It holds one of them at a time, so
// that a class of any size takes little memory. The syntax is that of ISO 32000-1, whose
// sections are given; what is bound is read by pdfcpu.
package bind

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"unicode/utf16"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/types"
)

// The numbers of the objects that each file has; others follow.
const (
	catalog = 1 + iota
	pages
	outlines
	first
)

// Binder writes a PDF as the files to be bound come.
type Binder struct {
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
func New(to io.Writer) *Binder {
	api.DisableConfigDir()
	b := &Binder{out: bufio.NewWriter(to), starts: make([]int64, first)}
	b.write("%%PDF-1.7\n")
	return b
}

func (b *Binder) write(form string, a ...any) {
	if b.err == nil {
		var n int
		n, b.err = fmt.Fprintf(b.out, form, a...)
		b.at += int64(n)
	}
}

// object writes an object.
func (b *Binder) object(n int, content string) {
	b.starts[n] = b.at
	b.write("%d 0 obj\n%s\nendobj\n", n, content)
}

// Add puts the pages of a PDF behind those that are there. A title names the first of them in
// the list of contents; an empty one names none.
func (b *Binder) Add(title string, data []byte) error {
	conf := model.NewDefaultConfiguration()
	ctx, err := api.ReadContext(bytes.NewReader(data), conf)
	if err == nil {
		err = ctx.EnsurePageCount()
	}
	if err != nil {
		return err
	}
	c := copier{Binder: b, ctx: ctx, number: map[int]int{}}
	for i := range ctx.PageCount {
		page, _, inherits, err := ctx.PageDict(i+1, false)
		if err != nil {
			return err
		}
		page = page.Clone().(types.Dict)
		page["MediaBox"] = inherits.MediaBox.Array() // which a page may have from those above it (7.7.3.4)
		if _, has := page["Resources"]; !has && inherits.Resources != nil {
			page["Resources"] = inherits.Resources
		}
		delete(page, "Parent")
		text := strings.Replace(c.moved(page).PDFString(), "<<", fmt.Sprintf("<</Parent %d 0 R", pages), 1)
		n := b.number()
		b.object(n, text)
		b.pages = append(b.pages, n)
		if i == 0 && title != "" {
			b.marks = append(b.marks, mark{title, n})
		}
	}
	c.rest()
	if c.err != nil {
		return c.err
	}
	return b.err
}

func (b *Binder) number() int {
	b.starts = append(b.starts, 0)
	return len(b.starts) - 1
}

// copier copies the objects of one file that its pages need.
type copier struct {
	*Binder
	ctx    *model.Context
	number map[int]int // in what is bound, by that in the file
	asked  []int       // in the file: to be written yet
	err    error
}

// moved returns an object with the numbers that others have in what is bound.
func (c *copier) moved(o types.Object) types.Object {
	switch o := o.(type) {
	case types.IndirectRef:
		n := o.ObjectNumber.Value()
		if c.number[n] == 0 {
			c.number[n] = c.Binder.number()
			c.asked = append(c.asked, n)
		}
		return *types.NewIndirectRef(c.number[n], 0)
	case types.Dict:
		out := types.Dict{}
		for _, k := range slices.Sorted(maps.Keys(o)) { // numbers are given as they are met
			out[k] = c.moved(o[k])
		}
		return out
	case types.Array:
		out := make(types.Array, len(o))
		for i, v := range o {
			out[i] = c.moved(v)
		}
		return out
	}
	return o
}

// rest writes what pages asked for, and what that asks for.
func (c *copier) rest() {
	for len(c.asked) > 0 && c.err == nil {
		n := c.asked[0]
		c.asked = c.asked[1:]
		o, err := c.ctx.Dereference(*types.NewIndirectRef(n, 0))
		if err != nil {
			c.err = err
			return
		}
		s, ok := o.(types.StreamDict)
		if !ok {
			text := "null"
			if o != nil {
				text = c.moved(o).PDFString()
			}
			c.object(c.number[n], text)
			continue
		}
		d := c.moved(s.Dict).(types.Dict)
		d["Length"] = types.Integer(len(s.Raw))
		c.object(c.number[n], d.PDFString()+"\nstream\n"+string(s.Raw)+"\nendstream")
	}
}

// Close ends the file: its tree of pages, its list of contents and its cross-reference table
// (7.5.4). Like what it binds it is printed at actual size on one side of the sheet (12.2).
func (b *Binder) Close() error {
	var kids strings.Builder
	for _, n := range b.pages {
		fmt.Fprintf(&kids, "%d 0 R ", n)
	}
	b.object(pages, fmt.Sprintf("<</Type/Pages/Count %d/Kids[%s]>>", len(b.pages), kids.String()))
	top := len(b.starts)
	for i, m := range b.marks {
		text := fmt.Sprintf("<</Title %s/Parent %d 0 R/Dest[%d 0 R/Fit]", literal(m.title), outlines, m.page)
		if i > 0 {
			text += fmt.Sprintf("/Prev %d 0 R", top+i-1)
		}
		if i < len(b.marks)-1 {
			text += fmt.Sprintf("/Next %d 0 R", top+i+1)
		}
		b.object(b.number(), text+">>")
	}
	contents := "<</Type/Outlines>>"
	if len(b.marks) > 0 {
		contents = fmt.Sprintf("<</Type/Outlines/Count %d/First %d 0 R/Last %d 0 R>>", len(b.marks), top, top+len(b.marks)-1)
	}
	b.object(outlines, contents)
	b.object(catalog, fmt.Sprintf("<</Type/Catalog/Pages %d 0 R/Outlines %d 0 R/Lang(en)/ViewerPreferences<</PrintScaling/None/Duplex/Simplex/PickTrayByPDFSize true>>>>", pages, outlines))
	table := b.at
	b.write("xref\n0 %d\n0000000000 65535 f \n", len(b.starts))
	for _, at := range b.starts[1:] {
		b.write("%010d 00000 n \n", at)
	}
	b.write("trailer\n<</Size %d/Root %d 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(b.starts), catalog, table)
	if b.err == nil {
		b.err = b.out.Flush()
	}
	return b.err
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
