package offcuts

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper"
	"forel/render/document"
	"forel/render/pagetest"
)

// Labels of any offcuts, on any sheet, have their words apart, off the lines and within the
// margins; each number is there once.
func TestAnyLabels(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := document.Options{Setup: pagetest.AnySetup(t), Round: pagetest.Rounding(geometry.MM)}
		var labels []Label
		for i := range rapid.IntRange(1, 14).Draw(t, "labels") {
			labels = append(labels, Label{Number: fmt.Sprint(1000 + i), Material: pagetest.AnyTitle(t), Size: "1238.3 × 990.0 mm", Runs: "grain",
				Grain: rapid.SampledFrom([]geometry.Grain{geometry.GrainHeight, geometry.GrainWidth, "none"}).Draw(t, "grain"),
				Wide:  rapid.Bool().Draw(t, "wide"), From: "from " + pagetest.AnyTitle(t) + " 2026-11-28"})
		}
		text := ""
		for i, p := range Document(labels, o).Pages() {
			require.Empty(t, pagetest.Faults(&p.Surface, o.Setup.Reach(false)), "page %d", i+1)
			for _, w := range p.Texts {
				text += w.String + " "
			}
		}
		for _, l := range labels {
			require.Equal(t, 1, strings.Count(text, "Offcut "+l.Number+" "), text)
		}
	})
}

// The arrow runs along the grain: the longest line that is not of a frame is along the width,
// or along the height.
func TestArrowRunsAlongTheGrain(t *testing.T) {
	for _, grain := range []geometry.Grain{geometry.GrainWidth, geometry.GrainHeight} {
		for _, wide := range []bool{true, false} {
			d := Document([]Label{{Number: "1", Material: "grey board", Size: "300 × 200 mm", Runs: "grain", Grain: grain, Wide: wide}}, document.Options{Setup: paper.DefaultSetup(), Round: pagetest.Rounding(geometry.MM)})
			var long geometry.Box
			for _, l := range d.Pages()[0].Strokes {
				if box := l.Path.Bounds(); len(l.Path.Vertices) == 2 && box.Min.Y < 60 && box.Width()+box.Height() > long.Width()+long.Height() {
					long = box
				}
			}
			require.Equal(t, grain == geometry.GrainWidth, long.Width() > long.Height(), "%s %v %v", grain, wide, long)
		}
	}
}
