package proof

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/foldup"
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
	for name, s := range broken(t) {
		t.Run(name, func(t *testing.T) {
			require.NotEmpty(t, s.Report.Faults)
			d := Draw(s, Options{Setup: setup("A4"), Round: geometry.ToTenthMM})
			pages := make([]record.Surface, d.Pages())
			words := make([]string, d.Pages())
			for i := range pages {
				d.Page(i, &pages[i])
				for _, w := range pages[i].Texts {
					words[i] += w.String + "\n"
				}
			}
			require.Contains(t, words[1], "What is wrong")
			list := strings.ReplaceAll(words[1], "\n", " ")
			for i, f := range s.Report.Faults {
				number := fmt.Sprint(i + 1)
				assert.NotEmpty(t, tags(&pages[1])[number], "%s: %s", number, f)
				if f.Face == "" || len(s.Report.Faces) == 0 {
					continue
				}
				found := false
				for p := 2; p < len(pages); p++ {
					if strings.Contains(words[p], "Mouth edge") == mouthEdge(f.Face) && strings.Contains(strings.ReplaceAll(words[p], "\n", " "), capital(string(f.Face))) {
						found = true
						assert.Len(t, tags(&pages[p])[number], 1, "%s on page %d: %s", number, p+1, f)
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
	s := broken(t)["paper short of the mouth"]
	require.Len(t, s.Report.Faces, 14)
	faces := study(s.Report)
	sc := solidOf(s.Report, faces, looksOf(s))
	b := &book{Options: Options{Setup: setup("A4"), Round: geometry.ToTenthMM}, Subject: s, faces: faces, looks: looksOf(s)}
	to, _ := scene.Fitted(sc.bounds(), geometry.Bx(50, 30, 150, 180))
	marks := b.solidMarks(sc, to, geometry.Bx(50, 30, 150, 180))
	var seen int
	for _, m := range marks {
		for _, f := range sc.faces {
			if f.Face != geometry.LeftMouth && f.Face != geometry.RightMouth {
				continue
			}
			on := moveBox(f.whole.Bounds(), to).Grow(0.01)
			if on.Contains(m.area.Bounds()) {
				seen++
				// Bare board is most of the upright's height: 227.8 less 2 x 28.575.
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
		f := foldup.Fault{Kind: foldup.Bare, Face: geometry.RightOutside, At: geometry.Bx(70, 100, 75, 105)}
		f.What = fmt.Sprintf("fault %d with enough words to fill more than one line of the list, so that the list takes more than one page in the end, as it would for a case with everything wrong", i)
		s.Report.Faults = append(s.Report.Faults, f)
	}
	o := Options{Setup: setup("Letter"), Round: geometry.ToTenthMM}
	d := Draw(s, o)
	for i := range d.Pages() {
		on := &inOrder{}
		d.Page(i, on)
		checkPage(t, fmt.Sprintf("page %d", i+1), on, o)
	}
}
