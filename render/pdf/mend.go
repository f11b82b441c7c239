package pdf

import (
	"bytes"
	"cmp"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"

	"github.com/signintech/gopdf"

	"forel/render/typeset"
)

// mend is the one place where the library's file is changed: what it has no
// call for is added, what it writes wrongly is put right. Objects are found by
// their numbers through its cross-reference table. Numbers of sections are those
// of ISO 32000-1.
type mend struct {
	Document
	bookmarks []bookmark
	fonts     map[typeset.Face]int // the first object of each font
	marks     []*gopdf.OutlineNode // of each bookmark
	top       gopdf.OutlineNodes   // those that are under none
	objects   [][]byte             // of the file, by number
	err       error                // the first thing that is not as it was
}

// The numbers of objects that the library always writes first.
const (
	catalog  = 1
	outlines = 3
)

// Each font is five objects: the map of its glyphs to characters, its program,
// and three that name it.
const (
	firstNaming = 2
	lastNaming  = 4
)

// someTag stands for the tag of a subset (9.6.4), which depends on its
// characters, until these are known.
const someTag = "SUBSET"

// file returns the file mended.
func (m *mend) file(data []byte) ([]byte, error) {
	m.objects, m.err = Objects(data)
	m.additions()
	m.bookmarked()
	for f := range typeset.Fallback + 1 {
		if n, ok := m.fonts[f]; ok {
			m.font(n, f)
		}
	}
	// The library would write the document's information into the trailer, where
	// only a reference to it may be (7.5.5), and characters beyond FFFF wrongly.
	info := m.add("<< " + m.info() + " >>\n")
	if m.err != nil {
		return nil, m.err
	}
	return m.write(info), nil
}

// replace changes what the library has written in an object.
func (m *mend) replace(n int, old, new string) {
	if m.err != nil {
		return
	}
	if !bytes.Contains(m.objects[n], []byte(old)) {
		m.err = fmt.Errorf("object %d of the library's file lacks %q", n, old)
		return
	}
	m.objects[n] = bytes.Replace(m.objects[n], []byte(old), []byte(new), 1)
}

// add puts an object behind the others and returns its number.
func (m *mend) add(content string) (n int) {
	n = len(m.objects)
	m.objects = append(m.objects, fmt.Appendf(nil, "%d 0 obj\n%sendobj\n\n", n, content))
	return n
}

// additions are what the library has no call for: the language, a print dialogue
// set to actual size and one side of the sheet (12.2), page labels (12.4.2).
func (m *mend) additions() {
	entries := " /Lang (en)\n /ViewerPreferences << /PrintScaling /None /Duplex /Simplex /PickTrayByPDFSize true /DisplayDocTitle true >>\n"
	labels := ""
	for i, p := range m.Pages {
		if p.label == nil {
			continue
		}
		if labels == "" && i > 0 {
			labels = " 0 << /S /D >>" // the tree has to name the first page
		}
		labels += fmt.Sprintf(" %d << /S /%s /St %d >>", i, p.label.numerals, p.label.first)
	}
	if labels != "" {
		entries += " /PageLabels << /Nums [" + labels + " ] >>\n"
	}
	m.replace(catalog, ">>\n", entries+">>\n")
}

// bookmarked puts the list of contents right (12.3.3): its root counts and ends
// with entries that are under others, those that have some under them do not
// say how many, so that these are not shown, each leads 90 points to the right,
// and characters beyond FFFF are written wrongly.
func (m *mend) bookmarked() {
	if len(m.top) == 0 {
		return
	}
	m.replace(outlines, fmt.Sprintf("/Count %d\n", len(m.marks)), fmt.Sprintf("/Count %d\n", len(m.top)))
	m.replace(outlines, fmt.Sprintf("/Last %d 0 R", m.marks[len(m.marks)-1].Obj.GetIndex()), fmt.Sprintf("/Last %d 0 R", m.top[len(m.top)-1].Obj.GetIndex()))
	for i, b := range m.bookmarks {
		n := m.marks[i].Obj.GetIndex()
		title := "/Title " + textString(b.title)
		if under := len(m.marks[i].Children); under > 0 {
			title += fmt.Sprintf("\n  /Count -%d", under) // folded away at first
		}
		m.replace(n, "/Title <FEFF>", title)
		m.replace(n, "/XYZ 90 20.000000 0", "/Fit")
	}
}

