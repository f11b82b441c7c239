package page_test

import (
	"bytes"
	"context"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/page/browser"
	"forel/cmd/pipeline"
)

func TestMain(m *testing.M) { os.Exit(browser.Main(m)) }

// settled is true when all that was typed is answered and drawn.
const settled = `globalThis.forel?.settled()`

// The page opens from a file without a network, says whether the book fits, takes
// another measure, and saves the templates that the command line writes. Nothing is
// asked of anybody.
func TestMainJob(t *testing.T) {
	browser.Find(t)
	file := browser.Build(t)
	p := browser.Open(t, file)
	p.Wait(t, settled)
	assert.Contains(t, browser.Value[string](t, p, `document.getElementById('verdict').textContent`), "The book may be too tight")
	p.Type(t, "#height", "230.5")
	p.Wait(t, settled)
	press(t, p, "#templates", "PDF")
	got := p.Saved(t, "templates.pdf")

	text := browser.Value[string](t, p, `forel.text()`)
	assert.Contains(t, text, "height = [230.5, 221.5] ")
	r, err := pipeline.Templates{Job: pipeline.Job{Source: pipeline.Source{Files: []pipeline.File{{Name: "job.toml", Data: []byte(text)}}}}}.Make(context.Background())
	require.NoError(t, err)
	want := r.Files[len(r.Files)-1].Data
	assert.True(t, bytes.Equal(want, got), "the PDF is the one that the command line writes")

	for _, address := range p.Requests() {
		assert.True(t, strings.HasPrefix(address, "file://"+file) || strings.HasPrefix(address, "blob:"), address)
	}
	assert.Empty(t, p.Errors())
}
