package pdf_test

import (
	"bytes"
	"math"
	"testing"
	"time"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/pdf"
	"forel/render/pdf/pdftest"
)

// addPage starts a page.
func addPage(d *pdf.Document, width, height geometry.Length) {
	d.Pages = append(d.Pages, &pdf.Page{Width: width, Height: height})
}

// last returns the page started last.
func last(d *pdf.Document) *pdf.Page { return d.Pages[len(d.Pages)-1] }

func made(t testing.TB, d *pdf.Document) []byte {
	t.Helper()
	file, err := d.Bytes()
	require.NoError(t, err)
	strict := model.NewDefaultConfiguration()
	strict.ValidationMode = model.ValidationStrict
	require.NoError(t, api.Validate(bytes.NewReader(file), strict))
	return file
}

var thin = render.Stroke{Width: 0.3, Color: render.Black}

// distance gives how far a place is from the nearest of a path's lines and
// arcs, worked out from the arcs' centres and radii.
func distance(p geometry.Path, at geometry.Point) float64 {
	near := math.Inf(1)
	for _, s := range p.Segments() {
		if s.Bulge == 0 {
			near = min(near, at.ToLine(s.From, s.To).MM())
			continue
		}
		c, r, start, sweep := s.Arc()
		a := math.Atan2((at.Y-c.Y).MM(), (at.X-c.X).MM()) - start
		if sweep < 0 {
			a = -a
		}
		if a = math.Mod(a+4*math.Pi, 2*math.Pi); a <= math.Abs(sweep) {
			near = min(near, math.Abs(at.Distance(c).MM()-r.MM()))
		}
		near = min(near, at.Distance(s.From).MM(), at.Distance(s.To).MM())
	}
	return near
}

// anyPath draws a path of lines and arcs of any size, open or closed.
var anyPath = rapid.Custom(func(t *rapid.T) geometry.Path {
	num := func(name string) geometry.Length { return geometry.Length(rapid.Float64Range(0, 900).Draw(t, name)) }
	path := geometry.Path{Closed: rapid.Bool().Draw(t, "closed")}
	for range rapid.IntRange(2, 5).Draw(t, "corners") {
		v := geometry.Vertex{Point: geometry.Pt(num("x"), num("y"))}
		if rapid.Bool().Draw(t, "arc") {
			v.Bulge = rapid.Float64Range(0.001, 3).Draw(t, "bulge") * rapid.SampledFrom([]float64{1, -1}).Draw(t, "way")
		}
		for _, w := range path.Vertices {
			if v.Distance(w.Point) < 1 {
				v.X += 1000 // corners on each other have no arc between them
			}
		}
		path.Vertices = append(path.Vertices, v)
	}
	return path
})

// An outline with arcs is one path in the finished file, closed where it was,
// within 0.01 mm of the true arcs (0.002 mm of a chord, the rest for rounding to a
// hundredth of a point and in the reader), whether it is stroked or filled.
func TestArcsAreTrue(t *testing.T) {
	n := 80
	if testing.Short() {
		n = 20
	}
	d := &pdf.Document{Title: "Arcs"}
	addPage(d, 1000, 1000)
	var paths []geometry.Path
	for seed := range n {
		paths = append(paths, anyPath.Example(seed))
		last(d).Stroke(paths[seed], thin)
		last(d).Fill(paths[seed], render.Black)
	}
	read := pdftest.Open(t, made(t, d)).Paths(1)
	require.Len(t, read, 2*n, "a path each for the line and the fill")
	worst := 0.0
	for i, got := range read {
		path := paths[i/2]
		require.Equal(t, 1, got.Moves, "one path")
		if i%2 == 0 {
			require.Equal(t, path.Closed, got.Closed)
		}
		require.Equal(t, i%2 == 1, got.Fill)
		require.Equal(t, i%2 == 0, got.Stroke)
		for _, q := range got.Points() {
			off := distance(path, geometry.Pt(geometry.Length(q.X), geometry.Length(q.Y)))
			worst = max(worst, off)
			require.Less(t, off, 0.01, "at %v", q)
		}
		// Nothing is left out: the path goes by every corner and every arc's middle.
		for _, s := range path.Segments() {
			for _, want := range []geometry.Point{s.From, s.To, middle(s)} {
				require.Less(t, nearest(got, want), 0.01, "%v of %v", want, s)
			}
		}
	}
	t.Logf("furthest from its arc: %.5f mm", worst)
}

