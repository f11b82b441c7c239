package pipeline_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/cmd/pipeline"
)

// the example, with keys changed.
func example(keys ...jobfile.Flag) pipeline.Job {
	return pipeline.Job{Source: pipeline.Source{Flags: keys}, Example: true}
}

// What is wrong with the settings and with the job is told together, each with
// where it stands, and nothing is made.
func TestAllThatIsWrongAtOnce(t *testing.T) {
	job := pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "case.toml", Data: []byte("[[book]]\nheight = 220\nwidth = -3\nthickness = 30\n")}}}}
	r, err := pipeline.Templates{Job: job, Colour: []string{"cutting=red"}}.Make(t.Context())
	var bad jobfile.Issues
	require.ErrorAs(t, err, &bad)
	require.Len(t, bad, 2)
	assert.Equal(t, `--colour "cutting=red"`, bad[0].Key)
	assert.Equal(t, []any{"case.toml", 3, "book.width"}, []any{bad[1].Source, bad[1].Line, bad[1].Key})
	assert.Empty(t, r.Files)
}

// A key that a page and its user both set is no contradiction where they agree.
func TestOneKeyGivenTwice(t *testing.T) {
	is := func(name, value string) jobfile.Flag {
		return jobfile.Flag{Name: name, Key: "board.thickness", Value: value}
	}
	_, err := pipeline.Cutlist{Job: example(is("board", "1.9"), is("--set board.thickness", " 1.9"))}.Make(t.Context())
	require.NoError(t, err)
	_, err = pipeline.Cutlist{Job: example(is("board", "1.9"), is("--set board.thickness", "2"))}.Make(t.Context())
	var bad jobfile.Issues
	require.ErrorAs(t, err, &bad)
	assert.Equal(t, "keep one", bad[0].Fix)
}

// A search that is stopped gives the best plan until then, and says so.
func TestStockStopped(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	s := pipeline.Stock{Job: example(), Effort: "24h", Progress: func(done float64) {
		assert.True(t, done >= 0 && done <= 1, done)
		stop()
	}}
	r, err := s.Make(ctx)
	require.NoError(t, err)
	assert.NotEmpty(t, r.Report)
	assert.Len(t, r.Warnings, 1)
}

// A command changes nothing of what it was given: made again, it makes the same.
func TestMadeTwice(t *testing.T) {
	flags := append(make([]jobfile.Flag, 0, 8), jobfile.Flag{Name: "--units", Key: "units", Value: "in"})
	for _, c := range []pipeline.Command{
		pipeline.Handout{Job: pipeline.Job{Source: pipeline.Source{Flags: flags}}, Blank: true},
		pipeline.Gauge{Source: pipeline.Source{Flags: flags}},
		pipeline.Fit{Job: example(flags...), Draw: true},
	} {
		one, err := c.Make(t.Context())
		require.NoError(t, err)
		two, err := c.Make(t.Context())
		require.NoError(t, err)
		one.Document, two.Document = nil, nil // to look at; its bytes are among the files
		assert.Equal(t, one, two)
	}
	assert.Equal(t, jobfile.Flag{}, flags[:2][1], "what lies behind the flags is left alone")
}

// hand takes one student's files at a time and has those of another already.
type hand struct {
	t       *testing.T
	names   []string
	ofClass map[string][]byte
}

func (h *hand) Has(folder, made string) bool { return folder == "02-b" }

func (h *hand) Put(folder, made string, files []pipeline.File) error {
	if folder != "" {
		h.names = append(h.names, folder)
	}
	for _, f := range files {
		assert.NotEmpty(h.t, f.Data, f.Name)
		if folder == "" {
			h.ofClass[f.Name] = f.Data
		}
	}
	return nil
}

// A class comes student by student; what a shelf has is not made again, and a row
// that can't be made keeps no other from it.
func TestClassComesByStudent(t *testing.T) {
	text := "name,height,width,thickness\nA,220,150,30\nB,210,150,30\nC,tall,150,30\nD,200,150,30\n"
	roll, err := pipeline.Class{Source: pipeline.Source{Files: []pipeline.File{{Name: "roster.csv", Data: []byte(text)}}}, Effort: "0"}.Read()
	require.NoError(t, err)
	h := &hand{t: t, ofClass: map[string][]byte{}}
	require.NoError(t, roll.Make(t.Context(), h, nil))
	assert.Equal(t, []string{"01-a", "04-d"}, h.names)
	var states []pipeline.State
	for _, s := range roll.Students {
		states = append(states, s.State)
	}
	assert.Equal(t, []pipeline.State{pipeline.Made, pipeline.Kept, pipeline.Refused, pipeline.Made}, states)
	assert.Equal(t, 4, roll.Students[2].Refused[0].Line)
	_, unplanned, err := roll.Finish(t.Context(), h, nil)
	require.NoError(t, unplanned)
	require.NoError(t, err)
	assert.Len(t, h.ofClass, 4)
	index := string(h.ofClass["index.html"])
	for _, folder := range []string{"01-a", "02-b", "04-d"} {
		assert.Contains(t, index, folder+"/templates.pdf")
	}
	assert.Contains(t, index, "C (line 4 of the roster)")
}
