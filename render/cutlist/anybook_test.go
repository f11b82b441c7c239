package cutlist_test

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/render/cutlist"
	"forel/render/document"
	"forel/render/pagetest"
)

func anyPlan(t *rapid.T) (plan.Plan, geometry.Rounding) {
	p, unit := pagetest.AnyPlan(t)
	return p, pagetest.Rounding(unit)
}

// runs names what runs along the pieces: flutes along those of corrugated board.
func runs(p plan.Plan) string {
	corrugated := 0
	for _, q := range p.Pieces {
		if q.Material == "corrugated board" {
			corrugated++
		}
	}
	switch corrugated {
	case 0:
		return "grain"
	case len(p.Pieces):
		return "flutes"
	}
	return "grain or flutes"
}

// Whatever the case and its title, the list has a row a piece under heads that its
// columns are in line with, and each note on a line of its own.
func TestListOfAnyBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, round := anyPlan(t)
		text := string(cutlist.Text(p, round, document.Plain))
		lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
		for _, l := range lines {
			require.Equal(t, strings.TrimRight(l, " "), l)
		}
		if title := strings.Join(strings.Fields(p.Title), " "); title != "" {
			require.Equal(t, title, lines[0])
			lines = lines[2:]
		}
		heads := []string{"piece", "cut", "of", "width (" + round.Unit.String() + ")", "height (" + round.Unit.String() + ")", runs(p) + " along"}
		require.Equal(t, heads, cell.FindAllString(lines[0], -1))
		for i, q := range p.Pieces {
			got := inLine(t, lines[0], lines[1+i])
			w, h := q.Size()
			require.Equal(t, []string{q.Name, strconv.Itoa(q.Count), string(q.Material), round.Number(w), round.Number(h), string(q.Grain)}, got)
		}
		require.Empty(t, lines[1+len(p.Pieces)])
		for _, w := range p.Warnings {
			require.Contains(t, text, "take care: "+strings.Join(strings.Fields(w), " ")+"\n")
		}

		md := string(cutlist.Text(p, round, document.Markdown))
		rows := 0
		for i, l := range strings.Split(strings.TrimSuffix(md, "\n"), "\n") {
			switch {
			case strings.HasPrefix(l, "| "):
				rows++
				require.Equal(t, len(heads)+1, strings.Count(l, "|"))
			case i == 0:
				l = strings.TrimPrefix(l, "# ")
				fallthrough
			default:
				plain := strings.NewReplacer(`\\`, "", `\<`, "", `\&`, "", `\*`, "", `\|`, "", `\[`, "", `\]`, "", `\_`, "").Replace(l)
				require.False(t, strings.ContainsAny(plain, "`*_[]<>#|&\\"), l)
			}
		}
		require.Equal(t, len(p.Pieces)+2, rows)
	})
}

// cell is what stands between two or more spaces.
var cell = regexp.MustCompile(`\S+( \S+)*`)

// inLine gives the cells of a row, each under its head: a number ends with it,
// anything else begins with it.
func inLine(t *rapid.T, heads, row string) (cells []string) {
	over, under := cell.FindAllStringIndex(heads, -1), cell.FindAllStringIndex(row, -1)
	require.Len(t, under, len(over), row)
	for i, at := range under {
		if c := row[at[0]]; c >= '0' && c <= '9' {
			require.Equal(t, over[i][1], at[1], row)
		} else {
			require.Equal(t, over[i][0], at[0], row)
		}
		cells = append(cells, row[at[0]:at[1]])
	}
	return cells
}

// For other programs the sizes are exact to a thousandth of a millimetre.
func TestDataOfAnyBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, round := anyPlan(t)
		data := cutlist.CSV(p, round)
		rows, err := csv.NewReader(strings.NewReader(string(data))).ReadAll()
		require.NoError(t, err)
		require.Len(t, rows, len(p.Pieces)+1)
		list := cutlist.JSON(p, rapid.Bool().Draw(t, "outlines"))
		var got struct {
			Title  string
			Pieces []struct {
				Name   string
				Count  int
				Width  float64 `json:"width_mm"`
				Height float64 `json:"height_mm"`
			}
		}
		require.NoError(t, json.Unmarshal(list, &got))
		require.Equal(t, p.Title, got.Title)
		require.Len(t, got.Pieces, len(p.Pieces))
		for i, q := range p.Pieces {
			w, h := q.Size()
			for k, want := range []geometry.Length{w, h} {
				exact, err := strconv.ParseFloat(rows[i+1][3+k], 64)
				require.NoError(t, err)
				assert.LessOrEqual(t, math.Abs(exact-want.MM()), 0.0005+1e-9)
				assert.InDelta(t, exact, []float64{got.Pieces[i].Width, got.Pieces[i].Height}[k], 1e-9)
			}
			assert.Equal(t, q.Name, rows[i+1][0])
			assert.Equal(t, q.Name, got.Pieces[i].Name)
			assert.Equal(t, q.Count, got.Pieces[i].Count)
		}
	})
}
