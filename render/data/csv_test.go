package data_test

import (
	"encoding/csv"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/render/data"
)

// Whatever stands in a cell comes back by an independent reader, behind an apostrophe at
// most, and no cell but a number begins with what a spreadsheet takes for a formula.
func TestCSVOfAnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cell := rapid.StringOfN(rapid.RuneFrom([]rune("=+-@\t\n ＝a1.,;\"'|é")), 0, 8, -1)
		rows := rapid.SliceOfN(rapid.SliceOfN(cell, 2, 2), 1, 4).Draw(t, "rows")
		written := data.CSV(rows)
		back, err := csv.NewReader(strings.NewReader(string(written))).ReadAll()
		require.NoError(t, err)
		require.Len(t, back, len(rows))
		for i, row := range back {
			for j, got := range row {
				want := strings.ReplaceAll(rows[i][j], "\r\n", "\n")
				assert.Contains(t, []string{want, "'" + want}, got)
				if _, err := strconv.ParseFloat(got, 64); err == nil || got == "" {
					continue
				}
				assert.NotContains(t, "=+-@＝\t\n", string([]rune(got)[:1]), "%q", got)
			}
		}
	})
}
