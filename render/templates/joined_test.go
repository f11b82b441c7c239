package templates_test

import (
	"cmp"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/paper"
	"forel/render"
	"forel/render/templates"
)

// Patterns are joined here as a maker joins them, from the pixels of the
// finished file alone: every tile is cut out of its page, laid on a neighbour so
// that the marks of the same name meet, and cut on the join. What comes out is
// compared with the drawing of the piece, rendered by other people's code.
//
// By default a few jobs are joined, by their number in joinedJobs and the sheet.
// All 22 on A4 and Letter, some minutes' work, or others:
//
//	FOREL_JOIN=all go test ./render/templates -run TestJoinedPages -v -timeout 60m
//	FOREL_JOIN=2/A4,2/Letter go test ./render/templates -run TestJoinedPages -v

// seenTile is a tile in the pixels: how much of each pixel is cut line, and the
// registration marks, in millimetres on the page.
type seenTile struct {
	paper.Tile
	w, h  int
	cut   []uint8
	black []bool // other ink, which may lie on a cut line
	toPx  affine // from millimetres on the page
	marks map[string]xy
	lay   affine // from millimetres on the page to those on the first tile's page
	laid  bool
}

// tampering spoils a print, to show that the comparison finds it.
type tampering struct {
	scale float64 // of every page
	shift xy      // of the last tile, when it is laid
	turn  float64 // of the last tile, about its corner
}

// see renders a tile from its page.
func see(t *testing.T, v *viewed, before int, tile paper.Tile) *seenTile {
	t.Helper()
	page := before + tile.Page + 1
	r := tile.Room
	p := v.render(page, fineDPI, xy{r.Min.X.MM(), r.Min.Y.MM()}, xy{r.Max.X.MM(), r.Max.Y.MM()})
	b := p.image.Bounds()
	s := &seenTile{Tile: tile, w: b.Dx(), h: b.Dy(), marks: marks(t, v.phrases(page), page, p)}
	s.toPx = moved(xy{-p.from.x, -p.from.y}).then(scaled(p.scale.x, p.scale.y))
	s.cut, s.black = make([]uint8, s.w*s.h), make([]bool, s.w*s.h)
	for y := range s.h {
		row := p.image.Pix[y*p.image.Stride:]
		for x := range s.w {
			c := row[4*x : 4*x+3]
			if c[0] > c[1] && c[0] > c[2] {
				s.cut[y*s.w+x] = c[0] - max(c[1], c[2])
			}
			s.black[y*s.w+x] = c[0] < 224
		}
	}
	return s
}

// spoilt returns a tile as it comes from a printer that scales.
func (s seenTile) spoilt(scale float64) *seenTile {
	as := s.marks
	s.marks = map[string]xy{}
	for name, m := range as {
		s.marks[name] = xy{m.x * scale, m.y * scale}
	}
	s.toPx = scaled(1/scale, 1/scale).then(s.toPx)
	return &s
}

// cover returns how much of a place, in pixels, is cut line, 0 to 255, between the
// four pixels round it.
func (s *seenTile) cover(p xy) float64 {
	fx, fy := math.Floor(p.x-0.5), math.Floor(p.y-0.5)
	x, y := int(fx), int(fy)
	if x < 0 || y < 0 || x+1 >= s.w || y+1 >= s.h {
		return 0
	}
	u, v := p.x-0.5-fx, p.y-0.5-fy
	at := s.cut[y*s.w+x:]
	return (float64(at[0])*(1-u)+float64(at[1])*u)*(1-v) + (float64(at[s.w])*(1-u)+float64(at[s.w+1])*u)*v
}

// joinTally is the most that was seen, in millimetres, angles in radians.
type joinTally struct {
	templates, tiled, tiles      int
	meet, angle, whole, together float64
}

