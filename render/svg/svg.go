// Package svg writes drawings as Scalable Vector Graphics (W3C SVG 1.1) in
// real millimetres: width and height carry the unit and one user unit of the
// viewBox is one millimetre, so that a path is measured without a transform.
package svg

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"

	svgo "github.com/ajstarks/svgo/float"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/typeset"
)

// decimals of a millimetre that are written.
const decimals = 4

// Canvas is an SVG drawing; it is a render.Surface.
type Canvas struct {
	buf bytes.Buffer
	svg *svgo.SVG
}

// New starts a drawing of the given size with a title and a description.
func New(width, height geometry.Length, title, desc string) *Canvas {
	c := &Canvas{}
	c.svg = svgo.New(&c.buf)
	c.svg.Decimals = decimals
	c.svg.StartviewUnit(width.MM(), height.MM(), "mm", 0, 0, width.MM(), height.MM())
	c.unsigned()
	c.svg.Title(printable(title))
	c.svg.Desc(printable(desc))
	return c
}

// unsigned takes out the comment that the library signs its drawings with.
func (c *Canvas) unsigned() {
	head := c.buf.Bytes()
	from, to := bytes.Index(head, []byte("<!--")), bytes.Index(head, []byte("-->\n"))
	if from >= 0 && to > from {
		kept := slices.Concat(head[:from], head[to+len("-->\n"):])
		c.buf.Reset()
		c.buf.Write(kept)
	}
}

// Bytes ends the drawing and gives the file.
func (c *Canvas) Bytes() []byte {
	c.svg.End()
	return c.buf.Bytes()
}

// Begin opens a group with the layer's name.
func (c *Canvas) Begin(l render.Layer) { c.svg.Group(attr("id", string(l))) }

// End closes the group.
func (c *Canvas) End() { c.svg.Gend() }

// BeginPart opens a group within a layer, for one piece: its id, an XML name
// that no other group of the drawing has, and its name in words.
func (c *Canvas) BeginPart(id, name string) {
	c.svg.Group(attr("id", id))
	c.svg.Title(printable(name))
}

// EndPart closes the group.
func (c *Canvas) EndPart() { c.svg.Gend() }

// Stroke draws a path; arcs stay arcs.
func (c *Canvas) Stroke(p geometry.Path, s render.Stroke) {
	attrs := []string{
		attr("fill", "none"),
		attr("stroke", s.Color.Hex()),
		attr("stroke-width", num(s.Width)),
	}
	if len(s.Dash) > 0 {
		dash := make([]string, len(s.Dash))
		for i, d := range s.Dash {
			dash[i] = num(d)
		}
		attrs = append(attrs, attr("stroke-dasharray", strings.Join(dash, " ")))
	}
	if s.Phase != 0 {
		attrs = append(attrs, attr("stroke-dashoffset", num(s.Phase)))
	}
	c.svg.Path(data(p), attrs...)
}

// Fill fills a closed path.
func (c *Canvas) Fill(p geometry.Path, color render.Color) {
	c.svg.Path(data(p), attr("fill", color.Hex()), attr("stroke", "none"))
}

// Text sets a line of text; the size is given in millimetres, as all else is.
// A viewer without the typeface fits what it has into the same length, so that
// words stay clear of lines.
func (c *Canvas) Text(t render.Text) {
	attrs := []string{
		attr("font-family", "Go, sans-serif"),
		attr("font-size", num(geometry.Length(t.Size)*geometry.PDFPoint)),
		attr("fill", t.Color.Hex()),
		attr("textLength", num(typeset.Width(t.String, t.Size, t.Bold))),
		attr("lengthAdjust", "spacingAndGlyphs"),
	}
	if t.Bold {
		attrs = append(attrs, attr("font-weight", "bold"))
	}
	if anchor := [...]string{"", "middle", "end"}[t.Align]; anchor != "" {
		attrs = append(attrs, attr("text-anchor", anchor))
	}
	if t.Turned {
		attrs = append(attrs, attr("transform", fmt.Sprintf("rotate(-90 %s %s)", num(t.At.X), num(t.At.Y))))
	}
	c.svg.Text(t.At.X.MM(), t.At.Y.MM(), printable(t.String), attrs...)
}

// data gives a path in SVG path syntax.
func data(p geometry.Path) string {
	if len(p.Vertices) == 0 {
		return ""
	}
	var b strings.Builder
	fmt.Fprintf(&b, "M %s %s", num(p.Vertices[0].X), num(p.Vertices[0].Y))
	segs := p.Segments()
	for i, s := range segs {
		from, to := num(s.From.X)+" "+num(s.From.Y), num(s.To.X)+" "+num(s.To.Y)
		if s.Bulge == 0 || from == to { // an arc smaller than is written is none
			if p.Closed && i == len(segs)-1 {
				break // Z draws the last straight line
			}
			b.WriteString(" L " + to)
			continue
		}
		_, r, _, sweep := s.Arc()
		// Y is downward here as in SVG, where a positive angle is the same way
		// round as a positive bulge.
		fmt.Fprintf(&b, " A %s %s 0 %d %d %s", num(r), num(r),
			bit(math.Abs(sweep) > math.Pi), bit(sweep > 0), to)
	}
	if p.Closed {
		b.WriteString(" Z")
	}
	return b.String()
}

func bit(b bool) int {
	if b {
		return 1
	}
	return 0
}

// num writes millimetres without needless zeros.
func num(l geometry.Length) string { return wording.Decimal(l.MM(), decimals) }

func attr(name, value string) string { return name + `="` + value + `"` }

// printable replaces what XML 1.0 does not allow in a document.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' && r != '\t' || r == 0xFFFE || r == 0xFFFF || r == 0x7F {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "\uFFFD"))
}
