package templates_test

import (
	"bytes"
	"fmt"
	"image"
	"math"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/render/pdf/pdftest"
)

// TestMain keeps the PDF reader from writing a configuration folder, and ends
// the PDF viewer where a test started it.
func TestMain(m *testing.M) {
	api.DisableConfigDir()
	code := m.Run()
	if viewers.pool != nil {
		viewers.pool.Close()
	}
	os.Exit(code)
}

// parsed reads a file's objects; it must be valid.
func parsed(t testing.TB, file []byte) *model.Context {
	t.Helper()
	ctx, err := api.ReadAndValidate(bytes.NewReader(file), model.NewDefaultConfiguration())
	require.NoError(t, err)
	require.NoError(t, ctx.EnsurePageCount())
	return ctx
}

// viewers is one PDF viewer for all tests: it takes seconds to start.
var viewers struct {
	once     sync.Once
	pool     pdfium.Pool
	instance pdfium.Pdfium
	err      error
}

// viewed is a file open in the viewer.
type viewed struct {
	instance pdfium.Pdfium
	document references.FPDF_DOCUMENT
	pages    int
}

func view(t testing.TB, file []byte) *viewed {
	t.Helper()
	viewers.once.Do(func() {
		viewers.pool, viewers.err = webassembly.Init(pdftest.Viewer())
		if viewers.err == nil {
			viewers.instance, viewers.err = viewers.pool.GetInstance(time.Minute)
		}
	})
	require.NoError(t, viewers.err)
	v := &viewed{instance: viewers.instance}
	file = pdftest.AsDrawn(t, file)
	doc, err := v.instance.OpenDocument(&requests.OpenDocument{File: &file})
	require.NoError(t, err)
	v.document = doc.Document
	t.Cleanup(func() {
		_, err := v.instance.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: v.document})
		assert.NoError(t, err)
	})
	count, err := v.instance.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: v.document})
	require.NoError(t, err)
	v.pages = count.PageCount
	return v
}

// page names a page, from 1.
func (v *viewed) page(n int) requests.Page {
	return requests.Page{ByIndex: &requests.PageByIndex{Document: v.document, Index: n - 1}}
}

// text returns the words of a page line by line.
func (v *viewed) text(t testing.TB, page int) []string {
	t.Helper()
	got, err := v.instance.GetPageText(&requests.GetPageText{Page: v.page(page)})
	require.NoError(t, err)
	return strings.Split(strings.ReplaceAll(got.Text, "\r\n", "\n"), "\n")
}

// phrase is a run of text on a page with the box of its ink, in millimetres
// from the page's upper left corner.
type phrase struct {
	text   string
	lo, hi xy
}

func (v *viewed) phrases(t testing.TB, page int) []phrase {
	t.Helper()
	size, err := v.instance.FPDF_GetPageSizeByIndex(&requests.FPDF_GetPageSizeByIndex{Document: v.document, Index: page - 1})
	require.NoError(t, err)
	got, err := v.instance.GetPageTextStructured(&requests.GetPageTextStructured{Page: v.page(page), Mode: requests.GetPageTextStructuredModeRects})
	require.NoError(t, err)
	var out []phrase
	for _, r := range got.Rects {
		p := r.PointPosition
		out = append(out, phrase{strings.TrimSpace(r.Text),
			xy{p.Left * point, (size.Height - p.Top) * point}, xy{p.Right * point, (size.Height - p.Bottom) * point}})
	}
	return out
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
func (v *viewed) render(t testing.TB, page, dpi int, lo, hi xy) picture {
	t.Helper()
	got, err := v.instance.RenderPageInDPI(&requests.RenderPageInDPI{
		Page: v.page(page), DPI: dpi,
		Crop: &requests.RenderPageCrop{X: lo.x / point, Y: lo.y / point, Width: (hi.x - lo.x) / point, Height: (hi.y - lo.y) / point},
	})
	require.NoError(t, err)
	defer got.Cleanup()
	seen, ok := got.Result.RenderedImage.(*image.RGBA)
	require.True(t, ok, fmt.Sprintf("%T", got.Result.RenderedImage))
	// The viewer's buffer is reused: keep a copy.
	kept := &image.RGBA{Pix: bytes.Clone(seen.Pix), Stride: seen.Stride, Rect: seen.Rect}
	size, perInch := pageSize(t, v, page), float64(dpi)/inch
	scale := xy{math.Ceil(size.x*perInch) / size.x, math.Ceil(size.y*perInch) / size.y}
	from := xy{math.Round(lo.x*perInch) / scale.x, math.Round(lo.y*perInch) / scale.y}
	return picture{kept, from, scale}
}

// pageSize returns a page's size in millimetres.
func pageSize(t testing.TB, v *viewed, page int) xy {
	t.Helper()
	size, err := v.instance.FPDF_GetPageSizeByIndex(&requests.FPDF_GetPageSizeByIndex{Document: v.document, Index: page - 1})
	require.NoError(t, err)
	return xy{size.Width * point, size.Height * point}
}
