package templates_test

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/types"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
	"forel/render/templates"
)

// eachSheet runs a test on a booklet for every size of sheet.
func eachSheet(t *testing.T, test func(t *testing.T, short, long float64, file []byte)) {
	for _, s := range sheets {
		t.Run(s.name, func(t *testing.T) {
			test(t, s.short, s.long, booklet(t, octavo.make(t), on(t, s.name)))
		})
	}
}

func TestPDFIsValid(t *testing.T) {
	for _, s := range scenarios {
		assert.NoError(t, api.Validate(bytes.NewReader(booklet(t, s.make(t), on(t, "A4"))), model.NewDefaultConfiguration()), s.name)
	}
	eachSheet(t, func(t *testing.T, _, _ float64, file []byte) {
		assert.NoError(t, api.Validate(bytes.NewReader(file), model.NewDefaultConfiguration()))
	})
}

// A viewer is asked to print at actual size (ISO 32000-1, 12.2, table 150).
func TestPDFAsksForActualSize(t *testing.T) {
	ctx := parsed(t, booklet(t, octavo.make(t), on(t, "A4")))
	catalog, err := ctx.Catalog()
	require.NoError(t, err)
	preferences, err := ctx.DereferenceDict(catalog["ViewerPreferences"])
	require.NoError(t, err)
	assert.Equal(t, types.Name("None"), preferences["PrintScaling"])
}

// Each page is the sheet, upright or lying, in units of 1/72 in (ISO 32000-1,
// 8.3.2.3): neither turned, cropped nor scaled by a user unit (14.11.2, 7.7.3.3).
func TestPDFPagesAreSheets(t *testing.T) {
	eachSheet(t, func(t *testing.T, short, long float64, file []byte) {
		ctx := parsed(t, file)
		require.Positive(t, ctx.PageCount)
		for n := 1; n <= ctx.PageCount; n++ {
			page, _, inherited, err := ctx.PageDict(n, false)
			require.NoError(t, err)
			box := inherited.MediaBox
			require.NotNil(t, box)
			w, h := short/point, long/point
			if box.Width() > box.Height() {
				w, h = h, w
			}
			assert.InDelta(t, 0, box.LL.X, 1e-9)
			assert.InDelta(t, 0, box.LL.Y, 1e-9)
			assert.InDelta(t, w, box.Width(), 0.01, "page %d", n)
			assert.InDelta(t, h, box.Height(), 0.01, "page %d", n)
			assert.Zero(t, inherited.Rotate)
			assert.Nil(t, inherited.CropBox)
			assert.NotContains(t, page, "UserUnit")
		}
	})
}

// Every font of every page carries its own program (ISO 32000-1, 9.9).
func TestPDFFontsAreEmbedded(t *testing.T) {
	ctx := parsed(t, booklet(t, octavo.make(t), on(t, "A4")))
	for n := 1; n <= ctx.PageCount; n++ {
		_, _, inherited, err := ctx.PageDict(n, true)
		require.NoError(t, err)
		fonts, err := ctx.DereferenceDict(inherited.Resources["Font"])
		require.NoError(t, err)
		require.NotEmpty(t, fonts)
		for name, ref := range fonts {
			font, err := ctx.DereferenceDict(ref)
			require.NoError(t, err)
			if kids, err := ctx.DereferenceArray(font["DescendantFonts"]); err == nil && len(kids) > 0 {
				font, err = ctx.DereferenceDict(kids[0])
				require.NoError(t, err)
			}
			descriptor, err := ctx.DereferenceDict(font["FontDescriptor"])
			require.NoError(t, err)
			program, _, err := ctx.DereferenceStreamDict(descriptor["FontFile2"])
			require.NoError(t, err)
			require.NotNil(t, program, "page %d, font %s", n, name)
			require.NoError(t, program.Decode())
			assert.Greater(t, len(program.Content), 1000)
		}
	}
}

// The same job gives the same file, whatever the clock says.
func TestFilesAreTheSameEachTime(t *testing.T) {
	for _, s := range []scenario{octavo, folio} {
		a, b := s.make(t), s.make(t)
		file := booklet(t, a, on(t, "A4"))
		assert.True(t, bytes.Equal(file, booklet(t, b, on(t, "A4"))), s.name)
		assert.NotRegexp(t, regexp.MustCompile(`D:\d{4}|/(CreationDate|ModDate)`), string(file), "a date in the file")
		for i := range a.Pieces {
			assert.Equal(t, templates.PieceSVG(a, a.Pieces[i], on(t, "A4")), templates.PieceSVG(b, b.Pieces[i], on(t, "A4")))
		}
	}
}

