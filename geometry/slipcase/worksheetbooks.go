package slipcase

import (
	"fmt"

	"forel/geometry/plan"
)

// bookGroup returns the lines of the book, or of several and what they come to.
func (j Job) bookGroup() plan.Group {
	if len(j.Books) < 2 {
		return plan.ContentGroup(j.Common)
	}
	g := plan.Group{Head: "The volumes, from left to right"}
	sum := ""
	for i, b := range j.Books {
		num := fmt.Sprint(i + 1)
		for k, m := range plan.BookGroup(b).Measures {
			m.Symbol += num
			m.Name = []string{"volume " + num + ", height", "width", "thickness"}[k]
			g.Measures = append(g.Measures, m)
		}
		if sum != "" {
			sum += " + "
		}
		sum += "T" + num
	}
	switch n := j.Dividers(); n {
	case 0:
	case 1:
		sum += " + d"
	default:
		sum += fmt.Sprintf(" + %dd", n)
	}
	all := j.Contents()
	g.Measures = append(g.Measures,
		plan.Measure{Symbol: "H", Name: "the tallest", Rule: "largest of H1, H2 ...", Value: all.Height},
		plan.Measure{Symbol: "W", Name: "the deepest", Rule: "largest of W1, W2 ...", Value: all.Width},
		plan.Measure{Symbol: "T", Name: "side by side", Rule: sum, Value: all.Thickness})
	return g
}
