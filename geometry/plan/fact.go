package plan

import "forel/geometry/stage"

// Fact is something measured of the finished thing, or left in it: what it is,
// and its lengths in words and for programs.
type Fact struct {
	Key   string // for reports that programs read, such as "outside"
	Name  string // for readers, such as "outside, without covering"
	Text  string // of the lengths, each at a %s
	Parts []Part // in the order of Text
}

// Part is one length of a fact.
type Part struct {
	Key    string // for reports that programs read, such as "height"
	Length Length
}

// The facts of every kind of case, both of them sizes.
const (
	Contents = "contents" // what it is made for
	Outside  = "outside"  // the finished thing
)

// Fact returns the fact with a key; an empty one where there is none.
func (p Plan) Fact(key string) Fact {
	for _, f := range p.Facts {
		if f.Key == key {
			return f
		}
	}
	return Fact{}
}

// Says returns the fact's lengths in words.
func (f Fact) Says() stage.Say {
	s := stage.Say{Text: f.Text}
	for _, p := range f.Parts {
		s.Lengths = append(s.Lengths, p.Length)
	}
	return s
}

// LeftFact returns the fact of the room that is left of a size.
func LeftFact(key, name string, s Size) Fact {
	return Fact{Key: key, Name: name, Parts: []Part{{"height", s.Height}, {"depth", s.Width}, {"thickness", s.Thickness}}}
}

// SizeFact returns the fact of a size; across is the word for its width, "wide" or
// "deep".
func SizeFact(key, name, across string, s Size) Fact {
	return Fact{
		Key: key, Name: name, Text: "%s high, %s " + across + ", %s thick",
		Parts: []Part{{"height", s.Height}, {"width", s.Width}, {"thickness", s.Thickness}},
	}
}
