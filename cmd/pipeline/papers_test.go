package pipeline_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/geometry/plan/plantest"
	"forel/paper"
	"forel/render/pagetest"
)

// Every sheet that help offers, and the smallest that is printed on, does for every command
// that prints: words apart, off lines, within what the printer reaches.
func TestEveryPaperThroughEveryCommand(t *testing.T) {
	sheets := []string{"140 x 196 mm"} // with margins of 10 mm the least
	for _, s := range paper.Sheets {
		setup := paper.DefaultSetup()
		if setup.Sheet = s; setup.Check() == nil {
			sheets = append(sheets, s.Name)
		}
	}
	assert.Subset(t, sheets, []string{"A0", "A1", "A2", "A3", "A4", "A5", "B0", "B1", "B2", "B3", "B4", "B5", "Letter", "Legal", "Tabloid"}, "those of help")
	for _, sheet := range sheets {
		if !plantest.Soak() && sheet != "A5" && (sheet != "A0" || testing.Short()) {
			continue
		}
		t.Run(sheet, func(t *testing.T) {
			setup := paper.DefaultSetup()
			var err error
			setup.Sheet, err = paper.ParseSheet(sheet, 0)
			require.NoError(t, err)
			flags := []jobfile.Flag{{Name: "--paper", Key: "print.paper", Value: sheet}}
			job := pipeline.Job{Example: true, Source: pipeline.Source{Flags: flags}}
			cutter := pipeline.Cutter{}
			cutter.Job, cutter.Bed, cutter.Effort = job, "600x300", "0"
			for _, c := range []pipeline.Command{
				pipeline.Templates{Job: job}, pipeline.Templates{Job: job, MarkOut: true}, pipeline.Gauge{Source: pipeline.Source{Flags: append(flags, jobfile.Flag{Name: "--set print.margin", Key: "print.margin", Value: "10"})}},
				pipeline.Measure{Job: job}, pipeline.Handout{Job: job}, pipeline.Handout{Job: job, Short: true}, pipeline.Handout{Job: job, Blank: true},
				pipeline.Stock{Job: job, Effort: "0", Draw: true}, pipeline.Order{Cases: pipeline.Cases{Job: job}, Effort: "0", Draw: true}, pipeline.Quote{Cases: pipeline.Cases{Job: job}, Effort: "0", Draw: true}, cutter,
				pipeline.Prove{Job: job, Draw: true}, pipeline.Fit{Job: job, Draw: true}, pipeline.Record{Job: job, Show: true, Draw: true}, pipeline.Timetable{Cases: pipeline.Cases{Job: job}, Draw: true},
			} {
				if h, ok := c.(pipeline.Handout); ok && h.Blank {
					h.Job.Example = false
					c = h
				}
				r, err := c.Make(t.Context())
				if !assert.NoError(t, err, "%T", c) || !assert.NotNil(t, r.Document, "%T", c) {
					continue
				}
				pages := r.Document.Pages()
				assert.NotEmpty(t, pages, "%T", c)
				for n, p := range pages {
					area := setup.Reach(p.Width > p.Height)
					assert.Empty(t, pagetest.Faults(&p.Surface, area), fmt.Sprintf("%T: page %d of %d", c, n+1, len(pages)))
				}
			}
		})
	}
}
