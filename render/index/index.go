// Package index makes the page that leads to the files of every student of a
// class: one HTML file (WHATWG HTML) that works from a folder, without a net.
package index

import (
	"bytes"
	"cmp"
	"fmt"
	"html/template"
	"net/url"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
)

// Entry is a student with the folder of their files, beside the page.
type Entry struct {
	Name   string
	Folder string
	Plan   plan.Plan
	Round  geometry.Rounding
	Files  []File // to be led to
}

// File is a file in a student's folder and what the page calls it.
type File struct{ Name, Says string }

// Page is what the index tells.
type Page struct {
	Entries []Entry
	Missing []string // students who have no files
	Files   []File   // of the class as a whole, beside the page
}

// HTML returns the page.
func HTML(p Page) ([]byte, error) {
	var b bytes.Buffer
	if err := page.Execute(&b, p); err != nil {
		return nil, fmt.Errorf("index: %w", err)
	}
	return b.Bytes(), nil
}

var page = template.Must(template.New("index").Funcs(template.FuncMap{
	"path": func(folder, file string) string { return url.PathEscape(folder) + "/" + url.PathEscape(file) },
	"here": url.PathEscape,
	"size": func(e Entry, s plan.Size) string {
		return e.Round.PrettyNumber(s.Height) + " × " + e.Round.PrettyNumber(s.Width) + " × " + e.Round.Pretty(s.Thickness)
	},
	"title":   func(e Entry) string { return cmp.Or(e.Plan.Title, wording.Capital(e.Plan.Content)) },
	"picture": func() string { return PictureName }, "describe": describe,
	"cautions": func() string { return wording.Careful(wording.Knife, wording.Adhesive, wording.Machine) },
}).Parse(`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Slipcases of the class</title>
<style>
body { font: 16px/1.45 sans-serif; color: #000; background: #fff; margin: 2rem auto; max-width: 62rem; padding: 0 1rem; }
h1 { font-size: 1.6rem; margin: 0 0 .3rem; }
table { border-collapse: collapse; width: 100%; margin-top: 1.5rem; }
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
<h1>Slipcases of the class</h1>
<p>{{len .Entries}} students. Print every templates.pdf at actual size (100 %), and measure its rulers before cutting. In the pictures blue is cloth, yellow paper, grey bare board.</p>
{{- with .Missing}}
<p>Without files, since their row could not be made:</p>
<ul>{{range .}}<li>{{.}}</li>{{end}}</ul>
{{- end}}
{{- with .Files}}
<p>For the teacher:</p>
<ul>{{range .}}<li><a href="{{here .Name}}">{{.Says}}</a></li>{{end}}</ul>
{{- end}}
<table>
<tr><th>case</th><th>student</th><th>height × width × thickness</th><th>files</th></tr>
{{- range .Entries}}{{$e := .}}
<tr>
<td><img src="{{path .Folder picture}}" alt="{{describe .Plan}}" width="72" height="88"></td>
<td>{{.Name}}<br><small>{{title .}}</small></td>
<td>book {{size . .Plan.Contents}}<br><small>outside {{size . .Plan.Outside}}</small></td>
<td class="files">{{range .Files}}<a href="{{path $e.Folder .Name}}">{{.Says}}</a>{{end}}</td>
</tr>
{{- end}}
</table>
<p><small>{{cautions}}</small></p>
</body>
</html>
`))
