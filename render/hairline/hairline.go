// Package hairline draws for a machine that follows lines: all of one fine width, none
// dashed, nothing filled, and words as single strokes, so that a pen or a tool writes them
// and no typeface is needed.
package hairline

import (
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"forel/geometry"
	"forel/render"
	"forel/render/typeset"
)

// Usual is the width of lines where nothing else is asked for: machines that tell cuts
// by their width take lines as fine as this for cuts (common practice, no source).
const Usual geometry.Length = 0.02

// Surface draws on another surface as a machine needs it; it is a render.Surface.
type Surface struct {
	render.Surface
	Width geometry.Length // of all lines
}

// Stroke draws along a path.
func (s Surface) Stroke(p geometry.Path, like render.Stroke) {
	s.Surface.Stroke(p, render.Stroke{Width: s.Width, Color: like.Color})
}

// Fill draws the outline of what is filled; of white, which only clears a ground, nothing.
func (s Surface) Fill(p geometry.Path, c render.Color) {
	if c != render.White {
		s.Stroke(p, render.Stroke{Color: c})
	}
}

// Text draws a line of text.
func (s Surface) Text(t render.Text) {
	for _, p := range Strokes(t) {
		s.Stroke(p, render.Stroke{Color: t.Color})
	}
}

// Strokes returns a line of text as single strokes, no longer than the typeface sets it.
// Bold is as regular. A box stands for a letter that the alphabet lacks.
func Strokes(t render.Text) []geometry.Path {
	const tall = 0.66 // a capital, in parts of the type size
	paths, wide := written(t.String)
	size := geometry.Length(t.Size) * geometry.PDFPoint * tall / capital
	if most := typeset.Width(t.String, t.Size, t.Bold); wide*size > most {
		size = most / wide
	}
	start := geometry.Pt(-wide*size*geometry.Length(t.Align)/2, 0)
	for i, p := range paths {
		p = p.Scale(size.MM()).Move(start).FlipY(0)
		if t.Turned { // a quarter turn, to read upward
			for k, v := range p.Vertices {
				p.Vertices[k].Point = geometry.Pt(v.Y, -v.X)
			}
		}
		paths[i] = p.Move(t.At)
	}
	return paths
}

// Lacks returns the letters of a text for which a box is drawn, each once.
func Lacks(text string) (out []rune) {
	all := letters()
	for _, r := range norm.NFC.String(text) {
		for _, part := range said.Replace(norm.NFKD.String(string(r))) {
			if _, ok := all[part]; !ok && !unicode.IsSpace(part) && !slices.Contains(out, r) {
				out = append(out, r)
			}
		}
	}
	return out
}

// fraction keeps a fraction apart from the number before it.
var fraction = strings.NewReplacer("½", " ½", "¼", " ¼", "¾", " ¾", "⅛", " ⅛", "⅜", " ⅜", "⅝", " ⅝", "⅞", " ⅞")

// written returns the strokes of a text in units of the alphabet, and how long it is.
func written(text string) (paths []geometry.Path, wide geometry.Length) {
	all := letters()
	var at, middle, up geometry.Length // of the letter written last: where it stands, its middle, how much its accents are raised
	for _, r := range said.Replace(norm.NFKD.String(fraction.Replace(text))) {
		draw := func(l letter, off geometry.Point) {
			for _, p := range l.paths {
				paths = append(paths, p.Move(off))
			}
		}
		if unicode.Is(unicode.Mn, r) {
			off := geometry.Pt(middle-4, up) // accents are drawn about 4
			if _, below := hung[r]; below {
				off.Y = 0
			}
			draw(all[r], off)
			if _, above := marks[r]; above && r != horn {
				up += 4 // the next stands on it
			}
			continue
		}
		l, ok := all[r]
		if !ok {
			if unicode.IsSpace(r) {
				l = all[' ']
			} else {
				l = all[missing]
			}
		}
		if wide > 0 {
			wide += apart
		}
		at = wide
		draw(l, geometry.Pt(at, 0))
		wide += l.wide
		middle, up = at+l.wide/2, 0
		if unicode.IsUpper(r) {
			up = capital - 8 // small letters are 8 tall
		}
	}
	return paths, wide
}
