package templates_test

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/types"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/render/templates"
)

// eachSheet runs a test on a document for every size of sheet.
func eachSheet(t *testing.T, test func(t *testing.T, short, long float64, file []byte)) {
	for _, s := range sheets {
		t.Run(s.name, func(t *testing.T) {
			test(t, s.short, s.long, octavo.on(s.name).file())
		})
	}
}

func TestPDFIsValid(t *testing.T) {
	for _, s := range scenarios {
		assert.NoError(t, api.Validate(bytes.NewReader(s.on("A4").file()), model.NewDefaultConfiguration()), s.name)
	}
	eachSheet(t, func(t *testing.T, _, _ float64, file []byte) {
		assert.NoError(t, api.Validate(bytes.NewReader(file), model.NewDefaultConfiguration()))
	})
}

// A viewer is asked to print at actual size, on one side (ISO 32000-1, 12.2, table 150).
func TestPDFAsksForActualSize(t *testing.T) {
	ctx := parsed(t, octavo.on("A4").file())
	catalog, err := ctx.Catalog()
	require.NoError(t, err)
	preferences, err := ctx.DereferenceDict(catalog["ViewerPreferences"])
	require.NoError(t, err)
	assert.Equal(t, types.Name("None"), preferences["PrintScaling"])
	assert.Equal(t, types.Name("Simplex"), preferences["Duplex"])
}

// Each page is the upright sheet in units of 1/72 in (ISO 32000-1, 8.3.2.3):
// neither turned, cropped nor scaled by a user unit (14.11.2, 7.7.3.3), so that no
// driver turns it.
func TestPDFPagesAreSheets(t *testing.T) {
	eachSheet(t, func(t *testing.T, short, long float64, file []byte) {
		ctx := parsed(t, file)
		require.Positive(t, ctx.PageCount)
		for n := 1; n <= ctx.PageCount; n++ {
			page, _, inherited, err := ctx.PageDict(n, false)
			require.NoError(t, err)
			box := inherited.MediaBox
			require.NotNil(t, box)
			assert.InDelta(t, 0, box.LL.X, 1e-9)
			assert.InDelta(t, 0, box.LL.Y, 1e-9)
			assert.InDelta(t, short/point, box.Width(), 0.01, "page %d", n)
			assert.InDelta(t, long/point, box.Height(), 0.01, "page %d", n)
			assert.Zero(t, inherited.Rotate)
			assert.Nil(t, inherited.CropBox)
			assert.NotContains(t, page, "UserUnit")
		}
	})
}

// Every font of every page carries its own program (ISO 32000-1, 9.9).
func TestPDFFontsAreEmbedded(t *testing.T) {
	ctx := parsed(t, octavo.on("A4").file())
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
		a, b := s.make(), planOf(t, s.job())
		file := s.on("A4").file()
		assert.True(t, bytes.Equal(file, printedOn(b, on(t, "A4")).file()), s.name)
		assert.NotRegexp(t, regexp.MustCompile(`D:\d{4}|/(CreationDate|ModDate)`), string(file), "a date in the file")
		for i := range a.Pieces {
			assert.Equal(t, templates.PieceSVG(a, a.Pieces[i], on(t, "A4")), templates.PieceSVG(b, b.Pieces[i], on(t, "A4")))
		}
	}
}

var pageText = regexp.MustCompile(`^page (\d+) of (\d+)($|\D)`)

