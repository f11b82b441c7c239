package templates_test

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/render"
	"forel/render/pagetest"
	"forel/render/record"
	"forel/render/templates"
	"forel/render/typeset"
)

// recorded is a booklet as it was drawn, page by page.
type recorded struct {
	*record.Surface // the last page
	pages           []recordedPage
	bookmarks       []string
	missed          []string
}

type recordedPage struct {
	*record.Surface
	width, height geometry.Length
}

func (r *recorded) AddPage(width, height geometry.Length) {
	r.Surface = &record.Surface{}
	r.pages = append(r.pages, recordedPage{r.Surface, width, height})
}

func (r *recorded) Page() render.Surface { return r.Surface }

func (r *recorded) Bookmark(title string) { r.bookmarks = append(r.bookmarks, title) }

func (r *recorded) Under(string, string) {}

func (r *recorded) Label(render.Numerals, int) {}

func recordBooklet(p plan.Plan, o templates.Options) *recorded {
	r := &recorded{}
	r.missed = templates.DrawOn(r, p, layoutOf(p, o), o)
	return r
}

// what a page's texts are held to.
type pageRule func(p recordedPage, o templates.Options) error

// slack is what boxes may share by the rounding of floats.
const slack geometry.Length = 1e-6

func apart(p recordedPage, _ templates.Options) error {
	for i, a := range p.Texts {
		for _, b := range p.Texts[:i] {
			if typeset.Box(a.Text).Grow(-slack).Overlaps(typeset.Box(b.Text).Grow(-slack)) {
				return fmt.Errorf("%.60q at %.1f lies on %.60q at %.1f", a.String, a.At, b.String, b.At)
			}
		}
	}
	return nil
}

func printable(p recordedPage, o templates.Options) error {
	area := o.Setup.Printable(p.width > p.height).Grow(slack)
	for _, a := range p.Texts {
		if !area.Contains(typeset.Box(a.Text)) {
			return fmt.Errorf("%.60q at %.1f leaves the printable %.1f", a.String, typeset.Box(a.Text), area)
		}
	}
	for _, lines := range [][]record.Stroked{p.Strokes, p.Fills} {
		for _, s := range lines {
			if !area.Contains(s.Path.Bounds()) {
				return fmt.Errorf("a line in %s at %.1f leaves the printable %.1f", s.Layer, s.Path.Bounds(), area)
			}
		}
	}
	return nil
}

// offLines finds a text that a line runs through, be it of a piece, a mark, a
// join, a ruler or a table. The key has its numbers on what it draws.
func offLines(p recordedPage, _ templates.Options) error {
	if slices.ContainsFunc(p.Texts, func(w record.Written) bool { return strings.HasPrefix(w.String, "Key to the pages") }) {
		return nil
	}
	for _, s := range p.Strokes {
		points := s.Path.Flatten(0.05)
		if s.Path.Closed {
			points = append(points, points[0])
		}
		for _, a := range p.Texts {
			box := typeset.Box(a.Text).Grow(-slack)
			for i := 1; i < len(points); i++ {
				if pagetest.Enters(points[i-1], points[i], box) {
					return fmt.Errorf("a line in %s from %.1f to %.1f runs through %.60q at %.1f", s.Layer, points[i-1], points[i], a.String, box)
				}
			}
		}
	}
	return nil
}

// ofPiece tells whether a page has a piece on it.
func (p recordedPage) ofPiece() bool {
	return slices.ContainsFunc(p.Texts, func(w record.Written) bool { return pageText.MatchString(w.String) })
}

// sizes finds a text whose size is not one of the type scale's.
func sizes(p recordedPage, _ templates.Options) error {
	for _, a := range p.Texts {
		if !slices.Contains([]render.Points{20, 12, 9, 7.5, 6.5}, a.Size) {
			return fmt.Errorf("%q has a size of %v pt", a.String, a.Size)
		}
	}
	return nil
}

var longTitles = map[string]string{
	"no title":              "",
	"short title":           "Invented harbour log",
	"200 letters":           strings.Repeat("Invented ", 22) + "ab",
	"200 letters, one word": strings.Repeat("W", 200),
	"200 Chinese letters":   strings.Repeat("港口日誌", 50),
}
