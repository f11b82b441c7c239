package job

import "strings"

// Change is a setting of a job file and what to set it to: a length, or a word.
type Change struct {
	Key   string
	Value Length
	Word  string // "" for a length
}

// Apply makes changes to the job whose settings these are. It panics where a
// setting is not among them: changes are made up by the program, not read.
func (s Settings) Apply(changes []Change) {
	for _, c := range changes {
		switch found, _ := s.Find(c.Key); {
		case found.Length != nil:
			*found.Length = c.Value
		case found.Readings != nil:
			*found.Readings = Readings{c.Value}
		case found.Word != nil:
			*found.Word = c.Word
		default:
			panic("no length or word is set by " + c.Key)
		}
	}
}

// Take gives the settings the values of others of the same kind.
func (s Settings) Take(others Settings) {
	for i, one := range s {
		switch {
		case one.Length != nil:
			*one.Length = *others[i].Length
		case one.Readings != nil:
			*one.Readings = *others[i].Readings
		case one.Word != nil:
			*one.Word = *others[i].Word
		default:
			*one.Number = *others[i].Number
		}
	}
}

// Measure changes a dimension of a book, and tells whether the change is one.
func (c *Common) Measure(change Change) bool {
	for n := range c.Books {
		for _, d := range Dimensions {
			if BookKey(n, d.Key) == change.Key {
				c.Books = append([]Book(nil), c.Books...) // others may hold them
				*d.At(&c.Books[n]) = Readings{change.Value}
				return true
			}
		}
	}
	return strings.HasPrefix(change.Key, "book")
}
