package cutter_test

import (
	"context"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/onepiece"
	"forel/geometry/plan/plantest"
	"forel/geometry/slipcase"
	"forel/paper/bed"
	"forel/paper/pack"
	"forel/render"
	"forel/render/cutter"
)

// micron is what a size in a file may be off by, in millimetres.
const micron = 0.001

type L = geometry.Length

// invented gives the pieces of two cases of boards, with wedges, slits, a wrap and
// thumb holes, and of one of card.
func invented(t *testing.T) []bed.Job {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: job.Readings{221}, Width: job.Readings{148.5}, Thickness: job.Readings{32}}}
	j.ThumbHole.Shape = slipcase.Semicircle
	wrapped := j
	wrapped.Covering, wrapped.ThumbHole.Shape = slipcase.AllPaper, slipcase.NoHole
	var jobs []bed.Job
	for i, job := range []slipcase.Job{j, wrapped} {
		c, err := plantest.Make[slipcase.Case](job)
		require.NoError(t, err)
		jobs = append(jobs, bed.Job{Name: []string{"Harbour log", "Tide log"}[i], Pieces: c.Pieces})
	}
	card := onepiece.DefaultJob(geometry.MM)
	card.Books = j.Books[:1]
	c, err := plantest.Make[onepiece.Case](card)
	require.NoError(t, err)
	return append(jobs, bed.Job{Name: "Card log", Pieces: c.Pieces})
}

func setup(kerf L, tabs int) bed.Setup {
	s := bed.Default()
	s.Width, s.Height, s.Kerf, s.Tabs = 700, 500, kerf, tabs
	return s
}

func beds(t *testing.T, s bed.Setup) []bed.Bed {
	b, err := bed.Lay(context.Background(), s, invented(t), pack.Effort{Iterations: 20})
	require.NoError(t, err)
	return b
}

var plain = cutter.Options{Beds: 9, Line: 0.02, Theme: render.MachineTheme()}

// number is that of a part, from a group's id such as "Cutting.3.side".
func number(t *testing.T, e element) int {
	words := strings.Split(e.attr("id"), ".")
	require.GreaterOrEqual(t, len(words), 3)
	n, err := strconv.Atoi(words[1])
	require.NoError(t, err)
	return n - 1
}

// layer gives the groups of a layer.
func layer(drawing element, name render.Layer) []element {
	for _, g := range drawing.Inner {
		if g.XMLName.Local == "g" && g.attr("id") == string(name) {
			var parts []element
			for _, c := range g.Inner {
				if c.XMLName.Local == "g" {
					parts = append(parts, c)
				}
			}
			return parts
		}
	}
	return nil
}

// Read back from the finished file, every outline is grown by half the kerf on
// each side, lies on the bed within its margin and off its neighbours, and
// every slit is as long as the piece has it.
func TestReadBack(t *testing.T) {
	for _, kerf := range []L{0, 0.18, 0.5} {
		s := setup(kerf, 0)
		laid := map[string]int{}
		for _, b := range beds(t, s) {
			d, err := read(cutter.SVG(b, s, plain))
			require.NoError(t, err)
			assert.Equal(t, "700.0000mm", d.attr("width"))
			assert.Equal(t, "500.0000mm", d.attr("height"))
			assert.Equal(t, "0.0000 0.0000 700.0000 500.0000", d.attr("viewBox"))
			outlines := layer(d, render.Cutting)
			require.Len(t, outlines, len(b.Parts))
			var boxes [][2]xy
			for _, e := range outlines {
				p := b.Parts[number(t, e)].Piece
				turned := b.Parts[number(t, e)].Turned
				runs, err := e.runs()
				require.NoError(t, err)
				require.Len(t, runs, 1, p.Name)
				require.True(t, runs[0].closed)
				lo, hi := box(runs)
				w, h := p.Size()
				if turned {
					w, h = h, w
				}
				assert.InDelta(t, (w + kerf).MM(), hi.x-lo.x, micron, p.Name)
				assert.InDelta(t, (h + kerf).MM(), hi.y-lo.y, micron, p.Name)
				assert.GreaterOrEqual(t, min(lo.x, lo.y, 700-hi.x, 500-hi.y), s.Margin.MM()-micron, p.Name)
				for _, o := range boxes {
					gap := max(o[0].x-hi.x, lo.x-o[1].x, o[0].y-hi.y, lo.y-o[1].y)
					assert.GreaterOrEqual(t, gap, s.Gap.MM()-micron, "%s lies too near another", p.Name)
				}
				boxes = append(boxes, [2]xy{lo, hi})
				if kerf == 0 {
					assert.InDelta(t, p.Outline.SignedArea(), runs[0].area(), 0.05, p.Name)
				}
				_, name, _ := strings.Cut(e.child("title").Text, ": ")
				laid[name]++
				assert.Contains(t, e.child("title").Text, p.Name)
			}
			for _, e := range append(layer(d, render.InsideCuts), layer(d, render.Creasing)...) {
				part := number(t, e)
				runs, err := e.runs()
				require.NoError(t, err)
				for _, r := range runs {
					assert.False(t, r.closed)
					for _, q := range r.points { // on its own piece
						within := q.x > boxOf(t, outlines, part)[0].x-micron && q.x < boxOf(t, outlines, part)[1].x+micron
						assert.True(t, within, "%s leaves its piece", e.attr("id"))
					}
				}
			}
			assert.InDelta(t, slits(b), total(t, layer(d, render.InsideCuts)), 0.01)
			assert.InDelta(t, folds(b), total(t, layer(d, render.Creasing)), 0.01)
		}
		cut := 0
		for _, job := range invented(t) {
			for _, p := range job.Pieces {
				cut += p.Count
			}
		}
		assert.Len(t, laid, cut, "each piece as often as it is cut, by a name of its own")
	}
}

