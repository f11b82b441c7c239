package handout_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/render/handout"
	"forel/render/record"
)

// One piece more than the pages of drawings take has no page to itself: the drawings are
// smaller then.
func TestDrawingsSpareAPage(t *testing.T) {
	p := subjectOf(t, jobOf(221.5, 148.5, 32))
	side := p.Pieces[0]
	for n, want := range map[int]int{6: 1, 7: 1, 8: 1, 9: 2} {
		p.Pieces = nil
		for range n {
			p.Pieces = append(p.Pieces, side)
		}
		pages := 0
		for _, page := range handout.Document(p, on(t, "A4")).Pages() {
			if slices.ContainsFunc(page.Texts, func(w record.Written) bool {
				return strings.HasPrefix(w.String, side.Material.Words()+"; "+side.FaceUp)
			}) {
				pages++
			}
		}
		assert.Equal(t, want, pages, "%d pieces", n)
	}
}
