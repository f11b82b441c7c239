package templates_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/plan/plantest"
	"forel/render"
	"forel/render/pagetest"
	"forel/render/templates"
)

// micron is what a size in a file may be off by, in millimetres.
const micron = 0.001

// drawings are those of the pieces of a scenario, read back once for all tests.
var drawings = plantest.Once(func(s scenario) map[string]drawing {
	return readPieces(plantest.Must{}, s.make(), on(plantest.Must{}, "A4"))
})

// readPieces reads back the drawing of every piece of a case, by name.
func readPieces(t require.TestingT, c plan.Plan, o templates.Options) map[string]drawing {
	out := map[string]drawing{}
	for _, p := range c.Pieces {
		d, err := readDrawing(templates.PieceSVG(c, p, o))
		require.NoError(t, err, p.Name)
		out[p.Name] = d
	}
	return out
}

// eachDrawing runs a test on the drawing of every piece of every scenario.
func eachDrawing(t *testing.T, test func(t *testing.T, s scenario, p geometry.Piece, d drawing)) {
	for _, s := range scenarios {
		for _, p := range s.make().Pieces {
			t.Run(s.name+"/"+p.Name, func(t *testing.T) { test(t, s, p, drawings(s)[p.Name]) })
		}
	}
}

// outline returns the outline of a drawing: the one closed run that is cut.
func outline(t require.TestingT, d drawing) drawn {
	var closed []drawn
	for _, p := range d.group("Cutting").paths {
		for _, r := range p.runs {
			if r.closed {
				closed = append(closed, r)
			}
		}
	}
	require.Len(t, closed, 1, "closed runs in the cutting group")
	return closed[0]
}

func bounds(points []xy) (lo, hi xy) {
	lo, hi = xy{math.Inf(1), math.Inf(1)}, xy{math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		lo = xy{min(lo.x, p.x), min(lo.y, p.y)}
		hi = xy{max(hi.x, p.x), max(hi.y, p.y)}
	}
	return lo, hi
}

// The whole set is there, under its trade names, and nothing more.
func TestSVGOneFileAPiece(t *testing.T) {
	for _, s := range scenarios {
		c, want := s.make(), s.cuts()
		files := map[string]bool{}
		for _, p := range c.Pieces {
			assert.Contains(t, want, p.Name)
			files[templates.FileName(p)] = true
		}
		assert.Len(t, files, len(want), s.name)
	}
}

// Width and height in mm equal to the viewBox's fix the real size: one user
// unit is one millimetre (W3C SVG 1.1, 7.2 and 7.7, CSS units).
func TestSVGUserUnitIsAMillimetre(t *testing.T) {
	eachDrawing(t, func(t *testing.T, _ scenario, _ geometry.Piece, d drawing) {
		for i, side := range []string{d.width, d.height} {
			number, ok := strings.CutSuffix(side, "mm")
			require.True(t, ok, "%q has no unit mm", side)
			mm, err := strconv.ParseFloat(number, 64)
			require.NoError(t, err)
			assert.Equal(t, d.viewBox[2+i], mm)
		}
	})
}

func TestSVGOutlineHasTheSizeOfTheDesign(t *testing.T) {
	eachDrawing(t, func(t *testing.T, s scenario, p geometry.Piece, d drawing) {
		want := s.cuts()[p.Name]
		lo, hi := bounds(outline(t, d).points)
		assert.InDelta(t, want.width, hi.x-lo.x, micron, "width")
		assert.InDelta(t, want.height, hi.y-lo.y, micron, "height")
		assert.Equal(t, want.count, p.Count)
	})
}

// All that is drawn lies within the viewBox, so that no program cuts it off.
func TestSVGNothingIsCutOff(t *testing.T) {
	eachDrawing(t, func(t *testing.T, _ scenario, _ geometry.Piece, d drawing) {
		x, y := d.viewBox[0], d.viewBox[1]
		for _, g := range d.groups {
			for _, p := range g.paths {
				for _, r := range p.runs {
					lo, hi := bounds(r.points)
					assert.True(t, lo.x > x && lo.y > y && hi.x < x+d.viewBox[2] && hi.y < y+d.viewBox[3], "%s %v", g.id, p.attr["d"])
				}
			}
		}
	})
}

