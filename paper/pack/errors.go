package pack

import (
	"fmt"
	"strings"
)

// InputError is a problem that can't be solved as it is put: every fault, a line
// each.
type InputError struct{ Faults []string }

func (e *InputError) Error() string { return strings.Join(e.Faults, "\n") }

// ShortError tells that the stock ran out. Solve returns the layout of what went
// in beside it.
type ShortError struct {
	Left []int // indices into Problem.Items of what found no place
	Of   int   // items in all
	text string
}

func (e *ShortError) Error() string { return e.text }

func (e *ShortError) describe(p *Problem) {
	var ids []string
	for i, at := range e.Left {
		if i == 5 {
			ids = append(ids, "...")
			break
		}
		ids = append(ids, p.name(at))
	}
	e.text = fmt.Sprintf("the stock ran out with %d of %d pieces left: %s", len(e.Left), e.Of, strings.Join(ids, ", "))
}

// name returns an item's id with its size.
func (p *Problem) name(item int) string {
	it := p.Items[item]
	id := it.ID
	if id == "" {
		id = fmt.Sprintf("piece %d", item+1)
	}
	return fmt.Sprintf("%s (%.6g x %.6g mm)", id, it.Width.MM(), it.Height.MM())
}
