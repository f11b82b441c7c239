package pipeline_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
	"forel/geometry"
	"forel/geometry/choose"
	books "forel/geometry/job"
)

// Whatever the book, what is advised is accepted when it is typed in, and is what the text
// says; or it is told what is in the way.
func TestAdviceIsAccepted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		set := func(key, value string) jobfile.Flag {
			return jobfile.Flag{Name: "--set " + key, Key: key, Value: value}
		}
		var flags []jobfile.Flag
		unit := rapid.SampledFrom([]string{"mm", "in"}).Draw(t, "unit")
		flags = append(flags, set("units", unit))
		for _, d := range books.Dimensions[:3] {
			flags = append(flags, set("book."+d.Key, fmt.Sprintf("%.4g mm", rapid.OneOf(
				rapid.Float64Range(d.Min.MM(), d.Max.MM()), rapid.Float64Range(max(d.Min.MM(), 60), min(d.Max.MM(), 300))).Draw(t, d.Key))))
		}
		if rapid.Bool().Draw(t, "weighed") {
			flags = append(flags, set("book.weight", fmt.Sprintf("%d g", rapid.IntRange(20, 12_000).Draw(t, "weight"))))
		}
		c := pipeline.Choose{Job: pipeline.Job{Source: pipeline.Source{Flags: flags}}, Use: rapid.SampledFrom(choose.Uses).Draw(t, "use"), Format: "toml"}
		for _, one := range choose.Conditions {
			if rapid.IntRange(0, 3).Draw(t, one) == 0 {
				c.Conditions = append(c.Conditions, one)
			}
		}
		r, err := c.Make(t.Context())
		c.Format = "text"
		text, again := c.Make(t.Context())
		if err != nil {
			require.Error(t, again)
			for _, i := range pipeline.Problems(err) {
				assert.True(t, i.Fix != "" || strings.Contains(i.Reason, "make "), "%v", i)
			}
			return
		}
		require.NoError(t, again)
		file, _, err := jobfile.Parse("job.toml", r.Report)
		require.NoError(t, err, "%s", r.Report)
		for i, d := range books.Dimensions[:3] {
			asked, err := geometry.ParseLength(flags[i+1].Value, geometry.MM)
			require.NoError(t, err)
			b := file.Job.Shared().Book()
			assert.InDelta(t, asked.MM(), d.At(&b).Largest().MM(), 1e-5, d.Key)
		}
		require.True(t, strings.HasSuffix(string(text.Report), "\n\n"+string(r.Report)))
		for _, line := range strings.Split(strings.TrimSuffix(string(text.Report), string(r.Report)), "\n") {
			assert.LessOrEqual(t, len([]rune(line)), 80, line)
		}
		proved, err := pipeline.Prove{Job: pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "job.toml", Data: r.Report}}}}}.Make(t.Context())
		require.NoError(t, err, "%s", r.Report)
		assert.NotEmpty(t, proved.Report)
	})
}

// Of a job its books count, whatever else stands in it.
func TestChooseForAJob(t *testing.T) {
	text := "# kept\nkind = \"chemise\"\n[[book]]\ntitle = \"Tide log\"\nheight = [210, 211]\nwidth = 140\nthickness = 25\n[board]\nthickness = 3\n" // invented
	r, err := pipeline.Choose{Job: pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "job.toml", Data: []byte(text)}}}}, Format: "toml"}.Make(t.Context())
	require.NoError(t, err)
	for _, line := range []string{`title = "Tide log"`, `height = [210, 211]`, `kind = "slipcase"`, `thickness = "2 mm"`, "# kept"} {
		assert.Contains(t, string(r.Report), line)
	}
}
