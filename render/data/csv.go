package data

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"
)

// CSV writes rows for a spreadsheet (RFC 4180). A cell that a spreadsheet would take for
// a formula is made text by an apostrophe before it (OWASP, "CSV Injection", from
// memory); a number is left as it is.
func CSV(rows [][]string) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	for _, row := range rows {
		cells := make([]string, len(row))
		for i, cell := range row {
			cells[i] = asText(cell)
		}
		w.Write(cells) // into memory: it does not fail
	}
	w.Flush()
	return b.Bytes()
}

// asText returns a cell that is no formula. A spreadsheet may leave out space before one,
// and take the wide forms of the signs for them.
func asText(cell string) string {
	if !strings.ContainsAny(firstOf(strings.TrimSpace(cell)), "=+-@＝＋－＠") && !strings.ContainsAny(firstOf(cell), "\t\r\n") {
		return cell
	}
	if _, err := strconv.ParseFloat(cell, 64); err == nil {
		return cell
	}
	return "'" + cell
}

// firstOf returns the first character.
func firstOf(s string) string {
	for i := range s {
		if i > 0 {
			return s[:i]
		}
	}
	return s
}
