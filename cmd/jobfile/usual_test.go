package jobfile_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"forel/cmd/jobfile"
	"forel/geometry"
)

// Margins as the design has them for each unit (common practice, no source), in
// the order m, e, mouth turn-in, a, g, i, x, lining trim.
var margins = map[string][]geometry.Length{
	"mm": {28, 28, 20, 6, 5, 6, 13, 12},
	"in": {28.575, 28.575, 19.05, 6.35, 4.7625, 6.35, 12.7, 12.7}, // 1 1/8, 1 1/8, 3/4, 1/4, 3/16, 1/4, 1/2, 1/2 in
}

// What is left out is round in the unit of the file; units given as a flag change
// how sizes are shown, and never the case.
func TestDefaultsAreRoundInTheUnit(t *testing.T) {
	sizes := "[[book]]\nheight = \"221 mm\"\nwidth = \"148.5 mm\"\nthickness = \"32 mm\"\n"
	flags := func(units string) []jobfile.Flag {
		return []jobfile.Flag{{Key: "units", Value: units}, {Key: "book.height", Value: "221 mm"}, {Key: "book.width", Value: "148.5 mm"}, {Key: "book.thickness", Value: "32 mm"}}
	}
	for name, c := range map[string]struct {
		read  func() (jobfile.File, jobfile.Issues, error)
		round string
		unit  geometry.Unit
	}{
		"file in mm": {func() (jobfile.File, jobfile.Issues, error) { return jobfile.Parse("", []byte(sizes)) }, "mm", geometry.MM},
		"file in inches": {func() (jobfile.File, jobfile.Issues, error) {
			return jobfile.Parse("", []byte("units = \"in\"\n"+sizes))
		}, "in", geometry.IN},
		"flags in mm":                 {func() (jobfile.File, jobfile.Issues, error) { return fromFlags(flags("mm")) }, "mm", geometry.MM},
		"flags in inches":             {func() (jobfile.File, jobfile.Issues, error) { return fromFlags(flags("in")) }, "in", geometry.IN},
		"file in mm, shown in inches": {func() (jobfile.File, jobfile.Issues, error) { return jobfile.Parse("", []byte(sizes), flags("in")...) }, "mm", geometry.IN},
	} {
		t.Run(name, func(t *testing.T) {
			f, _, err := c.read()
			assert.NoError(t, err)
			assert.Equal(t, c.unit, f.Job.Shared().Unit)
			j := boards(f)
			got := []geometry.Length{j.Cloth.Overlap, j.Cloth.TurnIn, j.Cloth.MouthTurnIn, j.Cloth.CornerDistance, j.Cloth.SpineGap, j.SidePaper.Inset, j.SidePaper.TurnIn, j.Lining.Trim}
			for i, want := range margins[c.round] {
				assert.InDelta(t, want.MM(), got[i].MM(), 1e-9, i)
			}
			step := map[string]geometry.Length{"mm": 1, "in": geometry.Inch / 32}[c.round]
			for _, l := range []geometry.Length{j.Clearance.Height, j.Clearance.Width, j.Clearance.Thickness} {
				assert.InDelta(t, 0, (l - l.Round(step)).MM(), 1e-9)
			}
		})
	}
}