func boxOf(t *testing.T, outlines []element, part int) [2]xy {
	for _, e := range outlines {
		if number(t, e) == part {
			runs, err := e.runs()
			require.NoError(t, err)
			lo, hi := box(runs)
			return [2]xy{lo, hi}
		}
	}
	return [2]xy{}
}

func total(t *testing.T, parts []element) (sum float64) {
	for _, e := range parts {
		runs, err := e.runs()
		require.NoError(t, err)
		for _, r := range runs {
			sum += r.length()
		}
	}
	return sum
}

func slits(b bed.Bed) (sum float64) {
	for _, p := range b.Parts {
		for _, c := range p.Piece.Slits {
			sum += length(c)
		}
	}
	return sum
}

// folds are creased of what a machine creases: cloth and paper are folded by hand, and
// corrugated board is crushed.
func folds(b bed.Bed) (sum float64) {
	if like := b.Material.Like(); like == geometry.Cloth || like == geometry.Paper || like == geometry.Corrugated {
		return 0
	}
	for _, p := range b.Parts {
		for _, c := range p.Piece.Folds {
			sum += length(c)
		}
	}
	return sum
}

func length(p geometry.Path) (sum float64) {
	pts := p.Flatten(1e-5)
	for i := range pts[1:] {
		sum += pts[i].Distance(pts[i+1]).MM()
	}
	return sum
}

// An arc is an arc in the file, about the same centre, its radius less half the
// kerf where the piece goes round a thumb hole.
func TestArcsStayArcs(t *testing.T) {
	s := setup(0.2, 0)
	arcs := 0
	for _, b := range beds(t, s) {
		file := string(cutter.SVG(b, s, plain))
		for _, p := range b.Parts {
			if p.Piece.Name != "side" || p.Job != "Harbour log" {
				continue
			}
			for _, seg := range p.Piece.Outline.Segments() {
				if seg.Bulge != 0 {
					_, r, _, _ := seg.Arc()
					assert.Contains(t, file, fmt.Sprintf(" A %s %s 0 ", num(r-0.1), num(r-0.1)))
					arcs++
				}
			}
		}
	}
	assert.Positive(t, arcs)
}

func num(l L) string {
	return strings.TrimRight(strings.TrimRight(strconv.FormatFloat(l.MM(), 'f', 4, 64), "0"), ".")
}

// Tabs are gaps of their width and the kerf, and outlines are otherwise whole.
func TestTabsInTheFile(t *testing.T) {
	s := setup(0.2, 3)
	for _, b := range beds(t, s) {
		d, err := read(cutter.SVG(b, s, plain))
		require.NoError(t, err)
		for _, e := range layer(d, render.Cutting) {
			runs, err := e.runs()
			require.NoError(t, err)
			require.Len(t, runs, 3)
			for i, r := range runs {
				assert.False(t, r.closed)
				end, next := r.points[len(r.points)-1], runs[(i+1)%3].points[0]
				assert.InDelta(t, 0.5+0.2, math.Hypot(end.x-next.x, end.y-next.y), micron)
			}
		}
	}
}

// Layers stand in the order they are done, what is to be read stays off them, and
// the description tells what to take care of.
func TestLayersAndWords(t *testing.T) {
	s := setup(0.2, 0)
	for _, labels := range []bool{false, true} {
		for _, b := range beds(t, s) {
			o := plain
			o.Labels = labels
			d, err := read(cutter.SVG(b, s, o))
			require.NoError(t, err)
			var order []string
			for _, g := range d.Inner {
				if g.XMLName.Local == "g" {
					order = append(order, g.attr("id"))
					for _, c := range g.Inner {
						assert.Equal(t, "g", c.XMLName.Local, "no text needs a typeface")
					}
				}
			}
			want := []string{}
			for _, l := range []string{"Positions", "Legend", "Creasing", "Inside-cuts", "Cutting"} {
				if strings.Contains(" "+strings.Join(order, " ")+" ", " "+l+" ") {
					want = append(want, l)
				}
			}
			assert.Equal(t, want, order)
			assert.Equal(t, labels, strings.Contains(strings.Join(order, " "), "Legend"))
			desc := d.child("desc").Text
			for _, part := range []string{"Kerf 0.2 mm", "chlorinated", "unattended", "extraction", "maker's manual", "Local rules", "grain along the height"} {
				assert.Contains(t, desc, part)
			}
			assert.Equal(t, b.Material == geometry.Card, strings.Contains(desc, "never through"))
			assert.Contains(t, d.child("title").Text, string(b.Material))
		}
	}
}

// The same jobs give the same bytes.
func TestRepeatable(t *testing.T) {
	s := setup(0.2, 2)
	one, two := beds(t, s), beds(t, s)
	for i := range one {
		assert.Equal(t, cutter.SVG(one[i], s, plain), cutter.SVG(two[i], s, plain))
	}
}
