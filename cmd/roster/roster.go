// Package roster reads the list of a class: a table of comma-separated values
// (RFC 4180) with a row for each student, whose columns are a name, the
// measurements of a book, and any other key of a job file. It opens no files.
package roster

import (
	"bytes"
	"crypto/sha256"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"forel/cmd/jobfile"
	"forel/geometry/job"
)

// Row is a student's job.
type Row struct {
	Source   string   // the roster's name
	Line     int      // in the roster, from 1
	Name     string   // the student's
	Folder   string   // for the student's files: unlike that of any other row
	Given    [32]byte // a digest of all that the job was read from: the same for the same job
	File     *jobfile.File
	Suspects jobfile.Issues // what can be made but looks like a slip
	Refused  jobfile.Issues // why it can't be made; File holds nothing then, or where Mended is set the job with the changes that are named
	Mended   bool
}

// mostColumns is how many columns a roster may have: there are under two hundred keys.
const mostColumns = 250

// MostMended is up to how many rows those that are refused are read as mended.
const MostMended = 100

// MostRows is how many rows a roster may have: up to there a class takes less than 200 MB.
const MostRows = 5_000

// The columns that are not keys of a job file, or stand for one.
const nameColumn = "name"

var shortColumns = map[string]string{
	"title": "title", "units": "units",
	"height": "book.height", "width": "book.width", "thickness": "book.thickness",
}

// Base is a job file that gives what the roster leaves out; without data there is none.
type Base struct {
	Source string
	Data   []byte
}

// Reader is what holds for every row of a roster.
type Reader struct {
	Base  Base           // what the roster leaves out
	Shop  *jobfile.Shop  // nil: none
	Flags []jobfile.Flag // over what a row says
}

// Read reads a roster; source is its name, for messages. A row that can't be
// made says so in Refused and keeps no other from being read. The error is of
// type Issues and tells what is wrong with the table as a whole: nothing in it,
// columns that are not known or missing, quotes that don't close, and what is
// wrong with the base or a flag in every row alike; beside this last the rows are
// returned too. Flags hold for every row, over what it says.
func (with Reader) Read(source string, data []byte) ([]Row, error) {
	t := table{Reader: with, source: source, short: map[int]int{}, refused: tally{times: map[jobfile.Issue]int{}}}
	if err := t.open(data); err != nil {
		return nil, err
	}
	records, wrong := t.records()
	t.rows = len(records)
	var rows []Row
	for _, r := range records {
		t.short[len(r.fields)]++
	}
	for _, r := range records {
		rows = append(rows, t.row(r))
	}
	if len(rows) == 0 && wrong == nil {
		wrong = jobfile.Issues{t.issue(0, "", "no students in it", "give a row each below the line of column names")}
	}
	if wrong != nil {
		for _, r := range rows { // so that all is told at once
			wrong = append(wrong, r.Refused...)
		}
		return nil, wrong
	}
	name(rows)
	if all := t.refused.inAll(t.parsed); all != nil {
		return rows, all
	}
	return rows, nil
}

// record is a row as it is written.
type record struct {
	line   int
	fields []string
	quoted []bool // of each field
}

// records reads the rows below the names of the columns.
func (t *table) records() (all []record, wrong jobfile.Issues) {
	for {
		fields, err := t.csv.Read()
		if errors.Is(err, io.EOF) {
			return all, wrong
		}
		if err != nil {
			return all, append(wrong, t.unreadable(err))
		}
		if blank(fields) {
			continue
		}
		r := record{fields: fields, quoted: make([]bool, len(fields))}
		r.line, _ = t.csv.FieldPos(0)
		for i := range fields {
			line, column := t.csv.FieldPos(i)
			r.quoted[i] = column <= len(t.lines[line-1]) && t.lines[line-1][column-1] == '"'
		}
		switch {
		case slices.ContainsFunc(fields, func(f string) bool { return strings.ContainsAny(f, "\r\n") }):
			wrong = append(wrong, t.issue(r.line, "", "a quote opens a field and is not closed on its line", `take it away, or close it; an inch mark goes in as "9 1/4"""`))
		case len(all) == MostRows:
			return all, append(wrong, t.issue(r.line, "", fmt.Sprintf("more than %d rows", MostRows), "give a roster for each class"))
		default:
			all = append(all, r)
		}
	}
}

// table is a roster that is being read.
type table struct {
	Reader
	source  string
	lines   [][]byte // as written
	csv     *csv.Reader
	columns []string // as typed
	keys    []string // of the job file; empty for the name
	rows    int
	short   map[int]int // how many rows have so many fields
	parsed  int         // rows whose job was read
	refused tally
}

