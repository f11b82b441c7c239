package page_test

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/jobfile"
	"forel/cmd/page"
	"forel/cmd/pipeline"
	"forel/geometry"
	"forel/geometry/measuring"
)

var ctx = context.Background()

// ask asks a fresh desk, through JSON both ways.
func ask(t require.TestingT, q page.Request) page.Response {
	data, err := json.Marshal(q)
	require.NoError(t, err)
	out, files := new(page.Desk).JSON(ctx, data, nil)
	var a page.Response
	require.NoError(t, json.Unmarshal(out, &a))
	require.Len(t, files, len(a.Files)+len(a.Pages))
	for _, list := range [][]page.File{a.Files, a.Pages} {
		for i := range list {
			assert.Equal(t, list[i].Size, len(files[0]))
			list[i].Data, files = files[0], files[1:]
		}
	}
	return a
}

// start returns the job file of the invented book.
func start(t require.TestingT) string {
	require.NotNil(t, started().Text, started().Error)
	return *started().Text
}

var started = sync.OnceValue(func() page.Response {
	return new(page.Desk).Answer(ctx, page.Request{Do: "new", Example: true, Full: true}, nil)
})

// worked are the worked jobs, by the name of their folder.
func worked(t testing.TB) map[string]string {
	files, err := filepath.Glob("../../testdata/*/job.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	out := map[string]string{}
	for _, f := range files {
		data, err := os.ReadFile(f)
		require.NoError(t, err)
		out[filepath.Base(filepath.Dir(f))] = string(data)
	}
	return out
}

// A job that is opened is answered, shown and drawn, and its text stays as it is.
func TestOpen(t *testing.T) {
	for name, text := range fewWorked(t) {
		a := ask(t, page.Request{Do: "open", Text: text})
		assert.Empty(t, a.Faults, name)
		assert.Empty(t, a.Error, name)
		assert.Equal(t, text, *a.Text, name)
		require.NotNil(t, a.Answer, name)
		assert.Contains(t, []page.Verdict{page.Fits, page.Risky}, a.Answer.Verdict, name)
		assert.NotNil(t, a.Answer.Tightest, name)
		p := ask(t, page.Request{Do: "pictures", Text: text})
		require.NotNil(t, p.Pictures, name)
		assert.Contains(t, p.Pictures.Case, "<svg", name)
	}
}

// What the page makes is what the command line makes.
func TestMakesTheSameFiles(t *testing.T) {
	text := start(t)
	job := pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "job.toml", Data: []byte(text)}}}}
	for name, c := range map[string]pipeline.Command{
		"templates": pipeline.Templates{Job: job}, "cutlist": pipeline.Cutlist{Job: job}, "fit": pipeline.Fit{Job: job, Draw: true}, "gauge": pipeline.Gauge{Source: job.Source}, "measure": pipeline.Measure{Job: job},
	} {
		want, err := c.Make(ctx)
		require.NoError(t, err)
		got := ask(t, page.Request{Do: "make", Name: name, Text: text})
		require.Empty(t, got.Error, name)
		assert.Equal(t, len(want.Report) > 0, got.Report != "", name)
		files := want.Files
		if len(want.Report) > 0 {
			files = append([]pipeline.File{{Name: name + ".txt", Data: want.Report}}, files...)
		}
		require.Len(t, got.Files, len(files), name)
		for i, f := range files {
			assert.Equal(t, f.Name, got.Files[i].Name)
			assert.Equal(t, f.Data, got.Files[i].Data, f.Name)
		}
	}
	a := ask(t, page.Request{Do: "make", Name: "cutlist", Text: text, Flags: map[string]string{"format": "csv"}})
	assert.Contains(t, a.Report, ",")
	a = ask(t, page.Request{Do: "make", Name: "cutlist", Text: text, Flags: map[string]string{"fromat": "csv"}})
	assert.Contains(t, a.Error, "fromat")
	a = ask(t, page.Request{Do: "make", Name: "carve", Text: text})
	assert.Contains(t, a.Error, "unknown command")
}

