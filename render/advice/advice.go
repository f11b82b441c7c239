// Package advice writes what is advised for a book: as text, and for other programs.
package advice

import (
	"bytes"
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/choose"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render/data"
)

// wide is how long a line of the text is.
const wide = 80

// Text returns the advice in words, with the lines of a job file at its end: of one that is
// there already, or all of a new one.
func Text(c choose.Choice, a choose.Ask, round geometry.Rounding, lines []byte, there bool) []byte {
	var b bytes.Buffer
	fine := func(l geometry.Length) string { return geometry.Settable(l, round.Unit) }
	paragraph := func(first, rest, text string) {
		text = wording.Wrap(text, wide-len(rest))
		b.WriteString(first + strings.ReplaceAll(text, "\n", "\n"+rest) + "\n")
	}
	size := plan.SizeFact("", "", "wide", c.Size).Says().In(round.Format)
	weight := fmt.Sprintf("%.0f g", c.Grams)
	if !c.Weighed {
		weight = "about " + weight + " (not weighed: reckoned from its size, with a density from memory)"
	}
	about := "a book"
	if n := len(a.Books); n > 1 {
		about = fmt.Sprintf("%d books, side by side", n)
	}
	if a.Conditions != nil {
		about += " (" + wording.And(a.Conditions) + ")"
	}
	paragraph("", "", "for "+about+": "+size+", "+weight+"; use: "+a.Use)
	for _, one := range c.Advice {
		b.WriteString("\n")
		paragraph("", "  ", one.Name+": "+one.Says.In(fine))
		for _, r := range one.Why {
			paragraph("  - ", "    ", r.Says.In(fine)+" ["+r.Source+"]")
		}
	}
	b.WriteString("\nwhat else there is\n")
	for _, o := range c.Others {
		paragraph("  - ", "    ", o.Name+": "+o.Says+" ["+o.Source+"]")
	}
	if c.Board != nil {
		b.WriteString("\n")
		paragraph("", "  ", choose.Assumptions())
	}
	paragraph("", "  ", "take care: "+wording.Brief)
	if there {
		b.WriteString("\nwhat the job file then says (--format toml prints all of it):\n\n")
	} else {
		b.WriteString("\nthe job file that this comes to:\n\n")
	}
	b.Write(lines)
	return b.Bytes()
}

// JSON returns the advice for other programs, with lines of a job file and one that has them.
func JSON(c choose.Choice, a choose.Ask, unit geometry.Unit, lines, whole []byte) ([]byte, error) {
	fine := func(l geometry.Length) string { return geometry.Settable(l, unit) }
	var board, assumptions any
	if b := c.Board; b != nil {
		board = data.Object{{"least_mm", data.MM(b.Least)}, {"most_mm", data.MM(b.Most)}, {"by", b.By}, {"sold_as", b.Sold.Name}, {"pasted_together", b.Pasted}, {"thickness_mm", data.MM(b.Thickness())}}
		assumptions = choose.Assumptions()
	}
	return data.JSON("advice", data.Object{
		{"book", data.Object{{"height_mm", data.MM(c.Size.Height)}, {"width_mm", data.MM(c.Size.Width)}, {"thickness_mm", data.MM(c.Size.Thickness)},
			{"grams", int(c.Grams + 0.5)}, {"weighed", c.Weighed}}},
		{"use", a.Use},
		{"conditions", append([]string{}, a.Conditions...)},
		{"kind", c.Kind.Name},
		{"construction", data.Given(c.Kind.Construction)},
		{"board", board},
		{"advice", data.List(c.Advice, func(one choose.Advice) data.Object {
			return data.Object{{"key", one.Key}, {"name", one.Name}, {"says", one.Says.In(fine)}, {"why", data.List(one.Why, func(r choose.Reason) data.Object {
				return data.Object{{"says", r.Says.In(fine)}, {"source", r.Source}}
			})}}
		})},
		{"others", data.List(c.Others, func(o choose.Other) data.Object {
			return data.Object{{"name", o.Name}, {"says", o.Says}, {"source", o.Source}}
		})},
		{"assumptions", assumptions},
		{"lines", string(lines)},           // of a job file
		{"job", data.Given(string(whole))}, // a job file with them
	})
}