// Groups carry the names of processing steps (ISO 19593-1, from memory), each
// once since ids are unique (XML 1.0, 3.3.1), and words stand apart from lines.
func TestSVGGroups(t *testing.T) {
	eachDrawing(t, func(t *testing.T, _ scenario, _ geometry.Piece, d drawing) {
		seen, last := map[string]bool{}, -1
		for _, g := range d.groups {
			place := slices.Index([]string{"Inside-cuts", "Cutting", "Creasing", "Positions", "Legend"}, g.id)
			assert.Greater(t, place, last, "%s is out of the order a machine needs", g.id)
			last = place
			seen[g.id] = true
			if g.id != "Legend" {
				assert.Empty(t, g.texts, "words in %s", g.id)
			}
		}
		assert.True(t, seen["Cutting"] && seen["Legend"])
	})
}

func TestSVGTitleAndDescription(t *testing.T) {
	eachDrawing(t, func(t *testing.T, s scenario, p geometry.Piece, d drawing) {
		count := regexp.MustCompile(`(^|[^\d.])` + fmt.Sprint(s.cuts()[p.Name].count) + `($|[^\d.])`)
		assert.Contains(t, d.title, p.Name)
		assert.Contains(t, d.desc, p.Name)
		assert.Regexp(t, count, d.desc)
		if p.Count > 1 {
			assert.Regexp(t, count, d.title)
		}
	})
}

// Every line of the piece is where the geometry has it, not turned, not
// mirrored: a template's upper left is the drawing's upper left.
func TestSVGLinesAreThoseOfThePiece(t *testing.T) {
	eachDrawing(t, func(t *testing.T, _ scenario, p geometry.Piece, d drawing) {
		lo, hi := bounds(outline(t, d).points)
		for id, paths := range map[string][]geometry.Path{"Inside-cuts": p.Slits, "Cutting": {p.Outline}, "Creasing": p.Folds, "Positions": p.Rulings()} {
			var got []drawn
			for _, m := range d.group(id).paths {
				got = append(got, m.runs...)
			}
			require.Len(t, got, len(paths), id)
			for i, path := range paths {
				require.Len(t, got[i].written, len(path.Vertices), "%s %d", id, i)
				assert.Equal(t, path.Closed, got[i].closed, "%s %d", id, i)
				for k, v := range path.Vertices {
					assert.InDelta(t, v.X.MM(), got[i].written[k].x-lo.x, micron)
					assert.InDelta(t, v.Y.MM(), hi.y-got[i].written[k].y, micron)
				}
			}
		}
	})
}

// Arcs keep their side and their size: a thumb hole, "a semicircular ... cut in
// the sides of a slipcase" (M. Roberts and D. Etherington, 1982), takes half a
// circle away, and a round top adds one.
func TestSVGArcs(t *testing.T) {
	const w, h, hole = 100, 60, 12
	p := geometry.Piece{
		Name: "side", Material: geometry.Board, Count: 1, Grain: geometry.GrainHeight,
		Outline: geometry.Path{Closed: true, Vertices: []geometry.Vertex{
			{Point: geometry.Pt(0, 0)},
			{Point: geometry.Pt(w, 0)},
			{Point: geometry.Pt(w, h/2-hole), Bulge: -1}, // into the piece
			{Point: geometry.Pt(w, h/2+hole)},
			{Point: geometry.Pt(w, h), Bulge: 1}, // out of it
			{Point: geometry.Pt(0, h)},
		}},
		Regions: []geometry.Region{{Name: "side", Room: geometry.Bx(0, 0, w, h)}},
	}
	d, err := readDrawing(templates.PieceSVG(octavo.make(), p, on(t, "A4")))
	require.NoError(t, err)
	points := outline(t, d).points
	lo, hi := bounds(points)
	assert.InDelta(t, w, hi.x-lo.x, micron)
	assert.InDelta(t, h+w/2, hi.y-lo.y, micron)
	var twice float64
	for i, a := range points {
		b := points[(i+1)%len(points)]
		twice += a.x*b.y - b.x*a.y
	}
	assert.InDelta(t, w*h+math.Pi/2*(w/2*w/2-hole*hole), math.Abs(twice/2), 0.5, "mm²")
}

