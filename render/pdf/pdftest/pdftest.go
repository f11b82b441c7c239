// Package pdftest reads finished PDFs back for tests, by code that is not ours:
// paths and pixels in millimetres from a page's upper left corner, Y downward.
package pdftest

import (
	"bytes"
	"image"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/stretchr/testify/require"
	"github.com/tetratelabs/wazero"
	wasm "github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"
)

const point = 25.4 / 72 // mm (ISO 32000-1, 8.3.2.3)

// viewer is one PDF viewer for all tests of a package: it takes seconds to
// start.
var viewer = sync.OnceValues(func() (pdfium.Pdfium, error) {
	pool, err := webassembly.Init(kept())
	if err != nil {
		return nil, err
	}
	return pool.GetInstance(time.Minute)
})

// kept returns what the viewer is started with: its machine code is kept in the
// user's folder for such things, since compiling it takes longer than most tests.
func kept() webassembly.Config {
	c := webassembly.Config{MinIdle: 1, MaxIdle: 1, MaxTotal: 1}
	folder, err := os.UserCacheDir()
	if err != nil {
		return c
	}
	cache, err := wazero.NewCompilationCacheWithDir(filepath.Join(folder, "forel-tests"))
	if err == nil {
		c.RuntimeConfig = wazero.NewRuntimeConfig().WithCompilationCache(cache).
			WithCoreFeatures(wasm.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling) // as webassembly.Init has it
	}
	return c
}

// init keeps the reader of objects from writing a configuration folder.
func init() { api.DisableConfigDir() }

// Doc is an open file.
type Doc struct {
	t        testing.TB
	viewer   pdfium.Pdfium
	document references.FPDF_DOCUMENT
	Pages    int
}

// XY is a place on a page.
type XY struct{ X, Y float64 }

// Path is one path object of a page. A curve has four points, a line two.
type Path struct {
	Pieces       [][]XY
	Moves        int // how often the pen was lifted
	Closed       bool
	Stroke, Fill bool
	Dash         []float64
	Phase        float64
	Width        float64  // of its stroke, in millimetres
	Color        [3]uint8 // of its stroke
}

// Open opens a file until the test ends, its pages as they were drawn (AsDrawn).
func Open(t testing.TB, file []byte) *Doc {
	t.Helper()
	return open(t, AsDrawn(t, file))
}

func open(t testing.TB, file []byte) *Doc {
	t.Helper()
	v, err := viewer()
	require.NoError(t, err)
	doc, err := v.OpenDocument(&requests.OpenDocument{File: &file})
	require.NoError(t, err)
	d := &Doc{t: t, viewer: v, document: doc.Document}
	t.Cleanup(func() { _, _ = v.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: d.document}) })
	count, err := v.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: d.document})
	require.NoError(t, err)
	d.Pages = count.PageCount
	return d
}

func (d *Doc) page(n int) requests.Page {
	return requests.Page{ByIndex: &requests.PageByIndex{Document: d.document, Index: n - 1}}
}

// Size returns a page's size; pages count from 1.
func (d *Doc) Size(page int) XY {
	size, err := d.viewer.FPDF_GetPageSizeByIndex(&requests.FPDF_GetPageSizeByIndex{Document: d.document, Index: page - 1})
	require.NoError(d.t, err)
	return XY{size.Width * point, size.Height * point}
}

// Label returns the label of a page.
func (d *Doc) Label(page int) string {
	l, err := d.viewer.FPDF_GetPageLabel(&requests.FPDF_GetPageLabel{Document: d.document, Page: page - 1})
	require.NoError(d.t, err)
	return l.Label
}

// Meta returns an entry of the document information, such as "Title".
func (d *Doc) Meta(tag string) string {
	m, err := d.viewer.FPDF_GetMetaText(&requests.FPDF_GetMetaText{Document: d.document, Tag: tag})
	require.NoError(d.t, err)
	return m.Value
}

// Text returns the words of a page.
func (d *Doc) Text(page int) string {
	got, err := d.viewer.GetPageText(&requests.GetPageText{Page: d.page(page)})
	require.NoError(d.t, err)
	return got.Text
}

// Phrase is a run of text on a page, with the box of its ink.
type Phrase struct {
	Text   string
	Lo, Hi XY
}

