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

type jsonBook struct {
	Height    data.MM `json:"height_mm"`
	Width     data.MM `json:"width_mm"`
	Thickness data.MM `json:"thickness_mm"`
	Grams     float64 `json:"grams"`
	Weighed   bool    `json:"weighed"`
}

type jsonBoard struct {
	Least     data.MM `json:"least_mm"`
	Most      data.MM `json:"most_mm"`
	By        string  `json:"by"`
	Sold      string  `json:"sold_as"`
	Pasted    int     `json:"pasted_together"`
	Thickness data.MM `json:"thickness_mm"`
}

type jsonReason struct {
	Says   string `json:"says"`
	Source string `json:"source"`
}

type jsonAdvice struct {
	Key  string       `json:"key"`
	Name string       `json:"name"`
	Says string       `json:"says"`
	Why  []jsonReason `json:"why"`
}

type jsonOther struct {
	Name   string `json:"name"`
	Says   string `json:"says"`
	Source string `json:"source"`
}

type jsonChoice struct {
	Book         jsonBook     `json:"book"`
	Use          string       `json:"use"`
	Conditions   []string     `json:"conditions"`
	Kind         string       `json:"kind"`
	Construction string       `json:"construction,omitempty"`
	Board        *jsonBoard   `json:"board,omitempty"`
	Advice       []jsonAdvice `json:"advice"`
	Others       []jsonOther  `json:"others"`
	Assumptions  string       `json:"assumptions,omitempty"`
	Lines        string       `json:"lines"`         // of a job file
	Job          string       `json:"job,omitempty"` // a job file with them
}

// JSON returns the advice for other programs, with lines of a job file and one that has them.
func JSON(c choose.Choice, a choose.Ask, unit geometry.Unit, lines, whole []byte) ([]byte, error) {
	fine := func(l geometry.Length) string { return geometry.Settable(l, unit) }
	out := jsonChoice{
		Book: jsonBook{data.MM(c.Size.Height), data.MM(c.Size.Width), data.MM(c.Size.Thickness), float64(int(c.Grams + 0.5)), c.Weighed},
		Use:  a.Use, Conditions: append([]string{}, a.Conditions...), Kind: c.Kind.Name, Construction: c.Kind.Construction,
		Advice: []jsonAdvice{}, Others: []jsonOther{}, Lines: string(lines), Job: string(whole),
	}
	if b := c.Board; b != nil {
		out.Board = &jsonBoard{data.MM(b.Least), data.MM(b.Most), b.By, b.Sold.Name, b.Pasted, data.MM(b.Thickness())}
		out.Assumptions = choose.Assumptions()
	}
	for _, one := range c.Advice {
		j := jsonAdvice{Key: one.Key, Name: one.Name, Says: one.Says.In(fine), Why: []jsonReason{}}
		for _, r := range one.Why {
			j.Why = append(j.Why, jsonReason{r.Says.In(fine), r.Source})
		}
		out.Advice = append(out.Advice, j)
	}
	for _, o := range c.Others {
		out.Others = append(out.Others, jsonOther(o))
	}
	return data.JSON(out)
}
