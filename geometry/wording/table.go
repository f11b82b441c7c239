package wording

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

// Aligned writes rows in columns, a line each, the first row the heads. Right tells
// which columns are flush right, as numbers are. A column that is empty below its
// head is left out.
func Aligned(rows [][]string, right func(column int) bool) string {
	wide := make([]int, len(rows[0]))
	for _, row := range rows[1:] {
		for i, cell := range row {
			wide[i] = max(wide[i], utf8.RuneCountInString(cell))
		}
	}
	for i, head := range rows[0] {
		if wide[i] > 0 {
			wide[i] = max(wide[i], utf8.RuneCountInString(head))
		}
	}
	var b strings.Builder
	for _, row := range rows {
		var line strings.Builder
		for i, cell := range row {
			if wide[i] == 0 {
				continue
			}
			space := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(cell))
			if right(i) {
				line.WriteString(space + cell + "  ")
			} else {
				line.WriteString(cell + space + "  ")
			}
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
	return b.String()
}

// Markdown writes rows as a table in Markdown, the first row the heads.
func Markdown(rows [][]string, right func(column int) bool) string {
	var b strings.Builder
	for n, row := range rows {
		cells, rules := make([]string, len(row)), make([]string, len(row))
		for i, cell := range row {
			cells[i], rules[i] = Escape(cell), "---"
			if right(i) {
				rules[i] = "--:"
			}
		}
		b.WriteString("| " + strings.Join(cells, " | ") + " |\n")
		if n == 0 {
			b.WriteString("| " + strings.Join(rules, " | ") + " |\n")
		}
	}
	return b.String()
}

// markup is what Markdown reads otherwise than as itself (CommonMark 0.31.2, 2.4,
// from memory: a backslash before any of it takes it as it is).
var markup = regexp.MustCompile("[\\\\`*_{}\\[\\]<>#|&~]")

// Escape keeps what a maker wrote from being read as Markdown.
func Escape(s string) string { return markup.ReplaceAllString(s, `\$0`) }
