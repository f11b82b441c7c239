package jobfile

import (
	"forel/geometry/job"
	"forel/paper/money"
)

// kept is a key that is no setting of a case, with where what it sets is kept.
type kept struct {
	job.Setting
	to any // see reader.keep; nil: it is read apart
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

// keep reads a value, where it is set, to where it is kept: text to a string, a word to one
// that has words, a whole number to an int. An amount that is refused is left as it was.
func (r *reader) keep(key string, k kept) {
	v, ok := r.get(key)
	if !ok {
		return
	}
	switch to := k.to.(type) {
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
		*to = r.length(v, key, k.What, Length(k.Min), Length(k.Max))
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
