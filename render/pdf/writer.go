package pdf

import (
	"compress/zlib"
	"fmt"
	"slices"
	"strings"
	"sync"

	"github.com/signintech/gopdf"

	"forel/geometry"
	"forel/render"
	"forel/render/record"
	"forel/render/typeset"
)

// families are the library's names of the faces: those that the fonts have in the
// file, behind the tag of a subset.
var families = [...]string{typeset.Regular: someTag + "+GoRegular", typeset.Bold: someTag + "+GoBold", typeset.Fallback: someTag + "+DejaVuSans"}

// fonts are the faces, each read once for all documents.
var fonts = func() (all [len(families)]func() (*gopdf.FontContainer, error)) {
	for i, family := range families {
		all[i] = sync.OnceValues(func() (*gopdf.FontContainer, error) {
			var c gopdf.FontContainer
			return &c, c.AddTTFFontData(family, typeset.Face(i).Data())
		})
	}
	return all
}()

// writer gives pages to the library. It knows what was set on a page so far, so
// as not to set it again.
type writer struct {
	gopdf.GoPdf
	high float64 // of the page, in points
	line *render.Stroke
	ink  *render.Color
	face typeset.Face
	size render.Points
}

// blank is the size of pages that have none of their own; in millimetres.
const blank = 10

// written returns the document as the library writes it, mended.
func (d Document) written() ([]byte, error) {
	var w writer
	w.Start(gopdf.Config{Unit: gopdf.UnitMM, PageSize: gopdf.Rect{W: blank, H: blank}})
	w.SetCompressLevel(zlib.BestSpeed)
	m := mend{Document: d, bookmarks: d.bookmarks(), fonts: map[typeset.Face]int{}}
	for i, family := range families {
		f := typeset.Face(i)
		if f == typeset.Fallback && !d.sets(f) {
			continue // few documents need it
		}
		container, err := fonts[f]()
		if err != nil {
			return nil, err
		}
		m.fonts[f] = w.GetNextObjectID()
		if err := w.AddTTFFontFromFontContainer(family, container); err != nil {
			return nil, err
		}
	}
	for i, p := range d.Pages {
		if err := w.page(p, d.Black); err != nil {
			return nil, err
		}
		for len(m.marks) < len(m.bookmarks) && m.bookmarks[len(m.marks)].page == i {
			w.SetXY(0, blank) // so that the entry is as mend finds it
			m.marks = append(m.marks, &gopdf.OutlineNode{Obj: w.AddOutlineWithPosition("")})
		}
	}
	for i, b := range m.bookmarks {
		above := &m.top
		if b.above >= 0 {
			above = (*gopdf.OutlineNodes)(&m.marks[b.above].Children)
		}
		*above = append(*above, m.marks[i])
	}
	m.top.Parse()
	for i := 1; i < len(m.top); i++ { // which Parse leaves out
		m.top[i].Obj.SetPrev(m.top[i-1].Obj.GetIndex())
	}
	file, err := w.GetBytesPdfReturnErr()
	if err != nil {
		return nil, err
	}
	return m.file(file)
}

// sets tells whether any page has words in a face.
func (d Document) sets(f typeset.Face) bool {
	return slices.ContainsFunc(d.Pages, func(p *Page) bool {
		return slices.ContainsFunc(p.Texts, func(t record.Written) bool {
			return slices.ContainsFunc(typeset.Runs(t.String, t.Bold), func(r typeset.Run) bool { return r.Face == f })
		})
	})
}

// page draws a page: its lines, then its words.
func (w *writer) page(p *Page, black bool) error {
	on := w.sheet(p, black)
	w.AddPageWithOption(gopdf.PageOption{PageSize: &gopdf.Rect{W: on.width.MM(), H: on.height.MM()}})
	w.high, w.line, w.ink, w.size = w.UnitsToPoints(on.height.MM()), nil, nil, 0
	// A corner sharper than 29 degrees is cut off, as in SVG (8.4.3.5).
	on.did(w.operators("4 M"))
	if on.clip != nil {
		on.did(w.operators(w.path(on.clip) + "h W n"))
	}
	p.Play(on, geometry.Point{})
	for _, t := range p.Texts {
		on.set(t.Text)
	}
	return on.err
}

// stroke draws along points.
func (w *writer) stroke(points []gopdf.Point, closed bool, s render.Stroke) error {
	if w.line == nil || w.line.Width != s.Width {
		w.SetLineWidth(s.Width.MM())
	}
	if w.line == nil || !slices.Equal(w.line.Dash, s.Dash) || w.line.Phase != s.Phase {
		dash := make([]float64, len(s.Dash))
		for i, l := range s.Dash {
			dash[i] = l.MM()
		}
		w.SetCustomLineType(dash, s.Phase.MM())
	}
	if w.line == nil || w.line.Color != s.Color {
		if c := s.Color; grey(c) {
			w.SetGrayStroke(float64(c.R) / 255)
		} else {
			w.SetStrokeColor(c.R, c.G, c.B)
		}
	}
	w.line = &s
	switch {
	case closed:
		w.Polygon(points, "D")
	case len(points) == 2:
		w.Line(points[0].X, points[0].Y, points[1].X, points[1].Y)
	default:
		return w.operators(w.path(points) + "S")
	}
	return nil
}

// fill fills a polygon.
func (w *writer) fill(points []gopdf.Point, c render.Color) {
	w.color(c)
	w.Polygon(points, "F")
}

// text sets the runs of a line of text from a place on, turned anticlockwise.
func (w *writer) text(at gopdf.Point, angle float64, t render.Text, runs []typeset.Run) error {
	w.color(t.Color)
	if angle != 0 {
		w.Rotate(angle, at.X, at.Y)
		defer w.RotateReset()
	}
	for _, r := range runs {
		if w.size != t.Size || w.face != r.Face {
			w.size, w.face = t.Size, r.Face
			if err := w.SetFont(families[r.Face], "", float64(t.Size)); err != nil {
				return err
			}
		}
		w.SetXY(at.X, at.Y)
		if err := w.Text(r.Text); err != nil {
			return err
		}
		at.X += typeset.RunWidth(r, t.Size).MM()
	}
	return nil
}

// color sets what is filled, and words are set, in.
func (w *writer) color(c render.Color) {
	if w.ink != nil && *w.ink == c {
		return
	}
	if w.ink = &c; grey(c) {
		w.SetGrayFill(float64(c.R) / 255)
		return
	}
	w.SetFillColor(c.R, c.G, c.B)
	w.SetTextColor(c.R, c.G, c.B)
}

// grey tells whether a colour is written as one that a printer makes of its
// black alone (8.6.4.2).
func grey(c render.Color) bool { return c.R == c.G && c.G == c.B }

// operators writes what the library has no call for: the limit of sharp corners,
// the clip of a page, a path that is left open. It goes between the library's own
// as what paints a rectangle of no size, of which nothing is left.
func (w *writer) operators(ops string) error {
	return w.RectFromLowerLeftWithOpts(gopdf.DrawableRectOptions{PaintStyle: gopdf.PaintStyle("n Q " + ops + " q")})
}

// path returns the operators of a path along points (8.5.2), rounded as the
// library does.
func (w *writer) path(points []gopdf.Point) string {
	var ops strings.Builder
	op := "m"
	for _, p := range points {
		fmt.Fprintf(&ops, "%.2f %.2f %s ", w.UnitsToPoints(p.X), w.high-w.UnitsToPoints(p.Y), op)
		op = "l"
	}
	return ops.String()
}
