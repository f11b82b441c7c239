package page

import (
	"strings"
	"time"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/wording"
	"forel/geometry/work"
)

// Section is a table of a job file as the page shows it.
type Section struct {
	Table  string  `json:"table"` // "": what stands at the top
	Name   string  `json:"name"`  // its heading
	Says   string  `json:"says"`
	Fields []Blank `json:"fields"`
}

// Blank is a key of a job file as the page shows it.
type Blank struct {
	jobfile.Field
	Label string `json:"label"`           // the key in plain letters
	Range string `json:"range,omitempty"` // "0.5 mm to 6 mm"
	Place Place  `json:"place"`
	Of    string `json:"of,omitempty"`   // of a material: what it is
	Role  string `json:"role,omitempty"` // of a material: thickness, known or name
	Open  bool   `json:"open,omitempty"` // shown at once; else folded away beneath its heading
}

// Place is the section of the page that a blank stands in.
type Place string

// Places.
const (
	InBook      Place = "book"
	InMaterials Place = "materials"
	InMake      Place = "make"
	InSheets    Place = "sheets"
	InKeep      Place = "keep"
	InTop       Place = "top" // what is said of the whole job: its title and unit
)

// priced are the tables of what a case costs.
var priced = map[string]bool{"order": true, "adhesive": true, "quote": true, "extra": true}

// sectionsOf returns the keys of a job file as the page shows them, with lengths in a
// unit.
func sectionsOf(unit geometry.Unit) (out []Section) {
	materials := materialKeys()
	for _, s := range jobfile.Fields(unit) {
		section := Section{Table: s.Table, Name: plainWords(s.Table), Says: s.Says}
		for i, f := range s.Fields {
			f.Says = strings.TrimPrefix(strings.TrimPrefix(f.Says, "invented"), ": ") // which the book of the starter is
			b := Blank{Field: f, Label: plainWords(strings.TrimPrefix(f.Key, s.Table+".")), Range: rangeOf(f, unit), Place: InMake}
			of, ok := materials[f.Key]
			switch {
			case ok:
				b.Place, b.Of, b.Role = InMaterials, of.Of, of.Role
			case s.Table == "book":
				b.Place = InBook
			case s.Table == "print" || s.Table == "stock" || priced[s.Table]:
				b.Place = InSheets
			case f.Key == "title" || f.Key == "units":
				b.Place = InTop
			case f.Kind == jobfile.TakesChoice:
				// What the rest of a table, or of the job, depends on.
				b.Open = s.Table == "" || i == 0 || f.Words[0] == "none"
			}
			section.Fields = append(section.Fields, b)
		}
		out = append(out, section)
	}
	return out
}

// materialKeys returns what each key of a material tells: beside the name of each there is
// a thickness, and of boards how it is known.
func materialKeys() map[string]Blank {
	out := map[string]Blank{}
	for _, n := range kinds.Named() {
		thickness := n.Thickness()
		of := plainWords(thickness[strings.Index(thickness, ".")+1:])
		if of == "thickness" {
			of, _, _ = strings.Cut(thickness, ".")
			of = plainWords(of)
		}
		out[n.Key] = Blank{Of: of, Role: "name"}
		out[strings.TrimSuffix(n.Key, "name")+"known"] = Blank{Of: of, Role: "known"}
		out[thickness] = Blank{Of: of, Role: "thickness"}
	}
	return out
}

// plainWords writes a key as words.
func plainWords(key string) string { return strings.ReplaceAll(key, "_", " ") }

// rangeOf tells in words what a field takes; nothing where it is not limited by itself.
func rangeOf(f jobfile.Field, unit geometry.Unit) string {
	if f.Min == 0 && f.Max == 0 || f.Max >= 1e6 { // of money, as good as none
		return ""
	}
	lo, hi := "", ""
	switch f.Kind {
	case jobfile.TakesLength, jobfile.TakesReadings:
		lo, hi = job.Show(geometry.Length(f.Min), unit, +1), job.Show(geometry.Length(f.Max), unit, -1)
	case jobfile.TakesWeight:
		lo, hi = wording.Decimal(f.Min, 6)+" g", wording.Decimal(f.Max, 6)+" g"
	case jobfile.TakesTime:
		return "at most " + work.Show(time.Duration(f.Max)*time.Minute)
	case jobfile.TakesPercent:
		lo, hi = wording.Decimal(f.Min, 6), wording.Decimal(f.Max, 6)+" %"
	case jobfile.TakesNumber:
		lo, hi = wording.Decimal(f.Min, 6), wording.Decimal(f.Max, 6)
	default:
		return ""
	}
	said := lo + " to " + hi
	if f.Auto {
		said += `, or "auto"`
	}
	return said
}
