package roll_test

import (
	"encoding/xml"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry/slipcase"
	"forel/render/roll"
)

// fills gives the fill of every shape of a picture.
func fills(t *testing.T, svg []byte) (colours map[string]int) {
	colours = map[string]int{}
	d := xml.NewDecoder(strings.NewReader(string(svg)))
	for {
		token, err := d.Token()
		if err != nil {
			return colours
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
			}
		}
	}
}

// Cloth is told from paper, and a thumb hole is seen.
func TestPictureShowsCoveringAndHole(t *testing.T) {
	const cloth, paper, board = "#a9cce6", "#f8e2b3", "#ded6c8" // in full light
	for _, c := range []struct {
		covering, hole string
		head           string
		side           string // what most is seen of on the side
		says           string
	}{
		{slipcase.ClothAndPaper, "none", cloth, paper, "cloth, paper on the sides"},
		{slipcase.ClothAndPaper, "semicircle", cloth, paper, "cloth, paper on the sides, a thumb hole"},
		{slipcase.AllCloth, "triangle", cloth, cloth, "cloth, a thumb hole"},
		{slipcase.AllPaper, "none", paper, paper, "paper"},
		{slipcase.SidesOnly, "none", board, paper, "bare board, paper on the sides"},
	} {
		j := slipcase.DefaultJob()
		j.Books = []slipcase.Book{{Height: slipcase.Readings{220}, Width: slipcase.Readings{150}, Thickness: slipcase.Readings{30}}}
		j.Covering, j.ThumbHole.Shape = c.covering, c.hole
		made, err := slipcase.Make(j)
		require.NoError(t, err)
		colours := fills(t, roll.Picture(made.Plan()))
		assert.GreaterOrEqual(t, shades(t, colours, c.head), 2, "mouth and head: %v: %v", c, colours)
		assert.NotZero(t, shades(t, colours, c.side), "%v: %v", c, colours)
		// The inside is dark at the mouth, and through a thumb hole.
		assert.Equal(t, c.hole != "none", shades(t, colours, "#595959") == 2, "%v: %v", c, colours)
		page, err := roll.Index(roll.Page{Entries: []roll.Entry{{Name: "Ana", Folder: "01-ana", Plan: made.Plan()}}})
		require.NoError(t, err)
		assert.Contains(t, string(page), "seen from its mouth: "+c.says+`"`)
	}
}

// shades counts the fills that are a colour in some light.
func shades(t *testing.T, fills map[string]int, colour string) (n int) {
	parts := func(s string) (out [3]float64) {
		var r, g, b int
		_, err := fmt.Sscanf(s, "#%02x%02x%02x", &r, &g, &b)
		require.NoError(t, err)
		return [3]float64{float64(r), float64(g), float64(b)}
	}
	want := parts(colour)
	for fill, count := range fills {
		is := parts(fill)
		light := is[0] / want[0]
		if light > 0.7 && light <= 1 && math.Abs(is[1]-light*want[1]) < 1.5 && math.Abs(is[2]-light*want[2]) < 1.5 {
			n += count
		}
	}
	return n
}
