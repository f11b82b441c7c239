package roster

import (
	"fmt"
	"strings"
	"unicode"
)

// name gives each row a folder of its own: its place in the roster, so that
// folders are in the roster's order and never the same, and the student's name.
func name(rows []Row) {
	digits := max(2, len(fmt.Sprint(len(rows))))
	for i := range rows {
		rows[i].Folder = fmt.Sprintf("%0*d", digits, i+1)
		if s := plain(rows[i].Name); s != "" {
			rows[i].Folder += "-" + s
		}
	}
}

// mostName is how many letters of a name are kept.
const mostName = 40

// plain returns the letters and digits of a name, in lower case, hyphens between
// its words.
func plain(name string) string {
	var b strings.Builder
	n, gap := 0, false
	for _, r := range strings.ToLower(name) {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && !unicode.IsMark(r) {
			gap = n > 0
			continue
		}
		if n == mostName {
			break
		}
		if gap {
			b.WriteByte('-')
			gap = false
		}
		b.WriteRune(r)
		n++
	}
	return b.String()
}