func middle(s geometry.Segment) geometry.Point {
	if s.Bulge == 0 {
		return s.From.Add(s.To).Mul(0.5)
	}
	c, r, start, sweep := s.Arc()
	sin, cos := math.Sincos(start + sweep/2)
	return c.Add(geometry.Pt(r*geometry.Length(cos), r*geometry.Length(sin)))
}

// nearest gives how near a path comes to a place: to the chords of its points.
func nearest(p pdftest.Path, at geometry.Point) float64 {
	near := math.Inf(1)
	points := p.Points()
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		near = min(near, at.ToLine(geometry.Pt(geometry.Length(a.X), geometry.Length(a.Y)), geometry.Pt(geometry.Length(b.X), geometry.Length(b.Y))).MM())
	}
	return near
}

// hundredth is a place of a point's second decimal, in millimetres.
const hundredth = 0.01 * 25.4 / 72

// Dashes start where they are asked to and run through the whole path: it is
// one path with one phase, open as it was.
func TestDashesKeepTheirPhase(t *testing.T) {
	for _, test := range []struct{ phase, want geometry.Length }{{0, 0}, {2.5, 2.5}, {5.6, 0}, {13, 1.8}, {-1, 4.6}} {
		d := &pdf.Document{Title: "Dashes"}
		addPage(d, 200, 200)
		p := geometry.Path{Vertices: []geometry.Vertex{{Point: geometry.Pt(20, 20)}, {Point: geometry.Pt(90, 20), Bulge: 0.8}, {Point: geometry.Pt(90, 120)}, {Point: geometry.Pt(20, 120)}}}
		last(d).Stroke(p, render.Stroke{Width: 0.25, Dash: []geometry.Length{4, 1.6}, Phase: test.phase, Color: render.Blue})
		paths := pdftest.Open(t, made(t, d)).Paths(1)
		require.Len(t, paths, 1)
		require.Equal(t, 1, paths[0].Moves)
		require.Len(t, paths[0].Dash, 2)
		require.False(t, paths[0].Closed)
		assert.InDelta(t, 4, paths[0].Dash[0], hundredth)
		assert.InDelta(t, 1.6, paths[0].Dash[1], hundredth)
		assert.InDelta(t, test.want.MM(), paths[0].Phase, hundredth, "phase %v", test.phase)
	}
}

// Bookmarks nest, pages are labelled, the title is that given, whatever its
// characters.
func TestBookmarksLabelsAndTitle(t *testing.T) {
	d := &pdf.Document{Title: "Invented: Größe 1, 港 and 𝄞"}
	for i, mark := range []string{"Overview", "", "side", "", "spine cloth"} {
		addPage(d, 210, 297)
		last(d).Stroke(geometry.Line(geometry.Pt(10, 10), geometry.Pt(20, 20)), thin)
		if mark != "" {
			last(d).Bookmark(mark)
		}
		switch i {
		case 0:
			last(d).Label(render.Roman, 1)
		case 2:
			last(d).Label(render.Decimal, 3)
			last(d).Under("side", "row 1, column 1")
		case 3:
			last(d).Under("side", "row 2, column 1")
		case 4: // after another bookmark
			last(d).Under("side", "row 3, column 1")
		}
	}
	file := made(t, d)
	r := pdftest.Open(t, file)
	assert.Equal(t, "Invented: Größe 1, 港 and 𝄞", r.Meta("Title"))
	for n, want := range []string{"i", "ii", "3", "4", "5"} {
		assert.Equal(t, want, r.Label(n+1))
	}
	marks, err := api.Bookmarks(bytes.NewReader(file), model.NewDefaultConfiguration())
	require.NoError(t, err)
	require.Len(t, marks, 3)
	for i, want := range []struct {
		title string
		page  int
		under int
	}{{"Overview", 1, 0}, {"side", 3, 3}, {"spine cloth", 5, 0}} {
		assert.Equal(t, want.title, marks[i].Title)
		assert.Equal(t, want.page, marks[i].PageFrom)
		assert.Len(t, marks[i].Kids, want.under)
	}
	assert.Equal(t, "row 2, column 1", marks[1].Kids[1].Title)
	assert.Equal(t, 4, marks[1].Kids[1].PageFrom)
}

