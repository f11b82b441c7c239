package jobfile

import (
	"reflect"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/paper/stock"
)

// Plain returns the text of a job file that says by itself what a job takes from its shop
// and its flags: whoever has the one file gets the same case. The text of the job stays as it
// is but for that. Without data the job is that of the flags. The shop may be nil.
func (s *Shop) Plain(source string, data []byte, flags ...Flag) ([]byte, error) {
	r := s.reader(source, data != nil)
	if issues := r.readTOML(data); issues != nil {
		return nil, issues
	}
	r.readFlags(flags)
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
		return nil, Issues{r.at(0, "").issue(job.Problem{Reason: "is written in a way that can't be changed key by key",
			Fix: "write each table with its header, and below it each key on a line of its own"})}
	}
	return e.data, nil
}

// said returns the keys by which the job file itself names what the shop has, as they
// stand there.
func (r *reader) said() (keys []string) {
	for _, key := range append([]string{printerKey, cutterKey}, materialKeys()...) {
		if v, ok := r.file[key]; ok {
			keys = append(keys, v.at.name)
		}
	}
	return keys
}

func materialKeys() (keys []string) {
	for _, s := range slots {
		keys = append(keys, s.material)
	}
	return keys
}

// spelt writes the value of a key as TOML has it, a bare length with the unit it has where
// that is not the unit of the file.
func (r *reader) spelt(key string, v value) string {
	f, _ := fieldOf(key)
	one := func(item value) string {
		text := strings.TrimSpace(item.text)
		if f.length() && item.kind <= numberKind && r.unitOf(v) != r.fileUnit {
			if _, length, _, _ := layersOf(text); !strings.EqualFold(text, "auto") && (bareSize.MatchString(text) || unitWritten(length) == "") {
				return textTOML(text + " " + r.unitOf(v).String())
			}
		}
		if item.kind == numberKind {
			return text
		}
		if v.at.flag {
			return typed(key, text)
		}
		return textTOML(text)
	}
	if v.kind != listKind {
		return one(v)
	}
	var items []string
	for _, item := range v.items {
		items = append(items, one(item))
	}
	return "[" + strings.Join(items, ", ") + "]"
}

// same tells whether two files are of one job.
func (f File) same(other File) bool {
	a, b := f.Job.Settings(), other.Job.Settings()
	if f.Kind.About != other.Kind.About || len(a) != len(b) {
		return false
	}
	for i := range a {
		if !a[i].Same(b[i]) {
			return false
		}
	}
	s, t := f.Job.Shared(), other.Job.Shared()
	return s.Title == t.Title && s.Unit == t.Unit && reflect.DeepEqual(s.Books, t.Books) && f.Print == other.Print && f.Black == other.Black && f.Keep == other.Keep && reflect.DeepEqual(f.Machine, other.Machine) &&
		reflect.DeepEqual(unpiled(f.Stock), unpiled(other.Stock)) && reflect.DeepEqual(f.Names, other.Names) &&
		reflect.DeepEqual(f.Times, other.Times) && reflect.DeepEqual(f.Hours, other.Hours) &&
		reflect.DeepEqual(f.Order, other.Order) && reflect.DeepEqual(f.Adhesive, other.Adhesive) && reflect.DeepEqual(f.Quote, other.Quote)
}

// unpiled returns stock without where it is counted and read.
func unpiled(all []stock.Stock) []stock.Stock {
	all = slices.Clone(all)
	for i := range all {
		all[i].Pile, all[i].At = "", job.Place{}
	}
	return all
}
