package handout_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/render/handout"
	"forel/render/pdf/pdftest"
)

// textOf gives the words of every page of a file, as a PDF viewer reads them.
func textOf(t *testing.T, file []byte) (out []string) {
	t.Helper()
	doc := pdftest.Open(t, file)
	for n := range doc.Pages {
		out = append(out, strings.ReplaceAll(doc.Text(n+1), "\r\n", "\n"))
	}
	return out
}

var ordinaryFile = sync.OnceValues(func() ([]byte, error) {
	return handout.Document(subjects()["ordinary"], on(plantest.Must{}, "A4")).PDF()
})

// ordinary returns the file of an ordinary case, made once for all tests.
func ordinary(t *testing.T) []byte {
	file, err := ordinaryFile()
	require.NoError(t, err)
	return file
}

// The finished file is valid, asks to be printed at actual size, and its
// worksheet has every piece of the job with its count and its size, worked out
// here from the design's table of the five-board case.
func TestFileHasEveryPiece(t *testing.T) {
	file := ordinary(t)
	ctx, err := api.ReadAndValidate(bytes.NewReader(file), model.NewDefaultConfiguration())
	require.NoError(t, err)
	require.NoError(t, ctx.EnsurePageCount())
	assert.Contains(t, string(file), "/PrintScaling /None")

	pages := textOf(t, file)
	assert.Len(t, pages, ctx.PageCount)
	// s = 2 + 0.15; cavity 223.5 x 149.5 x 34; margins 28, 20, 5, 6, 13.
	for _, want := range []string{
		"side\n2 board 151.7 × 227.8 mm height", // 149.5 + 2.15 by 223.5 + 4.3
		"spine wall\n1 board 34.0 × 227.8 mm height",
		"head wall\n1 board 149.5 × 34.0 mm width",
		"tail wall\n1 board 149.5 × 34.0 mm width",
		"side lining\n2 lining paper 175.7 × 251.8 mm height", // each side 12 more
		"spine cloth\n1 book cloth 94.3 × 283.8 mm height",    // 38.3 + 56 by 227.8 + 56
		"head cloth\n1 book cloth 94.3 × 166.7 mm height",     // by 151.65 - 5 + 20
		"side paper\n2 covering paper 158.7 × 215.8 mm height",
	} {
		name, rest, _ := strings.Cut(want, "\n")
		line := name + " " + rest
		assert.Contains(t, flat(pages[0]), line)
	}
	whole := flat(strings.Join(pages, " "))
	for _, said := range []string{"Knives cut people", "never put chlorinated plastics", "never leave a machine running unattended", "Local rules", "When a check fails", "Notes"} {
		assert.Contains(t, whole, said)
	}
	// What shows beyond the book: 151.65 - 148.5 and 227.8 - 221.5.
	assert.Contains(t, whole, "its spine flush with the mouth edge, the side shows 3.2 mm past the fore-edge")
}

// flat puts words that a line break parts on one line.
func flat(s string) string {
	s = strings.NewReplacer("\ufffe", "-", "\u2010", "-", "\u2011", "-", "\u00ad", "-").Replace(s)
	return strings.Join(strings.Fields(s), " ")
}

// The empty worksheet has the rules and the pieces but no length of a book.
func TestBlankWorksheet(t *testing.T) {
	j := jobOf(221.5, 148.5, 32)
	j.Title = "Secret"
	file, err := handout.Worksheet(subjectOf(t, j), on(t, "Letter")).PDF()
	require.NoError(t, err)
	text := flat(strings.Join(textOf(t, file), " "))
	for _, want := range []string{"(W + cW + s) × (H + cH + 2s)", "(Wo − i + x) × (Ho − 2i)", "usual 28.0 mm", "reading 3", "Name", "Date"} {
		assert.Contains(t, text, want)
	}
	for _, never := range []string{"221.5", "148.5", "227.8", "151.7", "Secret"} {
		assert.NotContains(t, text, never)
	}
}

// The same job gives the same bytes.
func TestSameBytes(t *testing.T) {
	j := jobOf(120, 80, 12)
	j.Covering = slipcase.AllPaper
	first, err := handout.Document(subjectOf(t, j), on(t, "A4")).PDF()
	require.NoError(t, err)
	again, err := handout.Document(subjectOf(t, j), on(t, "A4")).PDF()
	require.NoError(t, err)
	assert.True(t, bytes.Equal(first, again))
}

// A reader of the file that goes by where words stand, such as one that reads aloud, gets
// each symbol of the worksheet with its label and its value, on one line.
func TestWorksheetIsReadByLines(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext is not installed")
	}
	file := ordinary(t)
	path := filepath.Join(t.TempDir(), "handout.pdf")
	require.NoError(t, os.WriteFile(path, file, 0o644))
	out, err := exec.Command("pdftotext", "-enc", "UTF-8", "-l", "1", path, "-").Output()
	require.NoError(t, err)
	text := "\n" + strings.ReplaceAll(string(out), " .", "") // without the dots between them
	for _, line := range []string{
		"H height, head to tail 221.5 mm",
		"W width, with the round 148.5 mm",
		"cH in height 2.0 mm",
		"b board 2.00 mm",
		"Hi height 223.5 mm", // 2 mm more than the book
	} {
		assert.Contains(t, text, "\n"+line+"\n")
	}
}
