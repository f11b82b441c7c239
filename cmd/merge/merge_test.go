package merge_test

import (
	"bytes"
	"fmt"
	"io"
	"runtime"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/merge"
	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/document"
	"forel/render/pdf/pdftest"
)

// made makes a document whose pages say what they are, upright and lying.
func made(t testing.TB, name string, pages int) []byte {
	d := &document.Document{Options: document.Options{Setup: paper.Setup{Sheet: paper.Sheets[0], Margins: paper.EvenMargins(10)}}, Title: name, TrueSize: true}
	for i := range pages {
		box := d.NewPage(i%2 == 1, fmt.Sprint(i))
		document.Write(d, box.Min.Add(geometry.Pt(0, 20)), fmt.Sprintf("%s, leaf %d", name, i+1), render.BodySize, false)
		d.Stroke(geometry.Line(box.Min, box.Min.Add(geometry.Pt(100, 0))), render.Stroke{Width: 0.3})
	}
	data, err := d.PDF()
	require.NoError(t, err)
	return data
}

// What is merged has every page of every file in their order, as large, with the same words
// and lines, and a list of contents with the names.
func TestMerged(t *testing.T) {
	files := map[string][]byte{"Ana": made(t, "Ana", 3), "Zoë Invented": made(t, "Zoë", 2)}
	var out bytes.Buffer
	b := merge.New(&out)
	for _, name := range []string{"Ana", "Zoë Invented"} {
		require.NoError(t, b.Add(name, files[name]))
		require.NoError(t, b.Add("", files[name]))
	}
	require.NoError(t, b.Close())
	var again bytes.Buffer
	c := merge.New(&again)
	for _, name := range []string{"Ana", "Zoë Invented"} {
		require.NoError(t, c.Add(name, files[name]))
		require.NoError(t, c.Add("", files[name]))
	}
	require.NoError(t, c.Close())
	assert.Equal(t, out.Bytes(), again.Bytes(), "the same files give the same bytes")
	require.NoError(t, api.Validate(bytes.NewReader(out.Bytes()), model.NewDefaultConfiguration()))
	marks, err := api.Bookmarks(bytes.NewReader(out.Bytes()), model.NewDefaultConfiguration())
	require.NoError(t, err)
	require.Len(t, marks, 2)
	assert.Equal(t, "Zoë Invented", marks[1].Title)
	assert.Equal(t, 7, marks[1].PageFrom)
	merged := pdftest.Open(t, out.Bytes())
	require.Equal(t, 10, merged.Pages)
	page := 0
	for _, name := range []string{"Ana", "Ana", "Zoë Invented", "Zoë Invented"} {
		one := pdftest.Open(t, files[name])
		for i := 1; i <= one.Pages; i++ {
			page++
			assert.Equal(t, one.Size(i), merged.Size(page))
			assert.Equal(t, one.Text(i), merged.Text(page))
			assert.Equal(t, one.Paths(i), merged.Paths(page))
		}
	}
}

// Merging a thousand files takes no more memory than a few of them.
func TestMemoryStaysSmall(t *testing.T) {
	file := made(t, "Ana", 10)
	b := merge.New(io.Discard)
	most := uint64(0)
	for i := range 1000 {
		require.NoError(t, b.Add("Ana", file))
		if i%100 == 99 {
			runtime.GC()
			var m runtime.MemStats
			runtime.ReadMemStats(&m)
			most = max(most, m.HeapAlloc)
		}
	}
	require.NoError(t, b.Close())
	assert.Less(t, most, uint64(64<<20), "bytes in use")
}
