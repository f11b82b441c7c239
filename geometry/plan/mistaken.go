package plan

import (
	"strings"

	"forel/geometry"
)

// alike is how near two sizes must be to be mistaken for each other.
const alike Length = 5

// MarkMistakable notes on each piece what it could be mistaken for: another
// piece of the same material, or itself with width and height changed over,
// where both dimensions are within 5 mm. Pieces that are the same on purpose may
// change places.
func MarkMistakable(pieces []geometry.Piece) {
	for i := range pieces {
		p := &pieces[i]
		w, h := p.Size()
		if (w - h).Abs() <= alike {
			p.Confused = append(p.Confused, "itself turned by a quarter")
		}
		for _, q := range pieces {
			if q.Name == p.Name || q.Material != p.Material {
				continue
			}
			qw, qh := q.Size()
			if w.Near(qw) && h.Near(qh) && p.Grain == q.Grain {
				continue
			}
			if near(w, h, qw, qh) || near(w, h, qh, qw) {
				p.Confused = append(p.Confused, q.Name)
			}
		}
	}
}

// Mistaken says of a piece which others it could be mistaken for.
type Mistaken struct {
	Says   string
	Marked bool // a mark on its template shows its spine edge
}

// Mistakable says in words which pieces could be mistaken for which, each pair
// once.
func Mistakable(pieces []geometry.Piece) []Mistaken {
	var out []Mistaken
	told := map[[2]string]bool{}
	for _, p := range pieces {
		var others []string
		for _, q := range p.Confused {
			if !told[[2]string{q, p.Name}] {
				others = append(others, q)
				told[[2]string{p.Name, q}] = true
			}
		}
		if len(others) > 0 {
			out = append(out, Mistaken{p.Name + " can be mistaken for " + strings.Join(others, " or "), p.Spine >= 0})
		}
	}
	return out
}

func near(w, h, w2, h2 Length) bool { return (w-w2).Abs() <= alike && (h-h2).Abs() <= alike }
