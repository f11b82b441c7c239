package jobfile

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"forel/geometry/job"
	"forel/geometry/kinds"
	"forel/geometry/plan"
	"forel/geometry/wording"
)

// Materials are thin: a maker measures several layers together and may write down just
// that, "4 layers 8.1 mm", wherever the thickness of a material is asked for.

// layered tells whether a key takes the thickness of several layers.
func layered(key string) bool {
	key = unnumbered(key)
	return key == "stock.thickness" || slices.ContainsFunc(kinds.Named(), func(n plan.Named) bool { return n.Thickness() == key })
}

var layersWritten = regexp.MustCompile(`(?i)^\s*(\d+)\s*layers?\b:?\s*(.*)$`)

// mostLayers is how many layers can be measured together.
const mostLayers = 1000

// layersOf parts what several layers measure from how many they are; text that names no
// layers is one.
func layersOf(text string) (n int, length string, p job.Problem, ok bool) {
	m := layersWritten.FindStringSubmatch(text)
	if m == nil {
		return 1, text, job.Problem{}, true
	}
	n, err := strconv.Atoi(m[1])
	if err != nil || n < 1 || n > mostLayers || strings.TrimSpace(m[2]) == "" {
		return 1, "", job.Problem{Value: wording.Quote(text), Reason: "does not say how many layers measure how much", Fix: `write how many and what they measure together, such as "4 layers 8.1 mm"`}, false
	}
	return n, m[2], job.Problem{}, true
}
