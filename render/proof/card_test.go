package proof

import (
	"encoding/json"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/onepiece"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/geometry/stage"
	"forel/geometry/walled"
	"forel/paper"
)

// cardCase gives a case of card by the allowances that Cornell University
// Library publishes (Conservation manual guide 11A, 1999), in card that takes
// no room: its cavity is the book, 5 mm higher.
func cardCase(t *testing.T, height, width, thickness, card slipcase.Length) onepiece.Case {
	j := onepiece.DefaultJob(geometry.MM)
	j.Title = "Net mending"
	j.Books = []job.Book{{Height: job.Readings{height}, Width: job.Readings{width}, Thickness: job.Readings{thickness}}}
	j.Card.Thickness = card
	j.Clearance = job.Clearance{Height: 5}
	c, err := plantest.Make[onepiece.Case](j)
	require.NoError(t, err)
	return c
}

func TestCardReport(t *testing.T) {
	c := cardCase(t, 203, 130, 22, 1.5)
	text := string(Text(c.Plan(), geometry.ToTenthMM))
	assert.Contains(t, text, "sound: ")
	assert.Contains(t, text, "room inside, as folded: 208.0 mm high, 130.0 mm deep, 22.0 mm thick")
	assert.Regexp(t, `outside of the head wall .* inner flap, (spine flap, outer flap|outer flap, spine flap)`, text)

	data := JSON(c.Plan())
	var got struct {
		Sound     bool
		Folded    map[string]map[string]float64 `json:"folded_mm"`
		Clearance map[string]map[string]float64 `json:"clearance_mm"`
		Faces     []struct{ Name string }
	}
	require.NoError(t, json.Unmarshal(data, &got))
	assert.True(t, got.Sound)
	assert.Equal(t, map[string]float64{"height": 208, "width": 130, "thickness": 22}, got.Folded["cavity"])
	// Two layers at head and tail, one elsewhere, none at the mouth.
	assert.Equal(t, map[string]float64{"height": 208 + 4*1.5, "width": 130 + 1.5, "thickness": 22 + 2*1.5}, got.Folded["outside"])
	// The guide has the case 5 mm higher than the book, and no more.
	assert.Equal(t, map[string]float64{"height": 5, "depth": 0, "thickness": 0}, got.Clearance["body"])
	assert.Len(t, got.Faces, 5)
}

// Seen flat from outside, every wall is closed but for the reliefs, head and
// tail are two layers, and what lies outermost there is spine flap and outer flap.
func TestCardWalls(t *testing.T) {
	c := cardCase(t, 203, 130, 22, 1.5)
	d := newDoc(c.Plan(), Options{Setup: paper.DefaultSetup(), Round: geometry.ToTenthMM})
	require.Len(t, d.faces, 5)
	sizes := map[geometry.Face][2]float64{ // 22 + 2 x 1.5, 208 + 4 x 1.5, 130 + 1.5
		walled.LeftOutside: {131.5, 214}, walled.RightOutside: {131.5, 214}, walled.SpineOutside: {25, 214},
		walled.HeadOutside: {25, 131.5}, walled.TailOutside: {25, 131.5},
	}
	for _, f := range d.faces {
		want := sizes[f.Face]
		assert.InDeltaSlice(t, want[:], []float64{f.Extent.Width().MM(), f.Extent.Height().MM()}, 1e-9, f.Face)
		if f.Face != walled.HeadOutside && f.Face != walled.TailOutside {
			assert.Equal(t, 1, f.deepest, f.Face)
			assert.Greater(t, f.covered, 90., f.Face)
			continue
		}
		assert.Equal(t, 2, f.deepest, f.Face)
		assert.Equal(t, "inner flap", f.layers[0].Piece)
		assert.ElementsMatch(t, []string{"inner flap", "spine flap", "outer flap"}, f.pieces())
		assert.InDelta(t, 3, f.Stack.MM(), 1e-9)
		assert.Greater(t, f.covered, 90., f.Face)
	}
	// The spine flap lies at the spine, the outer flap reaches the mouth.
	head, _ := faceOf(d.faces, walled.HeadOutside)
	for _, l := range head.layers {
		y := l.Shape.Bounds()
		switch l.Piece {
		case "spine flap":
			assert.Less(t, y.Center().Y.MM(), 131.5/2)
		case "outer flap":
			assert.InDelta(t, 131.5, y.Max.Y.MM(), 2)
		}
	}
}

// What lies on one face is drawn as what it is: of one object and one plane is one stuff.
func TestCardLooks(t *testing.T) {
	d := newDoc(cardCase(t, 203, 130, 22, 1.5).Plan(), Options{Setup: paper.DefaultSetup(), Round: geometry.ToTenthMM})
	faces := d.picture().Faces
	normal := func(f stage.Face) (n stage.Vec) {
		for i := 2; i < len(f.Points); i++ {
			n = n.Add(f.Points[i-1].Sub(f.Points[0]).Cross(f.Points[i].Sub(f.Points[0])))
		}
		return n.Unit()
	}
	for i, a := range faces {
		for _, b := range faces[i+1:] {
			n := normal(a)
			if a.Object == b.Object && n.Sub(normal(b)).Size() < 1e-9 && a.Points[0].Sub(b.Points[0]).Dot(n).Abs() < 1e-6 {
				assert.Equal(t, a.Front, b.Front, a.Object)
			}
		}
	}
}

// No words of the picture lie on each other, on a line or off the page.
func TestCardPicture(t *testing.T) {
	for _, sheet := range []string{"A4", "Letter"} {
		for _, size := range [][4]slipcase.Length{{203, 130, 22, 1.5}, {148, 105, 3, 0.4}, {400, 290, 150, 3}, {60, 140, 90, 2}} {
			o := Options{Setup: setup(sheet), Round: geometry.ToTenthMM}
			pages := Document(cardCase(t, size[0], size[1], size[2], size[3]).Plan(), o).Pages()
			require.GreaterOrEqual(t, len(pages), 2)
			for n, p := range pages {
				checkPage(t, fmt.Sprintf("%v on %s, page %d", size, sheet, n+1), &p.Surface, o)
			}
		}
	}
}
