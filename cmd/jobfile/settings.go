package jobfile

import (
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/paper"
	"forel/paper/bed"
	"forel/paper/quote"
	"forel/render/hairline"
)

// settings makes a File of all that was set, noting what is wrong.
func (r *reader) settings() File {
	r.units()
	r.lend()
	var f File
	f.Kind = r.kind()
	f.Job = f.Kind.New(r.usual)
	shared := f.Job.Shared()
	shared.Unit = r.flagUnit
	r.title("title", &shared.Title)
	shared.Books = r.readBooks()
	for _, s := range f.Job.Settings() {
		if v, ok := r.get(s.Key); ok {
			r.read(v, s)
		}
	}
	r.others(f.Kind, f.Job.Settings())
	f.Print, f.Times, f.Hours, f.Machine = paper.DefaultSetup(), usualTimes, usualHours(), Machine{bed.Default(), hairline.Usual}
	f.Quote.Material = quote.ByShare
	r.keepAll("", r.fileKeys(&f))
	f.Names = r.names(f.Kind)
	r.lendStock(f.Kind)
	f.Stock = r.readStock()
	f.Quote.Extra = r.extras()
	f.Lent = r.taken
	r.invalid()
	return f
}

// read reads one setting. One that is refused is left at its default, so that what does
// not fit together can be told too.
func (r *reader) read(v value, s job.Setting) {
	before := len(r.issues)
	switch {
	case s.Word != nil:
		*s.Word = r.choice(v, s)
	case s.Length != nil:
		*s.Length = r.setting(v, s)
	case s.Readings != nil:
		if all := r.readings(v, s.Key, s.What, Length(s.Min), Length(s.Max), nil); len(r.issues) == before {
			*s.Readings = all
		}
	default:
		if n := r.number(v, s, false); len(r.issues) == before {
			*s.Number = n
		}
	}
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
	if r.usual = r.fileUnit; !r.hasFile {
		r.usual = r.flagUnit
	}
}

func (r *reader) unit(v value) geometry.Unit {
	for _, u := range []geometry.Unit{geometry.MM, geometry.IN} {
		if v.kind == textKind && v.text == u.String() {
			return u
		}
	}
	r.reject(v, "is no unit of a job", `give "mm" or "in"`)
	if v.kind == textKind && strings.HasPrefix(strings.ToLower(v.text), "in") {
		return geometry.IN // inches were meant: don't go on about every number
	}
	return geometry.MM
}
