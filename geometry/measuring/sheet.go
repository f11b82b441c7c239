package measuring

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/wording"
)

// Blank is a row to write what was measured into.
type Blank struct {
	Name   string   // what is measured, or which of several
	Key    string   // of a job file, that takes it
	Places []string // what stands in its cells: where each reading is taken; "": anywhere
	Unit   string   // of its cells, where it is not that of lengths: "g"
	Counts int      // the cell that is no length but a number, from 1; 0: none is
}

// Section is a picture with its words and its blanks. A section without a picture has a
// title and words alone.
type Section struct {
	Picture
	Blanks []Blank
}

// Material is a material whose thickness is measured.
type Material struct {
	Of   geometry.Material
	Name string // what the maker calls it; may be empty
	Key  string // of a job file
	Now  string // what is taken until it is measured, as it is typed
}

// Sheet returns the sections of a measuring sheet: for these books, these materials, and
// what else of a kind's settings is measured. Pictures show a book of about this size.
func Sheet(books []job.Book, size Size, materials []Material, settings job.Settings) []Section {
	pictures := Pictures(size)
	at := func(name string) *Section {
		for i := range pictures {
			if pictures[i].Name == name {
				return &Section{Picture: pictures[i]}
			}
		}
		panic("no picture of " + name)
	}
	press, high, wide, thick, boards, sheets := at(Pressing), at(Height), at(Width), at(Thickness), at(Boards), at(Sheets)
	row := func(s *Section, n int, key, more string, places ...string) {
		name := more
		if who := volume(books, n); who != "" {
			name = wording.Capital(who)
			if more != s.Name {
				name += ", " + more
			}
		}
		s.Blanks = append(s.Blanks, Blank{Name: wording.Capital(name), Key: job.BookKey(n, key), Places: places})
	}
	weighed := Section{Picture: Picture{Title: "Weight, where it is much", Text: []string{"On a kitchen scale. forel fit then tells whether the board is strong enough."}}}
	for n := range books {
		row(high, n, Height, Height, "near the spine", "middle", "fore-edge", "")
		row(wide, n, Width, Width, "head", "middle", "tail", "")
		row(thick, n, Thickness, Thickness, "head", "middle", "tail", "")
		row(thick, n, "thickness_at_fore_edge", "at the fore-edge, if it differs", "head", "middle", "tail", "")
		row(&weighed, n, "weight", "weight", "")
		weighed.Blanks[n].Unit = "g"
	}
	for _, s := range settings {
		if s.OfBook {
			press.Blanks = append(press.Blanks, Blank{Name: wording.Capital(s.What), Key: s.Key, Places: []string{"", "", "", ""}})
		}
	}
	for _, m := range materials {
		s := sheets
		if Of(m.Of) == Boards {
			s = boards
		}
		name := wording.Capital(m.Of.Words())
		if m.Name != "" {
			name += ": " + m.Name
		}
		b := Blank{Name: name, Key: m.Key, Places: []string{"layers", "together", "one layer"}, Counts: 1}
		if m.Now != "" {
			b.Key += " (now " + m.Now + ")"
		}
		s.Blanks = append(s.Blanks, b)
	}
	out := []Section{*press, *high, *wide, *thick, weighed}
	for _, s := range []*Section{boards, sheets} {
		if len(s.Blanks) > 0 {
			out = append(out, *s)
		}
	}
	later := Section{Picture: Picture{Title: "Later, on the bench", Text: []string{"Measure it outside, at several places, before you cut what goes on or over it. The rest is then worked out for it."}}}
	for _, s := range settings {
		if s.Readings != nil {
			later.Blanks = append(later.Blanks, Blank{Name: wording.Capital(s.What), Key: s.Key, Places: []string{"", "", "", ""}})
		}
	}
	if len(later.Blanks) > 0 {
		out = append(out, later)
	}
	return out
}

// volume names the nth of several books; "" where there is one.
func volume(books []job.Book, n int) string {
	switch {
	case len(books) == 1:
		return ""
	case books[n].Title != "":
		return wording.OneLine(books[n].Title)
	}
	return fmt.Sprintf("volume %d", n+1)
}
