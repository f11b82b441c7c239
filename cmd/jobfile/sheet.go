package jobfile

import (
	"strings"

	"forel/geometry"
	"forel/paper"
)

// size reads a size as parse does; zero where it tells what is wrong.
func (r *reader) size(v value, parse func(string, geometry.Unit) (paper.Sheet, error)) paper.Sheet {
	if v.kind != textKind {
		_, err := parse("", r.unitOf(v))
		r.reject(v, problem(err).Reason, problem(err).Fix)
		return paper.Sheet{}
	}
	s, err := parse(v.text, r.unitOf(v))
	if err != nil {
		r.tell(v.at, problem(err))
	}
	return s
}

// sheetTooSmall tells of a sheet that leaves too little room, at its margin
// where the maker chose one.
func (r *reader) sheetTooSmall(s paper.Setup) {
	err := s.Check()
	if s.Sheet.Width == 0 || err == nil { // it is told that there is none
		return
	}
	at := r.where("print.paper")
	for _, word := range wordsIn("print") {
		if v, ok := r.get("print." + word); ok && strings.HasPrefix(word, "margin") {
			at = v.at
			break
		}
	}
	r.tell(at, problem(err))
}
