package bench_test

import (
	"fmt"
	"math"
	"strings"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/paper/bench"
)

// testingT is a test, or one of many of a property.
type testingT interface {
	require.TestingT
	Helper()
}

// rect is a piece of material on the table of this test: it knows where on its
// sheet it came from.
type rect struct{ x, y, w, h float64 }

func (r rect) String() string { return fmt.Sprintf("%.4f x %.4f at %.4f, %.4f", r.w, r.h, r.x, r.y) }

func boxed(b geometry.Box) rect {
	return rect{b.Min.X.MM(), b.Min.Y.MM(), b.Width().MM(), b.Height().MM()}
}

func alike(a, b rect) bool {
	const tiny = 2e-3
	return math.Abs(a.x-b.x) < tiny && math.Abs(a.y-b.y) < tiny && math.Abs(a.w-b.w) < tiny && math.Abs(a.h-b.h) < tiny
}

// simulate does what the numbered cuts of a group say, and nothing else: it
// lays a part to the fence, cuts from edge to edge, and keeps what falls to
// either side. In the end there must lie on the table exactly the pieces and
// what is left over.
func simulate(t testingT, g bench.Group) {
	t.Helper()
	table := make([]map[string]rect, len(g.Sheets)) // parts that are cut on, by name
	pieces := make([]map[int]rect, len(g.Sheets))
	offcuts := make([]map[int]rect, len(g.Sheets))
	rolled := map[int]float64{} // by stock: how much is off the roll
	for i, s := range g.Sheets {
		table[i], pieces[i], offcuts[i] = map[string]rect{}, map[int]rect{}, map[int]rect{}
		if !s.Roll {
			st := g.Stock[s.Stock]
			require.Equal(t, []geometry.Length{st.Width, st.Height}, []geometry.Length{s.Width, s.Height})
			table[i][fmt.Sprint(s.Number)] = rect{0, 0, s.Width.MM(), s.Height.MM()}
		}
	}
	kerf := 0.0
	for _, s := range g.Stock {
		kerf = math.Max(kerf, s.Kerf.MM())
	}
	setting, fence := 0, math.NaN()
	for n, c := range g.Cuts {
		require.Equal(t, n+1, c.Number)
		at := fmt.Sprintf("cut %d of sheet %d", c.Number, g.Sheets[c.Sheet].Number)
		f := c.Fence.MM()
		require.Positive(t, f, at)
		if c.Setting > 0 {
			if c.Setting != setting {
				require.Equal(t, setting+1, c.Setting, at)
				require.False(t, f == fence, "%s: the fence is moved but stays", at)
			} else {
				require.InDelta(t, fence, f, 1e-5, at)
			}
			setting, fence = c.Setting, f
		}
		st := g.Stock[g.Sheets[c.Sheet].Stock]
		if c.Part == "the roll" {
			rolled[g.Sheets[c.Sheet].Stock] += f
			if c.Kind == bench.CutOff {
				table[c.Sheet][c.Takes.Part] = rect{0, 0, st.Width.MM(), f}
			}
			continue
		}
		p, ok := table[c.Sheet][c.Part]
		require.True(t, ok, "%s: no part %q on the table", at, c.Part)
		delete(table[c.Sheet], c.Part)
		lost := kerf
		if c.Kind == bench.Square {
			lost = 0 // the fence tells what goes away, the blade's width in it
		}
		first, second := p, p
		if c.AlongY {
			require.LessOrEqual(t, f, p.w+2e-3, at)
			first.w = f
			second.x, second.w = p.x+f+lost, p.w-f-lost
			require.InDelta(t, p.x+f, c.From.X.MM(), 2e-3, at)
			require.InDelta(t, p.y, c.From.Y.MM(), 2e-3, at)
			require.InDelta(t, p.y+p.h, c.To.Y.MM(), 2e-3, at)
		} else {
			require.LessOrEqual(t, f, p.h+2e-3, at)
			first.h = f
			second.y, second.h = p.y+f+lost, p.h-f-lost
			require.InDelta(t, p.y+f, c.From.Y.MM(), 2e-3, at)
			require.InDelta(t, p.x, c.From.X.MM(), 2e-3, at)
			require.InDelta(t, p.x+p.w, c.To.X.MM(), 2e-3, at)
		}
		put := func(r bench.Result, is rect) {
			switch r.Kind {
			case bench.Nothing:
				if c.Kind != bench.Square {
					require.Less(t, math.Min(is.w, is.h), 2e-3, "%s: %v is nothing", at, is)
				}
				return
			case bench.APart:
				_, twice := table[c.Sheet][r.Part]
				require.False(t, twice, "%s: a second part %s", at, r.Part)
				table[c.Sheet][r.Part] = is
			case bench.APiece:
				_, twice := pieces[c.Sheet][r.Piece]
				require.False(t, twice, at)
				pieces[c.Sheet][r.Piece] = is
			default:
				offcuts[c.Sheet][r.Off] = is
			}
			require.True(t, alike(boxed(r.Box), is), "%s: says %v, is %v", at, boxed(r.Box), is)
		}
		put(c.Takes, first)
		put(c.Leaves, second)
	}
	require.Equal(t, g.Settings, setting)
	for i, s := range g.Sheets {
		at := fmt.Sprintf("sheet %d of %s", s.Number, g.Material)
		assert.Empty(t, table[i], "%s: parts never finished", at)
		require.Len(t, pieces[i], len(s.Pieces), at)
		st := g.Stock[s.Stock]
		for n, p := range s.Pieces {
			got := pieces[i][n]
			require.True(t, alike(boxed(p.Box), got), at)
			w, h := p.Width.MM(), p.Height.MM()
			if p.Turned {
				w, h = h, w
			}
			require.InDelta(t, w, got.w, 2e-3, "%s: %s", at, p.Name)
			require.InDelta(t, h, got.h, 2e-3, "%s: %s", at, p.Name)
			if st.Grain != "none" && p.Grain != "" {
				require.Equal(t, p.Turned, p.Grain != st.Grain, "%s: %s has its grain across", at, p.Name)
			}
			trim := st.Trim.MM()
			require.GreaterOrEqual(t, got.x, trim-2e-3, at)
			require.LessOrEqual(t, got.x+got.w, s.Width.MM()-trim+2e-3, at)
			if !s.Roll {
				require.GreaterOrEqual(t, got.y, trim-2e-3, at)
				require.LessOrEqual(t, got.y+got.h, s.Height.MM()-trim+2e-3, at)
			}
		}
		require.Len(t, offcuts[i], len(s.Offcuts), at)
		for n, o := range s.Offcuts {
			require.True(t, alike(boxed(o.Box), offcuts[i][n]), at)
		}
	}
	for _, u := range g.Used {
		if st := g.Stock[u.Stock]; st.Roll && kerf == 0 {
			assert.InDelta(t, rolled[u.Stock], u.Length.MM(), 1e-3)
		}
	}
}

