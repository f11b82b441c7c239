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
	"forel/geometry/box"
	"forel/geometry/chemise"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/handout"
	"forel/render/pagetest"
	"forel/render/record"
	"forel/render/typeset"
)

// slack is what boxes may share by the rounding of floats.
const slack length = 1e-6

// onTint finds words on a figure: only those on a drawing of a piece, which has no
// tint, stand on one.
func onTint(p *document.Page) (faults []string) {
	for _, a := range p.Texts {
		box := typeset.Box(a.Text)
		for _, f := range p.Fills {
			if box.Grow(-slack).Overlaps(f.Path.Bounds()) && box.Center().In(f.Path.Flatten(0.05)) {
				faults = append(faults, fmt.Sprintf("%q stands on a tint", a.String))
			}
		}
	}
	return faults
}

// drawnPages are the pages drawn so far: drawing takes a while, and several tests read
// the same.
var drawnPages = map[string][]*document.Page{}

// pagesOf returns the pages of a subject with a name.
func pagesOf(name string, s plan.Plan, o handout.Options, blank bool) []*document.Page {
	key := fmt.Sprint(name, o, blank)
	if _, ok := drawnPages[key]; !ok {
		draw := handout.Document
		if blank {
			draw = handout.Worksheet
		}
		drawnPages[key] = draw(s, o).Pages()
	}
	return drawnPages[key]
}

// wordsOn returns all words on pages, as they were set.
func wordsOn(pages []*document.Page) string {
	var all []string
	for _, p := range pages {
		for _, w := range p.Texts {
			all = append(all, w.String)
		}
	}
	return flat(strings.Join(all, " "))
}

func holdPages(t assert.TestingT, s plan.Plan, o handout.Options, what string) {
	for _, kind := range []struct{ blank, short bool }{{false, false}, {true, false}, {false, true}} {
		o.Short = kind.short
		pages := pagesOf(what, s, o, kind.blank)
		for i, p := range pages {
			assert.Empty(t, append(pagetest.Faults(&p.Surface, o.Setup.Reach(false)), onTint(p)...), "%s, %s, page %d of %d", what, o.Setup.Sheet, i+1, len(pages))
		}
	}
}

// A short handout has four pages at most on A4 and Letter, with every step, every check and
// the cautions on them.
func TestShort(t *testing.T) {
	for _, sheet := range []string{"A4", "Letter"} {
		for name, s := range subjects() {
			if sheet == "Letter" && !strings.HasPrefix(name, "inches") && !plantest.Soak() {
				continue
			}
			o := on(t, sheet)
			o.Short = true
			pages := pagesOf(name, s, o, false)
			assert.LessOrEqual(t, len(pages), 4, "%s, %s", name, sheet)
			for i, p := range pages {
				assert.Empty(t, append(pagetest.Faults(&p.Surface, o.Setup.Reach(false)), onTint(p)...), "%s, %s, page %d of %d", name, sheet, i+1, len(pages))
			}
			words := wordsOn(pages)
			for _, c := range s.Checks() {
				for _, see := range c.See {
					assert.Contains(t, words, see.In(o.Round.Pretty), "%s: %s", name, c.Name)
				}
			}
			for _, line := range strings.Split(handout.Words(s, o), "\n") {
				assert.Contains(t, words, strings.Join(strings.Fields(line), " "), name)
			}
			for _, caution := range wording.Cautions() {
				assert.Contains(t, words, caution, name)
			}
		}
	}
}

func TestPages(t *testing.T) {
	for name, s := range subjects() {
		for _, sheet := range []string{"A4", "Letter"} {
			o := on(t, sheet)
			if strings.HasPrefix(name, "inches") {
				o.Round = geometry.To64th
			} else if sheet == "Letter" {
				continue // who measures in millimetres has no such paper
			}
			holdPages(t, s, o, name)
		}
	}
}

// The same for any case, whatever its titles, on any printer.
func TestPagesOfAnyJob(t *testing.T) {
	for seed := range drawnJobs() {
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
	for name, s := range subjects() {
		var marks []string
		for _, p := range pagesOf(name, s, on(t, "A4"), false) {
			for _, m := range p.Marks {
				marks = append(marks, m.Title)
			}
		}
		assert.Equal(t, []string{"Worksheet", "Before you start", "The pieces", "Steps", "Checks"}, marks, name)
	}
}

// The words of a step and its figures are on one page: a page that has the
// caption of a figure has the head of its step above it.
func TestStepsStayTogether(t *testing.T) {
	for name, s := range subjects() {
		for _, p := range pagesOf(name, s, on(t, "A4"), false) {
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
	for name, s := range subjects() {
		for _, sheet := range []string{"A4", "Letter", "legal", "200 x 260 mm"} {
			for _, blank := range []bool{true, false} {
				if !blank && sheet != "A4" {
					continue // that is drawn for other tests too
				}
				for i, p := range pagesOf(name, s, on(t, sheet), blank) {
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

// So it is of every kind, the largest with every material of its own: all checks of every step
// stand on the four pages, and its text, or where that is too long its short form.
func TestShortOfEveryKind(t *testing.T) {
	for _, sheet := range []string{"A4", "Letter"} {
		if sheet == "Letter" && testing.Short() {
			continue
		}
		for _, k := range kinds.All {
			for _, foreEdge := range []string{chemise.Lapped, chemise.Hooks} {
				j := k.New(geometry.MM)
				j.Shared().Books = []job.Book{{Height: job.Readings{220}, Width: job.Readings{150}, Thickness: job.Readings{30}}}
				settings := j.Settings()
				if _, has := settings.Find("chemise.fore_edge"); !has && foreEdge == chemise.Hooks {
					continue
				}
				for key, l := range map[string]geometry.Length{"box.case_board": 3, "box.case_cloth": 0.4, "box.hinge_cloth": 0.3, "box.lid_lining": 2, "chemise.book_cover": 3} {
					if _, has := settings.Find(key); has {
						settings.Apply([]job.Change{{Key: key, Value: l}})
					}
				}
				for key, word := range map[string]string{"box.filler": box.Filled, "chemise.fore_edge": foreEdge} {
					if _, has := settings.Find(key); has {
						settings.Apply([]job.Change{{Key: key, Word: word}})
					}
				}
				p, err := plantest.Plan(j)
				require.NoError(t, err)
				o := on(t, sheet)
				o.Short = true
				what := k.Name + k.Construction + ", " + foreEdge + ", " + sheet
				pages := pagesOf(what, p, o, false)
				assert.LessOrEqual(t, len(pages), 4, what)
				for i, page := range pages {
					assert.Empty(t, pagetest.Faults(&page.Surface, o.Setup.Reach(false)), "%s, page %d", what, i+1)
				}
				words := wordsOn(pages)
				for _, s := range p.Steps {
					told := true
					for _, say := range s.Text {
						told = told && strings.Contains(words, strings.Join(strings.Fields(say.In(o.Round.Pretty)), " "))
					}
					assert.True(t, told || strings.Contains(words, s.Short.In(o.Round.Pretty)), "%s: %s", what, s.Title)
					for _, c := range s.Checks {
						for _, see := range c.See {
							assert.Contains(t, words, see.In(o.Round.Pretty), "%s: %s", what, c.Name)
						}
					}
				}
			}
		}
	}
}