var pageText = regexp.MustCompile(`^page (\d+) of (\d+)($|\D)`)

// foot gives what the foot of a page says: its words by lines, and the page
// number and count, zero where it has none.
func foot(t *testing.T, v *viewed, page int, height float64) (lines []string, number, count int) {
	t.Helper()
	for _, p := range v.phrases(t, page) {
		if p.lo.y < height-footTall {
			continue
		}
		lines = append(lines, p.text)
		if m := pageText.FindStringSubmatch(p.text); m != nil {
			require.Zero(t, number, "page %d is numbered twice", page)
			number, _ = strconv.Atoi(m[1])
			count, _ = strconv.Atoi(m[2])
		}
	}
	return lines, number, count
}

// Sheets of pieces are numbered as they lie in the file, each names its
// piece, and every piece has its sheets, in the order of the list.
func TestPDFFootNamesAndNumbers(t *testing.T) {
	for _, s := range scenarios {
		t.Run(s.name, func(t *testing.T) {
			c := s.make(t)
			v := view(t, booklet(t, c, on(t, "A4")))
			want := make([]string, len(c.Pieces))
			for i, p := range c.Pieces {
				want[i] = p.Name
				if n := s.cuts()[p.Name].count; n > 1 {
					want[i] += fmt.Sprintf(" × %d", n)
				}
			}
			var named []string
			for n := 1; n <= v.pages; n++ {
				size := pageSize(t, v, n)
				lines, number, count := foot(t, v, n, size.y)
				if number == 0 {
					require.Empty(t, named, "page %d after those of pieces has no number", n)
					require.LessOrEqual(t, n, 4, "no page of a piece yet")
					continue
				}
				assert.Equal(t, n, number)
				assert.Equal(t, v.pages, count)
				var here []string
				for _, w := range want {
					for _, l := range lines {
						if l == w {
							here = append(here, w)
						}
					}
				}
				require.Len(t, here, 1, "page %d: %q", n, lines)
				if len(named) == 0 || named[len(named)-1] != here[0] {
					named = append(named, here[0])
				}
			}
			assert.Equal(t, want, named)
		})
	}
}

// inches is a job in eighths of an inch: its walls are 1¼ in wide and 5½ in
// deep, its sides 5⅝ by 8⅞ in.
func inches(t testing.TB) (plan.Plan, templates.Options) {
	t.Helper()
	j := slipcase.DefaultJob()
	j.Unit = geometry.IN
	j.Books = []slipcase.Book{{
		Height:    slipcase.Readings{8.5 * geometry.Inch},
		Width:     slipcase.Readings{5.25 * geometry.Inch},
		Thickness: slipcase.Readings{1.125 * geometry.Inch},
	}}
	j.Board.Thickness, j.Lining.Thickness = geometry.Inch/8, 0
	j.Clearance = slipcase.Clearance{Height: geometry.Inch / 8, Width: geometry.Inch / 4, Thickness: geometry.Inch / 8}
	c := planOf(t, j)
	o := on(t, "A4")
	o.Round = geometry.To64th
	return c, o
}

// Halves, quarters and eighths of an inch, and the times sign, come out as the
// characters they are when the text of the finished file is read.
func TestPDFFractionsAreReadable(t *testing.T) {
	c, o := inches(t)
	v := view(t, booklet(t, c, o))
	var all []string
	for n := 1; n <= v.pages; n++ {
		all = append(all, v.text(t, n)...)
	}
	text := strings.Join(all, "\n")
	for _, size := range []string{"5⅝ in × 8⅞ in", "5½ in × 1¼ in", "side × 2"} {
		assert.Contains(t, text, size)
	}
}

// One file writes a half in one way only.
func TestPDFFractionsAreWrittenOneWay(t *testing.T) {
	c, o := inches(t)
	v := view(t, booklet(t, c, o))
	plain := regexp.MustCompile(`(^|[^\d])(1/2|[13]/4|[1357]/8)($|[^\d])`)
	for n := 1; n <= v.pages; n++ {
		for _, line := range v.text(t, n) {
			assert.NotRegexp(t, plain, line, "page %d", n)
		}
	}
}