// complete tells that every piece of every job lies on some sheet, once.
func complete(t testingT, p bench.Plan) {
	t.Helper()
	want, got := map[string]int{}, map[string]int{}
	cut := map[string][2]geometry.Length{}
	for _, g := range p.Groups {
		for _, s := range g.Sheets {
			for _, q := range s.Pieces {
				cut[fmt.Sprint(q.Job, q.Name)] = [2]geometry.Length{q.Width, q.Height}
			}
		}
	}
	for n, j := range p.Jobs {
		for _, piece := range j.Plan.Pieces {
			w, h := piece.Size() // and what is trimmed later as much larger as it was cut
			if size, ok := cut[fmt.Sprint(n, piece.Name)]; ok && (piece.Trimmed || piece.Material.Like() == geometry.Cloth) {
				step := 5.0
				if j.Unit == geometry.IN {
					step = 6.35
				}
				for i, more := range []float64{size[0].MM() - w.MM(), size[1].MM() - h.MM()} {
					require.True(t, more > -1e-6 && more < step, "%s is cut %.3f larger", piece.Name, more)
					if more > 1e-6 {
						require.InDelta(t, 0, math.Remainder(size[i].MM(), step), 1e-6)
					}
				}
				w, h = size[0], size[1]
			}
			want[fmt.Sprintf("%d %s %s %.4f %.4f %s", n, piece.Name, piece.Material, w.MM(), h.MM(), piece.Grain)] += piece.Count
		}
	}
	for _, g := range p.Groups {
		for _, s := range g.Sheets {
			for _, q := range s.Pieces {
				got[fmt.Sprintf("%d %s %s %.4f %.4f %s", q.Job, q.Name, g.Material, q.Width.MM(), q.Height.MM(), q.Grain)]++
			}
		}
	}
	require.Equal(t, want, got)
}

// fitted tells that every board is cut to its size by cuts at the fence of its own, in both
// directions, or its plan tells of it: none is what other cuts leave.
func fitted(t testingT, p bench.Plan) {
	t.Helper()
	for _, g := range p.Groups {
		if like := g.Material.Like(); like != geometry.Board && like != geometry.Card && like != geometry.Corrugated {
			continue
		}
		told := ""
		for _, r := range g.Remarks {
			told += fmt.Sprint(r) + "\n"
		}
		for i, s := range g.Sheets {
			for n, q := range s.Pieces {
				var across, down bool // cut at the fence
				for _, c := range g.Cuts {
					if c.Sheet != i || c.Kind == bench.Square {
						continue
					}
					b := q.Box // the fence lies at its left or upper edge, the blade at the other
					if c.AlongY {
						across = across || alikeLength(c.From.X, b.Max.X) && alikeLength(c.From.X-c.Fence, b.Min.X) && c.From.Y <= b.Min.Y+0.002 && c.To.Y >= b.Max.Y-0.002
					} else {
						down = down || alikeLength(c.From.Y, b.Max.Y) && alikeLength(c.From.Y-c.Fence, b.Min.Y) && c.From.X <= b.Min.X+0.002 && c.To.X >= b.Max.X-0.002
					}
				}
				across, down = across || alikeLength(q.Box.Width(), s.Width), down || alikeLength(q.Box.Height(), s.Height)
				if !across || !down {
					require.Contains(t, told, fmt.Sprintf("%s of %s on sheet %d is what is left of a strip", q.Name, p.Jobs[q.Job].Title(), s.Number), "piece %d", n+1)
				}
			}
		}
	}
}

func alikeLength(a, b geometry.Length) bool { return (a - b).Abs() < 2e-3 }

// sound does all of it.
func sound(t testingT, p bench.Plan) {
	t.Helper()
	complete(t, p)
	fitted(t, p)
	for _, g := range p.Groups {
		simulate(t, g)
	}
}

func summary(p bench.Plan) string {
	var b strings.Builder
	for _, g := range p.Groups {
		bought, pieces, kept := g.Areas()
		fmt.Fprintf(&b, "%s %.2f: %d sheets, %d cuts, %d settings, %.1f %% used, %.1f %% kept, %d remarks\n", g.Material, g.Thickness.MM(), len(g.Sheets), len(g.Cuts), g.Settings,
			pieces/bought*100, kept/bought*100, len(g.Remarks))
	}
	return b.String()
}
