package jobfile

import (
	"reflect"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/paper/stock"
)

// Plain returns the text of a job file that says by itself what a job takes from its shop
// and its flags: whoever has the one file gets the same case. The text of the job stays as it
// is but for that. Without data the job is that of the flags. The shop may be nil.
func (s *Shop) Plain(source string, data []byte, flags ...Flag) ([]byte, error) {
	r, issues := s.open(source, data, flags)
	if issues != nil {
		return nil, issues
	}
	said := r.said()
	f, issues, _ := r.checked()
	if data != nil && r.flagUnit != r.fileUnit {
		issues = append(issues, Issue{Problem: job.Problem{Key: "--units", Reason: "is not what the job file measures in", Fix: "leave it out"}})
	}
	if len(issues) > 0 {
		return nil, issues
	}
	e := newEdit(slices.Clone(data))
	if data == nil {
		e.set("units", textTOML(r.usual.String()))
		r.fileUnit = r.usual
	}
	for _, key := range said {
		e.remove(key)
	}
	for _, s := range slots { // a name in the place of a length
		if _, ok := r.file[s.thickness]; !ok {
			e.remove(s.thickness)
		}
	}
	foreign := Unused(f.Kind)
	for _, key := range knownKeys {
		v, ok := r.flags[key]
		if !ok {
			if v, ok = r.lent[key]; !ok || slices.Contains(foreign, key) || strings.HasPrefix(key, "stock.") {
				continue
			}
			if _, own := r.file[key]; own {
				continue
			}
		}
		if key == "units" {
			continue
		}
		e.uncomment(key)
		e.set(key, r.spelt(key, v))
	}
	first := r.ownStock()
	for n := range r.lentStock {
		name := numbered("stock", first+n+1)
		for _, key := range stockKeys {
			word := wordOf(key)
			v, ok := r.lent[name+"."+word]
			if word == "per" && !ok && f.Stock[first+n].Roll {
				v, ok = value{kind: textKind, text: stockPer.Words[0]}, true
				if f.Stock[first+n].Per == stock.Yard {
					v.text = stockPer.Words[1]
				}
			}
			if ok {
				e.set(name+"."+word, r.spelt("stock."+word, v))
			}
		}
		if _, ok := r.lent[name+".trim"]; !ok {
			e.set(name+".trim", textTOML(geometry.Settable(f.Stock[first+n].Trim, r.shop.unit)))
		}
	}
	plain, _, err := Parse(source, e.data)
	if err != nil || !plain.same(f) {
		return nil, r.at(0, "").notByKey()
	}
	return e.data, nil
}

// said returns the keys by which the job file itself names what the shop has, as they
// stand there.
func (r *reader) said() (keys []string) {
	for _, o := range r.shop.Offers() {
		if v, ok := r.file[o.Material]; ok {
			keys = append(keys, v.at.name)
		}
	}
	return keys
}

// spelt writes the value of a key as TOML has it, a bare length with the unit it has where
// that is not the unit of the file.
func (r *reader) spelt(key string, v value) string {
	f, _ := fieldOf(key)
	return v.each(func(item value) string {
		text := strings.TrimSpace(item.text)
		switch {
		case f.length() && r.unitOf(v) != r.fileUnit && item.bare():
			return item.spelt(r.unitOf(v))
		case item.kind == numberKind:
			return text
		case v.at.flag:
			return typed(key, text)
		}
		return textTOML(text)
	})
}

// same tells whether two files are of one job.
func (f File) same(other File) bool {
	a, b := f.Job.Shared(), other.Job.Shared()
	return f.Kind.About == other.Kind.About && slices.EqualFunc(f.Job.Settings(), other.Job.Settings(), job.Setting.Same) &&
		a.Title == b.Title && a.Unit == b.Unit && reflect.DeepEqual(a.Books, b.Books) && reflect.DeepEqual(f.beside(), other.beside())
}

// beside is what a file says beside its job, without where that was read.
func (f File) beside() File {
	f.Kind, f.Job, f.Case, f.Lent, f.Stock = plan.Kind{}, nil, nil, nil, slices.Clone(f.Stock)
	for i := range f.Stock {
		f.Stock[i].Pile, f.Stock[i].At = "", job.Place{}
	}
	return f
}