// A date is written as it was given, in UTC, and not at all where none was.
func TestDate(t *testing.T) {
	file := func(date time.Time) []byte {
		d := &pdf.Document{Title: "Dates"}
		d.Date = date
		addPage(d, 210, 297)
		return made(t, d)
	}
	// 1700000000 seconds after 1970 are 22:13:20 on 14 November 2023 in UTC.
	dated := file(time.Unix(1700000000, 0).In(time.FixedZone("", 3*3600)))
	r := pdftest.Open(t, dated)
	assert.Equal(t, "D:20231114221320+00'00'", r.Meta("CreationDate"))
	assert.Equal(t, "D:20231114221320+00'00'", r.Meta("ModDate"))
	assert.Equal(t, dated, file(time.Unix(1700000000, 0)))
	assert.NotContains(t, string(file(time.Time{})), "Date")
}

// In black alone every dot of a page is black, white or between the two.
func TestBlackOnly(t *testing.T) {
	d := &pdf.Document{Title: "Black"}
	d.Black = true
	addPage(d, 100, 100)
	for i, c := range []render.Color{render.Orange, render.SkyBlue, render.Yellow, render.Grey, {R: 0xEE, G: 0xEE, B: 0xEE}} {
		y := geometry.Length(10 + 15*i)
		last(d).Stroke(geometry.Line(geometry.Pt(10, y), geometry.Pt(90, y)), render.Stroke{Width: 0.1, Color: c})
		last(d).Fill(geometry.Rectangle(geometry.Bx(10, y+2, 30, y+8)), c)
		last(d).Text(render.Text{At: geometry.Pt(40, y+8), String: "words", Size: 12, Color: c})
	}
	p := pdftest.Open(t, made(t, d)).Picture(1, 150)
	dark := map[int]bool{} // rows of dots that have a line in them
	for y := range p.Rect.Dy() {
		for x := range p.Rect.Dx() {
			c := p.RGBAAt(x, y)
			require.True(t, c.R == c.G && c.G == c.B, "colour at %d, %d", x, y)
		}
		if c := p.RGBAAt(p.Rect.Dx()*85/100, y); c.R < 128 {
			dark[y] = true
		}
	}
	assert.GreaterOrEqual(t, len(dark), 5, "a line of 0.1 mm would be lost")
	pale := p.RGBAAt(p.Rect.Dx()/5, p.Rect.Dy()*75/100)
	assert.Equal(t, uint8(255), pale.R, "a light tint is left out")
	full := p.RGBAAt(p.Rect.Dx()/5, p.Rect.Dy()*60/100)
	assert.Equal(t, uint8(0), full.R, "grey is black")
}

