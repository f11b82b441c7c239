package pipeline_test

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/pipeline"
)

// planned looks a class over and returns its shopping list.
func planned(t *testing.T, table, common string) string {
	t.Helper()
	roll, err := pipeline.Class{Source: pipeline.Source{Files: []pipeline.File{{Name: "roster.csv", Data: []byte(table)}}},
		Base: &pipeline.File{Name: "common.toml", Data: []byte(common)}}.Read()
	require.NoError(t, err)
	return string(finished(t, roll)["shopping.txt"])
}

// finished looks a class over and returns the files that are of all of it.
func finished(t *testing.T, roll *pipeline.Roll) map[string][]byte {
	t.Helper()
	roll.Look(t.Context(), nil)
	h := &hand{t: t, ofClass: map[string][]byte{}}
	_, unplanned, err := roll.Finish(t.Context(), h, nil)
	require.NoError(t, unplanned)
	require.NoError(t, err)
	return h.ofClass
}

// large returns the roster of a class in two lots.
func large() string {
	var table strings.Builder
	table.WriteString("name,height,width,thickness\n")
	for n := range pipeline.LargeClass + 2 {
		fmt.Fprintf(&table, "Invented %d,%d,%d,%d\n", n+1, 150+n%7, 101+n%5, 20+n%3)
	}
	return table.String()
}

// A class in lots uses sheets that are counted, and an offcut, no more often than they are
// there. What all lots use of a pile is taken off it once, and comes back whole.
func TestLotsOfAClassShareWhatIsThere(t *testing.T) {
	shop := pipeline.File{Name: "shop.toml", Data: []byte(`
[[material]]
name = "grey"
kind = "board"
thickness = 2
[[material.sheet]]
size = "600 x 400 mm"
count = 3
[[material.sheet]]
size = "700 x 1000 mm"
count = 90
[[offcut]]
number = 7
material = "grey"
size = "390 x 410 mm"
`)}
	c := pipeline.Class{Source: pipeline.Source{Files: []pipeline.File{{Name: "in/roster.csv", Data: []byte(large())}}, Shop: shop},
		Base: &pipeline.File{Name: "common.toml", Data: []byte("board = 'grey'")}, Ledger: pipeline.Ledger{Take: true}}
	roll, err := c.Read()
	require.NoError(t, err)
	files := finished(t, roll)
	total, lots, _ := strings.Cut(string(files["shopping.txt"]), "Lot 1.")
	require.Contains(t, lots, "Lot 2.")
	assert.Equal(t, 1, strings.Count(lots, "offcut 7, 390 × 410 mm"), "the offcut is there once")
	assert.Regexp(t, `grey 2 mm +[1-3] in hand +600 × 400 mm`, total)
	used, err := strconv.Atoi(regexp.MustCompile(`(\d+) in hand +700 × 1000 mm`).FindStringSubmatch(total)[1])
	require.NoError(t, err)
	after := string(roll.Took.Shop.Data)
	assert.Contains(t, after, fmt.Sprintf("\ncount = %d\n", 90-used))
	assert.Contains(t, after, fmt.Sprintf("\ncount = %d\n", used), "it is written down")
	assert.Equal(t, 1, strings.Count(after, "used_by = 1"))
	assert.Regexp(t, `from = "the class of roster.csv, \d+.1 of stock-02.pdf"`, after)
	assert.True(t, bytes.HasPrefix(files["offcuts.pdf"], []byte("%PDF")))
	back, err := pipeline.Stock{Job: pipeline.Job{Source: pipeline.Source{Shop: *roll.Took.Shop}}, Ledger: pipeline.Ledger{Undo: true}}.Make(t.Context())
	require.NoError(t, err)
	assert.Equal(t, string(shop.Data), string(back.Shop.Data))
}

// The sheets of a class are planned as forel stock plans them of the same cases: what is
// trimmed later is cut larger, and its size and settings of the fence are the same.
func TestAClassIsPlannedAsItsCases(t *testing.T) {
	cases := []struct{ title, height, width, thickness string }{
		{"Invented A", "221.5", "148.5", "32"}, {"Invented B", "180", "121.3", "20"}, {"Invented C", "199.7", "140", "41.2"}}
	table := "name,title,height,width,thickness\n"
	var files []pipeline.File
	for _, c := range cases {
		table += fmt.Sprintf("%s,%s,%s,%s,%s\n", c.title, c.title, c.height, c.width, c.thickness)
		files = append(files, pipeline.File{Name: c.title + ".toml", Data: fmt.Appendf(nil,
			"title = %q\n[[book]]\nheight = %s\nwidth = %s\nthickness = %s\n", c.title, c.height, c.width, c.thickness)})
	}
	r, err := pipeline.Stock{Job: pipeline.Job{Source: pipeline.Source{Files: files}}}.Make(t.Context())
	require.NoError(t, err)
	require.Contains(t, string(r.Report), "lining 0.15 mm: pieces are cut up to 5.0 mm larger each way")
	assert.Equal(t, string(r.Report), planned(t, table, ""))
}
