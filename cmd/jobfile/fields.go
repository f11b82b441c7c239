package jobfile

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/geometry/wording"
)

const mostTitle = 200 // characters

// settings makes a File of all that was set, noting what is wrong.
func (r *reader) settings() File {
	f := File{Construction: Boards, Job: slipcase.DefaultJob()}
	r.units()
	f.Job.Unit = r.flagUnit
	r.title("title", &f.Job.Title)
	f.Job.Books = r.readBooks()
	for _, field := range slipcase.Fields {
		if v, ok := r.get(field.Key); ok {
			*field.At(&f.Job) = r.field(v, field)
		}
	}
	for _, c := range slipcase.Choices {
		if v, ok := r.get(c.Key); ok {
			*c.At(&f.Job) = r.choice(v, c)
		}
	}
	for _, p := range slipcase.Percents {
		if v, ok := r.get(p.Key); ok {
			*p.At(&f.Job) = r.percent(v, p)
		}
	}
	if v, ok := r.get(construction.Key); ok {
		f.Construction = r.choice(v, construction)
	}
	f.Card = r.card(f.Job)
	f.Print, f.Black = r.print()
	f.Names = r.names()
	f.Stock = r.readStock()
	return f
}

// units settles what bare numbers mean, which the rest needs.
func (r *reader) units() {
	if v, ok := r.file["units"]; ok {
		r.fileUnit = r.unit(v)
	}
	r.flagUnit = r.fileUnit
	if v, ok := r.flags["units"]; ok {
		r.flagUnit = r.unit(v)
	}
}

func (r *reader) unit(v value) geometry.Unit {
	for _, u := range []geometry.Unit{geometry.MM, geometry.IN} {
		if v.kind == textKind && v.text == u.String() {
			return u
		}
	}
	r.refuse(v.at, written(v)+" is no unit of a job", `give "mm" or "in"`)
	if v.kind == textKind && strings.HasPrefix(strings.ToLower(v.text), "in") {
		return geometry.IN // inches were meant: don't go on about every number
	}
	return geometry.MM
}

// steering tells of characters that are not seen but change how text around
// them is set: control characters and those that turn its direction.
func steering(c rune) bool { return unicode.IsControl(c) || unicode.Is(unicode.Bidi_Control, c) }

func (r *reader) title(key string, to *string) {
	v, ok := r.get(key)
	switch {
	case !ok:
	case v.kind != textKind:
		r.refuse(v.at, written(v)+" is no title", `give text in quotes, such as "Harbour log"`)
	case !utf8.ValidString(v.text):
		r.refuse(v.at, wording.Quote(v.text)+" is not UTF-8 text", "type the title again")
	case strings.IndexFunc(v.text, steering) >= 0:
		r.refuse(v.at, wording.Quote(v.text)+" is not one line of text", "write the title without line ends, tabs and other control characters")
	case len([]rune(v.text)) > mostTitle:
		r.refuse(v.at, "the title is too long", fmt.Sprintf("write no more than %d characters", mostTitle))
	default:
		*to = v.text
	}
}
