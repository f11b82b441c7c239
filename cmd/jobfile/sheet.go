package jobfile

import "forel/paper"

// sheet reads a sheet by its name or size.
func (r *reader) sheet(v value) paper.Sheet {
	unit := r.fileUnit
	if v.at.flag {
		unit = r.flagUnit
	}
	s, err := paper.ParseSheet(v.text, unit)
	if v.kind != textKind {
		_, err = paper.ParseSheet("", unit)
		_, right := halves(err)
		r.refuse(v.at, written(v)+" is no sheet", right)
	} else if err != nil {
		wrong, right := halves(err)
		r.refuse(v.at, wrong, right)
	}
	return s
}

// sheetTooSmall tells of a sheet that leaves too little room, at its margin
// where the maker chose one.
func (r *reader) sheetTooSmall(s paper.Setup) (Issue, bool) {
	err := s.Check()
	if err == nil {
		return Issue{}, false
	}
	at := r.where("print.paper")
	for _, m := range marginFields {
		if v, ok := r.get(m.key); ok {
			at = v.at
			break
		}
	}
	wrong, right := halves(err)
	return Issue{Source: at.source, Line: at.line, Key: at.name, Wrong: wrong, Right: right}, true
}