// Phrases returns the runs of text of a page.
func (d *Doc) Phrases(page int) (all []Phrase) {
	got, err := d.viewer.GetPageTextStructured(&requests.GetPageTextStructured{Page: d.page(page), Mode: requests.GetPageTextStructuredModeRects})
	require.NoError(d.t, err)
	high := d.Size(page).Y
	for _, r := range got.Rects {
		p := r.PointPosition
		all = append(all, Phrase{strings.TrimSpace(r.Text), XY{p.Left * point, high - p.Top*point}, XY{p.Right * point, high - p.Bottom*point}})
	}
	return all
}

// Paths returns the paths of a page, transformed as they are drawn.
func (d *Doc) Paths(page int) []Path {
	t, v, height := d.t, d.viewer, d.Size(page).Y
	count, err := v.FPDFPage_CountObjects(&requests.FPDFPage_CountObjects{Page: d.page(page)})
	require.NoError(t, err)
	var out []Path
	for i := range count.Count {
		o, err := v.FPDFPage_GetObject(&requests.FPDFPage_GetObject{Page: d.page(page), Index: i})
		require.NoError(t, err)
		kind, err := v.FPDFPageObj_GetType(&requests.FPDFPageObj_GetType{PageObject: o.PageObject})
		require.NoError(t, err)
		if kind.Type == enums.FPDF_PAGEOBJ_PATH {
			out = append(out, d.path(o.PageObject, height))
		}
	}
	return out
}

func (d *Doc) path(o references.FPDF_PAGEOBJECT, height float64) Path {
	t, v := d.t, d.viewer
	matrix, err := v.FPDFPageObj_GetMatrix(&requests.FPDFPageObj_GetMatrix{PageObject: o})
	require.NoError(t, err)
	m := matrix.Matrix
	count, err := v.FPDFPath_CountSegments(&requests.FPDFPath_CountSegments{PageObject: o})
	require.NoError(t, err)
	mode, err := v.FPDFPath_GetDrawMode(&requests.FPDFPath_GetDrawMode{PageObject: o})
	require.NoError(t, err)
	p := Path{Stroke: mode.Stroke, Fill: mode.FillMode != enums.FPDF_FILLMODE_NONE}
	if dash, err := v.FPDFPageObj_GetDashArray(&requests.FPDFPageObj_GetDashArray{PageObject: o}); err == nil {
		for _, l := range dash.DashArray {
			p.Dash = append(p.Dash, float64(l)*point)
		}
	}
	if phase, err := v.FPDFPageObj_GetDashPhase(&requests.FPDFPageObj_GetDashPhase{PageObject: o}); err == nil {
		p.Phase = float64(phase.DashPhase) * point
	}
	if p.Stroke {
		width, err := v.FPDFPageObj_GetStrokeWidth(&requests.FPDFPageObj_GetStrokeWidth{PageObject: o})
		require.NoError(t, err)
		color, err := v.FPDFPageObj_GetStrokeColor(&requests.FPDFPageObj_GetStrokeColor{PageObject: o})
		require.NoError(t, err)
		c := color.StrokeColor
		p.Width, p.Color = float64(width.StrokeWidth)*point, [3]uint8{uint8(c.R), uint8(c.G), uint8(c.B)}
	}
	var start, last XY
	var curve []XY
	for i := range count.Count {
		s, err := v.FPDFPath_GetPathSegment(&requests.FPDFPath_GetPathSegment{PageObject: o, Index: i})
		require.NoError(t, err)
		at, err := v.FPDFPathSegment_GetPoint(&requests.FPDFPathSegment_GetPoint{PathSegment: s.PathSegment})
		require.NoError(t, err)
		kind, err := v.FPDFPathSegment_GetType(&requests.FPDFPathSegment_GetType{PathSegment: s.PathSegment})
		require.NoError(t, err)
		closes, err := v.FPDFPathSegment_GetClose(&requests.FPDFPathSegment_GetClose{PathSegment: s.PathSegment})
		require.NoError(t, err)
		x, y := float64(at.X), float64(at.Y)
		here := XY{
			(float64(m.A)*x + float64(m.C)*y + float64(m.E)) * point,
			height - (float64(m.B)*x+float64(m.D)*y+float64(m.F))*point,
		}
		switch kind.Type {
		case enums.FPDF_SEGMENT_MOVETO:
			p.Moves++
			start = here
		case enums.FPDF_SEGMENT_LINETO:
			p.Pieces = append(p.Pieces, []XY{last, here})
		case enums.FPDF_SEGMENT_BEZIERTO:
			if curve = append(curve, here); len(curve) < 3 {
				continue
			}
			p.Pieces = append(p.Pieces, append([]XY{last}, curve...))
			curve = nil
		}
		last = here
		p.Closed = p.Closed || closes.IsClose
		if closes.IsClose || p.Fill && i == count.Count-1 { // what is filled closes by itself (ISO 32000-1, 8.5.3.1)
			if math.Hypot(last.X-start.X, last.Y-start.Y) > 1e-4 {
				p.Pieces = append(p.Pieces, []XY{last, start})
			}
		}
	}
	return p
}

