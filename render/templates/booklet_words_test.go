package templates_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/render/templates"
)

// The rules that every page of every booklet is held to.
var pageRules = map[string]pageRule{
	"words stand clear of each other": apart,
	"all is within the margins":       printable,
	"words stand clear of lines":      offLines,
	"sizes are of the type scale":     sizes,
}

func TestBookletPages(t *testing.T) {
	for _, sheet := range sheets {
		for _, s := range scenarios {
			holdPages(t, pageRules, s.job(), on(t, sheet.name), sheet.name+", "+s.name)
		}
	}
}

// A title of any length and script stays where it belongs.
func TestBookletPagesWithLongTitles(t *testing.T) {
	for _, sheet := range sheets {
		for title, text := range longTitles {
			j := pamphlet.job()
			j.Title = text
			holdPages(t, pageRules, j, on(t, sheet.name), sheet.name+", "+title)
		}
	}
}

// The same for any book, in millimetres and in inches.
func TestBookletPagesOfAnyBook(t *testing.T) {
	for name, rule := range pageRules {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			j := anyJob(t)
			j.Unit = rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit")
			sheet := sheets[rapid.IntRange(0, len(sheets)-1).Draw(t, "sheet")]
			o := on(t, sheet.name)
			o.Setup = anyPrinter(t, o.Setup)
			if j.Unit == geometry.IN {
				o.Round = geometry.To64th
			}
			holdPages(t, map[string]pageRule{name: rule}, j, o, sheet.name)
		}))
	}
}

func holdPages(t require.TestingT, rules map[string]pageRule, j slipcase.Job, o templates.Options, what string) {
	r := recordBooklet(planOf(t, j), o)
	for name, rule := range rules {
		for i, p := range r.pages {
			assert.NoError(t, rule(p, o), "%s: page %d of %d: %s", what, i+1, len(r.pages), name)
		}
	}
}

// Each edge is named on one of its piece's sheets at least, and each sheet that
// shows a good stretch of a spine edge that needs a mark has it.
func TestBookletNamesEdges(t *testing.T) {
	const goodStretch = 40
	for _, sheet := range sheets {
		for _, s := range []scenario{octavo, folio, unlined, nearSquare} {
			c, o := s.make(t), on(t, sheet.name)
			pages := recordBooklet(c, o).pages
			n := slices.IndexFunc(pages, recordedPage.ofPiece)
			for _, p := range c.Pieces {
				tiling := o.Setup.Tile(p.Outline.Bounds())
				named := map[string]bool{}
				for _, tile := range tiling.Tiles {
					said := map[string]bool{}
					for _, w := range pages[n].Texts {
						said[w.String] = true
						for _, e := range p.Edges {
							if w.String == e.Name || strings.HasPrefix(w.String, e.Name+": ") {
								named[e.Name] = true
							}
						}
					}
					n++
					if len(p.Confused) == 0 || p.Spine < 0 {
						continue
					}
					e := p.Edges[p.Spine]
					shown := geometry.Box{
						Min: geometry.Pt(min(e.From.X, e.To.X), min(e.From.Y, e.To.Y)),
						Max: geometry.Pt(max(e.From.X, e.To.X), max(e.From.Y, e.To.Y)),
					}.Intersect(tile.Core)
					if shown.Width() >= 0 && shown.Height() >= 0 && shown.Width()+shown.Height() > goodStretch {
						assert.True(t, said["SPINE"], "%s, %s, %s: no spine mark on page %d", sheet.name, s.name, p.Name, n)
					}
				}
				for _, e := range p.Edges {
					assert.True(t, e.Name == "" || named[e.Name], "%s, %s, %s: no %q", sheet.name, s.name, p.Name, e.Name)
				}
			}
			assert.Len(t, pages, n)
		}
	}
}

// What is told to be missing from a whole piece of an ordinary book is nothing.
func TestBookletMissesNoLabelOfAnOrdinaryBook(t *testing.T) {
	for _, sheet := range sheets {
		for _, s := range []scenario{octavo, unlined, nearSquare} {
			assert.Empty(t, recordBooklet(s.make(t), on(t, sheet.name)).missed, "%s, %s", sheet.name, s.name)
		}
	}
}
