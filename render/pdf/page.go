package pdf

import (
	"bytes"
	"strconv"
	"strings"

	"forel/geometry"
	"forel/paper"
	"forel/render"
)

// page is one page with its content but for the words: operators of ISO
// 32000-1, 8.4 to 8.5. The PDF library draws a path in pieces, one curve or
// polygon each, to a hundredth of a point; here a path of lines and arcs is one
// path, so that its corners are joined and its dashes run on.
type page struct {
	object        int // its number in the file
	width, height geometry.Length
	content       bytes.Buffer
	now           map[string]string // the graphics state, by operator
}

// decimals of a point that are written: 0.0001 pt is under 0.00004 mm.
const decimals = 4

// newPage starts a page. It opens a graphics state that endPage closes: cut off
// at what may be printed, scaled to what the printer makes true.
func newPage(object int, width, height geometry.Length, setup *paper.Setup) *page {
	p := &page{object: object, width: width, height: height, now: map[string]string{}}
	p.op("q")
	if setup != nil {
		lying := width > height
		x, y, center := setup.InFile(lying)
		area := setup.Printable(lying)
		put := func(at geometry.Point) geometry.Point {
			from := at.Sub(center)
			return center.Add(geometry.Pt(from.X*geometry.Length(x), from.Y*geometry.Length(y)))
		}
		area = geometry.Box{Min: put(area.Min), Max: put(area.Max)}
		p.op("re W n", pt(area.Min.X), pt(height-area.Max.Y), pt(area.Width()), pt(area.Height()))
		if x != 1 || y != 1 {
			cx, cy := pt(center.X), pt(height-center.Y)
			p.exact("cm", x, 0, 0, y, cx*(1-x), cy*(1-y))
		}
	}
	p.op("M", 4) // a corner sharper than 29 degrees is cut off, as in SVG
	return p
}

// endPage closes what newPage opened.
const endPage = "Q\n"

// op writes an operator after its operands.
func (p *page) op(name string, operands ...float64) { p.write(name, decimals, operands) }

// exact is op with operands that others are multiplied by.
func (p *page) exact(name string, operands ...float64) { p.write(name, 8, operands) }

func (p *page) write(name string, decimals int, operands []float64) {
	for _, v := range operands {
		p.content.WriteString(number(v, decimals))
		p.content.WriteByte(' ')
	}
	p.content.WriteString(name)
	p.content.WriteByte('\n')
}

// set changes the graphics state where it is another.
func (p *page) set(operator, operands string) {
	if p.now[operator] != operands {
		p.now[operator] = operands
		p.content.WriteString(operands + " " + operator + "\n")
	}
}

func (p *page) stroke(path geometry.Path, s render.Stroke) {
	if len(path.Vertices) < 2 {
		return
	}
	p.set("w", number(pt(s.Width), decimals))
	dash := make([]string, len(s.Dash))
	for i, l := range s.Dash {
		dash[i] = number(pt(l), decimals)
	}
	p.set("d", "["+strings.Join(dash, " ")+"] "+number(pt(phase(s)), decimals))
	p.color("RG", "G", s.Color)
	p.path(path)
	p.op("S")
}

// phase gives how far into its dashes a line starts, from none to one round of
// them: PDF knows no negative phase.
func phase(s render.Stroke) geometry.Length {
	var period geometry.Length
	for _, l := range s.Dash {
		period += l
	}
	if period <= 0 {
		return 0
	}
	left := s.Phase - geometry.Length(int(s.Phase/period))*period
	if left < 0 {
		left += period
	}
	return left
}

func (p *page) fill(path geometry.Path, c render.Color) {
	if len(path.Vertices) < 2 {
		return
	}
	p.color("rg", "g", c)
	p.path(path)
	p.op("f")
}

// color sets a colour; greys in the colour space that a printer makes of its
// black alone (8.6.4.2).
func (p *page) color(rgb, grey string, c render.Color) {
	part := func(v uint8) string { return number(float64(v)/255, 3) }
	operator, operands := rgb, part(c.R)+" "+part(c.G)+" "+part(c.B)
	if c.R == c.G && c.G == c.B {
		operator, operands = grey, part(c.R)
		rgb, grey = grey, rgb
	}
	delete(p.now, grey) // each operator undoes the other
	p.set(operator, operands)
}

// path makes the current path.
func (p *page) path(path geometry.Path) {
	xy := func(points ...geometry.Point) []float64 {
		out := make([]float64, 0, 2*len(points))
		for _, q := range points {
			out = append(out, pt(q.X), pt(p.height-q.Y))
		}
		return out
	}
	p.op("m", xy(path.Vertices[0].Point)...)
	segments := path.Segments()
	for i, s := range segments {
		if s.Bulge != 0 {
			for _, c := range curves(s) {
				p.op("c", xy(c[:]...)...)
			}
			continue
		}
		if path.Closed && i == len(segments)-1 {
			break // closing draws the last straight line
		}
		p.op("l", xy(s.To)...)
	}
	if path.Closed {
		p.op("h")
	}
}

// number writes a number without needless zeros.
func number(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}