func (t *table) issue(line int, key, reason, fix string) jobfile.Issue {
	return jobfile.Issue{Source: t.source, Line: line, Problem: job.Problem{Key: key, Reason: reason, Fix: fix}}
}

// open finds what parts the columns and reads the line of their names.
func (t *table) open(data []byte) error {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if issues := jobfile.Unreadable(t.source, "roster", data); issues != nil {
		return issues
	}
	t.lines = bytes.Split(data, []byte("\n"))
	t.csv = csv.NewReader(bytes.NewReader(data))
	t.csv.FieldsPerRecord = -1
	t.csv.TrimLeadingSpace = true
	t.csv.LazyQuotes = true // an inch mark is a quote
	if parts, named := separator(t.lines[0]); named {
		t.csv.Comma = parts
		if _, err := t.csv.Read(); err != nil {
			return jobfile.Issues{t.unreadable(err)}
		}
	} else {
		t.csv.Comma = delimiter(t.lines)
	}
	header, err := t.csv.Read()
	if errors.Is(err, io.EOF) {
		return jobfile.Issues{t.issue(0, "", "nothing in it", "start it with a line such as name,title,height,width,thickness")}
	}
	if err != nil {
		return jobfile.Issues{t.unreadable(err)}
	}
	line, _ := t.csv.FieldPos(0)
	for len(header) > 0 && strings.TrimSpace(header[len(header)-1]) == "" {
		header = header[:len(header)-1] // a spreadsheet writes them where a cell was once filled
	}
	if len(header) > mostColumns {
		return jobfile.Issues{t.issue(line, "", fmt.Sprintf("more than %d columns", mostColumns), "keep those that forel knows")}
	}
	var issues jobfile.Issues
	for _, h := range header {
		h = strings.TrimSpace(h)
		key := keyOf(h)
		switch {
		case h == "":
			issues = append(issues, t.issue(line, "", fmt.Sprintf("column %d has no name", len(t.columns)+1), "name every column"))
		case key == nameColumn:
			key = ""
		case strings.HasPrefix(key, "stock."):
			issues = append(issues, t.issue(line, h, "sheets and rolls are the class's, not a student's", "take the column away; give [[stock]] in a job file and name it with --job"))
		case ofTheClass[tableOf(key)]:
			issues = append(issues, t.issue(line, h, "what is ordered and what it costs are the class's, not a student's", "take the column away; give it in a job file and name that with --job"))
		case !jobfile.Known(key):
			issues = append(issues, t.issue(line, h, "unknown column", "give name, title, height, width, thickness, units or a key of a job file, such as board.thickness"))
		}
		if slices.Contains(t.keys, key) && h != "" {
			issues = append(issues, t.issue(line, h, "a column that is there twice", "keep one"))
		}
		t.columns, t.keys = append(t.columns, h), append(t.keys, key)
	}
	if !slices.Contains(t.keys, "") {
		issues = append(issues, t.issue(line, nameColumn, "no such column", "name the students in one"))
	}
	return issues.Err()
}

// ofTheClass are tables of a job file that hold for all students alike.
var ofTheClass = map[string]bool{"order": true, "adhesive": true, "quote": true, "extra": true}

// tableOf returns the table of a key.
func tableOf(key string) string {
	table, _, _ := strings.Cut(key, ".")
	return table
}

// keyOf returns the key of a job file that a column is of, or nameColumn.
func keyOf(column string) string {
	key := strings.ToLower(strings.TrimSpace(column))
	if long, ok := shortColumns[key]; ok {
		return long
	}
	return key
}

// delimiters are what can part the columns: the comma, or what a spreadsheet puts where
// the comma is for decimals.
const delimiters = ",;\t"

// separator returns what parts the columns where the first line says so, as some
// spreadsheets have it: sep=;
func separator(first []byte) (parts rune, named bool) {
	said, ok := strings.CutPrefix(strings.ToLower(strings.Trim(string(first), "\" \r")), "sep=")
	if ok && len(said) == 1 && strings.Contains(delimiters, said) {
		return rune(said[0]), true
	}
	return 0, false
}

