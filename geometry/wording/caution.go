package wording

import (
	"regexp"
	"slices"
	"strings"
)

// The cautions that stand wherever the knife, the brush or a machine comes next
// (common practice, no source).
const (
	Knife    = "Knives cut people: use a sharp blade and a heavy straightedge, keep your fingers behind its edge, cut away from yourself in several light passes, and cap the knife when you put it down; spent blades go into a closed tin."
	Adhesive = "Adhesives: read the label, air the room, keep them off skin and eyes, wash your hands before you eat."
	Shear    = "Board shear: keep guard and clamp in place and both hands clear of the blade's path before it moves, lock the blade shut when you leave it, and let nobody else within reach."
	Machine  = "Laser or drag knife: read the maker's manual; never put chlorinated plastics (PVC, some coated cloths) under a laser; never leave a machine running unattended; use fume extraction, and keep means to put out a fire at hand. Keep your hands off the bed while it moves."
	Local    = "Local rules and trained people come first."

	// Sources says at the end of an output where its values come from.
	Sources = "where values come from: usual sizes, clearances, margins, plus-or-minus values, drying times and ways of working are common practice without a source; densities, grammages and the US basis size are from memory; what you measure yourself comes first"

	// Brief is for where a line is all there is.
	Brief = "knives cut people, adhesives have their dangers; read the makers' manuals and labels, air the room; local rules and trained people come first"
)

// Cautions are those of the work at the bench, a paragraph each.
func Cautions() []string { return []string{Knife, Adhesive, Machine, Local} }

var (
	cuts  = regexp.MustCompile(`(?i)\b(cut|cuts|cutting|knife|blade|trim|trimmed|slit|snip|nick|pare)\b`)
	glues = regexp.MustCompile(`(?i)\b(glue|glues|glued|gluing|paste|pasted|pasting|adhesive)\b`)
)

// CareFor returns the cautions for work that is told in these sentences: where they speak
// of cutting or of gluing. In doubt they warn.
func CareFor(sentences ...string) (cautions []string) {
	for _, c := range []struct {
		of      *regexp.Regexp
		caution string
	}{{cuts, Knife}, {glues, Adhesive}} {
		if slices.ContainsFunc(sentences, c.of.MatchString) {
			cautions = append(cautions, c.caution)
		}
	}
	return cautions
}

// Careful joins cautions into one paragraph, with Local at its end.
func Careful(cautions ...string) string { return strings.Join(append(cautions, Local), " ") }
