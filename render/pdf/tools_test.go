package pdf_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/render"
	"forel/render/pdf"
	"forel/render/typeset"
)

// output runs a program that reads PDFs. It is left out where it is not
// installed, but not where changes are checked.
func output(t *testing.T, name string, args ...string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatalf("%s is not installed", name)
		}
		t.Skipf("left out: %s is not installed", name)
	}
	var out, errs bytes.Buffer
	c := exec.Command(path, args...)
	c.Stdout, c.Stderr = &out, &errs
	require.NoError(t, c.Run(), "%s\n%s", errs.String(), out.String())
	return out.String()
}

// sayings are lines of text, most as titles and sizes have them: the last ones
// have more characters together than a map of a font has in one block.
func sayings() []string {
	all := []string{
		"side × 2, 151.7 mm × 227.8 mm", "9½ in × 5⅝ in, 3¼ ± ⅛", "Café “Zürich” – Œuvres, naïve…",
		"Το λιμάνι", "Судовой журнал", "plain words", "a size: 221.5 mm",
		"Sổ tay đường thủy, kiểu vẽ, 221.5 mm", "re\u0301pe\u0301te\u0301 q\u0303 x\u0302", "5\u202fmm × 3\u2009mm", "Հայերեն, ქართული, ŻÓŁĆ",
	}
	var rest []rune
	for r := rune(0x21); r < 0x180; r++ {
		if typeset.Has(r) && !unicode.IsSpace(r) && r != 0xAD { // a hyphen that is not seen
			rest = append(rest, r)
		}
	}
	for line := range slices.Chunk(rest, 60) {
		all = append(all, string(line))
	}
	return all
}

// everything is a document with all that a file may have.
func everything(t *testing.T) (path string) {
	d := &pdf.Document{Title: "Invented: Café, Το λιμάνι, Журнал, 港 and 𝄞"}
	addPage(d, 1200, 1700)
	last(d).Bookmark("Café 𝄞")
	last(d).Label(render.Roman, 1)
	for i, s := range sayings() {
		for bold := range 2 {
			at := geometry.Pt(20, geometry.Length(30+40*i+20*bold))
			last(d).Text(render.Text{At: at, String: s, Size: 20, Bold: bold == 1, Color: render.Black})
		}
	}
	addPage(d, 297, 210)
	last(d).Under("Café 𝄞", "Журнал")
	last(d).Text(render.Text{At: geometry.Pt(20, 30), String: "a page that lies", Size: 12, Color: render.Blue})
	last(d).Stroke(geometry.Circle(geometry.Pt(105, 148), 50), render.Stroke{Width: 0.35, Color: render.Blue, Dash: []geometry.Length{2, 1}})
	last(d).Stroke(geometry.Line(geometry.Pt(0, 0), geometry.Pt(30, 40), geometry.Pt(20, 80)), thin)
	last(d).Fill(geometry.Circle(geometry.Pt(105, 148), 20), render.Orange)
	addPage(d, 210, 297) // empty
	path = filepath.Join(t.TempDir(), "everything.pdf")
	require.NoError(t, os.WriteFile(path, made(t, d), 0o644))
	return path
}

// What checks files finds nothing to say.
func TestCheckersAreContent(t *testing.T) {
	t.Run("qpdf", func(t *testing.T) {
		assert.NotContains(t, output(t, "qpdf", "--check", everything(t)), "WARNING")
	})
	t.Run("gs", func(t *testing.T) {
		said := output(t, "gs", "-q", "-dNOPAUSE", "-dBATCH", "-sDEVICE=nullpage", "-dPDFSTOPONWARNING", everything(t))
		assert.Empty(t, strings.TrimSpace(said))
	})
}

// The text that readers get out of a file is that which was drawn, in its order.
func TestTextComesOutAsItWasDrawn(t *testing.T) {
	words := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	var want []string
	for _, s := range sayings() {
		want = append(want, s, s)
	}
	want = append(want, "a page that lies")
	path := everything(t)
	for name, args := range map[string][]string{
		"pdftotext": {"-enc", "UTF-8", "-raw", path, "-"},
		"gs":        {"-q", "-dNOPAUSE", "-dBATCH", "-sDEVICE=txtwrite", "-sOutputFile=-", path},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, words(strings.Join(want, "\n")), words(output(t, name, args...)))
		})
	}
}

