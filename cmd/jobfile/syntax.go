package jobfile

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"

	"forel/geometry/job"
)

// MostBytes is the size of the largest job file that is read.
const MostBytes = 1 << 20

// mostNodes is how many keys and values are read: a job has under a hundred.
const mostNodes = 10_000

// mostWithLists is that of a file with long lists, such as the ledger of a shop file.
const mostWithLists = 200_000

// Unreadable tells what keeps a file from being read as text at all: what is what it should
// be, such as "job file".
func Unreadable(source, what string, data []byte) Issues {
	if len(data) > MostBytes {
		return Issues{{Source: source, Problem: job.Problem{Reason: "larger than 1 MiB", Fix: "give a " + what}}}
	}
	line := 0
	for text := range bytes.Lines(data) {
		if line++; !utf8.Valid(text) {
			return Issues{{Source: source, Line: line, Problem: job.Problem{Reason: "not UTF-8 text", Fix: "save the file as UTF-8"}}}
		}
	}
	return nil
}

// mostSlips is how many slips in the writing are told in one run.
const mostSlips = 20

// aKey is a line that sets a key.
var aKey = regexp.MustCompile(`^(\s*[A-Za-z_][A-Za-z0-9_.-]*\s*=)`)

// pastSlip returns the data with the line of a slip set to an empty text, so that the rest
// can be read too; ok is false where the slip is not of one line that sets a key.
func pastSlip(data []byte, line int) (without []byte, ok bool) {
	text := lineOf(data, line)
	key := aKey.FindString(text)
	var p unstable.Parser
	p.Reset([]byte(text))
	for p.NextExpression() {
	}
	if key == "" || p.Error() == nil { // what is wrong began on another line
		return nil, false
	}
	lines := bytes.Split(data, []byte("\n"))
	lines[line-1] = []byte(key + ` ""`)
	return bytes.Join(lines, []byte("\n")), true
}

// slip tells of a slip in the writing of the TOML, at which the parser stopped.
func (t *tree) slip(err error) Issue {
	p, issue := &t.p, Issue{Source: t.source, Problem: job.Problem{Reason: err.Error(), Fix: "look at the quotes, brackets and equals sign of this line"}}
	if unquoted.MatchString(issue.Reason) {
		issue.Fix = `a length with a unit, a fraction or a decimal comma stands in quotes, such as "9 1/4 in"; so does other text`
	}
	var at *unstable.ParserError
	if errors.As(err, &at) {
		start := p.Shape(p.Range(at.Highlight)).Start
		issue.Line = start.Line
		if m := decimalComma.FindStringSubmatch(lineOf(p.Data(), start.Line)); m != nil {
			issue.Key = t.here(dotted(append(slices.Clone(t.table), m[1])))
			issue.Value, issue.Reason = m[2]+","+m[3], "has a decimal comma outside quotes"
			issue.Fix = fmt.Sprintf(`write %s.%s, or "%s,%s mm" in quotes`, m[2], m[3], m[2], m[3])
			return issue
		}
		issue.Reason = named(issue.Reason, p.Data()[start.Offset:])
	}
	return issue
}

// lineOf returns a line of the data, from 1.
func lineOf(data []byte, line int) string {
	lines := bytes.SplitN(data, []byte("\n"), line+1)
	if line < 1 || line > len(lines) {
		return ""
	}
	return string(lines[line-1])
}

var (
	// unquoted are words of the parser's own errors, which it tells apart by these alone.
	unquoted = regexp.MustCompile(`^(expected newline|strings must be quoted|unexpected character|expected ',' or|expected keyword|integers cannot)`)
	// codePoint is how they name a character.
	codePoint = regexp.MustCompile(`U\+([0-9A-F]{4,})( '.+')?`)
	// decimalComma is a key set to a number with a comma in it.
	decimalComma = regexp.MustCompile(`^\s*([A-Za-z_.]{1,40})\s*=\s*(\d{1,6}),(\d{1,6})\s*(?:#.*)?\r?$`)
)

// named puts the character at the head of rest in for its code point. The
// parser takes the first byte of a character beyond ASCII for its code point.
func named(message string, rest []byte) string {
	m := codePoint.FindStringSubmatch(message)
	if m == nil {
		return message
	}
	n, _ := strconv.ParseUint(m[1], 16, 32)
	c := rune(n)
	if i := bytes.IndexFunc(rest, func(c rune) bool { return c >= utf8.RuneSelf }); c >= utf8.RuneSelf && i >= 0 {
		c, _ = utf8.DecodeRune(rest[i:])
	}
	return strings.Replace(message, m[0], strconv.Quote(string(c)), 1)
}

// invalid tells what the TOML library refuses in a file without such slips, keys and tables
// set twice, numbers and dates that can't be, where it is not told yet in our own words.
func (r *reader) invalid() {
	var tables map[string]any
	err := toml.Unmarshal(r.data, &tables)
	if err == nil {
		return
	}
	// The library tells its errors apart by their words alone.
	issue := Issue{Source: r.source, Problem: job.Problem{Reason: strings.ReplaceAll(err.Error(), "toml: ", "")}}
	var at *toml.DecodeError
	if errors.As(err, &at) {
		issue.Line, _ = at.Position()
	}
	var here []string // keys on the line
	for _, v := range r.file {
		if v.at.line == issue.Line {
			here = append(here, v.at.name)
		}
	}
	if len(here) == 1 {
		issue.Key = here[0]
	}
	if strings.Contains(issue.Reason, "date") {
		issue.Fix = "write a day of the calendar, such as 2026-11-28"
	}
	if strings.Contains(issue.Reason, "already") || strings.Contains(issue.Reason, "should be") {
		issue.Fix = "write each key and each table once"
	}
	if !slices.ContainsFunc(r.issues, func(i Issue) bool { return i.Line == issue.Line && i.Source == issue.Source }) {
		r.issues = append(r.issues, issue)
	}
}
