package cutter_test

import (
	"context"
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper/bed"
	"forel/paper/pack"
	"forel/render"
	"forel/render/cutter"
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
		if pagetest.OfCard(t) {
			j.Pieces = pagetest.AnyCard(t).Plan().Machined()
		} else {
			j.Pieces = pagetest.AnyCase(t).Plan().Machined()
		}
		beds, err := bed.Lay(context.Background(), s, []bed.Job{j}, pack.Effort{Iterations: 5})
		if err != nil {
			t.Skip("larger than the bed")
		}
		for _, b := range beds {
			d, err := read(cutter.SVG(b, s, cutter.Options{Title: j.Name, Beds: 1, Labels: true, Theme: render.DefaultTheme()}))
			require.NoError(t, err)
			var p record.Surface
			onPage(t, &p, d)
			require.NotEmpty(t, p.Strokes)
			require.Empty(t, pagetest.Faults(&p, geometry.Bx(0, 0, b.Width, b.Height).Grow(micron)), "%v %d", b.Material, b.Number)
		}
	})
}

// onPage sets what a drawing has onto a page.
func onPage(t require.TestingT, p *record.Surface, e element) {
	for _, c := range e.Inner {
		switch c.XMLName.Local {
		case "path":
			r, err := path(c.attr("d"))
			require.NoError(t, err)
			points := make([]geometry.Point, len(r.points))
			for i, q := range r.points {
				points[i] = geometry.Pt(L(q.x), L(q.y))
			}
			line := geometry.Line(points...)
			line.Closed = r.closed
			p.Stroke(line, render.Stroke{})
		case "text":
			number := func(name string) float64 {
				v, err := strconv.ParseFloat(c.attr(name), 64)
				require.NoError(t, err)
				return v
			}
			align := map[string]render.Align{"": render.Start, "middle": render.Middle, "end": render.End}[c.attr("text-anchor")]
			size := math.Round(number("font-size")*72/25.4*100) / 100
			p.Text(render.Text{At: geometry.Pt(L(number("x")), L(number("y"))), String: c.Text, Size: render.Points(size), Align: align})
		default:
			onPage(t, p, c)
		}
	}
}
