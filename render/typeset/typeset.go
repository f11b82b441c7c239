// Package typeset measures text in the typeface that outputs are set in.
package typeset

import (
	"strings"
	"sync"
	"unicode"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"forel/geometry"
	"forel/render"
)

// The typeface, as TrueType data: the Go fonts by Bigelow & Holmes.
var (
	Regular = goregular.TTF
	Bold    = gobold.TTF
)

// Line metrics as parts of the type size, for both weights.
const (
	ascent  = 0.79 // above the baseline, capitals and ascenders
	descent = 0.22 // below it
	Leading = 1.3  // from one baseline to the next
)

// glyph is what is known of a character: whether both weights have it, and its
// width in each, in ems. One that is lacking has the widths of Missing.
type glyph struct {
	has      bool
	advances [2]float64 // regular, bold
}

// known are the characters that texts are mostly made of, worked out once.
var known = sync.OnceValue(func() *[0x250]glyph {
	var all [0x250]glyph
	for r := range all {
		all[r] = look(rune(r))
	}
	return &all
})

// others are the rest that were asked for.
var others sync.Map // of rune: glyph

func glyphOf(r rune) glyph {
	if all := known(); r >= 0 && int(r) < len(all) {
		return all[r]
	}
	if g, ok := others.Load(r); ok {
		return g.(glyph)
	}
	g := look(r)
	others.Store(r, g)
	return g
}

var fonts = sync.OnceValue(func() (parsed [2]*sfnt.Font) {
	for i, ttf := range [][]byte{Regular, Bold} {
		f, err := sfnt.Parse(ttf)
		if err != nil {
			panic("typeset: built-in font: " + err.Error()) // the data is compiled in
		}
		parsed[i] = f
	}
	return parsed
})

// look finds a character in the fonts.
func look(r rune) glyph {
	g := glyph{has: true}
	var buf sfnt.Buffer
	for i, f := range fonts() {
		units := fixed.I(int(f.UnitsPerEm()))
		index, err := f.GlyphIndex(&buf, r)
		if err != nil || index == 0 {
			g.has = false
		}
		a, err := f.GlyphAdvance(&buf, index, units, 0)
		if err != nil {
			a = units / 2
		}
		g.advances[i] = float64(a) / float64(units)
	}
	if !g.has && r != Missing {
		g.advances = look(Missing).advances
	}
	return g
}

// Has tells whether both weights of the typeface have a glyph for r.
func Has(r rune) bool { return glyphOf(r).has }

// Missing is what stands for a character the typeface lacks.
const Missing = '□'

func weight(bold bool) int {
	if bold {
		return 1
	}
	return 0
}

// Settable returns text with every character that the typeface lacks replaced by
// a box, so that it is seen to be missing.
func Settable(s string) string {
	return strings.Map(func(r rune) rune {
		if Has(r) {
			return r
		}
		return Missing
	}, s)
}

// Width returns the length of a line of text.
func Width(s string, size render.Points, bold bool) geometry.Length {
	i := weight(bold)
	var em float64
	for _, r := range s {
		em += glyphOf(r).advances[i]
	}
	return geometry.Length(em*float64(size)) * geometry.PDFPoint
}

// Ascent returns how far text reaches above its baseline.
func Ascent(size render.Points) geometry.Length {
	return geometry.Length(ascent*float64(size)) * geometry.PDFPoint
}

// Descent returns how far text reaches below its baseline.
func Descent(size render.Points) geometry.Length {
	return geometry.Length(descent*float64(size)) * geometry.PDFPoint
}

// LineHeight returns the distance from one baseline to the next.
func LineHeight(size render.Points) geometry.Length {
	return geometry.Length(Leading*float64(size)) * geometry.PDFPoint
}

// Held is a space at which no line is broken.
const Held = '\u00a0'

func breaks(r rune) bool { return unicode.IsSpace(r) && r != Held }

// Wrap breaks text into lines no longer than width, between words; a word
// longer than the width stands alone.
func Wrap(s string, size render.Points, bold bool, width geometry.Length) []string {
	var lines, line []string
	var long geometry.Length
	space := Width(" ", size, bold)
	for _, word := range strings.FieldsFunc(s, breaks) {
		w := Width(word, size, bold)
		if len(line) > 0 && long+space+w > width {
			lines = append(lines, strings.Join(line, " "))
			line, long = line[:0], 0
		}
		if len(line) > 0 {
			long += space
		}
		line, long = append(line, word), long+w
	}
	if len(line) > 0 {
		lines = append(lines, strings.Join(line, " "))
	}
	return lines
}

// Break is Wrap that breaks a word longer than the width too, between any two
// letters, so that no line of more than a letter is longer than the width.
func Break(s string, size render.Points, bold bool, width geometry.Length) []string {
	var lines []string
	for _, l := range Wrap(s, size, bold, width) {
		for Width(l, size, bold) > width {
			var long geometry.Length
			end := 0
			for i, r := range l {
				if long += Width(string(r), size, bold); long > width && i > 0 {
					end = i
					break
				}
			}
			if end == 0 {
				break
			}
			lines, l = append(lines, l[:end]), l[end:]
		}
		lines = append(lines, l)
	}
	return lines
}

// Fit shortens text to the width with an ellipsis.
func Fit(s string, size render.Points, bold bool, width geometry.Length) string {
	if Width(s, size, bold) <= width {
		return s
	}
	runes := []rune(s)
	for len(runes) > 0 && Width(string(runes)+"…", size, bold) > width {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
}

// Box returns the place a text takes on its surface (Y downward).
func Box(t render.Text) geometry.Box {
	w := Width(t.String, t.Size, t.Bold)
	var back geometry.Length
	switch t.Align {
	case render.Middle:
		back = w / 2
	case render.End:
		back = w
	}
	up, down := Ascent(t.Size), Descent(t.Size)
	if t.Turned { // reads upward: the line runs toward smaller Y
		return geometry.Bx(t.At.X-up, t.At.Y+back-w, t.At.X+down, t.At.Y+back)
	}
	return geometry.Bx(t.At.X-back, t.At.Y-up, t.At.X-back+w, t.At.Y+down)
}
