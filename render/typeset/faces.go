package typeset

import (
	"strings"
	"sync"
	"unicode"

	"github.com/go-fonts/dejavu/dejavusans"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Face is a font that text is set in.
type Face int

// The faces: the Go fonts by Bigelow & Holmes and, for words with a letter that
// these lack, DejaVu Sans, in one weight.
const (
	Regular Face = iota
	Bold
	Fallback
	faces
)

// Data returns the font as TrueType.
func (f Face) Data() []byte {
	return [faces][]byte{goregular.TTF, gobold.TTF, dejavusans.TTF}[f]
}

// face returns the usual face of a weight.
func face(bold bool) Face {
	if bold {
		return Bold
	}
	return Regular
}

// Missing is what stands for a character that no face has.
const Missing = '□'

// glyph is what is known of a character: whether both weights of the usual face
// have it, whether the fallback has it, and its width in each face, in ems. Where a
// face lacks it, that is the width of Missing.
type glyph struct {
	usual, fallback bool
	advances        [faces]float64
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

var fonts = sync.OnceValue(func() (parsed [faces]*sfnt.Font) {
	for i := range parsed {
		f, err := sfnt.Parse(Face(i).Data())
		if err != nil {
			panic("typeset: built-in font: " + err.Error()) // the data is compiled in
		}
		parsed[i] = f
	}
	return parsed
})

// lastInPDF is the last character of a font that the PDF library finds.
const lastInPDF = 0xFFFF

// look finds a character in the fonts.
func look(r rune) (g glyph) {
	var buf sfnt.Buffer
	var has [faces]bool
	for i, f := range fonts() {
		index, err := f.GlyphIndex(&buf, r)
		has[i] = err == nil && index != 0 && r <= lastInPDF
		if !has[i] {
			index, _ = f.GlyphIndex(&buf, Missing)
		}
		units := fixed.I(int(f.UnitsPerEm()))
		a, err := f.GlyphAdvance(&buf, index, units, 0)
		if err != nil {
			a = units / 2
		}
		g.advances[i] = float64(a) / float64(units)
	}
	g.usual, g.fallback = has[Regular] && has[Bold], has[Fallback]
	return g
}

// Has tells whether there is a glyph for r.
func Has(r rune) bool {
	g := glyphOf(r)
	return g.usual || g.fallback
}

// Run is a part of a line that is set in one face.
type Run struct {
	Text string
	Face Face
}

// Runs parts a line as it is seen, from left to right, over the faces. A word with a
// letter that the usual face lacks is in the fallback as a whole. Missing stands for
// each letter that no face has.
func Runs(s string, bold bool) (runs []Run) {
	words(ordered(s), bold, func(word string, f Face) {
		word = strings.Map(func(r rune) rune {
			if Has(r) {
				return r
			}
			return Missing
		}, word)
		if n := len(runs); n > 0 && runs[n-1].Face == f {
			runs[n-1].Text += word
		} else {
			runs = append(runs, Run{word, f})
		}
	})
	return runs
}

// Families names the typefaces of a text, in order, for a viewer that picks them
// itself.
func Families(s string) string {
	if strings.IndexFunc(s, func(r rune) bool { return !glyphOf(r).usual }) < 0 {
		return "Go, sans-serif"
	}
	return "Go, DejaVu Sans, sans-serif"
}

// words parts a line into words and the spaces between them, each with its face.
func words(s string, bold bool, each func(word string, f Face)) {
	start, space := 0, false
	end := func(at int) {
		if start < at {
			each(s[start:at], faceOf(s[start:at], bold))
		}
		start = at
	}
	for i, r := range s {
		if was := space; unicode.IsSpace(r) || was {
			end(i)
		}
		space = unicode.IsSpace(r)
	}
	end(len(s))
}

// faceOf returns the face of a word.
func faceOf(word string, bold bool) Face {
	for _, r := range word {
		if g := glyphOf(r); !g.usual && g.fallback {
			return Fallback
		}
	}
	return face(bold)
}