// A value beyond its limits is told at its key, and its mend, taken, ends that fault: of
// every length and number of a job.
func TestMendsMend(t *testing.T) {
	text, tried, mended := start(t), 0, 0
	for _, s := range ask(t, page.Request{Do: "fields"}).Sections {
		for _, f := range s.Fields {
			if f.List || f.Max == 0 || f.Kind != jobfile.TakesLength {
				continue
			}
			if tried++; testing.Short() && tried%4 != 0 {
				continue
			}
			a := ask(t, page.Request{Do: "set", Text: text, Changes: []page.Change{{Key: f.Key, Value: geometry.Settable(geometry.Length(f.Max+1), geometry.MM)}}})
			require.NotEmpty(t, a.Faults, f.Key)
			i := -1
			for n, fault := range a.Faults {
				if fault.Key == f.Key {
					i = n
				}
			}
			require.GreaterOrEqual(t, i, 0, "%s: %v", f.Key, a.Faults)
			assert.Equal(t, page.Refused, a.Answer.Verdict)
			if strings.HasPrefix(f.Key, "print.measured") {
				continue // to be measured again
			}
			require.NotNil(t, a.Faults[i].Mend, f.Key)
			b := ask(t, page.Request{Do: "set", Text: *a.Text, Changes: a.Faults[i].Mend.Sets})
			for _, fault := range b.Faults {
				assert.NotEqual(t, a.Faults[i].Says, fault.Says, f.Key)
			}
			mended++
		}
	}
	assert.Greater(t, mended, tried/5)
}

// A fault of the fit between parts has a mend too, and the job can be made with it.
func TestMendOfTheMouth(t *testing.T) {
	a := ask(t, page.Request{Do: "set", Text: start(t), Changes: []page.Change{{Key: "clearance.height", Value: "0.2"}}})
	require.Len(t, a.Faults, 1)
	assert.Equal(t, "clearance.height", a.Faults[0].Key)
	b := ask(t, page.Request{Do: "set", Text: *a.Text, Changes: a.Faults[0].Mend.Sets})
	assert.Empty(t, b.Faults)
	for _, m := range b.Answer.Mends {
		c := ask(t, page.Request{Do: "set", Text: *b.Text, Changes: m.Sets})
		assert.Empty(t, c.Faults, m.Label)
	}
}

// A new job asks for the book; readings show the largest.
func TestBlanks(t *testing.T) {
	a := ask(t, page.Request{Do: "new"})
	assert.Equal(t, page.Empty, a.Answer.Verdict)
	for _, f := range a.Faults {
		assert.True(t, f.Empty, f.Key)
	}
	b := ask(t, page.Request{Do: "set", Text: *a.Text, Changes: []page.Change{{Key: "book.height", Value: "221; 8 3/4 in; x"}}})
	assert.Equal(t, page.Refused, b.Answer.Verdict)
	readings := b.State.Books[0].Measures["height"]
	require.Len(t, readings, 3)
	assert.Equal(t, page.Reading{Typed: "8 3/4 in", MM: 222.25, Largest: true}, readings[1])
	assert.InDelta(t, 222.25, b.State.Books[0].Sizes["height"], 1e-9)
	assert.Zero(t, readings[2].MM)
}

// What is no job file, or no request, is told; nothing is lost and nothing panics.
func TestStrangersInput(t *testing.T) {
	for _, text := range []string{"<script>alert(1)</script>", "title = \"<img src=x onerror=alert(1)>\"\n", strings.Repeat("a", 1<<21), "\xff\xfe", "[[book]]\nheight = [[]]", ""} {
		a := ask(t, page.Request{Do: "open", Text: text})
		assert.NotEmpty(t, a.Faults, "%.20q", text)
		assert.Empty(t, a.Error, "%.20q", text)
	}
	out, _ := new(page.Desk).JSON(ctx, []byte("{"), nil)
	assert.Contains(t, string(out), "no request")
	assert.Contains(t, ask(t, page.Request{Do: "dance"}).Error, "unknown request")
}

// A picture of measuring is drawn of a job whose book is not measured yet, and is one for
// each name.
func TestPicturesOfMeasuring(t *testing.T) {
	empty := ask(t, page.Request{Do: "new"})
	require.NotNil(t, empty.Text)
	seen := map[string]bool{}
	for _, name := range measuring.Names {
		a := ask(t, page.Request{Do: "measuring", Name: name, Text: *empty.Text})
		require.Empty(t, a.Error, name)
		require.Len(t, a.Figures, 1, name)
		assert.Contains(t, a.Figures[0], "<svg", name)
		assert.False(t, seen[a.Figures[0]], name)
		seen[a.Figures[0]] = true
	}
	assert.Contains(t, ask(t, page.Request{Do: "measuring", Name: "scales", Text: *empty.Text}).Error, "no picture of measuring")
}
