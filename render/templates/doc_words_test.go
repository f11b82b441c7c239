package templates_test

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
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/paper"
	"forel/render/document"
	"forel/render/pagetest"
	"forel/render/record"
	"forel/render/typeset"
)

func TestDocumentPages(t *testing.T) {
	for _, sheet := range sheets {
		for _, s := range scenarios {
			holdPages(t, s.on(sheet.name), sheet.name+", "+s.name)
		}
	}
}

// A title of any length and script stays where it belongs.
func TestDocumentPagesWithLongTitles(t *testing.T) {
	for _, sheet := range sheets {
		for title, text := range longTitles {
			j := pamphlet.job()
			j.Title = text
			holdPages(t, printedOn(planOf(t, j), on(t, sheet.name)), sheet.name+", "+title)
		}
	}
}

// The same for any case on any printer.
func TestDocumentPagesOfAnyBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, o := anyPlan(t)
		holdPages(t, printedOn(c, o), o.Setup.Sheet.String())
	})
}

func holdPages(t require.TestingT, c printed, what string) {
	for i, p := range c.pages {
		faults := pagetest.Faults(&p.Surface, c.o.Setup.Printable(p.Width > p.Height))
		if slices.ContainsFunc(p.Texts, func(w record.Written) bool { return strings.HasPrefix(w.String, "Key to the pages") }) {
			faults = slices.Concat(pagetest.Apart(&p.Surface), pagetest.Within(&p.Surface, c.o.Setup.Printable(false))) // its numbers stand on what it draws
		}
		assert.Empty(t, faults, "%s: page %d of %d", what, i+1, len(c.pages))
	}
}

// onTile returns the words of a page within the room of one tile.
func onTile(p *document.Page, tile paper.Tile) (said []string) {
	for _, w := range p.Texts {
		if tile.Room.Grow(slack).Contains(typeset.Box(w.Text)) {
			said = append(said, w.String)
		}
	}
	return said
}

// Each edge is named on one of its template's tiles at least, and each tile that
// shows a good stretch of a spine edge that needs a mark has it.
func TestDocumentNamesEdges(t *testing.T) {
	const goodStretch = 40
	for _, sheet := range sheets {
		for _, s := range []scenario{octavo, folio, unlined, nearSquare, thumbHole} {
			c := s.on(sheet.name)
			before := len(c.pages) - len(c.layout.Pages)
			for _, tiling := range c.layout.Tilings {
				p := tiling.Piece
				named := map[string]bool{}
				for _, tile := range tiling.Tiles {
					said := onTile(c.pages[before+tile.Page], tile)
					for _, w := range said {
						for _, e := range p.Edges {
							if w == e.Name || strings.HasPrefix(w, e.Name+": ") {
								named[e.Name] = true
							}
						}
					}
					if len(p.Confused) == 0 || p.Spine < 0 {
						continue
					}
					e := p.Edges[p.Spine]
					shown := geometry.Box{
						Min: geometry.Pt(min(e.From.X, e.To.X), min(e.From.Y, e.To.Y)),
						Max: geometry.Pt(max(e.From.X, e.To.X), max(e.From.Y, e.To.Y)),
					}.Intersect(tile.Core)
					if shown.Width() >= 0 && shown.Height() >= 0 && shown.Width()+shown.Height() > goodStretch {
						assert.Contains(t, said, "SPINE", "%s, %s, %s: no spine mark on page %d", sheet.name, s.name, p.Name, before+tile.Page+1)
					}
				}
				for _, e := range p.Edges {
					assert.True(t, e.Name == "" || named[e.Name], "%s, %s, %s: no %q", sheet.name, s.name, p.Name, e.Name)
				}
			}
		}
	}
}

// Whoever cuts a page apart knows what is in hand: each tile says within its own
// room which piece it is of, and which row and column where there are several.
func TestDocumentNamesEveryTile(t *testing.T) {
	for _, sheet := range sheets {
		for _, s := range scenarios {
			c := s.on(sheet.name)
			before := len(c.pages) - len(c.layout.Pages)
			for _, tiling := range c.layout.Tilings {
				for _, tile := range tiling.Tiles {
					words := strings.Join(onTile(c.pages[before+tile.Page], tile), " ")
					assert.Contains(t, words, tiling.Piece.Name, "%s, %s, page %d", sheet.name, s.name, before+tile.Page+1)
					if !tiling.Whole() {
						assert.Contains(t, words, fmt.Sprintf("row %d of %d, column %d of %d", tile.Row, tiling.Rows, tile.Col, tiling.Cols), "%s, %s, %s", sheet.name, s.name, tiling.Piece.Name)
					}
				}
			}
		}
	}
}

// What is told to be missing from a whole piece of an ordinary book is nothing.
func TestDocumentMissesNoLabelOfAnOrdinaryBook(t *testing.T) {
	for _, sheet := range sheets {
		for _, s := range []scenario{octavo, unlined, nearSquare} {
			assert.Empty(t, s.on(sheet.name).missed, "%s, %s", sheet.name, s.name)
		}
	}
}

// A joined strip is mostly parts too thin for words: each is named beside it or near it,
// with a line, on every sheet that shows it.
func TestDocumentMissesNoPartOfATray(t *testing.T) {
	for _, book := range [][3]geometry.Length{{220, 150, 30}, {180, 120, 25}} {
		j := box.DefaultJob(geometry.MM)
		j.Books = []job.Book{{Height: job.Readings{book[0]}, Width: job.Readings{book[1]}, Thickness: job.Readings{book[2]}}}
		p, err := plantest.Plan(&j)
		require.NoError(t, err)
		for _, sheet := range []string{"A4", "Letter"} {
			assert.Empty(t, printedOn(p, on(t, sheet)).missed, "%s, %.0f", sheet, book)
		}
	}
}
