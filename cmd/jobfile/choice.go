package jobfile

import (
	"strconv"
	"strings"

	"forel/geometry/job"
)

// choice reads one of a few words, in upper or lower case.
func (r *reader) choice(v value, c job.Setting) string {
	if v.kind == textKind {
		for _, word := range c.Words {
			if strings.EqualFold(strings.TrimSpace(v.text), word) {
				return word
			}
		}
	}
	mend := job.Change{}
	right := "give " + either(c.Words) + " (" + c.What + ")"
	if v.kind == textKind {
		if near := closest(v.text, c.Words, (len([]rune(v.text))+1)/3); near != "" {
			right += "; did you mean " + strconv.Quote(near)
			mend = job.Change{Key: v.at.name, Word: near}
		}
	}
	r.tell(v.at, job.Problem{Value: written(v), Reason: "is none of its words", Fix: right, Mend: mend})
	return c.Words[0]
}

// either lists words in quotes, with or before the last.
func either(words []string) string {
	var b strings.Builder
	for i, word := range words {
		switch {
		case i > 0 && i == len(words)-1:
			b.WriteString(" or ")
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString(strconv.Quote(word))
	}
	return b.String()
}
