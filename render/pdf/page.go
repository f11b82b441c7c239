package pdf

import (
	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/typeset"
)

// Page is one page: a render.Surface. Its words lie above its lines and fills,
// which keep their order. The PDF library draws a path in pieces, one curve or
// polygon each, to a hundredth of a point; here a path of lines and arcs is one
// path, so that its corners are joined and its dashes run on, and words stand
// as exactly as lines.
type Page struct {
	object        int // its number in the file, once that is known
	width, height geometry.Length
	black         bool
	open          bool // it may still be drawn on when there are others after it
	lines, words  content
	face          string  // that words are set in; as written
	used          [2]used // characters of the regular and the bold
	packed        []byte  // all of it, once it is done
}

// newPage starts a page. It opens a graphics state that is closed with the page:
// cut off at what may be printed, scaled to what the printer makes true.
func newPage(width, height geometry.Length, setup *paper.Setup) *Page {
	p := &Page{width: width, height: height}
	p.lines.end("q")
	if setup != nil {
		lying := width > height
		x, y, center := setup.InFile(lying)
		area := setup.Printable(lying)
		put := func(at geometry.Point) geometry.Point {
			from := at.Sub(center)
			return center.Add(geometry.Pt(from.X*geometry.Length(x), from.Y*geometry.Length(y)))
		}
		area = geometry.Box{Min: put(area.Min), Max: put(area.Max)}
		p.lines.op("re W n", pt(area.Min.X), pt(height-area.Max.Y), pt(area.Width()), pt(area.Height()))
		if x != 1 || y != 1 {
			cx, cy := pt(center.X), pt(height-center.Y)
			p.lines.exact("cm", x, 0, 0, y, cx*(1-x), cy*(1-y))
		}
	}
	p.lines.op("M", 4) // a corner sharper than 29 degrees is cut off, as in SVG
	return p
}

// done ends the page, of which its content is kept, packed.
func (p *Page) done() {
	if p.packed != nil {
		return
	}
	all := p.lines.data
	if len(p.words.data) > 0 {
		all = append(append(append(all, "BT\n"...), p.words.data...), "ET\n"...)
	}
	p.packed = pack(append(all, "Q\n"...))
	p.lines, p.words = content{}, content{}
}

// Begin opens a layer; pages have none, so it does nothing.
func (p *Page) Begin(render.Layer) {}

// End closes a layer.
func (p *Page) End() {}

// Stroke draws along a path, its arcs as Bézier curves within 0.002 mm of
// themselves. Dashes run on from one line or arc of the path to the next.
func (p *Page) Stroke(path geometry.Path, s render.Stroke) {
	if len(path.Vertices) < 2 {
		return
	}
	if p.black {
		s.Width = max(s.Width, render.Finest)
		if s.Color != render.White {
			s.Color = render.Black
		}
	}
	p.lines.pen(s)
	p.lines.path(path, p.height)
	p.lines.end("S")
}

// Fill fills a closed path.
func (p *Page) Fill(path geometry.Path, c render.Color) {
	if len(path.Vertices) < 2 {
		return
	}
	if p.black {
		c = c.InBlack()
	}
	p.lines.ink(c)
	p.lines.path(path, p.height)
	p.lines.end("f")
}

// Text sets a line of text.
func (p *Page) Text(t render.Text) {
	if t.String == "" {
		return
	}
	if p.black && t.Color != render.White {
		t.Color = render.Black
	}
	weight, face := 0, "/F1 "
	if t.Bold {
		weight, face = 1, "/F2 "
	}
	back := geometry.Length(0)
	if t.Align != render.Start {
		back = typeset.Width(t.String, t.Size, t.Bold)
		if t.Align == render.Middle {
			back /= 2
		}
	}
	w := &p.words
	w.ink(t.Color)
	var room [24]byte
	if f := number(append(room[:0], face...), float64(t.Size), 2); string(f) != p.face {
		p.face = string(f)
		w.data = append(append(w.data, f...), " Tf\n"...)
	}
	x, y := t.At.X-back, t.At.Y
	if t.Turned {
		w.data = append(w.data, "0 1 -1 0 "...)
		x, y = t.At.X, t.At.Y+back
	} else {
		w.data = append(w.data, "1 0 0 1 "...)
	}
	w.point(pt(x), pt(p.height-y))
	w.data = append(w.data, "Tm <"...)
	const hex = "0123456789ABCDEF"
	for _, r := range t.String {
		if !typeset.Has(r) {
			r = typeset.Missing
		}
		p.used[weight].add(r)
		g := typeset.Index(r, t.Bold)
		w.data = append(w.data, hex[g>>12], hex[g>>8&15], hex[g>>4&15], hex[g&15])
	}
	w.data = append(w.data, "> Tj\n"...)
}

func pt(l geometry.Length) float64 { return float64(l / geometry.PDFPoint) }
