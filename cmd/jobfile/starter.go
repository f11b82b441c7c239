package jobfile

import (
	"bytes"
	_ "embed"
	"fmt"
	"regexp"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/paper"
)

//go:embed starter.toml
var starter []byte

// Starter returns a job file to begin with: an invented book, every key with its
// default, and what each means. It can be read as it is.
func Starter() []byte { return bytes.Clone(starter) }

// inInches are the lines of the starter that hold bare millimetres, and the same
// in inches: the invented book measured with a rule of sixty-fourths.
var inInches = strings.NewReplacer(
	`units = "mm"`, `units = "in"`,
	`[221, 221.5]. The`, `["8 45/64", 8.72]. The`,
	`#   148.5   `, `#   5.85    `,
	`height = [221, 221.5]      `, `height = ["8 45/64", 8.72] `,
	`width = 148.5             `, `width = "5 27/32"         `,
	`thickness = [31, "1 1/4 in"]`, `thickness = ["1 7/32", 1.25]`,
	`thickness_at_fore_edge = 30.5 `, `thickness_at_fore_edge = 1.2  `,
	`# height = 221`, `# height = "8 45/64"`,
	`# width = 148.5`, `# width = "5 27/32"`,
	`# thickness = 27`, `# thickness = "1 1/16"`,
	`[227.8, 227.5] `, `["8 31/32", 8.96]`, `# width = 151.6`, `# width = "5 31/32"`, `# thickness = 66.1`, `# thickness = "2 5/8"`,
)

// inTable finds the tables of the starter, and the lines that hold a length.
var inTable = regexp.MustCompile(`(?m)^(?:\[+([a-z_]+)\]+|([a-z_]+) = ("[^"]* mm") *)`)

// usual returns text with every default as it is in a unit.
func usual(text string, unit geometry.Unit) string {
	var all job.Settings
	for _, k := range kinds.All {
		all = append(all, k.New(unit).Settings()...)
	}
	table := ""
	return inTable.ReplaceAllStringFunc(text, func(found string) string {
		m := inTable.FindStringSubmatch(found)
		if m[1] != "" {
			table = m[1] + "."
			return found
		}
		s, ok := all.Find(table + m[2])
		if !ok {
			return found
		}
		return fmt.Sprintf("%-*s", len(found), fmt.Sprintf("%s = %q", m[2], geometry.Settable(*s.Length, unit)))
	})
}

// StarterFor is Starter for a maker who measures in a unit and prints on a sheet.
// What is no setting of a case, such as a margin of the printer, stays as it is.
func StarterFor(unit geometry.Unit, sheet paper.Sheet) []byte {
	text := string(starter)
	if unit == geometry.IN {
		text = usual(inInches.Replace(text), unit)
	}
	if sheet != paper.DefaultSetup().Sheet {
		name := strings.ToLower(sheet.Name)
		if name == "" {
			name = fmt.Sprintf("%g x %g mm", sheet.Width.MM(), sheet.Height.MM())
		}
		was := fmt.Sprintf("%-34s", `paper = "a4"`)
		text = strings.Replace(text, was, fmt.Sprintf("%-34s", fmt.Sprintf("paper = %q", name)), 1)
	}
	return []byte(text)
}
