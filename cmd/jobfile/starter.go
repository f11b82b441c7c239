package jobfile

import (
	"bytes"
	_ "embed"
	"fmt"
	"strings"

	"forel/geometry"
	"forel/paper"
)

//go:embed starter.toml
var starter []byte

// Starter gives a job file to begin with: an invented book, every key with its
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
)

// StarterFor is Starter for a maker who measures in a unit and prints on a
// sheet. Lengths that say their own unit stay as they are.
func StarterFor(unit geometry.Unit, sheet paper.Sheet) []byte {
	text := string(starter)
	if unit == geometry.IN {
		text = inInches.Replace(text)
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
