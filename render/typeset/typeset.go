// Package typeset parts text over the faces that outputs are set in, and measures it.
package typeset

import (
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"

	"forel/geometry"
	"forel/render"
)

// Line metrics as parts of the type size, for both weights.
const (
	ascent  = 0.79 // above the baseline, capitals and ascenders
	descent = 0.22 // below it
	Leading = 1.3  // from one baseline to the next
)

// Substitute is by how much wider the typeface may be that a viewer of an SVG takes where
// it lacks ours.
const Substitute = 1.2

// Width returns the length of a line of text.
func Width(s string, size render.Points, bold bool) geometry.Length {
	usual := face(bold)
	var em float64
	for _, r := range s {
		g := glyphOf(r)
		if !g.usual && g.fallback {
			em = 0
			words(s, bold, func(word string, f Face) { em += ems(word, f) })
			break
		}
		em += g.advances[usual]
	}
	return geometry.Length(em*float64(size)) * geometry.PDFPoint
}

// RunWidth returns the length of a run.
func RunWidth(r Run, size render.Points) geometry.Length {
	return geometry.Length(ems(r.Text, r.Face)*float64(size)) * geometry.PDFPoint
}

func ems(s string, f Face) (em float64) {
	for _, r := range s {
		em += glyphOf(r).advances[f]
	}
	return em
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

func breaks(r rune) bool { return unicode.IsSpace(r) && r != Held && r != '\u202f' }

// Wrap breaks text into lines no longer than width, between words; a word
// longer than the width stands alone. A number stays with its unit and its fraction.
func Wrap(s string, size render.Points, bold bool, width geometry.Length) []string {
	var lines, line []string
	var long geometry.Length
	space := Width(" ", size, bold)
	for _, word := range sizes(strings.FieldsFunc(s, breaks)) {
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

// sizes returns words with those of one size as one: "1000 mm", "9 1/4 in".
func sizes(words []string) []string {
	out := words[:0]
	for i, w := range words {
		if i > 0 && ofSize(out[len(out)-1], w) {
			out[len(out)-1] += " " + w
		} else {
			out = append(out, w)
		}
	}
	return out
}

// ofSize tells whether a word goes on with the size that the one before it ends with.
func ofSize(before, w string) bool {
	last, _ := utf8.DecodeLastRuneInString(before)
	if !numeric(last) {
		return false
	}
	switch strings.TrimRight(w, ".,;:)") {
	case "mm", "cm", "m", "in", "g", "kg", "%", "min", "h":
		return true
	}
	first, _ := utf8.DecodeRuneInString(w)
	return unicode.IsDigit(first) && strings.Contains(w, "/")
}

// numeric tells of what numbers are written with.
func numeric(r rune) bool { return unicode.IsNumber(r) || r == '.' || r == ',' || r == '/' }

// Break is Wrap that breaks a word longer than the width too, between any two
// letters, so that no line of more than a letter is longer than the width; within a
// number it does not, since its parts would be read as others.
func Break(s string, size render.Points, bold bool, width geometry.Length) []string {
	var lines []string
	for _, l := range Wrap(s, size, bold, width) {
		for Width(l, size, bold) > width {
			end := fitting(l, "", size, bold, width)
			if end == 0 {
				end = ends(l)[0]
			}
			if end == len(l) {
				break
			}
			lines, l = append(lines, strings.TrimRight(l[:end], " ")), strings.TrimLeft(l[end:], " ")
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
	return s[:fitting(s, "…", size, bold, width)] + "…"
}

// fitting returns how many bytes of text have room in a width with what follows.
func fitting(s, then string, size render.Points, bold bool, width geometry.Length) int {
	all := append([]int{0}, ends(s)...)
	fits := func(n int) bool { return Width(s[:all[n]]+then, size, bold) <= width }
	n := sort.Search(len(all), func(n int) bool { return !fits(n) }) - 1
	for n > 0 && !fits(n) { // a word is narrower where a letter more puts it in another face
		n--
	}
	return all[max(n, 0)]
}

// ends returns where a text can be parted: behind each letter with its marks, and behind
// each number.
func ends(s string) (all []int) {
	was := rune(0)
	for i, r := range s {
		if i > 0 && !unicode.Is(unicode.M, r) && !(numeric(was) && numeric(r)) {
			all = append(all, i)
		}
		was = r
	}
	return append(all, len(s))
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
