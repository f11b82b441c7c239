package handout_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/render"
	"forel/render/handout"
	"forel/render/pagetest"
	"forel/render/record"
	"forel/render/typeset"
)

// recorded is a handout as it was drawn, page by page.
type recorded struct {
	*record.Surface // the last page
	pages           []recordedPage
	bookmarks       []string
}

type recordedPage struct {
	*record.Surface
	width, height length
}

func (r *recorded) AddPage(width, height length) {
	r.Surface = &record.Surface{}
	r.pages = append(r.pages, recordedPage{r.Surface, width, height})
}

func (r *recorded) Bookmark(title string) { r.bookmarks = append(r.bookmarks, title) }

func drawn(s plan.Plan, o handout.Options, blank bool) *recorded {
	r := &recorded{}
	handout.DrawOn(r, s, o, blank)
	return r
}

// slack is what boxes may share by the rounding of floats.
const slack length = 1e-6

// holdPage: words stand clear of each other, of every line and within the
// margins, in sizes of the type scale; lines stay within the margins.
func holdPage(t assert.TestingT, p recordedPage, o handout.Options, what string) {
	area := o.Setup.Reach(false).Grow(slack)
	for i, a := range p.Texts {
		box := typeset.Box(a.Text).Grow(-slack)
		assert.True(t, area.Contains(box), "%s: %q at %.1f leaves the margins", what, a.String, box)
		assert.True(t, slices.Contains([]render.Points{20, 12, 9, 7.5, 6.5}, a.Size), "%s: %q has a size of %v", what, a.String, a.Size)
		for _, b := range p.Texts[:i] {
			assert.False(t, box.Overlaps(typeset.Box(b.Text).Grow(-slack)), "%s: %q lies on %q", what, a.String, b.String)
		}
	}
	for _, s := range p.Strokes {
		assert.True(t, area.Contains(s.Path.Bounds()), "%s: a line at %.1f leaves the margins", what, s.Path.Bounds())
		points := s.Path.Flatten(0.05)
		if s.Path.Closed {
			points = append(points, points[0])
		}
		for _, a := range p.Texts {
			box := typeset.Box(a.Text).Grow(-slack)
			if !box.Overlaps(s.Path.Bounds().Grow(0.01)) {
				continue
			}
			for i := 1; i < len(points); i++ {
				assert.False(t, pagetest.Enters(points[i-1], points[i], box), "%s: a line from %.1f to %.1f runs through %q at %.1f", what, points[i-1], points[i], a.String, box)
			}
		}
	}
	for _, f := range p.Fills {
		b := f.Path.Bounds()
		assert.True(t, area.Contains(b), "%s: a tint at %.1f leaves the margins", what, b)
		for _, a := range p.Texts {
			// No word stands on a figure; those of a drawing of a piece have no tint.
			assert.False(t, typeset.Box(a.Text).Grow(-slack).Overlaps(b) && typeset.Box(a.Text).Center().In(f.Path.Flatten(0.05)), "%s: %q stands on a tint", what, a.String)
		}
	}
}

func holdPages(t assert.TestingT, s plan.Plan, o handout.Options, what string) {
	for _, blank := range []bool{false, true} {
		r := drawn(s, o, blank)
		for i, p := range r.pages {
			holdPage(t, p, o, fmt.Sprintf("%s, %s, page %d of %d", what, o.Setup.Sheet, i+1, len(r.pages)))
		}
	}
}

func TestPages(t *testing.T) {
	for _, sheet := range []string{"A4", "Letter"} {
		for name, s := range subjects(t) {
			o := on(t, sheet)
			if strings.HasPrefix(name, "inches") {
				o.Round = geometry.To64th
			}
			holdPages(t, s, o, name)
		}
	}
}

// The same for any case, whatever its titles, on any printer.
func TestPagesOfAnyJob(t *testing.T) {
	for seed := range drawnJobs {
		s, o := rapid.Custom(anySubject).Example(seed), rapid.Custom(anyPrinter).Example(seed)
		holdPages(t, s, o, fmt.Sprintf("case %d", seed))
	}
}

// A title of any length and script stays where it belongs.
func TestPagesWithLongTitles(t *testing.T) {
	for _, title := range []string{"", strings.Repeat("Invented ", 22) + "ab", strings.Repeat("W", 200), strings.Repeat("港口日誌", 50)} {
		j := jobOf(210, 148, 3)
		j.Title = title
		holdPages(t, subjectOf(t, j), on(t, "A4"), fmt.Sprintf("title of %d letters", len([]rune(title))))
	}
}

// Each section has its bookmark, once.
func TestBookmarks(t *testing.T) {
	for name, s := range subjects(t) {
		assert.Equal(t, []string{"Worksheet", "Before you start", "The pieces", "Steps", "Checks"}, drawn(s, on(t, "A4"), false).bookmarks, name)
	}
}

// The words of a step and its figures are on one page: a page that has the
// caption of a figure has the head of its step above it.
func TestStepsStayTogether(t *testing.T) {
	for name, s := range subjects(t) {
		for _, p := range drawn(s, on(t, "Letter"), false).pages {
			heads := 0
			for _, w := range p.Texts {
				if w.Size == render.HeadSize && w.Bold {
					heads++
				}
				if strings.HasPrefix(w.String, "a: ") || strings.HasPrefix(w.String, "b: ") {
					require.Positive(t, heads, "%s: %q has no step above it", name, w.String)
				}
			}
		}
	}
}

// A page of the worksheet is no leaf with the last line or two of it: it holds
// several rows of the list of pieces, or measures.
func TestWorksheetLeavesNoScrap(t *testing.T) {
	for name, s := range subjects(t) {
		for _, sheet := range []string{"A4", "letter", "legal", "200 x 260 mm"} {
			for _, blank := range []bool{true, false} {
				for i, p := range drawn(s, on(t, sheet), blank).pages {
					if slices.ContainsFunc(p.Texts, func(w record.Written) bool { return w.String == "Tools" }) {
						break // the worksheet is over
					}
					rows := map[length]bool{}
					for _, w := range p.Texts {
						if w.Bold && w.Size == render.BodySize {
							rows[w.At.Y] = true
						}
					}
					assert.True(t, i == 0 || len(rows) >= 4, "%s on %s, blank %v, page %d has %d rows", name, sheet, blank, i+1, len(rows))
				}
			}
		}
	}
}
