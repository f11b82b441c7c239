package page

import (
	"fmt"
	"strings"

	"forel/cmd/jobfile"
	"forel/geometry"
	"forel/geometry/job"
)

// State is what the job file sets, for the blanks of the page.
type State struct {
	Kind       string            `json:"kind"`       // what is made, in a sentence: "a case of boards"
	Unit       string            `json:"unit"`       // of bare numbers: mm or in
	Values     map[string]string `json:"values"`     // by key, as typed; of readings, with "; " between them
	Unused     []string          `json:"unused"`     // keys that this kind has no use for
	Books      []Book            `json:"books"`      // as far as they can be read
	Lists      map[string]int    `json:"lists"`      // how many of each list there are: stock, extra
	Dimensions []string          `json:"dimensions"` // of a book, in the order of the job file
}

// Book is a book as measured, to draw it in proportion.
type Book struct {
	Key      string               `json:"key"` // book, book[2]
	Title    string               `json:"title"`
	Measures map[string][]Reading `json:"measures"` // by dimension: height, width, thickness, thickness_at_fore_edge
	Sizes    map[string]float64   `json:"sizes"`    // the largest reading of each, in millimetres
}

// Reading is one measurement as typed. MM is 0 where it is no length.
type Reading struct {
	Typed   string  `json:"typed"`
	MM      float64 `json:"mm"`
	Largest bool    `json:"largest,omitempty"`
}

// stateOf tells of what a job file sets.
func stateOf(s jobfile.State) *State {
	out := &State{Kind: s.Kind.About, Unit: s.Unit.String(), Values: s.Values, Unused: jobfile.Unused(s.Kind), Books: []Book{}, Lists: s.Lists}
	for _, d := range job.Dimensions {
		out.Dimensions = append(out.Dimensions, d.Key)
	}
	for n := range max(1, s.Books) {
		out.Books = append(out.Books, bookOf(s, n))
	}
	return out
}

// bookOf returns the nth book, from 0.
func bookOf(s jobfile.State, n int) Book {
	b := Book{Key: "book", Measures: map[string][]Reading{}, Sizes: map[string]float64{}}
	if n > 0 {
		b.Key = fmt.Sprintf("book[%d]", n+1)
	}
	b.Title = s.Values[b.Key+".title"]
	for _, d := range job.Dimensions {
		largest := -1
		var all []Reading
		for _, typed := range strings.Split(s.Values[b.Key+"."+d.Key], ";") {
			if typed = strings.TrimSpace(typed); typed == "" {
				continue
			}
			r := Reading{Typed: typed}
			if l, err := geometry.ParseLength(typed, s.Unit); err == nil && l > 0 {
				r.MM = l.MM()
			}
			if all = append(all, r); r.MM > 0 && (largest < 0 || r.MM > all[largest].MM) {
				largest = len(all) - 1
			}
		}
		if largest >= 0 {
			all[largest].Largest = true
			b.Sizes[d.Key] = all[largest].MM
		}
		b.Measures[d.Key] = all
	}
	return b
}
