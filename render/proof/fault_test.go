package proof

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/slipcase"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/record"
	"forel/render/scene"
	"forel/render/typeset"
)

// tags gives the numbered discs on a page, by their number.
func tags(on *record.Surface) map[string][]geometry.Point {
	out := map[string][]geometry.Point{}
	for _, s := range on.Strokes {
		if s.Stroke.Color != render.Vermilion || !s.Path.Closed || len(s.Path.Vertices) != 2 {
			continue
		}
		c := s.Path.Bounds().Center()
		for _, w := range on.Texts {
			if b := typeset.Box(w.Text); s.Path.Bounds().Contains(b) {
				out[w.String] = append(out[w.String], c)
			}
		}
	}
	return out
}

// Every fault has its number in the list; one on a face has it on the page of
// that face too, which the list names.
func TestEveryFaultIsMarked(t *testing.T) {
	for name, s := range broken() {
		t.Run(name, func(t *testing.T) {
			require.NotEmpty(t, s.Proof.Faults)
			d := Document(s.Plan, Options{Setup: setup("A4"), Round: geometry.ToTenthMM})
			pages := d.Pages()
			words := make([]string, len(pages))
			for i := range pages {
				for _, w := range pages[i].Texts {
					words[i] += w.String + "\n"
				}
			}
			require.Contains(t, words[1], "What is wrong")
			list := strings.ReplaceAll(words[1], "\n", " ")
			for i, f := range s.Proof.Faults {
				number := fmt.Sprint(i + 1)
				assert.NotEmpty(t, tags(&pages[1].Surface)[number], "%s: %s", number, f)
				if f.Face == "" || len(s.Proof.Faces) == 0 {
					continue
				}
				found := false
				for p := 2; p < len(pages); p++ {
					if strings.Contains(words[p], "Mouth edge") == mouthEdge(f.Face) && strings.Contains(strings.ReplaceAll(words[p], "\n", " "), wording.Capital(string(f.Face))) {
						found = true
						assert.Len(t, tags(&pages[p].Surface)[number], 1, "%s on page %d: %s", number, p+1, f)
						assert.Contains(t, list, fmt.Sprintf("(page %d)", p+1))
					}
				}
				assert.True(t, found, f)
			}
		})
	}
}

// A mark lies where the fault is: the paper does not reach the mouth edges of
// the sides, which are the two uprights of the mouth; and they are seen from
// outside as well.
func TestMarksLieOnTheFault(t *testing.T) {
	s := broken()["paper short of the mouth"]
	require.Len(t, s.Proof.Faces, 14)
	d := newDoc(s.Plan, Options{Setup: setup("A4"), Round: geometry.ToTenthMM})
	view, window := d.panel(d.picture()).See()
	to, _ := scene.Fitted(window, geometry.Bx(50, 30, 150, 180))
	marks := d.solidMarks(view, to, geometry.Bx(50, 30, 150, 180))
	var seen int
	for _, m := range marks {
		for _, f := range d.faces {
			if f.Face != slipcase.LeftMouth && f.Face != slipcase.RightMouth {
				continue
			}
			on := moveBox(f.seenOf(view).Bounds(), to).Grow(0.01)
			if on.Contains(m.area.Bounds()) {
				seen++
				// Bare board is most of the upright's height: 227.8 less 2 x 28.
				assert.Greater(t, m.area.Bounds().Height().MM(), on.Height().MM()*0.6)
			}
		}
	}
	assert.Equal(t, 2, seen)
}

// Numbers of faults stand apart however many lie on one spot.
func TestManyFaultsOnOneSpot(t *testing.T) {
	s := made(t, jobOf(221.5, 148.5, 32))
	for i := range 24 {
		f := foldup.Fault{Kind: foldup.Bare, Face: slipcase.RightOutside, At: geometry.Bx(70, 100, 75, 105)}
		f.What = fmt.Sprintf("fault %d with enough words to fill more than one line of the list, so that the list takes more than one page in the end, as it would for a case with everything wrong", i)
		s.Proof.Faults = append(s.Proof.Faults, f)
	}
	o := Options{Setup: setup("Letter"), Round: geometry.ToTenthMM}
	d := Document(s.Plan, o)
	for i, p := range d.Pages() {
		checkPage(t, fmt.Sprintf("page %d", i+1), &p.Surface, o)
	}
}
