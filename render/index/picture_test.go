package index_test

import (
	"encoding/xml"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry/slipcase"
	"forel/render/index"
)

// fills returns the fill of every shape of a picture, and the most points of one.
func fills(t *testing.T, svg []byte) (colours map[string]int, most int) {
	colours = map[string]int{}
	d := xml.NewDecoder(strings.NewReader(string(svg)))
	for {
		token, err := d.Token()
		if err != nil {
			return colours, most
		}
		e, ok := token.(xml.StartElement)
		if !ok || e.Name.Local != "path" {
			continue
		}
		for _, a := range e.Attr {
			switch {
			case a.Name.Local == "fill" && a.Value != "none":
				colours[a.Value]++
			case a.Name.Local == "d":
				require.NotContains(t, a.Value, "NaN")
				most = max(most, strings.Count(a.Value, "L"))
			}
		}
	}
}

// Cloth is told from paper, and a thumb hole is seen.
func TestPictureShowsCoveringAndHole(t *testing.T) {
	const cloth, paper, board = "#a9cce6", "#f8e2b3", "#ded6c8" // the mouth and the head, in full light
	for _, c := range []struct {
		covering, hole string
		head           string
		side           string // of the side, in its shade
		says           string
	}{
		{slipcase.ClothAndPaper, "none", cloth, "#cbb993", "cloth, paper on the sides"},
		{slipcase.ClothAndPaper, "semicircle", cloth, "#cbb993", "cloth, paper on the sides, a thumb hole"},
		{slipcase.AllCloth, "triangle", cloth, "#8ba7bd", "cloth, a thumb hole"},
		{slipcase.AllPaper, "none", paper, "#cbb993", "paper"},
		{slipcase.SidesOnly, "none", board, "#cbb993", "bare board, paper on the sides"},
	} {
		j := slipcase.DefaultJob()
		j.Books = []slipcase.Book{{Height: slipcase.Readings{220}, Width: slipcase.Readings{150}, Thickness: slipcase.Readings{30}}}
		j.Covering, j.ThumbHole.Shape = c.covering, c.hole
		made, err := slipcase.Make(j)
		require.NoError(t, err)
		colours, most := fills(t, index.Picture(made.Plan()))
		assert.Equal(t, 2, colours[c.head], "%v: %v", c, colours)
		assert.NotZero(t, colours[c.side], "%v: %v", c, colours)
		assert.Equal(t, c.hole != "none", most > 4, "%v", c)
		page, err := index.HTML(index.Page{Entries: []index.Entry{{Name: "Ana", Folder: "01-ana", Plan: made.Plan()}}})
		require.NoError(t, err)
		assert.Contains(t, string(page), "seen from its mouth: "+c.says+`"`)
	}
}