// foot returns what the foot of a page says: its words by lines, and the page
// number and count, zero where it has none.
func foot(t *testing.T, v *viewed, page int, height float64) (lines []string, number, count int) {
	t.Helper()
	for _, p := range v.phrases(page) {
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

// Pages are numbered as they lie in the file, and each sheet of templates names all
// that is on it.
func TestPDFFootNamesAndNumbers(t *testing.T) {
	for i, sheet := range []string{"A4", "Letter"} {
		for k, s := range scenarios {
			if testing.Short() && !oneSheet(i, k) {
				continue
			}
			t.Run(sheet+", "+s.name, func(t *testing.T) {
				c := s.on(sheet)
				v := view(t, c.file())
				before := v.Pages - len(c.layout.Pages)
				require.LessOrEqual(t, before, 4, "pages that show no template")
				for n := 1; n <= v.Pages; n++ {
					lines, number, count := foot(t, v, n, v.size(n).y)
					assert.Equal(t, n, number)
					assert.Equal(t, v.Pages, count)
					if n <= before {
						continue
					}
					here := map[string]bool{}
					for _, part := range c.layout.Pages[n-before-1].Parts {
						here[c.layout.Tilings[part.Tiling].Piece.Name] = true
					}
					for _, p := range c.Pieces {
						assert.Equal(t, here[p.Name], footNames(lines, p.Name, s.cuts()[p.Name].count), "page %d, %s: %q", n, p.Name, lines)
					}
				}
			})
		}
	}
}

var listedPages = regexp.MustCompile(`^(?:pages? )?(\d+(?:–\d+)?(?:, \d+(?:–\d+)?)*)$`)

// numbers reads a list of pages such as "5–6, 8".
func numbers(t *testing.T, list string) (out []int) {
	t.Helper()
	m := listedPages.FindStringSubmatch(list)
	require.NotNil(t, m, "%q", list)
	for _, run := range strings.Split(m[1], ", ") {
		from, to, isRun := strings.Cut(run, "–")
		lo, err := strconv.Atoi(from)
		require.NoError(t, err)
		hi := lo
		if isRun {
			hi, err = strconv.Atoi(to)
			require.NoError(t, err)
		}
		for n := lo; n <= hi; n++ {
			out = append(out, n)
		}
	}
	return out
}

// The overview and the key say for every piece which pages it is on: those whose
// feet name it.
func TestPDFListsOfPagesAreTrue(t *testing.T) {
	for i, sheet := range []string{"A4", "Letter"} {
		for k, s := range scenarios {
			if !oneSheet(i, k) {
				continue
			}
			t.Run(sheet+", "+s.name, func(t *testing.T) {
				c := s.on(sheet)
				v := view(t, c.file())
				printed := pagesByPiece(t, v, s)
				var told [][]phrase // of the pages before
				for n := 1; n < printed[c.Pieces[0].Name][0]; n++ {
					told = append(told, v.phrases(n))
				}
				for _, p := range c.Pieces {
					inTable, inKey := false, false
					for n, all := range told {
						for _, name := range all {
							for _, list := range all {
								if !listedPages.MatchString(list.text) {
									continue
								}
								switch word := strings.HasPrefix(list.text, "page"); {
								case !word && name.text == p.Name && math.Abs(name.hi.y-list.hi.y) < 1.2 && list.hi.x > v.size(n+1).x-12:
									assert.Equal(t, printed[p.Name], numbers(t, list.text), "%s in the table", p.Name)
									inTable = true
								case word && strings.TrimSuffix(name.text, fmt.Sprintf(" × %d", p.Count)) == p.Name && math.Abs(name.lo.x-list.lo.x) < 1 && list.lo.y > name.lo.y && list.lo.y-name.lo.y < 6:
									assert.Equal(t, printed[p.Name], numbers(t, list.text), "%s in the key", p.Name)
									inKey = true
								}
							}
						}
					}
					assert.True(t, inTable && inKey, "%s: in the table %v, in the key %v", p.Name, inTable, inKey)
				}
			})
		}
	}
}

// inches is a job in eighths of an inch: its walls are 1¼ in wide and 5½ in
// deep, its sides 5⅝ by 8⅞ in.
var inches = sync.OnceValue(func() printed {
	j := slipcase.DefaultJob(geometry.MM)
	j.Unit = geometry.IN
	j.Books = []job.Book{{
		Height:    job.Readings{8.5 * geometry.Inch},
		Width:     job.Readings{5.25 * geometry.Inch},
		Thickness: job.Readings{1.125 * geometry.Inch},
	}}
	j.Board.Thickness, j.Lining.Thickness = geometry.Inch/8, 0
	j.Clearance = job.Clearance{Height: geometry.Inch / 8, Width: geometry.Inch / 4, Thickness: geometry.Inch / 8}
	o := on(plantest.Must{}, "A4")
	o.Round = geometry.To64th
	return printedOn(planOf(plantest.Must{}, j), o)
})

// Halves, quarters and eighths of an inch, and the times sign, come out as the
// characters they are when the text of the finished file is read.
func TestPDFFractionsAreReadable(t *testing.T) {
	v := view(t, inches().file())
	var all []string
	for n := 1; n <= v.Pages; n++ {
		all = append(all, v.text(n)...)
	}
	text := strings.Join(all, "\n")
	assert.Regexp(t, "5⅝ in × 8⅞ in|8⅞ in × 5⅝ in", text) // a template may be turned
	assert.Regexp(t, "5½ in × 1¼ in|1¼ in × 5½ in", text)
	assert.Contains(t, text, "side × 2")
}

// One file writes a half in one way only.
func TestPDFFractionsAreWrittenOneWay(t *testing.T) {
	v := view(t, inches().file())
	plain := regexp.MustCompile(`(^|[^\d])(1/2|[13]/4|[1357]/8)($|[^\d])`)
	for n := 1; n <= v.Pages; n++ {
		for _, line := range v.text(n) {
			assert.NotRegexp(t, plain, line, "page %d", n)
		}
	}
}
