package templates_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/plan/plantest"
	"forel/paper"
	"forel/render/document"
	"forel/render/pagetest"
	"forel/render/pdf/pdftest"
	"forel/render/templates"
)

// wideSheets are those on which overview and key take a corner: of a plotter, a roll,
// the least there is.
var wideSheets = []string{"A0", "A1", "B2", "610 x 2000 mm", "914 x 1500 mm", "451 x 640 mm"}

// On a wide sheet the overview and the key take no sheet of their own: the first page
// of the file has both, beside templates, and no line of these comes into their corner.
func TestWideSheetsHaveTheWordsInACorner(t *testing.T) {
	for i, sheet := range wideSheets {
		for k, s := range []scenario{octavo, folio, thumbHole} {
			if (k != i%3 || testing.Short() && i%2 > 0) && !plantest.Soak() {
				continue // one for each
			}
			t.Run(sheet+" "+s.name, func(t *testing.T) {
				c, o := s.make(), on(t, sheet)
				l := templates.Lay(c, c.Drawn(), o, paper.Options{})
				doc, missed := templates.Draw(c, l, o)
				assert.Empty(t, missed)
				file, err := doc.PDF()
				require.NoError(t, err)
				d := pdftest.Open(t, file)
				assert.Equal(t, len(l.Pages), d.Pages)
				words := d.Text(1)
				assert.Contains(t, words, "Key to the pages")
				assert.Contains(t, words, "Join and cut")
				assert.Contains(t, words, "Knives cut people")
				corner := l.Pages[0].Corner
				for _, part := range l.Pages[0].Parts {
					assert.False(t, l.Tilings[part.Tiling].Tiles[part.Tile].Room.Overlaps(corner.Grow(-0.01)))
				}
				pages := doc.Pages()
				for n, p := range pages {
					area := o.Setup.Printable(p.Width > p.Height)
					assert.Empty(t, pagetest.Within(&p.Surface, area), "page %d", n+1)
					assert.Empty(t, pagetest.Apart(&p.Surface), "page %d", n+1)
				}
				// All words of the first page but those of its templates and its foot stand in the corner.
				told := false
				for _, w := range pages[0].Texts {
					if w.String == "Print" {
						told = corner.Contains(geometry.Box{Min: w.At, Max: w.At})
					}
				}
				assert.True(t, told)
			})
		}
	}
}

// On a wide sheet pieces stand close together: from each another is no farther than
// the white about both, or the edge of what is printed.
func TestWideSheetsHavePiecesClose(t *testing.T) {
	c, o := octavo.make(), on(t, "610 x 2000 mm")
	l := templates.Lay(c, c.Drawn(), o, paper.Options{})
	require.Len(t, l.Pages, 1)
	p := l.Pages[0]
	boxes := []geometry.Box{p.Corner}
	for _, part := range p.Parts {
		tile := l.Tilings[part.Tiling].Tiles[part.Tile]
		boxes = append(boxes, geometry.Bx(tile.At.X, tile.At.Y, tile.At.X+tile.Window.Width(), tile.At.Y+tile.Window.Height()))
	}
	for i, b := range boxes {
		near := b.Min.X-p.Area.Min.X < 0.01 || b.Min.Y-p.Area.Min.Y < 0.01
		for k, other := range boxes {
			near = near || i != k && b.Grow(4.01).Overlaps(other)
		}
		assert.True(t, near, fmt.Sprint(b))
	}
}

// A sheet that is not wide has its overview on a page of its own.
func TestNarrowSheetsHavePagesOfWords(t *testing.T) {
	for _, sheet := range []string{"A4", "A2", "450 x 640 mm"} {
		c, o := octavo.make(), on(t, sheet)
		l := templates.Lay(c, c.Drawn(), o, paper.Options{})
		pages := templates.Document(c, l, o).Pages()
		assert.Greater(t, len(pages), len(l.Pages)+1, sheet)
		assert.NotEmpty(t, headOf(pages[0]))
	}
}

func headOf(p *document.Page) string { return p.Texts[0].String }
