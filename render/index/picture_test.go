package index_test

import (
	"encoding/xml"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/render/index"
)

// stuffs tells what is seen in a picture by its colours, blue for cloth and yellow
// for paper, and returns the most points of a shape.
func stuffs(t *testing.T, svg []byte) (cloth, paper bool, most int) {
	d := xml.NewDecoder(strings.NewReader(string(svg)))
	for {
		token, err := d.Token()
		if err != nil {
			return cloth, paper, most
		}
		e, ok := token.(xml.StartElement)
		if !ok || e.Name.Local != "path" {
			continue
		}
		for _, a := range e.Attr {
			switch {
			case a.Name.Local == "fill" && a.Value != "none":
				var red, green, blue int
				_, err := fmt.Sscanf(a.Value, "#%02x%02x%02x", &red, &green, &blue)
				require.NoError(t, err, a.Value)
				cloth, paper = cloth || blue > red+30, paper || red > blue+40
			case a.Name.Local == "d":
				require.NotContains(t, a.Value, "NaN")
				most = max(most, strings.Count(a.Value, "L"))
			}
		}
	}
}

// Cloth is told from paper, and a thumb hole is seen.
func TestPictureShowsCoveringAndHole(t *testing.T) {
	for _, c := range []struct {
		covering, hole string
		cloth, paper   bool
		says           string
	}{
		{slipcase.ClothAndPaper, "none", true, true, "cloth, paper on the sides"},
		{slipcase.ClothAndPaper, "semicircle", true, true, "cloth, paper on the sides, a thumb hole"},
		{slipcase.AllCloth, "triangle", true, false, "cloth, a thumb hole"},
		{slipcase.AllPaper, "none", false, true, "paper"},
		{slipcase.SidesOnly, "none", false, true, "bare board, paper on the sides"},
	} {
		j := slipcase.DefaultJob(geometry.MM)
		j.Books = []job.Book{{Height: job.Readings{220}, Width: job.Readings{150}, Thickness: job.Readings{30}}}
		j.Covering = c.covering
		whole, err := plantest.Make[slipcase.Case](j)
		require.NoError(t, err)
		_, _, without := stuffs(t, index.Picture(whole.Plan()))
		j.ThumbHole.Shape = c.hole
		made, err := plantest.Make[slipcase.Case](j)
		require.NoError(t, err)
		cloth, paper, most := stuffs(t, index.Picture(made.Plan()))
		assert.Equal(t, c.cloth, cloth, "%v", c)
		assert.Equal(t, c.paper, paper, "%v", c)
		assert.Equal(t, c.hole != "none", most > without, "%v", c)
		p := made.Plan()
		page := index.HTML(index.Page{Entries: []index.Entry{{Name: "Ana", Folder: "01-ana", Title: p.Title, Plan: &p}}})
		assert.Contains(t, string(page), "seen from its mouth: "+c.says+`"`)
	}
}
