package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What `forel stock --format json` says, as another program would read it.
type readPlan struct {
	Materials []struct {
		Material  string
		Thickness float64 `json:"thickness_mm"`
		Buy       []struct {
			Roll          bool
			Width, Height float64
			Sheets        int
			Length        float64 `json:"length_mm"`
			W             float64 `json:"width_mm"`
			H             float64 `json:"height_mm"`
			Grain         string
		}
		Sheets []struct {
			Sheet   int
			OffReal bool    `json:"off_roll"`
			W       float64 `json:"width_mm"`
			H       float64 `json:"height_mm"`
			Pieces  []struct {
				Number     int
				Job, Piece string
				X, Y       float64
				W          float64 `json:"width_mm"`
				H          float64 `json:"height_mm"`
				Turned     bool
			}
		}
		Cuts []struct {
			Cut, Setting, Sheet int
			Kind, Part          string
			Fence               float64 `json:"fence_mm"`
			Along               string  `json:"runs_along"`
			Gives, Leaves       *struct {
				Part, Offcut string
				Piece        int
				Waste        bool
			}
		}
	}
}

type readList struct {
	Title  string
	Pieces []struct {
		Name, Material, Grain string
		Count                 int
		W                     float64 `json:"width_mm"`
		H                     float64 `json:"height_mm"`
	}
}

func runs(t *testing.T, args ...string) []byte {
	t.Helper()
	var out, said bytes.Buffer
	require.Equal(t, statusOK, run(args, &out, &said), said.String())
	return out.Bytes()
}

// A class of twenty books is cut from the plan with nothing missing: the cuts
// are made one after the other on sheets of the sizes bought, from what the
// program printed alone, and what falls off is held against the cut lists of
// the twenty jobs.
func TestClassOfTwentyIsCut(t *testing.T) {
	files, err := filepath.Glob("../../testdata/class/*.toml")
	require.NoError(t, err)
	require.Len(t, files, 20)
	want := map[string]int{} // by job, name, material, size and grain
	for _, f := range files {
		var l readList
		require.NoError(t, json.Unmarshal(runs(t, "cutlist", f, "--format", "json"), &l))
		for _, p := range l.Pieces {
			want[fmt.Sprintf("%s|%s|%s|%.1f|%.1f|%s", l.Title, p.Name, p.Material, p.W, p.H, p.Grain)] += p.Count
		}
	}
	var plan readPlan
	require.NoError(t, json.Unmarshal(runs(t, append([]string{"stock", "--format", "json", "--effort", "500", "--exact"}, files...)...), &plan))
	got := map[string]int{}
	for _, m := range plan.Materials {
		type stuff struct{ w, h float64 }
		table := map[string]stuff{}
		numbers := map[int]int{} // sheet number to its place
		fallen := map[[2]int]stuff{}
		for i, s := range m.Sheets {
			numbers[s.Sheet] = i
			if !s.OffReal {
				table[fmt.Sprint(s.Sheet)] = stuff{s.W, s.H}
			}
		}
		for _, c := range m.Cuts {
			if c.Part == "the roll" {
				if c.Gives != nil {
					table[c.Gives.Part] = stuff{m.Sheets[numbers[c.Sheet]].W, c.Fence}
				}
				continue
			}
			p, ok := table[c.Part]
			require.True(t, ok, "cut %d: %s is not on the table", c.Cut, c.Part)
			delete(table, c.Part)
			near, far := p, p
			if c.Along == "height" {
				near.w, far.w = c.Fence, p.w-c.Fence
			} else {
				near.h, far.h = c.Fence, p.h-c.Fence
			}
			require.GreaterOrEqual(t, math.Min(far.w, far.h), -0.01, "cut %d", c.Cut)
			for n, r := range []*struct {
				Part, Offcut string
				Piece        int
				Waste        bool
			}{c.Gives, c.Leaves} {
				is := []stuff{near, far}[n]
				switch {
				case r == nil:
				case r.Part != "":
					require.NotContains(t, table, r.Part)
					table[r.Part] = is
				case r.Piece > 0:
					require.NotContains(t, fallen, [2]int{c.Sheet, r.Piece})
					fallen[[2]int{c.Sheet, r.Piece}] = is
				}
			}
		}
		require.Empty(t, table, "all is cut up")
		pieces := 0
		for _, s := range m.Sheets {
			for _, p := range s.Pieces {
				pieces++
				is, ok := fallen[[2]int{s.Sheet, p.Number}]
				require.True(t, ok, "piece %d of sheet %d never falls", p.Number, s.Sheet)
				require.InDelta(t, p.W, is.w, 0.02)
				require.InDelta(t, p.H, is.h, 0.02)
				w, h, grain := is.w, is.h, grainOf(m.Buy[0].Grain, false)
				if p.Turned {
					w, h, grain = h, w, grainOf(m.Buy[0].Grain, true)
				}
				found := ""
				for key, n := range want { // sizes are met to a twentieth of a millimetre
					var kw, kh float64
					f := strings.Split(key, "|")
					fmt.Sscan(f[3], &kw)
					fmt.Sscan(f[4], &kh)
					if n > got[key] && f[0] == p.Job && f[1] == p.Piece && f[2] == m.Material && f[5] == grain && math.Abs(kw-w) < 0.071 && math.Abs(kh-h) < 0.071 {
						found = key
					}
				}
				require.NotEmpty(t, found, "%s of %s, %.2f x %.2f, grain along %s: no such piece is wanted", p.Piece, p.Job, w, h, grain)
				got[found]++
			}
		}
		require.Len(t, fallen, pieces)
	}
	assert.Equal(t, want, got)
}

// grainOf gives which side of a piece the grain of its sheet runs along.
func grainOf(sheet string, turned bool) string {
	if turned != (sheet == "width") {
		return "width"
	}
	return "height"
}
