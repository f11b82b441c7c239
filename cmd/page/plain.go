package page

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"forel/geometry"
)

// blanks are the names that the page shows, by key and by table of a job file, and the
// expression that finds these in a sentence.
var blanks = sync.OnceValue(func() (b struct {
	named map[string]string
	find  *regexp.Regexp
}) {
	b.named = map[string]string{}
	var keys, tables []string
	for _, s := range sectionsOf(geometry.MM) {
		if s.Table == "" {
			continue
		}
		tables = append(tables, s.Table)
		b.named[s.Table] = s.Name
		for _, f := range s.Fields {
			switch {
			case f.Role == "thickness":
				b.named[f.Key] = f.Of
			case f.Role != "":
				b.named[f.Key] = f.Of + ", " + f.Role
			case s.Table == "book":
				b.named[f.Key] = f.Label
			default:
				b.named[f.Key] = s.Name + ", " + f.Label
			}
			keys = append(keys, regexp.QuoteMeta(f.Key))
		}
	}
	slices.SortFunc(keys, func(a, b string) int { return len(b) - len(a) }) // the longest first
	b.find = regexp.MustCompile(`\b(` + strings.Join(keys, "|") + `)\b( = ("[^"]*"|[\d.]+))?|\[\[?(` + strings.Join(tables, "|") + `)\]\]?`)
	return b
})

// commandName is a command in a sentence, with what it is to be asked for.
var commandName = regexp.MustCompile(`forel ([a-z]+)( --([a-z-]+) ([^ .;:]+))?`)

// flagSet is a flag of the templates in a sentence.
var flagSet = regexp.MustCompile(`on the command line: --([a-z-]+) (?:"([^"]+)"|([a-z]+))`)

// onPage says a sentence as the page does: keys of the job file are its blanks, commands
// what can be made.
func onPage(sentence string) string {
	b := blanks()
	sentence = b.find.ReplaceAllStringFunc(sentence, func(found string) string {
		m := b.find.FindStringSubmatch(found)
		switch {
		case m[4] != "":
			return "“" + b.named[m[4]] + "”"
		case m[2] != "":
			return "set “" + b.named[m[1]] + "” to " + m[3]
		}
		return "“" + b.named[m[1]] + "”"
	})
	sentence = flagSet.ReplaceAllString(sentence, "with “$1” set to $2$3")
	return commandName.ReplaceAllStringFunc(sentence, func(found string) string {
		m := commandName.FindStringSubmatch(found)
		i := slices.IndexFunc(outputs, func(o Output) bool { return o.Name == m[1] })
		switch {
		case i < 0:
			return found
		case m[3] != "":
			return "“" + outputs[i].Title + "” with “" + label(m[3]) + "” set to " + m[4]
		}
		return "“" + outputs[i].Title + "”" + m[2]
	})
}
