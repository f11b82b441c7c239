package pdf

import (
	"math"
	"slices"
	"strconv"

	"forel/geometry"
	"forel/render"
)

// content is operators of a page (ISO 32000-1, 8.4 to 9.4) as they are written,
// with the graphics state they leave.
type content struct {
	data   []byte
	width  string // of lines; as written
	dash   string
	stroke colour
	fill   colour
}

// colour is a colour that was set, or none yet.
type colour struct {
	render.Color
	set bool
}

// decimals of a point that are written: 0.0001 pt is under 0.00004 mm.
const decimals = 4

// op writes an operator after its operands.
func (c *content) op(name string, operands ...float64) {
	for _, v := range operands {
		c.data = append(number(c.data, v, decimals), ' ')
	}
	c.end(name)
}

// exact is op with operands that others are multiplied by.
func (c *content) exact(name string, operands ...float64) {
	for _, v := range operands {
		c.data = append(number(c.data, v, 8), ' ')
	}
	c.end(name)
}

func (c *content) end(operator string) {
	c.data = append(append(c.data, operator...), '\n')
}

// point writes a place as two operands.
func (c *content) point(x, y float64) {
	c.data = append(number(c.data, x, decimals), ' ')
	c.data = append(number(c.data, y, decimals), ' ')
}

// pen sets how lines are drawn, where that is another than it was.
func (c *content) pen(s render.Stroke) {
	var room [64]byte
	if w := number(room[:0], pt(s.Width), decimals); string(w) != c.width {
		c.width = string(w)
		c.data = append(append(c.data, w...), " w\n"...)
	}
	d := append(room[:0], '[')
	for i, l := range s.Dash {
		if i > 0 {
			d = append(d, ' ')
		}
		d = number(d, pt(l), decimals)
	}
	d = append(d, "] "...)
	d = number(d, pt(phase(s)), decimals)
	if string(d) != c.dash {
		c.dash = string(d)
		c.data = append(append(c.data, d...), " d\n"...)
	}
	c.color(&c.stroke, s.Color, "RG", "G")
}

// ink sets what is filled, and words are set, in.
func (c *content) ink(color render.Color) { c.color(&c.fill, color, "rg", "g") }

// color sets a colour; greys in the colour space that a printer makes of its
// black alone (8.6.4.2).
func (c *content) color(was *colour, to render.Color, rgb, grey string) {
	if was.set && was.Color == to {
		return
	}
	*was = colour{to, true}
	if to.R == to.G && to.G == to.B {
		c.data = append(number(c.data, float64(to.R)/255, 3), ' ')
		c.end(grey)
		return
	}
	for _, v := range [...]uint8{to.R, to.G, to.B} {
		c.data = append(number(c.data, float64(v)/255, 3), ' ')
	}
	c.end(rgb)
}

// path makes the current path of a page so high.
func (c *content) path(path geometry.Path, high geometry.Length) {
	first := path.Vertices[0].Point
	c.point(pt(first.X), pt(high-first.Y))
	c.end("m")
	segments := len(path.Vertices) - 1
	if path.Closed {
		segments++
	}
	for i := range segments {
		from, to := path.Vertices[i], path.Vertices[(i+1)%len(path.Vertices)]
		if from.Bulge != 0 {
			for _, q := range curves(geometry.Segment{From: from.Point, To: to.Point, Bulge: from.Bulge}) {
				for _, p := range q {
					c.point(pt(p.X), pt(high-p.Y))
				}
				c.end("c")
			}
			continue
		}
		if path.Closed && i == segments-1 {
			break // closing draws the last straight line
		}
		c.point(pt(to.X), pt(high-to.Y))
		c.end("l")
	}
	if path.Closed {
		c.end("h")
	}
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

// number writes a number, rounded to so many decimals, without needless zeros.
func number(to []byte, v float64, decimals int) []byte {
	scaled := math.Round(v * math.Pow10(decimals))
	if math.Abs(scaled) >= 1<<53 || math.IsNaN(scaled) {
		return strconv.AppendFloat(to, v, 'f', -1, 64)
	}
	n := int64(scaled)
	if n < 0 {
		to, n = append(to, '-'), -n
	}
	one := int64(math.Pow10(decimals))
	to = strconv.AppendInt(to, n/one, 10)
	rest := n % one
	if rest == 0 {
		return to
	}
	to = append(to, '.')
	at := len(to)
	for range decimals {
		to = append(to, byte('0'+rest%10))
		rest /= 10
	}
	slices.Reverse(to[at:])
	for to[len(to)-1] == '0' {
		to = to[:len(to)-1]
	}
	return to
}
