package jobfile

import (
	"slices"

	"forel/geometry/job"
	"forel/paper/money"
)

// kept is a key that is no setting of a case, with where what it sets is kept.
type kept struct {
	job.Setting
	to any // see reader.keep; nil: where the setting says
}

func textAt(key, what string, to *string) kept { return kept{job.Setting{Key: key, What: what}, to} }

func lengthAt(key, what string, least, most Length, to *Length) kept {
	return kept{job.LengthOf(key, what, float64(least), float64(most), to), to}
}

func numberAt(key, what string, least, most float64, to any) kept {
	return kept{job.NumberOf(key, what, least, most, new(float64)), to}
}

func shareAt(key, what string, most float64, to any) kept {
	return kept{job.PercentOf(key, what, 0, most, new(float64)), to}
}

func weightAt(key, what string, least, most float64, to any) kept {
	return kept{job.Setting{Key: key, What: what, Min: least, Max: most, Weight: true}, to}
}

// settingsIn returns the settings of keys.
func settingsIn(keys []kept) (all []job.Setting) {
	for _, k := range keys {
		all = append(all, k.Setting)
	}
	return all
}

func keysOf(settings []job.Setting) (keys []string) {
	for _, s := range settings {
		keys = append(keys, s.Key)
	}
	return keys
}

// fileKeys are the keys that are no settings of a case, but for those of lists. Without a
// reader they can be asked for what they are, not read.
func (r *reader) fileKeys(f *File) []kept {
	offcut := lengthAt("offcuts.least", "the shorter side of the smallest offcut worth keeping", 10, 1000, &f.Keep)
	return slices.Concat(r.printKeys(&f.Print, &f.Black), r.timesKeys(f), termKeys(f), []kept{offcut}, r.machineKeys(&f.Machine))
}

// keepAll reads the values of keys; those of a list as they are in one of its tables.
func (r *reader) keepAll(table string, keys []kept) {
	for _, k := range keys {
		key := k.Key
		if table != "" {
			key = table + "." + wordOf(key)
		}
		r.keep(key, k)
	}
}

// keep reads a value, where it is set, to where it is kept: text to a string, a word to one
// that has words, a whole number to an int; a function reads it itself. What is refused is
// left as it was; of a length out of its limits the nearest within them is kept.
func (r *reader) keep(key string, k kept) {
	v, ok := r.get(key)
	if !ok {
		return
	}
	switch to := k.to.(type) {
	case nil:
		r.read(v, k.Setting)
	case func(value):
		to(v)
	case *string:
		if k.Words == nil {
			r.title(key, to)
		} else {
			*to = r.choice(v, k.Setting)
		}
	case *int:
		*to = int(r.number(v, k.Setting, true))
	case *float64:
		if k.Weight {
			*to = r.weight(v, k.Setting)
		} else {
			*to = r.number(v, k.Setting, false)
		}
	case *Length:
		l, p, ok := r.measure(v, key, k.What, Length(k.Min), Length(k.Max), nil)
		if !ok {
			r.tell(v.at, p)
			l = p.Mend.Value
		}
		if ok || p.Mend.Key != "" {
			*to = l
		}
	case *money.Amount:
		if k.Weight {
			*to = money.Thousandths(r.weight(v, k.Setting))
		} else if a, ok := r.amount(v, k.Setting); ok {
			*to = a
		}
	case **money.Amount:
		if a, ok := r.amount(v, k.Setting); ok {
			*to = &a
		}
	}
}
