package pipeline_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/geometry"
	"forel/geometry/kinds"
)

// Whatever the kind and its settings, a job is refused with what would do, or every
// command makes its files.
func TestEveryKindThroughEveryCommand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(kinds.All).Draw(t, "kind")
		unit := rapid.SampledFrom([]geometry.Unit{geometry.MM, geometry.IN}).Draw(t, "unit")
		mm := func(lo, hi int, name string) string {
			return fmt.Sprintf("%d mm", rapid.IntRange(lo, hi).Draw(t, name))
		}
		set := func(key, value string) jobfile.Flag {
			return jobfile.Flag{Name: "--set " + key, Key: key, Value: value}
		}
		flags := []jobfile.Flag{set("kind", k.Name), set("units", unit.String()),
			set("book.height", mm(90, 330, "height")), set("book.width", mm(60, 240, "width")), set("book.thickness", mm(4, 70, "thickness"))}
		if k.Construction != "" {
			flags = append(flags, set("construction", k.Construction))
		}
		for _, s := range k.New(unit).Settings().Words() {
			flags = append(flags, set(s.Key, rapid.SampledFrom(s.Words).Draw(t, s.Key)))
		}
		for _, s := range k.New(unit).Settings().Lengths() {
			if (strings.HasPrefix(s.Key, "chemise.") || strings.HasPrefix(s.Key, "box.")) && rapid.IntRange(0, 9).Draw(t, s.Key+" is set") == 0 {
				flags = append(flags, set(s.Key, fmt.Sprintf("%.4g mm", rapid.Float64Range(s.Min, min(s.Max, 40)).Draw(t, s.Key))))
			}
		}
		for _, key := range []string{"lining_pattern.repeat_across", "lining_pattern.repeat_along"} {
			if _, ok := k.New(unit).Settings().Find(key); ok { // what is to match must come again
				flags = append(flags, set(key, "24 mm"))
			}
		}
		if _, ok := k.New(unit).Settings().Find("chemise.book_cover"); ok {
			flags = append(flags, set("chemise.book_cover", "2.5 mm"))
		}
		flags = last(flags)
		job := pipeline.Job{Source: pipeline.Source{Flags: flags}}
		_, err := pipeline.Cutlist{Job: job}.Make(t.Context())
		if err != nil {
			var bad jobfile.Issues
			require.ErrorAs(t, err, &bad)
			for _, b := range bad {
				assert.NotEqual(t, "proof", b.Key, "%v", b)
				assert.NotEmpty(t, b.Fix, "%v", b)
			}
			return
		}
		cases := pipeline.Cases{Job: job}
		cutter := pipeline.Cutter{}
		cutter.Job, cutter.Bed, cutter.Effort = job, "1200x1200 mm", "5"
		blank := job
		blank.Flags = slices.DeleteFunc(slices.Clone(flags), func(f jobfile.Flag) bool { return strings.HasPrefix(f.Key, "book.") })
		for _, c := range []pipeline.Command{
			pipeline.Templates{Job: job}, pipeline.Measure{Job: job}, pipeline.Choose{Job: job, Format: "json"}, pipeline.Measure{Job: blank, Volumes: 2, Both: true}, pipeline.Handout{Job: job}, pipeline.Handout{Job: blank, Blank: true},
			pipeline.Stock{Job: job, Effort: "5", Draw: true}, pipeline.Order{Cases: cases, Effort: "5", Draw: true}, pipeline.Quote{Cases: cases, Effort: "5", Draw: true}, cutter, pipeline.Prove{Job: job, Draw: true}, pipeline.Prove{Job: job, Format: "json"},
			pipeline.Fit{Job: job, Draw: true}, pipeline.Timetable{Cases: cases, Start: "2026-12-01", Draw: true}, pipeline.Timetable{Cases: cases, Format: "json"}, pipeline.Fit{Job: job, Format: "json"}, pipeline.Cutlist{Job: job, Format: "json", Outlines: true},
			pipeline.Record{Job: job, Show: true, Draw: true}, pipeline.Rescue{Job: job, Lengths: pipeline.Lengths{Readings: []string{playOf(t, job) + "=-0.4"}}, Draw: true},
		} {
			r, err := c.Make(t.Context())
			require.NoError(t, err, "%T", c)
			assert.NotEmpty(t, len(r.Files)+len(r.Report), "%T", c)
		}
	})
}

// last keeps of several flags for a key the last.
func last(flags []jobfile.Flag) []jobfile.Flag {
	at := map[string]int{}
	var out []jobfile.Flag
	for _, f := range flags {
		if i, ok := at[f.Key]; ok {
			out[i] = f
			continue
		}
		at[f.Key] = len(out)
		out = append(out, f)
	}
	return out
}

// playOf names the first play that can be measured of a case.
func playOf(t *rapid.T, job pipeline.Job) string {
	r, err := pipeline.Record{Job: job, Show: true}.Make(t.Context())
	require.NoError(t, err)
	return regexp.MustCompile(`(?m)^play-\S+`).FindString(string(r.Report))
}