// Whatever is drawn, no ink leaves what may be printed, upright and lying, nor
// the margins once the file is scaled; what is in the middle stays there.
func TestNothingOutsideThePrintable(t *testing.T) {
	type printed struct {
		setup paper.Setup
		lying bool
	}
	any := rapid.Custom(func(t *rapid.T) printed {
		side := rapid.Map(rapid.Float64Range(0, 30), func(v float64) geometry.Length { return geometry.Length(v) })
		measured := rapid.Map(rapid.Float64Range(194, 206), func(v float64) geometry.Length { return geometry.Length(v) })
		return printed{paper.Setup{
			Sheet:    paper.Sheet{Width: 120, Height: 170},
			Margins:  paper.Margins{Left: side.Draw(t, "left"), Right: side.Draw(t, "right"), Top: side.Draw(t, "top"), Bottom: side.Draw(t, "bottom")},
			Measured: paper.Measured{Across: measured.Draw(t, "across"), Along: measured.Draw(t, "along")},
		}, rapid.Bool().Draw(t, "lying")}
	})
	const n = 30
	d := &pdf.Document{Title: "Margins"}
	for seed := range n {
		p := any.Example(seed)
		w, h := p.setup.Size(p.lying)
		addPage(d, w, h)
		last(d).Setup = &p.setup
		last(d).Fill(geometry.Rectangle(geometry.Bx(-5, -5, w+5, h+5)), render.Black)
	}
	doc := pdftest.Open(t, made(t, d))
	for seed := range n {
		p := any.Example(seed)
		s := p.setup
		size := doc.Size(seed + 1)
		require.InDelta(t, s.Sheet.Width.MM(), size.X, 0.01, "an upright sheet")
		require.InDelta(t, s.Sheet.Height.MM(), size.Y, 0.01, "an upright sheet")
		lo, hi, ok := doc.Ink(seed+1, 100)
		require.True(t, ok)
		left, right, top, bottom := s.Margins.Left, s.Margins.Right, s.Margins.Top, s.Margins.Bottom
		// Where the printer prints too large, less than its margins allow is inked.
		spare := func(room, measured geometry.Length) float64 {
			return room.MM() * max(0, 1-200/measured.MM()) / 2
		}
		x := spare(s.Sheet.Width-left-right, s.Measured.Across)
		y := spare(s.Sheet.Height-top-bottom, s.Measured.Along)
		const dot = 0.3
		for _, e := range []struct{ want, got float64 }{
			{left.MM() + x, lo.X}, {(s.Sheet.Width - right).MM() - x, hi.X}, {top.MM() + y, lo.Y}, {(s.Sheet.Height - bottom).MM() - y, hi.Y},
		} {
			require.InDelta(t, e.want, e.got, dot, "page %d", seed+1)
		}
	}
}

// A page that lies is turned a quarter anticlockwise onto the sheet: its left is
// the sheet's bottom (RFC 8011, 5.2.10 "landscape", from memory), its words read
// upward, and those that read upward on the page are upside down.
func TestALyingPageIsTurnedOntoTheSheet(t *testing.T) {
	d := &pdf.Document{Title: "Lying"}
	addPage(d, 170, 120)
	last(d).Fill(geometry.Rectangle(geometry.Bx(0, 0, 20, 10)), render.Black) // upper left
	last(d).Text(render.Text{At: geometry.Pt(100, 60), String: "level", Size: 9, Color: render.Black})
	last(d).Text(render.Text{At: geometry.Pt(100, 60), String: "turned", Size: 9, Turned: true, Align: render.End, Color: render.Black})
	file := made(t, d)
	drawn := pdftest.Open(t, file)
	assert.InDelta(t, 170, drawn.Size(1).X, 0.01, "turned back by other code")
	lo, hi := drawn.Paths(1)[0].Bounds()
	for want, got := range map[float64]float64{0: lo.X + lo.Y, 20: hi.X, 10: hi.Y} {
		assert.InDelta(t, want, got, 0.01)
	}
	ctx, err := api.ReadAndValidate(bytes.NewReader(file), model.NewDefaultConfiguration())
	require.NoError(t, err)
	_, _, page, err := ctx.PageDict(1, false)
	require.NoError(t, err)
	assert.Greater(t, page.MediaBox.Height(), page.MediaBox.Width())
	assert.Zero(t, page.Rotate)
}
