package job

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
		case found.Word != nil:
			*found.Word = c.Word
		default:
			panic("no length or word is set by " + c.Key)
		}
	}
}
