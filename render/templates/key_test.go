package templates_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/paper"
	"forel/render/templates"
)

// A piece more than a page of the key takes has no page of the key to itself: the cells are
// lower then.
func TestKeySparesAPage(t *testing.T) {
	o := on(t, "A4")
	for _, c := range []struct{ pieces, pages int }{{16, 1}, {17, 1}, {20, 1}, {21, 2}} {
		p := plan.Plan{Title: "Invented key", Kind: "slipcase"}
		area := geometry.Bx(0, 0, 60, 40)
		for range c.pieces {
			p.Pieces = append(p.Pieces, geometry.Piece{Name: "strip", Count: 1, Material: geometry.Board, Outline: geometry.Rectangle(area), Regions: []geometry.Region{{Room: area}}, Spine: -1})
		}
		doc, _ := templates.Draw(p, o.Setup.Lay(p.Pieces, paper.Options{}), o)
		keys := 0
		for _, page := range doc.Pages() {
			for _, w := range page.Texts {
				if strings.HasPrefix(w.String, "Key to the pages") {
					keys++
				}
			}
		}
		assert.Equal(t, c.pages, keys, "%d pieces", c.pieces)
	}
}