// Text that runs from right to left comes out in its own order where a reader puts it
// into one, as it is seen where a reader does not; the sizes beside it stay behind it.
func TestTextFromRightToLeft(t *testing.T) {
	d := &pdf.Document{Title: "Names"}
	addPage(d, 100, 150)
	for i, s := range []string{"the kit of ספר הים: 148.5 mm", "a box for שלום 32 mm"} {
		last(d).Text(render.Text{At: geometry.Pt(10, geometry.Length(20+10*i)), String: s, Size: 12, Color: render.Black})
	}
	path := filepath.Join(t.TempDir(), "names.pdf")
	require.NoError(t, os.WriteFile(path, made(t, d), 0o644))
	bare := func(s string) string { // without marks of direction, and without spaces, of which poppler drops some here
		return strings.Map(func(r rune) rune {
			if unicode.Is(unicode.Cf, r) || unicode.IsSpace(r) {
				return -1
			}
			return r
		}, s)
	}
	t.Run("pdftotext", func(t *testing.T) {
		assert.Equal(t, bare("the kit of ספר הים: 148.5 mm a box for שלום 32 mm"), bare(output(t, "pdftotext", "-enc", "UTF-8", path, "-")))
	})
	t.Run("gs", func(t *testing.T) {
		assert.Equal(t, bare("the kit of םיה רפס: 148.5 mm a box for םולש 32 mm"), bare(output(t, "gs", "-q", "-dNOPAUSE", "-dBATCH", "-sDEVICE=txtwrite", "-sOutputFile=-", path)))
	})
}

// A reader gets a label with its value, in the order in which they were set,
// however far apart they stand.
func TestLabelsStayWithTheirValues(t *testing.T) {
	d := &pdf.Document{Title: "Labels"}
	addPage(d, 210, 297)
	want := ""
	for i, row := range [][2]string{{"height", "221.5 mm"}, {"width", "148.5 mm"}, {"grain", "along"}} {
		y := geometry.Length(30 + 8*i)
		last(d).Text(render.Text{At: geometry.Pt(20, y), String: row[0], Size: 9, Color: render.Black})
		last(d).Stroke(geometry.Line(geometry.Pt(20, y+2), geometry.Pt(190, y+2)), thin)
		last(d).Text(render.Text{At: geometry.Pt(190, y), String: row[1], Size: 9, Align: render.End, Bold: true, Color: render.Black})
		want += row[0] + " " + row[1] + "\n"
	}
	path := filepath.Join(t.TempDir(), "labels.pdf")
	require.NoError(t, os.WriteFile(path, made(t, d), 0o644))
	assert.Equal(t, want, strings.TrimSuffix(output(t, "pdftotext", "-raw", path, "-"), "\f"))
}

// The fonts of a file are embedded subsets with a tag of their own (ISO 32000-1,
// 9.6.4), which differs where the characters differ.
func TestFontsAreTaggedSubsets(t *testing.T) {
	names := map[string]bool{}
	for i, s := range []string{"some words", "quite others"} {
		d := &pdf.Document{Title: "Fonts"}
		addPage(d, 100, 100)
		for bold := range 2 {
			last(d).Text(render.Text{At: geometry.Pt(10, 10), String: s[bold:], Size: 9, Bold: bold == 1, Color: render.Black})
		}
		path := filepath.Join(t.TempDir(), fmt.Sprint(i, ".pdf"))
		require.NoError(t, os.WriteFile(path, made(t, d), 0o644))
		rows := regexp.MustCompile(`(?m)^([A-Z]{6}\+\w+) .* yes yes yes +\d+ +0$`).FindAllStringSubmatch(output(t, "pdffonts", path), -1)
		require.Len(t, rows, 2)
		for _, row := range rows {
			names[row[1]] = true
		}
	}
	assert.Len(t, names, 4)
}
