package roster

import (
	"regexp"
	"slices"
	"strings"

	"forel/cmd/jobfile"
)

// named reads the student's name.
func (t *table) named(r *Row, text string) jobfile.Issues {
	if text == "" {
		return jobfile.Issues{t.issue(r.Line, nameColumn, "no name", "give the student's")}
	}
	name, p, ok := jobfile.Text(text, "the name")
	if !ok {
		p.Key = nameColumn
		return jobfile.Issues{{Source: t.source, Line: r.Line, Problem: p}}
	}
	r.Name = name
	for _, p := range jobfile.Unset(name) {
		p.Key = nameColumn
		r.Suspects = append(r.Suspects, jobfile.Issue{Source: t.source, Line: r.Line, Problem: p})
	}
	return nil
}

var (
	whole    = regexp.MustCompile(`^\s*\d+$`)
	decimals = regexp.MustCompile(`^\d+(\s*("|[a-z]+))?\s*$`)
	measured = regexp.MustCompile(`^\s*\d[\d .,/]*("|[a-z]+)?\s*$`)
)

// mostJoins is how many values of a row are tried with what parts the columns in them.
const mostJoins = 4

// otherwise returns the fields of a row read another way, where the comma that parts
// two of them may be one for decimals, or the semicolon may part two readings, and what
// that is called; nil where the row can't be made so or is not likely to be meant so.
func (t *table) otherwise(r record) (other []string, joined string) {
	joins := func(a, b string) bool { return false }
	switch t.csv.Comma {
	case ',':
		joined, joins = "a comma for decimals", func(a, b string) bool { return whole.MatchString(a) && decimals.MatchString(b) }
	case ';':
		joined, joins = "two readings of one measure", func(a, b string) bool { return measured.MatchString(a) && measured.MatchString(b) }
	}
	var try func(from, n int, fields []string) []string
	try = func(from, n int, fields []string) []string {
		if n > 0 && t.likely(r, fields) && len(t.reading(&Row{Source: t.source, Line: r.line}, fields, false)) == 0 {
			return fields
		}
		for i := from; i+1 < len(fields) && n < mostJoins; i++ {
			if at := i + n; r.quoted[at] || r.quoted[at+1] || !joins(fields[i], fields[i+1]) {
				continue
			}
			with := slices.Concat(fields[:i], []string{fields[i] + string(t.csv.Comma) + fields[i+1]}, fields[i+2:])
			if found := try(i+1, n+1, with); found != nil {
				return found
			}
		}
		return nil
	}
	return try(0, 0, r.fields), joined
}

// likely tells whether a row may have been meant to have fewer fields than it has. One
// that ends with an empty field has as many as there are columns; else another row has
// as few, or there is no other, or a number stands where a text should.
func (t *table) likely(r record, fewer []string) bool {
	if strings.TrimSpace(fewer[len(fewer)-1]) == "" {
		return false
	}
	of := 0
	for _, n := range t.short {
		of += n
	}
	return of == 1 || t.short[len(fewer)] > 0 || slices.ContainsFunc(t.keys[:min(len(t.keys), len(r.fields))], func(key string) bool {
		i := slices.Index(t.keys, key)
		return (key == "" || key == "title" || strings.HasSuffix(key, ".title") || strings.HasSuffix(key, ".name")) && measured.MatchString(r.fields[i])
	})
}

// says writes out the fields of a row below their columns.
func (t *table) says(fields []string) string {
	var out []string
	for i, f := range fields {
		if f = strings.TrimSpace(f); f != "" && t.keys[i] != "" {
			out = append(out, t.columns[i]+" "+f)
		}
	}
	return strings.Join(out, ", ")
}
