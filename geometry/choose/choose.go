// Package choose helps to choose what to make for a book, of how thick a board, and how the
// book comes out of it. Each piece of advice has its reasons, and each reason its source or
// the words that it is common practice. What is advised is tried: a job with it is accepted.
package choose

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
	"forel/geometry/stage"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// What a case is for.
const (
	Shelf   = "shelf"
	Travel  = "travel"
	Daily   = "handled daily"
	Gift    = "gift"
	Archive = "archive"
)

// Uses lists what a case can be for; the first is the usual one.
var Uses = []string{Shelf, Travel, Daily, Gift, Archive}

// What of a book can call for more than a slipcase.
const (
	Fragile = "fragile" // its covering rubs or flakes
	Raised  = "raised"  // ornaments, clasps or bosses stand out from it
	Loose   = "loose"   // leaves or boards of it
)

// Conditions lists them.
var Conditions = []string{Fragile, Raised, Loose}

// Ask is what is known of the books, and what the case is for.
type Ask struct {
	Books      []job.Book // measured; side by side in one case
	Unit       geometry.Unit
	Use        string   // one of Uses
	Conditions []string // of Conditions
}

// Choice is what is advised.
type Choice struct {
	Kind    plan.Kind
	Size    plan.Size // of all books together
	Grams   float64   // of all books together
	Weighed bool      // false: the weight is an estimate
	Board   *Board    // nil: the thickness is not worked out
	Advice  []Advice
	Others  []Other      // what else there is
	Sets    []job.Change // of a job file; kind and construction among them
}

// Advice is one piece of advice.
type Advice struct {
	Key  string // for programs: make, board, out
	Name string // what it is about
	Says stage.Say
	Why  []Reason
}

// Keys returns the keys of the settings that a piece of advice comes to.
func (c Choice) Keys(a Advice) (keys []string) {
	for _, s := range c.Sets {
		of := "make"
		switch {
		case s.Key == boardKey(c.Kind):
			of = "board"
		case s.Key == holeKey:
			of = "out"
		}
		if of == a.Key {
			keys = append(keys, s.Key)
		}
	}
	return keys
}

// Without returns the choice for a job that has a thumb hole: where none is advised, that is set.
func (c Choice) Without() Choice {
	if !slices.ContainsFunc(c.Sets, func(s job.Change) bool { return s.Key == holeKey }) {
		c.Sets = append(slices.Clone(c.Sets), job.Change{Key: holeKey, Word: "none"})
	}
	return c
}

// Holed tells whether a job has a thumb hole.
func Holed(all job.Settings) bool {
	s, ok := all.Find(holeKey)
	return ok && *s.Word != s.Words[0]
}

// Other is what is not advised, and what it is for.
type Other struct{ Name, Says, Source string }

// Reason is why, in a sentence, and where that comes from.
type Reason struct {
	Says   stage.Say
	Source string
}

// Where reasons come from.
const (
	practice = "common practice, no source"
	diehl    = `E. Diehl, Bookbinding: Its Background and Technique (1946), "Chemises"`
	roberts  = "M. Roberts and D. Etherington, Bookbinding and the Conservation of Books (1982)"
	cornell  = "Cornell University Library, Conservation manual guide 11A (1999)"
	malkin   = `G. Malkin, "Straightforward Slipcases" (2016)`
	trays    = `BPG Drop Spine Box, AIC wiki (2020); S. L. Reese, Basic Drop-Spine Box, UCSB Art Department`
	here     = "worked out here"
)

// why returns a reason.
func why(source, text string, lengths ...Length) Reason {
	return Reason{stage.Words(text, lengths...), source}
}

// density is that of a bound book, in g/cm³, where none was weighed (from memory: text
// paper is 0.7 to 0.9, and a book is not all paper).
const density = 0.7

// Of returns what is advised. An error is of type job.Problems: why nothing can be made for
// these books.
func Of(a Ask) (Choice, error) {
	c := Choice{Weighed: true}
	a.Books = slices.Clone(a.Books)
	for i, b := range a.Books {
		c.Size.Height = max(c.Size.Height, b.Height.Largest())
		c.Size.Width = max(c.Size.Width, b.Width.Largest())
		c.Size.Thickness += b.Thick()
		if b.Weight == 0 {
			c.Weighed = false
			a.Books[i].Weight = (b.Height.Largest() * b.Width.Largest() * b.Thick()).MM() / 1000 * density
		}
		c.Grams += a.Books[i].Weight
	}
	var refused job.Problems
	for i, w := range ways(a, c) {
		made, ps := w.tried(a, c)
		if ps != nil {
			if i == 0 {
				refused = ps
			}
			continue
		}
		made.Others = others(a, made)
		return made, nil
	}
	return c, beyond(refused)
}