// layTiles lays tiles one on the other: each on one that lies already, by the
// two marks of their join.
func layTiles(t *testing.T, all []*seenTile, tally *joinTally, what string) {
	t.Helper()
	all[0].lay, all[0].laid = moved(xy{}), true
	for range all {
		for _, a := range all {
			for _, b := range all {
				if !a.laid || b.laid || max(a.Row-b.Row, b.Row-a.Row)+max(a.Col-b.Col, b.Col-a.Col) != 1 {
					continue
				}
				var from, to []xy
				for name, at := range a.marks {
					// A mark near a corner may show on a third tile.
					if other, shared := b.marks[name]; shared && onJoin(a, b, at) {
						from, to = append(from, other), append(to, a.lay.apply(at))
					}
				}
				require.Len(t, from, 2, "%s: marks on the join of %d,%d and %d,%d", what, a.Row, a.Col, b.Row, b.Col)
				var turn float64
				b.lay, turn = laidOn([2]xy(from), [2]xy(to))
				b.laid = true
				tally.angle = max(tally.angle, math.Abs(turn))
			}
		}
	}
	for i, a := range all {
		require.True(t, a.laid, "%s: row %d, column %d shares no join with another", what, a.Row, a.Col)
		for _, b := range all[:i] {
			for name, m := range a.marks {
				if n, ok := b.marks[name]; ok {
					p, q := a.lay.apply(m), b.lay.apply(n)
					off := math.Hypot(p.x-q.x, p.y-q.y)
					assert.LessOrEqual(t, off, tenth, "%s: mark %s", what, name)
					tally.meet = max(tally.meet, off)
				}
			}
		}
	}
}

// onJoin tells whether a mark seen on a tile lies within a millimetre of the
// side on which it meets another.
func onJoin(a, b *seenTile, at xy) bool {
	dx, dy := a.ToPage()
	var off geometry.Length
	switch {
	case b.Col > a.Col:
		off = geometry.Length(at.x) - (a.Core.Max.X + dx)
	case b.Col < a.Col:
		off = geometry.Length(at.x) - (a.Core.Min.X + dx)
	case b.Row > a.Row:
		off = geometry.Length(at.y) - (dy - a.Core.Min.Y)
	default:
		off = geometry.Length(at.y) - (dy - a.Core.Max.Y)
	}
	return off.Abs() < 1
}

// compose returns the cut lines of the joined tiles as the drawing has them, in
// the drawing's pixels. toDrawing takes millimetres of the template as it lies
// to the drawing's pixels. A tile counts up to its joins. hidden is where other
// ink is on the tiles, such as the line from a word to what it names.
func compose(all []*seenTile, toDrawing affine, w, h int) (out, hidden *bitmap) {
	out, hidden = newBitmap(w, h), newBitmap(w, h)
	dx, dy := all[0].ToPage()
	toPattern := affine{1, 0, 0, -1, -dx.MM(), dy.MM()} // from the first tile's page
	for _, s := range all {
		step := s.toPx.inverse().then(s.lay).then(toPattern)
		whole := step.then(toDrawing)
		back := whole.inverse()
		fromDrawing := toDrawing.inverse()
		for y := range s.h {
			for x := range s.w {
				if s.cut[y*s.w+x] < 8 && !s.black[y*s.w+x] {
					continue
				}
				to := whole.apply(xy{float64(x) + 0.5, float64(y) + 0.5})
				if s.black[y*s.w+x] {
					for i := range 9 {
						hidden.set(int(to.x)+i%3-1, int(to.y)+i/3-1)
					}
					continue
				}
				for i := int(to.x) - 1; i <= int(to.x)+1; i++ {
					for k := int(to.y) - 1; k <= int(to.y)+1; k++ {
						if out.at(i, k) {
							continue
						}
						mid := xy{float64(i) + 0.5, float64(k) + 0.5}
						p := fromDrawing.apply(mid)
						at := geometry.Pt(geometry.Length(p.x), geometry.Length(p.y))
						if s.Core.Contains(geometry.Box{Min: at, Max: at}) && s.cover(back.apply(mid)) >= 128 {
							out.set(i, k)
						}
					}
				}
			}
		}
	}
	return out, hidden
}