// overlap returns how far two straight lines lie on each other.
func overlap(a, b, c, d xy) float64 {
	length := math.Hypot(b.x-a.x, b.y-a.y)
	if length == 0 {
		return 0
	}
	ux, uy := (b.x-a.x)/length, (b.y-a.y)/length
	along := func(p xy) float64 { return (p.x-a.x)*ux + (p.y-a.y)*uy }
	across := func(p xy) float64 { return (p.y-a.y)*ux - (p.x-a.x)*uy }
	if math.Abs(across(c)) > 2*micron || math.Abs(across(d)) > 2*micron {
		return 0
	}
	return min(length, max(along(c), along(d))) - max(0, min(along(c), along(d)))
}

// drawnTwice finds two straight lines of a drawing, cut, folded or ruled, that
// lie on each other for more than a hundredth of a millimetre.
func drawnTwice(d drawing) error {
	type line struct {
		of   string
		a, b xy
	}
	var lines []line
	for _, id := range []string{"Inside-cuts", "Cutting", "Creasing", "Positions"} {
		for _, p := range d.group(id).paths {
			for _, r := range p.runs {
				points := r.points
				if r.closed {
					points = append(points[:len(points):len(points)], points[0])
				}
				for i := 1; i < len(points); i++ {
					lines = append(lines, line{id, points[i-1], points[i]})
				}
			}
		}
	}
	for i, l := range lines {
		lo, hi := bounds([]xy{l.a, l.b})
		for _, m := range lines[:i] {
			if max(m.a.x, m.b.x) < lo.x-micron || min(m.a.x, m.b.x) > hi.x+micron ||
				max(m.a.y, m.b.y) < lo.y-micron || min(m.a.y, m.b.y) > hi.y+micron {
				continue
			}
			if o := overlap(l.a, l.b, m.a, m.b); o > 0.01 {
				return fmt.Errorf("%v and %v lie on each other for %.3f mm", l, m, o)
			}
		}
	}
	return nil
}

func TestSVGNothingIsDrawnTwice(t *testing.T) {
	eachDrawing(t, func(t *testing.T, _ scenario, _ geometry.Piece, d drawing) {
		assert.NoError(t, drawnTwice(d))
	})
}

// The same for books, linings and trims of any size.
func TestSVGNothingIsDrawnTwiceForAnyBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := pagetest.AnyCase(t).Plan()
		for _, p := range c.Pieces {
			d, err := readDrawing(templates.PieceSVG(c, p, on(t, "A4")))
			require.NoError(t, err)
			assert.NoError(t, drawnTwice(d), p.Name)
		}
	})
}

// style is how a line looks without its colour.
type style struct{ width, dash string }

// styles gathers how the lines of each layer look, over all pieces of a case.
func styles(t *testing.T, read map[string]drawing) map[string]style {
	t.Helper()
	out := map[string]style{}
	for _, d := range read {
		for _, g := range d.groups {
			if g.id == "Legend" {
				continue
			}
			for _, p := range g.paths {
				s, id := style{p.attr["stroke-width"], p.attr["stroke-dasharray"]}, g.id
				if id == "Inside-cuts" { // to whoever reads it a cut as any
					id = "Cutting"
				}
				if have, ok := out[id]; ok {
					require.Equal(t, have, s, "two looks in %s", id)
				}
				out[id] = s
				assert.Equal(t, "none", p.attr["fill"])
			}
		}
	}
	return out
}