// beyond says why nothing is advised: what would suit a book best, and why it can't be.
func beyond(refused job.Problems) (out job.Problems) {
	for _, p := range refused {
		what := strings.TrimSpace(p.Key + " " + p.Value)
		out = append(out, job.Problem{Key: "book", Reason: fmt.Sprintf("no case is advised for a book of this size and weight: %s %s", what, p.Reason),
			Fix: "ask somebody who has made cases for such books, or choose yourself what to make of which board, in a job file"})
	}
	return out
}

// tried works out the choice that a way comes to, or why it can't be made.
func (w way) tried(a Ask, c Choice) (Choice, job.Problems) {
	k, ok := kinds.Find(w.kind, w.construction)
	if !ok {
		panic("no kind of case is called " + w.kind)
	}
	c.Kind = k
	c.Sets = []job.Change{{Key: "kind", Word: w.kind}}
	if k.Construction != "" {
		c.Sets = append(c.Sets, job.Change{Key: "construction", Word: k.Construction})
	}
	c.Advice = []Advice{{"make", "what to make", stage.Words(cmp.Or(w.says, k.About)), w.why}}
	board := boardKey(k)
	sets := slices.Clone(w.sets)
	if w.bends {
		b := w.board(c, a.Unit)
		c.Board = &b
		sets = append(sets, job.Change{Key: board, Value: b.Thickness()})
	}
	sets = append(sets, w.hole...)
	p, kept, refused := made(a, k, sets)
	if refused != nil {
		return c, refused
	}
	least, ok := p.Load.Bears(c.Grams)
	carried := ok
	if !ok && w.kind == box.kind { // which can be kept lying
		least, ok = p.Load.Bears(p.Load.Most)
		c.Advice[0].Why = append(c.Advice[0].Why, why(practice, fmt.Sprintf("as it stands upright %.0f g %s", c.Grams, p.Load.TooHeavy)))
	}
	switch {
	case !ok:
		return c, job.Problems{{Key: "book.weight", Value: fmt.Sprintf("%.0f g", c.Grams), Reason: p.Load.TooHeavy}}
	case c.Board != nil && c.Board.Thickness() < least:
		c.Board.carry(least, a.Unit)
		for i := range kept {
			if kept[i].Key == board {
				kept[i].Value = c.Board.Thickness()
			}
		}
		if _, kept, refused = made(a, k, kept); refused != nil {
			return c, refused
		}
	}
	if c.Board != nil {
		if !carried {
			least = 0 // there is none to tell of
		}
		c.Advice = append(c.Advice, w.advice(*c.Board, least, a.Unit))
	} else {
		c.Advice = append(c.Advice, Advice{"board", "how thick", stage.Words("%s", p.Load.Has), []Reason{w.folded}})
	}
	c.Advice = append(c.Advice, out(a, c, w, slices.ContainsFunc(kept, func(s job.Change) bool { return s.Key == holeKey })))
	c.Sets = append(c.Sets, kept...)
	return c, nil
}

// made makes a job of a kind with these settings; a hole that it does not take is left out.
func made(a Ask, k plan.Kind, sets []job.Change) (plan.Plan, []job.Change, job.Problems) {
	for {
		j := k.New(a.Unit)
		j.Shared().Books = a.Books
		j.Settings().Apply(sets)
		sound, refused, _ := j.Check()
		if len(refused) > 0 {
			i := slices.IndexFunc(sets, func(s job.Change) bool { return s.Key == holeKey })
			if i < 0 {
				return plan.Plan{}, nil, refused
			}
			sets = slices.Delete(slices.Clone(sets), i, i+1)
			continue
		}
		p, err := sound.Make()
		if err != nil {
			return plan.Plan{}, nil, job.Problems{{Key: "kind", Reason: err.Error()}}
		}
		return p, sets, nil
	}
}

// boardKey returns the key of the thickness of what a kind is made of: of two, such as a
// chemise and its case, that of what bears the book.
func boardKey(k plan.Kind) (key string) {
	for _, n := range k.Named {
		switch n.Material {
		case geometry.Board, geometry.Card, geometry.Corrugated:
			key = n.Thickness()
		}
	}
	return key
}
