package page_test

import (
	"archive/zip"
	"bytes"
	"context"
	"io"
	"os"
	"path"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/page"
	"forel/cmd/pipeline"
)

// shelf keeps the files of a class by name, as the command line puts them into a folder.
type shelf map[string][]byte

func (shelf) Has(string, string) bool { return false }

func (s shelf) Put(folder, _ string, files []pipeline.File) error {
	for _, f := range files {
		s[path.Join(folder, f.Name)] = f.Data
	}
	return nil
}

// unzipped returns the files in a zip, by name, and their names in order.
func unzipped(t testing.TB, data []byte) (map[string][]byte, []string) {
	r, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	require.NoError(t, err)
	out, names := map[string][]byte{}, []string{}
	for _, f := range r.File {
		in, err := f.Open()
		require.NoError(t, err)
		out[f.Name], err = io.ReadAll(in) // which checks its sum
		require.NoError(t, err)
		names = append(names, f.Name)
	}
	return out, names
}

// few is a small class: one row can't be made.
const few = "name,title,height,width,thickness\nBea,Invented: Tide tables,210,148,12\nAda,Invented: Net ledger,190,135,16\nCy,Invented: None,2,1,16\n"

// roster returns the worked roster.
func roster(t testing.TB) []byte {
	data, err := os.ReadFile("../../testdata/class/roster.csv")
	require.NoError(t, err)
	return data
}

// A class has the files that forel class writes, to the byte; a row that can't be made says
// why.
func TestClassIsThatOfTheCommand(t *testing.T) {
	base := "[board]\nthickness = 2.4\n"
	q := page.Request{Do: "class", Data: []byte(few), Text: base, Name: "ours.csv"}
	a := new(page.Desk).Answer(ctx, q, nil)
	require.Empty(t, a.Error)
	require.Empty(t, a.Faults)
	require.Len(t, a.Files, 2)
	require.Len(t, a.Students, 3)
	require.NotEmpty(t, a.Students[2].Faults)
	assert.Equal(t, 4, a.Students[2].Line)
	got, _ := unzipped(t, a.Files[0].Data)
	assert.Equal(t, got["class/print.pdf"], a.Files[1].Data)
	want := shelf{}
	c := pipeline.Class{Source: pipeline.Source{Files: []pipeline.File{{Name: "ours.csv", Data: []byte(few)}}}, Workers: 2}
	c.Base = &pipeline.File{Name: "job.toml", Data: []byte(base)}
	roll, err := c.Read()
	require.NoError(t, err)
	require.NoError(t, roll.Make(context.Background(), want, nil))
	_, unplanned, err := roll.Finish(context.Background(), want, nil)
	require.NoError(t, err)
	require.NoError(t, unplanned)
	assert.Len(t, got, len(want)+1)
	for name, data := range want {
		assert.True(t, bytes.Equal(data, got["class/"+name]), name)
	}
	pages := 0
	for _, name := range []string{"02-ada/handout.pdf", "02-ada/templates.pdf", "01-bea/handout.pdf", "01-bea/templates.pdf"} {
		pages += len(pagesOf(want[name]))
	}
	assert.Len(t, pagesOf(a.Files[1].Data), pages)
}

// Every student of the worked roster is shown with the fit that its own job has.
func TestLookAtRoster(t *testing.T) {
	a := ask(t, page.Request{Do: "roster", Data: roster(t)})
	require.Empty(t, a.Faults)
	require.Len(t, a.Students, 20)
	for _, s := range a.Students {
		assert.Contains(t, s.Picture, "<svg", s.Name)
		assert.NotEmpty(t, s.Says, s.Name)
		assert.Empty(t, s.Faults, s.Name)
	}
	first := *ask(t, page.Request{Do: "new", Flags: map[string]string{"title": "Invented: Harbour log", "book.height": "221; 221.5", "book.width": "148.5", "book.thickness": "31.75"}}).Text
	assert.Equal(t, ask(t, page.Request{Do: "pictures", Text: first}).Pictures.Case, a.Students[0].Picture)
}

// Everything is one zip with the job file and what each command makes, the same each time.
func TestEverything(t *testing.T) {
	text := start(t)
	a := new(page.Desk).Answer(ctx, page.Request{Do: "everything", Text: text}, nil)
	require.Empty(t, a.Error)
	require.Len(t, a.Files, 1)
	got, names := unzipped(t, a.Files[0].Data)
	assert.Equal(t, text, string(got["case/job.toml"]))
	for _, name := range []string{"templates", "handout", "cutlist", "gauge"} {
		b := new(page.Desk).Answer(ctx, page.Request{Do: "make", Name: name, Text: text}, nil)
		for _, f := range b.Files {
			assert.True(t, bytes.Equal(f.Data, got["case/"+name+"/"+f.Name]), f.Name)
		}
	}
	assert.Contains(t, names, "case/stock/stock.pdf")
	assert.Equal(t, a.Files[0].Data, new(page.Desk).Answer(ctx, page.Request{Do: "everything", Text: text}, nil).Files[0].Data)
	b := ask(t, page.Request{Do: "everything", Text: "[book]\nheight = 1\n"})
	assert.NotEmpty(t, b.Faults)
	assert.Empty(t, b.Files)
}

// A roster from a stranger is told as a fault and nothing is made.
func TestStrangersRosters(t *testing.T) {
	for _, data := range strangers() {
		for _, do := range []string{"roster", "class"} {
			a := ask(t, page.Request{Do: do, Data: []byte(data)})
			assert.NotEmpty(t, a.Faults, "%s %.30q", do, data)
			assert.Empty(t, a.Error, "%s %.30q", do, data)
			assert.Empty(t, a.Files, "%s %.30q", do, data)
		}
	}
	a := ask(t, page.Request{Do: "roster", Data: []byte("name,title,height,width,thickness\n<img src=x onerror=alert(1)>,<script>alert(1)</script>,210,148,12\n")})
	require.Len(t, a.Students, 1)
	assert.NotContains(t, a.Students[0].Picture, "<script")
	assert.NotContains(t, a.Students[0].Picture, "<img")
	b := ask(t, page.Request{Do: "class", Data: []byte("name,height,width,thickness\n../../up,210,148,12\n..,x,y,z\n")})
	_, names := unzipped(t, new(page.Desk).Answer(ctx, page.Request{Do: "class", Data: []byte("name,height,width,thickness\n../../up\\..,210,148,12\n")}, nil).Files[0].Data)
	for _, n := range names {
		assert.NotContains(t, n, "..")
	}
	assert.Len(t, b.Students, 2)
}
