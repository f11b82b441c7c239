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
	"unicode/utf8"

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
	File     jobfile.File
	Suspects jobfile.Issues // what can be made but looks like a slip
	Refused  jobfile.Issues // why it can't be made; File holds nothing then
}

// MostRows is how many rows a roster may have.
const MostRows = 10_000

// The columns that are not keys of a job file, or stand for one.
const nameColumn = "name"

var shortColumns = map[string]string{
	"title": "title", "units": "units",
	"height": "book.height", "width": "book.width", "thickness": "book.thickness",
}

// Base is a job file that gives what the roster leaves out.
type Base struct {
	Source string
	Data   []byte
}

// Read reads a roster; source is its name, for messages. A row that can't be
// made says so in Refused and keeps no other from being read. The error is of
// type Issues and tells what is wrong with the table as a whole: nothing in it,
// columns that are not known or missing, quotes that don't close, and what is
// wrong with the base or a flag in every row alike. Flags hold for every row, over
// what it says.
func Read(source string, data []byte, base *Base, flags ...jobfile.Flag) ([]Row, error) {
	t := table{source: source, base: base, flags: flags}
	if err := t.open(data); err != nil {
		return nil, err
	}
	var rows []Row
	for {
		fields, err := t.csv.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, jobfile.Issues{t.unreadable(err)}
		}
		if blank(fields) {
			continue
		}
		line, _ := t.csv.FieldPos(0)
		if slices.ContainsFunc(fields, func(f string) bool { return strings.ContainsAny(f, "\r\n") }) {
			return nil, jobfile.Issues{t.issue(line, "", "a quote opens a field and is not closed on its line", `take it away, or close it; an inch mark goes in as "9 1/4"""`)}
		}
		if len(rows) == MostRows {
			return nil, jobfile.Issues{t.issue(line, "", fmt.Sprintf("more than %d rows", MostRows), "give a roster for each class")}
		}
		rows = append(rows, t.row(line, fields))
	}
	if len(rows) == 0 {
		return nil, jobfile.Issues{t.issue(0, "", "no students in it", "give a row each below the line of column names")}
	}
	if all := t.refused.inAll(t.parsed); all != nil {
		return nil, all
	}
	name(rows)
	return rows, nil
}

// table is a roster that is being read.
type table struct {
	source  string
	base    *Base
	flags   []jobfile.Flag
	csv     *csv.Reader
	columns []string // as typed
	keys    []string // of the job file; empty for the name
	parsed  int      // rows whose job was read
	refused tally
}

func (t *table) issue(line int, key, reason, fix string) jobfile.Issue {
	return jobfile.Issue{Source: t.source, Line: line, Problem: job.Problem{Key: key, Reason: reason, Fix: fix}}
}

// open finds what parts the columns and reads the line of their names.
func (t *table) open(data []byte) error {
	if len(data) > jobfile.MostBytes {
		return jobfile.Issues{t.issue(0, "", "more than 1 MiB", "name a roster")}
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if !utf8.Valid(data) {
		return jobfile.Issues{t.issue(0, "", "not text in UTF-8", "save it as CSV in UTF-8")}
	}
	t.csv = csv.NewReader(bytes.NewReader(data))
	t.csv.FieldsPerRecord = -1
	t.csv.TrimLeadingSpace = true
	t.csv.LazyQuotes = true // an inch mark is a quote
	t.csv.Comma = delimiter(data)
	header, err := t.csv.Read()
	if errors.Is(err, io.EOF) {
		return jobfile.Issues{t.issue(0, "", "nothing in it", "start it with a line such as name,title,height,width,thickness")}
	}
	if err != nil {
		return jobfile.Issues{t.unreadable(err)}
	}
	line, _ := t.csv.FieldPos(0)
	var issues jobfile.Issues
	for _, h := range header {
		h = strings.TrimSpace(h)
		key := strings.ToLower(h)
		if long, ok := shortColumns[key]; ok {
			key = long
		}
		switch {
		case key == nameColumn:
			key = ""
		case h == "":
			issues = append(issues, t.issue(line, "", fmt.Sprintf("column %d has no name", len(t.columns)+1), "name every column"))
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
	if issues != nil {
		return issues
	}
	return nil
}

// delimiter returns what parts the columns: the comma, or what a spreadsheet puts
// where the comma is for decimals.
func delimiter(data []byte) rune {
	first, _, _ := bytes.Cut(data, []byte("\n"))
	for _, d := range []rune{',', ';', '\t'} {
		if bytes.ContainsRune(first, d) {
			return d
		}
	}
	return ','
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
func (t *table) row(line int, fields []string) Row {
	r := Row{Source: t.source, Line: line}
	if len(fields) > len(t.columns) {
		r.Refused = append(r.Refused, t.issue(line, "", fmt.Sprintf("%d fields under %d columns", len(fields), len(t.columns)), "put a text with a comma in it in quotes"))
		return r
	}
	var flags []jobfile.Flag
	for i, f := range fields {
		switch f = strings.TrimSpace(f); {
		case t.keys[i] == "":
			r.Name = f
		case f != "":
			flags = append(flags, jobfile.Flag{Name: t.columns[i], Key: t.keys[i], Value: f})
		}
	}
	flags = append(flags, t.flags...)
	r.Given = t.digest(r.Name, flags)
	if r.Name == "" {
		r.Refused = append(r.Refused, t.issue(line, nameColumn, "no name", "give the student's"))
	}
	var err error
	if t.base != nil {
		r.File, r.Suspects, err = jobfile.Parse(t.base.Source, t.base.Data, flags...)
	} else {
		r.File, r.Suspects, err = jobfile.FromFlags(flags)
	}
	t.parsed++
	var issues jobfile.Issues
	if errors.As(err, &issues) {
		t.refused.count(issues, t.common)
		r.Refused = append(r.Refused, t.placed(line, issues)...)
	} else if err != nil {
		r.Refused = append(r.Refused, t.issue(line, "", err.Error(), ""))
	}
	r.Suspects = t.placed(line, r.Suspects)
	return r
}

// digest tells one job from another by what it was read from.
func (t *table) digest(name string, flags []jobfile.Flag) [32]byte {
	given := fmt.Sprintf("%q", name)
	for _, f := range flags {
		given += fmt.Sprintf(" %q=%q", f.Key, f.Value)
	}
	if t.base != nil {
		given += "\n" + string(t.base.Data)
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
