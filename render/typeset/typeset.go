// Package typeset measures text in the typeface that outputs are set in.
package typeset

import (
	"strings"
	"sync"

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

// face is a parsed font with the advances it has been asked for.
type face struct {
	mu       sync.Mutex
	font     *sfnt.Font
	buf      sfnt.Buffer
	advances map[rune]float64 // in ems
}

var faces = [2]func() *face{
	sync.OnceValue(func() *face { return parse(Regular) }),
	sync.OnceValue(func() *face { return parse(Bold) }),
}

func parse(ttf []byte) *face {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic("typeset: built-in font: " + err.Error()) // the data is compiled in
	}
	return &face{font: f, advances: map[rune]float64{}}
}

// advance gives a glyph's width in ems; a character the font lacks counts as
// its box glyph.
func (f *face) advance(r rune) float64 {
	f.mu.Lock()
	defer f.mu.Unlock()
	if a, ok := f.advances[r]; ok {
		return a
	}
	units := fixed.I(int(f.font.UnitsPerEm()))
	glyph, _ := f.font.GlyphIndex(&f.buf, r)
	a, err := f.font.GlyphAdvance(&f.buf, glyph, units, 0)
	if err != nil {
		a = units / 2
	}
	f.advances[r] = float64(a) / float64(units)
	return f.advances[r]
}

// Has tells whether both weights of the typeface have a glyph for r.
func Has(r rune) bool {
	for _, get := range faces {
		f := get()
		f.mu.Lock()
		glyph, err := f.font.GlyphIndex(&f.buf, r)
		f.mu.Unlock()
		if err != nil || glyph == 0 {
			return false
		}
	}
	return true
}

// Missing is what stands for a character the typeface lacks.
const Missing = '□'

// Settable gives text with every character that the typeface lacks replaced by
// a box, so that it is seen to be missing.
func Settable(s string) string {
	return strings.Map(func(r rune) rune {
		if Has(r) {
			return r
		}
		return Missing
	}, s)
}

// Width gives the length of a line of text.
func Width(s string, size render.Points, bold bool) geometry.Length {
	f := faces[0]()
	if bold {
		f = faces[1]()
	}
	var em float64
	for _, r := range Settable(s) {
		em += f.advance(r)
	}
	return geometry.Length(em*float64(size)) * geometry.PDFPoint
}

// Ascent gives how far text reaches above its baseline.
func Ascent(size render.Points) geometry.Length {
	return geometry.Length(ascent*float64(size)) * geometry.PDFPoint
}

// Descent gives how far text reaches below its baseline.
func Descent(size render.Points) geometry.Length {
	return geometry.Length(descent*float64(size)) * geometry.PDFPoint
}

// LineHeight gives the distance from one baseline to the next.
func LineHeight(size render.Points) geometry.Length {
	return geometry.Length(Leading*float64(size)) * geometry.PDFPoint
}

// Wrap breaks text into lines no longer than width, between words; a word
// longer than the width stands alone.
func Wrap(s string, size render.Points, bold bool, width geometry.Length) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		longer := line + " " + word
		if line == "" {
			longer = word
		}
		if line != "" && Width(longer, size, bold) > width {
			lines = append(lines, line)
			longer = word
		}
		line = longer
	}
	if line != "" {
		lines = append(lines, line)
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

// Box gives the place a text takes on its surface (Y downward).
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