// font mends a font. The map of its glyphs to characters is one block, of which
// readers take 100 entries; its codes are said to be fewer than all of two bytes;
// its entries are ranges of one glyph, of which Ghostscript 10.00 takes the two
// bytes of a character for one (Adobe Technical Note 5014, "CMap and CIDFont Files
// Specification"; the limit is from memory). The font gets the tag of its subset,
// which is another where its characters are, so that files can be joined. Of a letter
// that is made of letters made of others, as the fallback has them, the library leaves
// these out.
func (m *mend) font(n int, f typeset.Face) {
	m.replace(n, "1 begincodespacerange\n<", "1 begincodespacerange\n<0000><FFFF>\nendcodespacerange\n<")
	if m.err != nil {
		return
	}
	object := string(m.objects[n])
	head, rest, _ := strings.Cut(object[strings.Index(object, "stream\n")+len("stream\n"):], "endcodespacerange\n")
	_, rest, _ = strings.Cut(rest, "beginbfrange\n")
	ranges, tail, _ := strings.Cut(rest, "endbfrange\n")
	tail, _, found := strings.Cut(tail, "endstream")
	if !found {
		m.err = fmt.Errorf("object %d of the library's file is no map of glyphs", n)
		return
	}
	rows := strings.Fields(ranges)
	slices.Sort(rows)
	rows = slices.Compact(rows)
	text := head + "endcodespacerange\n"
	for block := range slices.Chunk(rows, 100) {
		text += fmt.Sprintf("%d beginbfchar\n", len(block))
		for _, row := range block {
			text += row[len("<0000>"):] + "\n"
		}
		text += "endbfchar\n"
	}
	text += tail
	if f == typeset.Fallback {
		m.program(n+1, f, rows)
	}
	m.objects[n] = fmt.Appendf(nil, "%d 0 obj\n<< /Length %d >>\nstream\n%s\nendstream\nendobj\n\n", n, len(text), text)
	tag := []byte(someTag)
	digest := sha256.Sum256([]byte(text))
	for i := range tag {
		tag[i] = 'A' + digest[i]%26
	}
	for i := n + firstNaming; i <= n+lastNaming; i++ {
		m.replace(i, someTag, string(tag))
	}
}

// program writes the program of a font again, with all that the glyphs of the rows of
// its map are made of.
func (m *mend) program(n int, f typeset.Face, rows []string) {
	var glyphs []int
	for _, row := range rows {
		g, err := strconv.ParseUint(row[1:5], 16, 16)
		if err != nil {
			m.err = fmt.Errorf("object %d of the library's file has a glyph %q", n-1, row)
			return
		}
		glyphs = append(glyphs, int(g))
	}
	font, err := subset(f.Data(), glyphs)
	if err != nil {
		m.err = err
		return
	}
	var packed bytes.Buffer
	w := zlib.NewWriter(&packed)
	_, err = w.Write(font)
	m.err = cmp.Or(m.err, err, w.Close())
	m.objects[n] = fmt.Appendf(nil, "%d 0 obj\n<< /Length %d /Filter /FlateDecode /Length1 %d >>\nstream\n%s\nendstream\nendobj\n\n", n, packed.Len(), len(font), packed.Bytes())
}

// info returns the entries of the document information dictionary (14.3.3).
func (m *mend) info() string {
	entries := "/Title " + textString(m.Title) + " /Creator (forel) /Producer (forel)"
	if !m.Date.IsZero() {
		date := m.Date.UTC().Format("20060102150405")
		entries += fmt.Sprintf(" /CreationDate (D:%s+00'00') /ModDate (D:%s+00'00')", date, date)
	}
	return entries
}

// write returns the file with a table of its objects (7.5.4) and a trailer, whose
// identifier comes of all that is before it (14.4).
func (m *mend) write(info int) []byte {
	var out bytes.Buffer
	var table strings.Builder
	for i, o := range m.objects {
		if i > 0 {
			fmt.Fprintf(&table, "%010d 00000 n \n", out.Len())
		}
		out.Write(o)
	}
	at, id := out.Len(), sha256.Sum256(out.Bytes())
	fmt.Fprintf(&out, "xref\n0 %d\n0000000000 65535 f \n%s", len(m.objects), table.String())
	fmt.Fprintf(&out, "trailer\n<< /Size %d /Root %d 0 R /Info %d 0 R /ID [<%X> <%X>] >>\nstartxref\n%d\n%%%%EOF\n",
		len(m.objects), catalog, info, id[:16], id[:16], at)
	return out.Bytes()
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
