package bench_test

import (
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	draw "forel/render/bench"
	"forel/render/typeset"
)

// No words on a drawing stand over other words or reach past the page, and no
// line that is cut runs through the words of a piece.
func TestWordsStandClear(t *testing.T) {
	for _, n := range []int{1, 12} {
		p := planned(t, n, geometry.MM)
		for _, sheet := range []string{"A4", "Letter"} {
			for _, g := range p.Groups {
				for i := range g.Sheets {
					missed, pages, room := draw.DrawSheet(p, g, i, options(sheet, geometry.ToTenthMM))
					name := fmt.Sprintf("%d jobs, %s, %s sheet %d", n, sheet, g.Material, i+1)
					for _, m := range missed {
						assert.NotContains(t, m, "piece", "%s: every piece has its number on the drawing", name)
					}
					for _, s := range pages {
						var boxes []geometry.Box
						for _, w := range s.Texts {
							b := typeset.Box(w.Text).Grow(-0.3)
							assert.True(t, room.Grow(0.5).Contains(b), "%s: %q reaches past the page", name, w.String)
							for j, o := range boxes {
								assert.False(t, o.Overlaps(b), "%s: %q over %q", name, w.String, s.Texts[j].String)
							}
							boxes = append(boxes, b)
						}
						for j, w := range s.Texts {
							if len(w.String) < 4 { // numbers of cuts stand on their lines, in boxes of white
								continue
							}
							for _, l := range s.Strokes {
								if l.Stroke.Width < 0.3 || l.Path.Closed || len(l.Path.Vertices) != 2 {
									continue
								}
								assert.Empty(t, l.Path.Clip(boxes[j], 1), "%s: a cut runs through %q", name, w.String)
							}
						}
					}
				}
			}
		}
	}
}

// path is a line as it stands in an SVG.
type path struct {
	D     string `xml:"d,attr"`
	Width string `xml:"stroke-width,attr"`
}

// readSVG reads straight lines and words from a drawing with nothing of ours.
func readSVG(t *testing.T, data []byte) (lines map[string][][4]float64, words []string) {
	t.Helper()
	lines = map[string][][4]float64{}
	d := xml.NewDecoder(strings.NewReader(string(data)))
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return lines, words
		}
		require.NoError(t, err)
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		switch e.Name.Local {
		case "path":
			var p path
			require.NoError(t, d.DecodeElement(&p, &e))
			var l [4]float64
			var rest string
			if n, _ := fmt.Sscanf(p.D, "M %f %f L %f %f%s", &l[0], &l[1], &l[2], &l[3], &rest); n == 4 {
				lines[p.Width] = append(lines[p.Width], l)
			}
		case "text":
			var s string
			require.NoError(t, d.DecodeElement(&s, &e))
			words = append(words, s)
		}
	}
}

// In the finished drawing every cut has the length it has on the sheet, at the
// scale that the drawing states, and every piece its number and its size.
func TestDrawingsMeasured(t *testing.T) {
	p := planned(t, 6, geometry.MM)
	drawings := draw.Drawings(p, options("A4", geometry.ToTenthMM))
	n := 0
	for _, g := range p.Groups {
		for i, s := range g.Sheets {
			d := drawings[n]
			n++
			assert.Equal(t, fmt.Sprintf("sheet-%02d.svg", s.Number), d.Name)
			lines, words := readSVG(t, d.SVG)
			scale := 0.0
			for _, w := range words {
				if at := strings.Index(w, "scale 1 : "); at >= 0 {
					_, err := fmt.Sscanf(w[at:], "scale 1 : %f", &scale)
					require.NoError(t, err)
				}
			}
			require.Positive(t, scale)
			var want, got []float64
			for _, c := range g.Cuts {
				if c.Sheet == i && c.Part != "the roll" {
					want = append(want, c.From.Distance(c.To).MM())
				}
			}
			for _, l := range lines["0.35"] {
				got = append(got, scale*math.Hypot(l[2]-l[0], l[3]-l[1]))
			}
			slices.Sort(want)
			slices.Sort(got)
			require.Len(t, got, len(want), d.Name)
			for k := range want {
				assert.InDelta(t, want[k], got[k], 0.002*scale, d.Name)
			}
			for _, q := range s.Pieces {
				assert.Contains(t, words, fmt.Sprint(q.Number), d.Name)
				assert.Contains(t, words, geometry.ToTenthMM.PrettyNumber(q.Box.Width())+" × "+geometry.ToTenthMM.Pretty(q.Box.Height()), d.Name)
			}
		}
	}
	assert.Len(t, drawings, n)
}

// On every page of the document words stand clear of each other and of the
// edges, and the list of cuts has every cut of the plan.
func TestDocument(t *testing.T) {
	for _, unit := range []geometry.Unit{geometry.MM, geometry.IN} {
		p := planned(t, 12, unit)
		round, sheet := geometry.ToTenthMM, "A4"
		if unit == geometry.IN {
			round, sheet = geometry.To64th, "Letter"
		}
		cuts := 0
		for n, page := range draw.Document(p, options(sheet, round)).Pages() {
			var boxes []geometry.Box
			for _, w := range page.Texts {
				b := typeset.Box(w.Text).Grow(-0.3)
				assert.True(t, geometry.Bx(0, 0, page.Width, page.Height).Grow(-9.5).Contains(b), "page %d: %q reaches past the edge", n+1, w.String)
				for j, o := range boxes {
					assert.False(t, o.Overlaps(b), "page %d: %q over %q", n+1, w.String, page.Texts[j].String)
				}
				boxes = append(boxes, b)
			}
			for _, s := range page.Strokes {
				if b := s.Path.Bounds(); s.Path.Closed && b.Width().Near(2.4) && b.Height().Near(2.4) {
					cuts++ // a box to tick off
				}
			}
		}
		for _, g := range p.Groups {
			cuts -= len(g.Cuts) + len(g.Used)
		}
		assert.Zero(t, cuts, "a box to tick off for each cut and each line of the shopping list")
		a, err := draw.Document(p, options(sheet, round)).PDF()
		require.NoError(t, err)
		b, err := draw.Document(p, options(sheet, round)).PDF()
		require.NoError(t, err)
		assert.Equal(t, a, b, "the same plan gives the same bytes")
	}
}
