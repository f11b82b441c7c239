package kit

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/render/document"
	"forel/render/pagetest"
)

// Slips of any names and cases, on any sheet, have their words apart, off the frames and
// within the margins, and there is one of each kit with all its pieces.
func TestAnySlips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := document.Options{Setup: pagetest.AnySetup(t), Round: pagetest.Rounding(geometry.MM)}
		var kits []Kit
		for i := range rapid.IntRange(1, 12).Draw(t, "kits") {
			p := pagetest.AnyCase(t).Plan()
			kits = append(kits, Kit{Name: fmt.Sprintf("Invented %d", i+1), Title: pagetest.AnyTitle(t), Pieces: p.Pieces, Stock: map[geometry.Material]string{geometry.Board: "grey board 2 mm"}})
		}
		text := ""
		for i, p := range Document(kits, o).Pages() {
			require.Empty(t, pagetest.Faults(&p.Surface, o.Setup.Reach(false)), "page %d", i+1)
			for _, w := range p.Texts {
				text += w.String + " "
			}
		}
		for _, k := range kits {
			require.Equal(t, 1, strings.Count(text, k.Name+" "))
		}
		require.GreaterOrEqual(t, strings.Count(text, "spine wall"), len(kits))
		require.Equal(t, len(kits), strings.Count(text, "Grey board 2 mm"))
	})
}