// Points returns places along a path, many on each curve.
func (p Path) Points() []XY {
	var out []XY
	for _, piece := range p.Pieces {
		if len(piece) == 2 {
			out = append(out, piece...)
			continue
		}
		const n = 64
		for i := range n + 1 {
			f := float64(i) / n
			g := 1 - f
			w := [4]float64{g * g * g, 3 * g * g * f, 3 * g * f * f, f * f * f}
			var at XY
			for k, q := range piece {
				at.X += w[k] * q.X
				at.Y += w[k] * q.Y
			}
			out = append(out, at)
		}
	}
	return out
}

// Bounds returns the box around a path's middle.
func (p Path) Bounds() (lo, hi XY) {
	lo, hi = XY{math.Inf(1), math.Inf(1)}, XY{math.Inf(-1), math.Inf(-1)}
	for _, q := range p.Points() {
		lo = XY{min(lo.X, q.X), min(lo.Y, q.Y)}
		hi = XY{max(hi.X, q.X), max(hi.Y, q.Y)}
	}
	return lo, hi
}

// Picture returns a page in pixels.
func (d *Doc) Picture(page, dpi int) *image.RGBA { return d.picture(page, dpi, nil) }

// Part returns a part of a page in pixels, from lo to hi. The viewer stretches the
// whole page to a whole number of pixels each way.
func (d *Doc) Part(page, dpi int, lo, hi XY) *image.RGBA {
	return d.picture(page, dpi, &requests.RenderPageCrop{X: lo.X / point, Y: lo.Y / point, Width: (hi.X - lo.X) / point, Height: (hi.Y - lo.Y) / point})
}

func (d *Doc) picture(page, dpi int, part *requests.RenderPageCrop) *image.RGBA {
	got, err := d.viewer.RenderPageInDPI(&requests.RenderPageInDPI{Page: d.page(page), DPI: dpi, Crop: part})
	require.NoError(d.t, err)
	defer got.Cleanup()
	seen, ok := got.Result.RenderedImage.(*image.RGBA)
	require.True(d.t, ok)
	// The viewer's buffer is used again: keep a copy.
	return &image.RGBA{Pix: bytes.Clone(seen.Pix), Stride: seen.Stride, Rect: seen.Rect}
}

// Ink returns the box around all that is not white on a page, in millimetres, to
// a dot; ok is false for an empty page.
func (d *Doc) Ink(page, dpi int) (lo, hi XY, ok bool) {
	p, size := d.Picture(page, dpi), d.Size(page)
	box := image.Rectangle{}
	for y := range p.Rect.Dy() {
		row := p.Pix[y*p.Stride:][:4*p.Rect.Dx()]
		for x := 0; x < len(row); x += 4 {
			if row[x] < 250 || row[x+1] < 250 || row[x+2] < 250 {
				box = box.Union(image.Rect(x/4, y, x/4+1, y+1))
			}
		}
	}
	sx, sy := size.X/float64(p.Rect.Dx()), size.Y/float64(p.Rect.Dy())
	return XY{float64(box.Min.X) * sx, float64(box.Min.Y) * sy}, XY{float64(box.Max.X) * sx, float64(box.Max.Y) * sy}, !box.Empty()
}
