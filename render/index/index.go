// Package index makes the page that leads to the files of every student of a
// class: one HTML file (WHATWG HTML) that works from a folder, without a net.
package index

import (
	"cmp"
	"fmt"
	"html"
	"net/url"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
)

// Entry is a student with the folder of their files, beside the page.
type Entry struct {
	Name   string
	Title  string // of the book
	Folder string
	Plan   *plan.Plan
	Round  geometry.Rounding
	Fit    Fit
	Files  []File // to be led to
}

// Fit is how a student's case will fit, in words.
type Fit struct {
	Says, Advice string
	Risk         bool // it may well be too tight or too loose
}

// File is a file in a student's folder and what the page calls it.
type File struct{ Name, Says string }

// Page is what the index tells.
type Page struct {
	Entries []Entry
	Missing []string // students who have no files
	Files   []File   // of the class as a whole, beside the page
}

// HTML returns the page. Whatever a maker typed is escaped.
func HTML(p Page) []byte {
	var b strings.Builder
	fmt.Fprintf(&b, head, len(p.Entries))
	if p.Missing != nil {
		b.WriteString("\n<p>Without files, since their row could not be made:</p>\n<ul>")
		for _, m := range p.Missing {
			fmt.Fprintf(&b, "<li>%s</li>", esc(m))
		}
		b.WriteString("</ul>")
	}
	if p.Files != nil {
		b.WriteString("\n<p>For the teacher:</p>\n<ul>")
		for _, f := range p.Files {
			fmt.Fprintf(&b, `<li><a href="%s">%s</a></li>`, address(f.Name), esc(f.Says))
		}
		b.WriteString("</ul>")
	}
	b.WriteString("\n<table>\n<tr><th>case</th><th>student</th><th>measures</th><th>fit</th><th>files</th></tr>")
	for _, e := range p.Entries {
		e.row(&b)
	}
	fmt.Fprintf(&b, foot, esc(wording.Careful(wording.Knife, wording.Adhesive, wording.Machine)))
	return []byte(b.String())
}

// row writes a student's row of the table.
func (e Entry) row(b *strings.Builder) {
	fmt.Fprintf(b, `
<tr>
<td><img src="%s" alt="%s" width="72" height="88"></td>
<td>%s<br><small>%s</small></td>
<td>%s<br><small>%s</small></td>
<td>%s%s<br><small>%s</small></td>
<td class="files">`,
		address(e.Folder, PictureName), esc(wording.Capital(e.Plan.Shows)),
		esc(e.Name), esc(cmp.Or(e.Title, wording.Capital(e.Plan.Content))),
		e.fact(plan.Contents), e.fact(plan.Outside),
		map[bool]string{true: "<strong>at risk</strong> – "}[e.Fit.Risk], esc(e.Fit.Says), esc(wording.Capital(e.Fit.Advice)))
	for _, f := range e.Files {
		fmt.Fprintf(b, `<a href="%s">%s</a>`, address(e.Folder, f.Name), esc(f.Says))
	}
	b.WriteString("</td>\n</tr>")
}

// fact writes what a fact of the plan is, and its lengths.
func (e Entry) fact(key string) string {
	f := e.Plan.Fact(key)
	return esc(f.Name + ": " + f.Says().In(e.Round.Pretty))
}

// esc writes text so that nothing in it counts as HTML.
func esc(text string) string { return html.EscapeString(text) }

// address returns the place of a file from the page, as an attribute holds it.
func address(parts ...string) string {
	for i, p := range parts {
		parts[i] = url.PathEscape(p)
	}
	return esc(strings.Join(parts, "/"))
}

const head = `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Cases of the class</title>
<style>
body { font: 16px/1.45 sans-serif; color: #000; background: #fff; margin: 2rem auto; max-width: 62rem; padding: 0 1rem; }
h1 { font-size: 1.6rem; margin: 0 0 .3rem; }
table { border-collapse: collapse; width: 100%%; margin-top: 1.5rem; }
th, td { text-align: left; vertical-align: middle; padding: .6rem .8rem .6rem 0; border-top: 1px solid #bbb; }
th { border-top: 0; font-size: .85rem; }
td small { color: #444; }
td.files a { display: inline-block; margin-right: .9rem; }
img { display: block; width: 72px; height: 88px; }
a { color: #0072b2; }
@media print { a { color: #000; text-decoration: none; } body { margin: 0; font-size: 11px; } tr { break-inside: avoid; } }
</style>
</head>
<body>
<h1>Cases of the class</h1>
<p>%d students. Print every templates.pdf at actual size (100 %%), and measure its rulers before cutting. In the pictures blue is cloth, yellow paper, grey bare board or card. A case at risk may well come out too tight or too loose: mend it as its row says, or make a dummy first.</p>`

const foot = `
</table>
<p><small>%s</small></p>
</body>
</html>
`