// Whoever prints in black alone tells cut, fold and rule apart.
func TestSVGLinesDifferWithoutColour(t *testing.T) {
	got := styles(t, drawings(octavo))
	require.Len(t, got, 3)
	for a, sa := range got {
		for b, sb := range got {
			if a != b {
				assert.NotEqual(t, sa.width, sb.width, "%s and %s", a, b)
				assert.NotEqual(t, sa.dash, sb.dash, "%s and %s", a, b)
			}
		}
	}
}

// okabeIto are the eight colours of M. Okabe and K. Ito, "Color Universal
// Design" (2008), from memory.
var okabeIto = []string{"#000000", "#e69f00", "#56b4e9", "#009e73", "#f0e442", "#0072b2", "#d55e00", "#cc79a7"}

func colours(g group) map[string]bool {
	out := map[string]bool{}
	for _, m := range append(g.paths[:len(g.paths):len(g.paths)], g.texts...) {
		for _, a := range []string{m.attr["fill"], m.attr["stroke"]} {
			if a != "" && a != "none" {
				out[strings.ToLower(a)] = true
			}
		}
	}
	return out
}

func TestSVGColoursCanBeToldApart(t *testing.T) {
	eachDrawing(t, func(t *testing.T, _ scenario, _ geometry.Piece, d drawing) {
		for _, g := range d.groups {
			for c := range colours(g) {
				assert.Contains(t, okabeIto, c, g.id)
			}
		}
	})
}

func TestSVGColoursCanBeSet(t *testing.T) {
	o := on(t, "A4")
	want := map[string]string{"cutting": "#ff0000", "inside-cuts": "#00ffff", "creasing": "#123", "positions": "#00ff7f", "legend": "#404040"}
	for layer, hex := range want {
		c, err := render.ParseColor(hex)
		require.NoError(t, err)
		require.NoError(t, o.Theme.SetColor(layer, c))
	}
	want["creasing"] = "#112233" // CSS: each digit stands twice
	for name, d := range readPieces(t, octavo.make(), o) {
		for _, g := range d.groups {
			assert.Equal(t, map[string]bool{want[strings.ToLower(g.id)]: true}, colours(g), "%s, %s", name, g.id)
		}
	}
}

// A title that no XML file may hold as it is must not break a drawing, and
// what of it can be shown is shown.
func TestSVGHostileTitle(t *testing.T) {
	for _, title := range []string{
		"<&\"' \x00 ☃ \xff\xfe",
		"]]> <!-- -- --> <?x?> </title>",
		"\ufffe\uffff\u0085\u2028\x1b\r\n\t",
		"\xed\xa0\x80 half a surrogate",
		strings.Repeat("漢", 300),
	} {
		j := octavo.job()
		j.Title = title
		c := planOf(t, j)
		for _, p := range c.Pieces {
			d, err := readDrawing(templates.PieceSVG(c, p, on(t, "A4")))
			require.NoError(t, err, "%q", title)
			for _, r := range "<>&\"'-☃漢]?" {
				assert.Equal(t, strings.Count(title, string(r)), strings.Count(d.title, string(r)), "%q of %q in %q", r, title, d.title)
			}
			outline(t, d)
		}
	}
}

// For a machine every line is as fine as asked for and solid, words are lines too, and the
// cuts are those of the drawing to be read.
func TestSVGForAMachine(t *testing.T) {
	for _, s := range few() {
		c, o := s.make(), on(t, "A4")
		plain := drawings(s)
		o.Line = 0.02
		for name, d := range readPieces(t, c, o) {
			for _, g := range d.groups {
				assert.Empty(t, g.texts, "text that needs a typeface")
				for _, p := range g.paths {
					assert.Equal(t, "0.02", p.attr["stroke-width"], g.id)
					assert.Empty(t, p.attr["stroke-dasharray"], g.id)
					assert.Equal(t, "none", p.attr["fill"], g.id)
				}
				if g.id != "Legend" {
					for i, p := range plain[name].group(g.id).paths {
						assert.Equal(t, p.attr["d"], g.paths[i].attr["d"])
					}
				}
			}
			assert.NotEmpty(t, d.group("Legend").paths)
		}
	}
}
