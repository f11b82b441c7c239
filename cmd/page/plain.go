package page

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"forel/cmd/pipeline"
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

// plainSections are the keys of a job file, with what is said of them as the page says it.
func plainSections(unit geometry.Unit) []Section {
	out := sectionsOf(unit)
	for n, s := range out {
		out[n].Says = onPage(s.Says)
		for i := range s.Fields {
			s.Fields[i].Says, s.Fields[i].What = onPage(s.Fields[i].Says), onPage(s.Fields[i].What)
		}
	}
	return out
}

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

// flagName is a flag in a sentence, with what it is set to, if anything.
var flagName = regexp.MustCompile(`--([a-z-]+)(?: (\d[^ ,;)]*|[a-z]+\b))?`)

// ofTerminal is what is said of flags and the like that the page does not have.
var ofTerminal = regexp.MustCompile(`(;| \()[^;()]*(--[a-z-]+|SOURCE_DATE_EPOCH)[^;()]*\)?`)

// otherwise is what the page has another way.
var otherwise = strings.NewReplacer(
	"put shop.toml beside the job, or name it with --shop", "add what you have to your shop",
	"forel stock --undo takes it back", "“Take the last taking back”, in your shop, undoes it",
	", words with commas between", "",
	", with --reading NAME=LENGTHS or a flag of its own", "",
)

// inPlainWords calls settings by their labels, which the page shows, not as flags, and leaves
// out what the page does not have.
func inPlainWords(sentence string, settings []pipeline.Setting) string {
	sentence = flagName.ReplaceAllStringFunc(otherwise.Replace(sentence), func(found string) string {
		m := flagName.FindStringSubmatch(found)
		i := slices.IndexFunc(settings, func(s pipeline.Setting) bool { return s.Name == m[1] })
		if i < 0 {
			return found
		}
		_, alone := settings[i].To.(*bool)
		named := "“" + label(m[1]) + "”"
		switch value := m[2]; {
		case value == "":
			return named
		case !alone && (value[0] <= '9' || slices.Contains(settings[i].Words, value)):
			return named + " set to " + value
		default:
			return named + " " + value
		}
	})
	return ofTerminal.ReplaceAllString(sentence, "")
}

// ofCommandLine is a line of a report that speaks of the command line or the job file.
var ofCommandLine = regexp.MustCompile(`(?m)^.*(--[a-z]|forel [a-z]|in the job).*$`)

// plainReport is a report as the page shows it; the file stays as it is.
func plainReport(report []byte, settings []pipeline.Setting) string {
	if formatOf(settings) != "text" {
		return string(report)
	}
	return ofCommandLine.ReplaceAllStringFunc(string(report), func(line string) string { return onPage(inPlainWords(line, settings)) })
}
