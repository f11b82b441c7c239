package cutter_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper/bed"
	"forel/paper/pack"
	"forel/render"
	"forel/render/cutter"
	"forel/render/document"
	"forel/render/pagetest"
	"forel/render/record"
)

// On the beds of any case, with any title, words stand on the bed, apart and off
// what is cut, creased and ruled.
func TestLabelsOfAnyBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(lo, hi float64, name string) L { return L(rapid.Float64Range(lo, hi).Draw(t, name)) }
		s := bed.Default()
		s.Width, s.Height = length(300, 2000, "width of the bed"), length(300, 2000, "height of the bed")
		s.Margin, s.Gap, s.Kerf = length(0, 20, "margin"), length(0, 20, "gap"), length(0, 2, "kerf")
		s.Tabs = rapid.IntRange(0, 6).Draw(t, "tabs")
		j := bed.Job{Name: pagetest.AnyTitle(t)}
		p, _ := pagetest.AnyPlan(t)
		j.Pieces = p.Machined()
		beds, err := bed.Lay(context.Background(), s, []bed.Job{j}, pack.Effort{Iterations: 5})
		if err != nil {
			t.Skip("larger than the bed")
		}
		for _, b := range beds {
			d, err := read(cutter.SVG(b, s, cutter.Options{Title: j.Name, Beds: 1, Labels: true, Line: 0.02, Theme: render.MachineTheme()}))
			require.NoError(t, err)
			var p record.Surface
			names := onPage(t, &p, d)
			require.NotEmpty(t, p.Strokes)
			onBed := geometry.Bx(0, 0, b.Width, b.Height).Grow(micron)
			require.Empty(t, pagetest.Within(&p, onBed), "%v %d", b.Material, b.Number)
			for i, name := range names {
				require.True(t, onBed.Contains(name))
				require.False(t, slices.ContainsFunc(names[:i], name.Overlaps), "one name on another")
				for _, s := range p.Strokes {
					points := s.Path.Flatten(0.05)
					for k := range points[1:] {
						require.False(t, pagetest.Enters(points[k], points[k+1], name), "a line through a name")
					}
				}
			}
		}
	})
}

// The map of the beds of any case, on any sheet, has its words apart, off lines and within
// the margins, and every piece by its number.
func TestMapOfAnyBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := bed.Default()
		s.Width, s.Height = L(rapid.Float64Range(300, 2000).Draw(t, "width of the bed")), L(rapid.Float64Range(300, 2000).Draw(t, "height of the bed"))
		s.Gap = L(rapid.SampledFrom([]float64{0, 3}).Draw(t, "gap"))
		j := bed.Job{Name: pagetest.AnyTitle(t), Pieces: pagetest.AnyCase(t).Plan().Machined()}
		beds, err := bed.Lay(context.Background(), s, []bed.Job{j}, pack.Effort{Iterations: 5})
		if err != nil {
			t.Skip("larger than the bed")
		}
		print := document.Options{Setup: pagetest.AnySetup(t), Theme: render.DefaultTheme(), Round: pagetest.Rounding(geometry.MM)}
		shown := map[string]int{}
		for i, p := range cutter.Map(beds, s, cutter.Options{Title: j.Name}, print).Pages() {
			require.Empty(t, pagetest.Faults(&p.Surface, print.Setup.Reach(false)), "page %d", i+1)
			for _, w := range p.Texts {
				number, _, _ := strings.Cut(w.String, " ")
				shown[number]++
			}
		}
		for _, b := range beds {
			for i, p := range b.Parts {
				require.GreaterOrEqual(t, shown[fmt.Sprint(i+1)], 1, p.Name())
			}
		}
	})
}

// onPage sets what a drawing has onto a page, and returns the boxes of its names, which
// are single strokes.
func onPage(t require.TestingT, p *record.Surface, e element) (names []geometry.Box) {
	for _, c := range e.Inner {
		if c.XMLName.Local != "path" {
			within := onPage(t, p, c)
			if strings.HasPrefix(c.attr("id"), "Legend.") {
				var letters record.Surface
				onPage(t, &letters, c)
				if len(letters.Strokes) == 0 {
					continue // a piece too small for any name
				}
				p.Strokes = p.Strokes[:len(p.Strokes)-len(letters.Strokes)]
				box := letters.Strokes[0].Path.Bounds()
				for _, l := range letters.Strokes {
					b := l.Path.Bounds()
					box = geometry.Bx(min(box.Min.X, b.Min.X), min(box.Min.Y, b.Min.Y), max(box.Max.X, b.Max.X), max(box.Max.Y, b.Max.Y))
				}
				within = append(within, box)
			}
			names = append(names, within...)
			continue
		}
		r, err := path(c.attr("d"))
		require.NoError(t, err)
		points := make([]geometry.Point, len(r.points))
		for i, q := range r.points {
			points[i] = geometry.Pt(L(q.x), L(q.y))
		}
		line := geometry.Line(points...)
		line.Closed = r.closed
		p.Stroke(line, render.Stroke{})
	}
	return names
}
