package page_test

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sync/errgroup"

	"forel/cmd/page/browser"
	"forel/cmd/pipeline"
)

// What the page makes in a browser of every worked job is, byte for byte, what the
// pipeline makes on this machine: PDFs, drawings, handout, list, plan of the sheets, beds.
// CI tries all jobs, else a quarter of them.
func TestMakesWhatTheCommandLineWrites(t *testing.T) {
	browser.Find(t)
	flags := map[string]map[string]string{"templates": nil, "handout": {"short": "true"}, "cutlist": {"format": "json"}, "stock": {"effort": "0"}, "cutter": {"bed": "1400x1200", "effort": "0"}}
	p := browser.Open(t, browser.Build(t))
	p.Wait(t, settled)
	jobs := worked(t)
	if os.Getenv("CI") == "" { // all take twenty seconds of a core in a browser
		for i, name := range slices.Sorted(maps.Keys(jobs)) {
			if i%4 != 0 {
				delete(jobs, name)
			}
		}
	}
	var both errgroup.Group
	want := map[string]string{}
	both.Go(func() error {
		for job, text := range jobs {
			source := pipeline.Source{Files: []pipeline.File{{Name: "job.toml", Data: []byte(text)}}}
			j := pipeline.Job{Source: source}
			cutter := pipeline.DefaultCutter()
			cutter.Job, cutter.Bed, cutter.Effort = j, "1400x1200", "0"
			for name, c := range map[string]pipeline.Command{
				"templates": pipeline.Templates{Job: j}, "handout": pipeline.Handout{Job: j, Short: true}, "cutlist": pipeline.Cutlist{Job: j, Format: "json"},
				"stock": pipeline.Stock{Job: j, Draw: true, Effort: "0"}, "cutter": cutter,
			} {
				r, err := c.Make(ctx)
				if err != nil {
					return fmt.Errorf("%s of %s: %w", name, job, err)
				}
				if len(r.Report) > 0 {
					r.Files = append(r.Files, pipeline.File{Name: "report", Data: r.Report})
				}
				for _, f := range r.Files {
					want[job+" "+name+" "+f.Name] = fmt.Sprintf("%x", sha256.Sum256(f.Data))
				}
			}
		}
		return nil
	})
	asked, err := json.Marshal(map[string]any{"jobs": jobs, "flags": flags})
	require.NoError(t, err)
	got := browser.Value[map[string]string](t, p, `(async ({jobs, flags}) => {
		const digest = async (data) => [...new Uint8Array(await crypto.subtle.digest('SHA-256', data))].map((b) => b.toString(16).padStart(2, '0')).join('');
		const out = {};
		const list = Object.entries(jobs).flatMap(([job, text]) => Object.entries(flags).map(([name, flags]) => ({job, text, name, flags})));
		const some = async (ask) => {
			for (let next; (next = list.pop());) {
				const {job, ...request} = next;
				const {files, report, error, faults = []} = await ask({do: 'make', ...request});
				if (error || faults.length) out[job + ' ' + request.name] = error ?? JSON.stringify(faults);
				for (const f of files) {
					const name = report && f === files[0] ? 'report' : f.name;
					out[[job, request.name, name].join(' ')] = await digest(f.data);
				}
			}
		};
		await Promise.all([some(forel.ask), some(forel.aside)]);
		return out;
	})(`+string(asked)+`)`)
	require.NoError(t, both.Wait())
	assert.Greater(t, len(want), 10*len(jobs))
	assert.Equal(t, want, got)
	assert.Empty(t, p.Errors())
	assert.False(t, strings.Contains(fmt.Sprint(p.Requests()), "http"))
}