// pattern is what is joined, and what it is held against.
type pattern struct {
	tiles     []*seenTile
	want      *bitmap // the cut lines of the drawing
	toDrawing affine  // from the template as it lies to the drawing's pixels
}

// patternOf looks at a template and its drawing.
func patternOf(t *testing.T, v *viewed, c printed, i int) (p pattern) {
	t.Helper()
	tiling := c.layout.Tilings[i]
	for _, tile := range tiling.Tiles {
		p.tiles = append(p.tiles, see(t, v, v.Pages-len(c.layout.Pages), tile))
	}
	file := templates.PieceSVG(c.Plan, c.Pieces[i], c.o)
	p.want = cutLines(t, file)
	require.Greater(t, p.want.ink(), 1000)
	d, err := readDrawing(file)
	require.NoError(t, err)
	lo, hi := bounds(outline(t, d).points)
	toPiece := moved(xy{})
	if tiling.Turned { // a quarter counterclockwise, from the origin again: taken back
		toPiece = affine{0, -1, 1, 0, 0, hi.y - lo.y}
	}
	p.toDrawing = toPiece.then(affine{1, 0, 0, -1, lo.x, hi.y}).then(scaled(finePx, finePx))
	return p
}

// join joins one template and returns how far it is from its drawing.
func (p pattern) join(t *testing.T, spoilt tampering, tally *joinTally, what string) float64 {
	t.Helper()
	var all []*seenTile
	for _, tile := range p.tiles {
		all = append(all, tile.spoilt(cmp.Or(spoilt.scale, 1)))
	}
	layTiles(t, all, tally, what)
	if last := all[len(all)-1]; spoilt.turn != 0 || spoilt.shift != (xy{}) {
		last.lay = last.lay.then(turnedBy(spoilt.turn)).then(moved(spoilt.shift))
	}
	want := p.want
	got, hidden := compose(all, p.toDrawing, want.w, want.h)
	for n := range hidden.bits { // what is hidden can't be compared; it must be little
		hidden.bits[n] &= want.bits[n] &^ got.bits[n]
		got.bits[n] |= hidden.bits[n]
	}
	require.Less(t, hidden.ink(), want.ink()/100, "%s: pixels of the cut lines under other ink", what)
	off, at := deviation(got, want)
	if spoilt == (tampering{}) && off > tenth {
		t.Errorf("%s: %.3f mm off at %.1f, %.1f mm of the drawing", what, off, float64(at.X)/finePx, float64(at.Y)/finePx)
	}
	return off
}

// inRed returns a job with its cutting lines in red, to tell them from all other ink, and
// nothing printed over them.
func inRed(t *testing.T, j slipcase.Job, sheet string) printed {
	t.Helper()
	o := on(t, sheet)
	pure, err := render.ParseColor("#ff0000")
	require.NoError(t, err)
	require.NoError(t, o.Theme.SetColor("cutting", pure))
	cut := o.Theme[render.Cutting]
	cut.Width = 0.08 // renderers differ in the corners of thick lines
	o.Theme[render.Cutting], o.Theme[render.InsideCuts] = cut, cut
	for _, layer := range []render.Layer{render.Creasing, render.Positions} {
		s := o.Theme[layer] // folds that end on a cut line hide some of it
		s.Dash, s.Width = []geometry.Length{0.001, 10000}, 0.01
		o.Theme[layer] = s
	}
	return printedOn(planOf(t, j), o)
}

