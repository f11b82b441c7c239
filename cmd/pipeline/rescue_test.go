package pipeline_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/pipeline"
)

// Templates of what is cut again say that the rest of the case stands: their order of work
// is that of a whole one.
func TestRescueSaysWhatStands(t *testing.T) {
	job := pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "job.toml", Data: []byte("[[book]]\nheight = 220\nwidth = 150\nthickness = 30\n")}}}}
	made, err := pipeline.Rescue{Job: job, Lengths: pipeline.Lengths{Readings: []string{"play-height=0.1"}}, Draw: true}.Make(t.Context())
	require.NoError(t, err)
	words := ""
	for _, w := range made.Document.Pages()[0].Texts {
		words += w.String + " "
	}
	assert.Equal(t, 1, strings.Count(words, "for a case as it stands"), words)
}