// delimiter returns what parts the columns: that which leaves the most column names
// that are known in the first line that is not empty.
func delimiter(lines [][]byte) rune {
	i := max(0, slices.IndexFunc(lines, func(l []byte) bool { return len(bytes.TrimSpace(l)) > 0 }))
	best, found := ',', -1
	for _, d := range delimiters {
		n := 0
		for _, h := range strings.Split(string(lines[i]), string(d)) {
			if key := keyOf(strings.Trim(h, "\" \r")); key == nameColumn || jobfile.Known(key) {
				n++
			}
		}
		if n > found {
			best, found = d, n
		}
	}
	return best
}

// unreadable tells of a slip in the table itself.
func (t *table) unreadable(err error) jobfile.Issue {
	var p *csv.ParseError
	if errors.As(err, &p) {
		return t.issue(p.Line, "", "can't be read as a row: "+p.Err.Error(), "save it as CSV again")
	}
	return t.issue(0, "", err.Error(), "")
}

func blank(fields []string) bool {
	return !slices.ContainsFunc(fields, func(f string) bool { return strings.TrimSpace(f) != "" })
}

// row reads one student's row.
func (t *table) row(written record) Row {
	r := Row{Source: t.source, Line: written.line}
	fields := written.fields
	for len(fields) > len(t.columns) && strings.TrimSpace(fields[len(fields)-1]) == "" {
		fields = fields[:len(fields)-1]
	}
	if len(fields) > len(t.columns) {
		r.Refused = append(r.Refused, t.issue(r.Line, "", fmt.Sprintf("%d fields under %d columns", len(fields), len(t.columns)), `put what has a comma in it in quotes, a text or a number such as "148,5"`))
		return r
	}
	written.fields = fields
	if r.Refused = t.reading(&r, fields, true); r.Refused != nil {
		return r
	}
	if other, joined := t.otherwise(written); other != nil {
		r.Refused = append(r.Refused, t.issue(r.Line, "", fmt.Sprintf("can be read in two ways: as %s; or, with %s, as %s", t.says(fields), joined, t.says(other)),
			"put every value of the row in quotes"))
		r.File = nil
	}
	return r
}

// reading reads the fields of a row into it and returns what is wrong with them. Counted,
// what is wrong with the base or a flag is too.
func (t *table) reading(r *Row, fields []string, counted bool) jobfile.Issues {
	var issues jobfile.Issues
	var flags []jobfile.Flag
	for i, f := range fields {
		switch f = strings.TrimSpace(f); {
		case t.keys[i] == "":
			issues = append(issues, t.named(r, f)...)
		case f != "":
			flags = append(flags, jobfile.Flag{Name: t.columns[i], Key: t.keys[i], Value: f})
		}
	}
	flags = append(flags, t.Flags...)
	r.Given = t.digest(r.Name, flags)
	if !slices.Contains(t.keys[:len(fields)], "") { // a short row
		issues = append(issues, t.named(r, "")...)
	}
	var suspects jobfile.Issues
	var err error
	r.File = new(jobfile.File)
	*r.File, suspects, err = t.Shop.Parse(t.Base.Source, t.Base.Data, flags...)
	var wrong jobfile.Issues
	if counted {
		t.parsed++
	}
	if errors.As(err, &wrong) {
		if counted {
			t.refused.count(wrong, t.common)
		}
		if r.Mended = counted && t.rows <= MostMended && r.File.Case != nil; !r.Mended {
			*r.File = jobfile.File{}
		}
		issues = append(issues, t.placed(r.Line, wrong)...)
	} else if err != nil {
		issues = append(issues, t.issue(r.Line, "", err.Error(), ""))
	}
	r.Suspects = append(r.Suspects, t.placed(r.Line, suspects)...)
	return issues
}

// digest tells one job from another by what it was read from.
func (t *table) digest(name string, flags []jobfile.Flag) [32]byte {
	given := fmt.Sprintf("%q", name)
	for _, f := range flags {
		given += fmt.Sprintf(" %q=%q", f.Key, f.Value)
	}
	if t.Base.Data != nil {
		given += "\n" + string(t.Base.Data)
	}
	if t.Shop != nil {
		given += "\nshop\n" + string(t.Shop.Data())
	}
	return sha256.Sum256([]byte(given))
}

// placed gives issues the row's place; one of the base says its own after it.
func (t *table) placed(line int, issues jobfile.Issues) jobfile.Issues {
	out := slices.Clone(issues)
	for i := range out {
		switch {
		case t.common(out[i]) && out[i].Source != "":
			out[i].Key = out[i].Place()
		case t.common(out[i]):
		default:
			out[i].Key = strings.TrimPrefix(out[i].Key, "--") // a column has none
		}
		out[i].Source, out[i].Line = t.source, line
	}
	return out
}