// joinedJobs are the jobs whose pages are joined: invented books from a
// pamphlet to a folio, in every covering, with and without thumb holes.
func joinedJobs() (out []slipcase.Job) {
	coverings := []string{slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.AllPaper, slipcase.SidesOnly}
	holes := []string{slipcase.NoHole, slipcase.Semicircle, slipcase.Triangle}
	add := func(s scenario, n int) {
		j := s.job()
		j.Title = "Invented, " + s.name
		j.Covering = coverings[n%len(coverings)]
		j.ThumbHole.Shape = holes[n/2%len(holes)]
		out = append(out, j)
	}
	for _, s := range scenarios {
		j := s.job()
		j.Title = "Invented " + s.name
		out = append(out, j)
	}
	for n, size := range [][3]float64{
		{155, 110, 15}, {180, 125, 40}, {210, 148, 22}, {235, 155, 28}, {250, 190, 60}, {265, 210, 18}, {280, 216, 35}, {297, 210, 12},
		{310, 240, 45}, {325, 250, 90}, {340, 260, 30}, {360, 180, 20}, {390, 290, 25}, {160, 240, 20}, {230, 330, 30}, {480, 360, 40},
	} {
		add(scenario{fmt.Sprintf("%.0f x %.0f x %.0f", size[0], size[1], size[2]), size[0], size[1], size[2], 0.15, slipcase.NoHole}, n)
	}
	return out
}

func TestJoinedPagesAreTheDrawings(t *testing.T) {
	jobs, onSheets := joinedJobs(), []string{"A4", "Letter"}
	usual := "1/Letter,5/A4"
	if testing.Short() {
		usual = "0/A4"
	}
	chosen := cmp.Or(os.Getenv("FOREL_JOIN"), usual)
	all := chosen == "all"
	if all {
		require.GreaterOrEqual(t, len(jobs), 20)
	}
	var tally joinTally
	for n, j := range jobs {
		for _, sheet := range onSheets {
			if !all && !slices.Contains(strings.Split(chosen, ","), fmt.Sprintf("%d/%s", n, sheet)) {
				continue
			}
			t.Run(sheet+", "+j.Title, func(t *testing.T) {
				c := inRed(t, j, sheet)
				v, worst := view(t, c.file()), 0.0
				for i, p := range c.layout.Tilings {
					if testing.Short() && p.Whole() {
						continue // measured by their pixels and paths too
					}
					off := patternOf(t, v, c, i).join(t, tampering{}, &tally, p.Piece.Name)
					worst = max(worst, off)
					tally.templates++
					if p.Whole() {
						tally.whole = max(tally.whole, off)
					} else {
						tally.tiled++
						tally.tiles += len(p.Tiles)
						tally.together = max(tally.together, off)
					}
				}
				t.Logf("%d templates on %d sheets: %.3f mm; so far %+v", len(c.layout.Tilings), len(c.layout.Pages), worst, tally)
			})
		}
	}
	assert.Positive(t, tally.tiled)
	assert.Less(t, tally.angle, 0.001, "tiles lie as they are printed, not turned")
	t.Logf("%d templates, %d of them joined of %d tiles: largest deviation %.3f mm joined, %.3f mm whole; marks meet within %.3f mm, turned by %.5f rad at most",
		tally.templates, tally.tiled, tally.tiles, tally.together, tally.whole, tally.meet, tally.angle)
}

// The comparison can fail: a print that is spoilt by less than a reader would
// see is found out.
func TestJoinedPagesOfSpoiltPrintsAreFound(t *testing.T) {
	c := inRed(t, octavo.job(), "A4")
	v := view(t, c.file())
	for i, p := range c.layout.Tilings {
		if p.Whole() {
			continue
		}
		whole := patternOf(t, v, c, i)
		var tally joinTally
		for name, spoilt := range map[string]tampering{
			"scaled by a thousandth":          {scale: 1.001},
			"shifted by 0.15 mm across":       {shift: xy{0.15, 0}},
			"shifted by 0.15 mm along":        {shift: xy{0, 0.15}},
			"turned by a millimetre in 1,000": {turn: 0.001},
		} {
			off := whole.join(t, spoilt, &tally, name)
			assert.Greater(t, off, tenth, "%s, %s", p.Piece.Name, name)
			t.Logf("%s, %s: %.3f mm", p.Piece.Name, name, off)
		}
		return
	}
	t.Fatal("nothing to join")
}
