package templates_test

import (
	"bytes"
	"image"
	"math"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/stretchr/testify/require"

	"forel/render/pdf/pdftest"
)

// parsed reads a file's objects; it must be valid.
func parsed(t testing.TB, file []byte) *model.Context {
	t.Helper()
	ctx, err := api.ReadAndValidate(bytes.NewReader(file), model.NewDefaultConfiguration())
	require.NoError(t, err)
	require.NoError(t, ctx.EnsurePageCount())
	return ctx
}

// viewed is a file open in the viewer.
type viewed struct{ *pdftest.Doc }

func view(t testing.TB, file []byte) *viewed {
	t.Helper()
	return &viewed{pdftest.Open(t, file)}
}

// text returns the words of a page line by line.
func (v *viewed) text(page int) []string {
	return strings.Split(strings.ReplaceAll(v.Text(page), "\r\n", "\n"), "\n")
}

// phrase is a run of text on a page with the box of its ink, in millimetres
// from the page's upper left corner.
type phrase struct {
	text   string
	lo, hi xy
}

func (v *viewed) phrases(page int) (all []phrase) {
	for _, p := range v.Phrases(page) {
		all = append(all, phrase{p.Text, at(p.Lo), at(p.Hi)})
	}
	return all
}

// picture is a page in pixels, or a part of it: from is its upper left corner
// on the page in millimetres.
type picture struct {
	image *image.RGBA
	from  xy
	scale xy // pixels in a millimetre
}

// render draws a part of a page, from lo to hi in millimetres, at so many dots
// an inch. The viewer stretches a page to a whole number of pixels each way,
// which the picture's scale takes out again.
func (v *viewed) render(page, dpi int, lo, hi xy) picture {
	size, perInch := v.size(page), float64(dpi)/inch
	scale := xy{math.Ceil(size.x*perInch) / size.x, math.Ceil(size.y*perInch) / size.y}
	from := xy{math.Round(lo.x*perInch) / scale.x, math.Round(lo.y*perInch) / scale.y}
	return picture{v.Part(page, dpi, pdftest.XY{X: lo.x, Y: lo.y}, pdftest.XY{X: hi.x, Y: hi.y}), from, scale}
}

// size returns a page's size in millimetres.
func (v *viewed) size(page int) xy { return at(v.Size(page)) }

func at(p pdftest.XY) xy { return xy{p.X, p.Y} }
