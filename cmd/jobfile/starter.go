package jobfile

import (
	"bytes"
	_ "embed"
	"fmt"
	"strings"

	"forel/geometry"
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

// StarterFor is Starter for a maker who measures in a unit and prints on a sheet.
// What is no setting of a case, such as a margin of the printer, stays as it is.
func StarterFor(unit geometry.Unit, sheet paper.Sheet) []byte {
	e := newEdit(Starter())
	if unit == geometry.IN {
		e = newEdit([]byte(inInches.Replace(string(starter))))
		for _, k := range kinds.All { // every default as it is in inches
			for _, s := range k.New(unit).Settings() {
				if written, ok := e.get(s.Key); ok && s.Length != nil && strings.HasSuffix(written, ` mm"`) {
					e.set(s.Key, textTOML(geometry.Settable(*s.Length, unit)))
				}
			}
		}
	}
	if sheet != paper.DefaultSetup().Sheet {
		name := strings.ToLower(sheet.Name)
		if name == "" {
			name = fmt.Sprintf("%g x %g mm", sheet.Width.MM(), sheet.Height.MM())
		}
		e.set("print.paper", textTOML(name))
	}
	return e.data
}
