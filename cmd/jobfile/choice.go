package jobfile

import (
	"strconv"
	"strings"

	"forel/geometry/job"
	"forel/geometry/wording"
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
	var quoted []string
	for _, word := range words {
		quoted = append(quoted, strconv.Quote(word))
	}
	return wording.Or(quoted)
}
