package page_test

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sync/errgroup"

	"forel/cmd/page/browser"
	"forel/cmd/pipeline"
	"forel/geometry/plan/plantest"
)

// someWorked are an eighth of the worked jobs, in a soak all.
func someWorked(t *testing.T) map[string]string {
	jobs := worked(t)
	if !plantest.Soak() {
		for i, name := range slices.Sorted(maps.Keys(jobs)) {
			if i%8 != 0 {
				delete(jobs, name)
			}
		}
	}
	return jobs
}

// fewWorked are all worked jobs, but some of them where tests are to be short.
func fewWorked(t *testing.T) map[string]string {
	if testing.Short() {
		return someWorked(t)
	}
	return worked(t)
}

// What the page makes in a browser of every worked job is, byte for byte, what the
// pipeline makes on this machine: PDFs, drawings, handout, list, plan of the sheets, beds.
// An eighth of the jobs are tried, all in a soak.
func TestMakesWhatTheCommandLineWrites(t *testing.T) {
	t.Parallel()
	browser.Find(t)
	flags := map[string]map[string]string{"templates": nil, "handout": {"short": "true"}, "cutlist": {"format": "json"}, "stock": {"effort": "0"}, "cutter": {"bed": "1400x1200 mm", "effort": "0"}}
	p := browser.Open(t, browser.Build(t))
	p.Wait(t, settled)
	jobs := someWorked(t)
	var both errgroup.Group
	want := map[string]string{}
	both.Go(func() error {
		for job, text := range jobs {
			source := pipeline.Source{Files: []pipeline.File{{Name: "job.toml", Data: []byte(text)}}}
			j := pipeline.Job{Source: source}
			cutter := pipeline.Cutter{}
			cutter.Job, cutter.Bed, cutter.Effort = j, "1400x1200 mm", "0"
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

// The sheets are shown as they print, as large as they print where that is asked for; what
// is wrong with a setting stands at its blank; settings stay; slow work can be stopped.
func TestSheetsInTheBrowser(t *testing.T) {
	t.Parallel()
	browser.Find(t)
	p := browser.Open(t, browser.Build(t))
	p.Wait(t, settled)
	made := func(name string) {
		p.Run(t, chromedp.ScrollIntoView("#output-"+name))
		p.Wait(t, `document.querySelector('#output-`+name+` .made').getAttribute('aria-busy') === 'false'`)
	}
	p.Wait(t, `!!document.querySelector('#paper-prove')`)
	made("templates")
	assert.Equal(t, 9, browser.Value[int](t, p, `document.querySelectorAll('#output-templates .pages img').length`))
	assert.Equal(t, 12, browser.Value[int](t, p, `document.querySelectorAll('#output-templates .drawings img').length`))
	assert.Contains(t, browser.Value[string](t, p, `document.querySelector('#output-templates').innerText`), "never put chlorinated plastics")

	// A page at true size is as wide as its sheet, corrected by what the line measures.
	p.Run(t, chromedp.Click(`#output-templates .pages li:nth-child(4) button`), chromedp.Click("#truly"))
	wide := `document.querySelector('dialog .sheet svg').getBoundingClientRect().width / 96 * 25.4`
	assert.InDelta(t, 297, browser.Value[float64](t, p, wide), 0.2, "a page that lies, of A4")
	p.Type(t, "#measures", "110\t")
	assert.InDelta(t, 270, browser.Value[float64](t, p, wide), 0.2)
	assert.Contains(t, browser.Value[string](t, p, `document.querySelector('dialog .sheet svg').textContent`), "page 4 of 9")
	p.Run(t, chromedp.Evaluate(`document.querySelector('dialog').close()`, nil))

	// Another paper: other sheets.
	p.Type(t, "#blank-print-paper", "a3")
	p.Wait(t, settled)
	made("templates")
	assert.Less(t, browser.Value[int](t, p, `document.querySelectorAll('#output-templates .pages img').length`), 9)

	// What can't be made any more is still seen, and can't be saved.
	saves := `document.querySelector('#output-templates .files').getClientRects().length > 0`
	assert.True(t, browser.Value[bool](t, p, saves))
	p.Type(t, "#blank-print-paper", "a9")
	p.Wait(t, settled)
	assert.False(t, browser.Value[bool](t, p, saves))
	assert.NotZero(t, browser.Value[int](t, p, `document.querySelectorAll('#output-templates .pages img').length`))
	p.Type(t, "#blank-print-paper", "a4")
	p.Wait(t, settled)

	// The bed of a machine.
	press := func(name string) {
		p.Run(t, chromedp.Evaluate(`document.querySelector('#paper-`+name+`').open = true`, nil), chromedp.Click("#begin-"+name))
	}
	press("cutter")
	p.Wait(t, `document.querySelector('#cutter-bed-faults').innerText !== ''`)
	assert.Equal(t, "true", browser.Value[string](t, p, `document.querySelector('#cutter-bed').getAttribute('aria-invalid')`))
	p.Type(t, "#cutter-bed", "900x600")
	press("cutter")
	p.Wait(t, `document.querySelectorAll('#output-cutter .drawings img').length > 2`)
	assert.Contains(t, browser.Value[string](t, p, `document.querySelector('#output-cutter').innerText`), "never leave a machine running unattended")
	assert.Contains(t, browser.Value[string](t, p, `localStorage.getItem('forel.settings cutter')`), "900x600")

	// What one owns, and a search that is stopped.
	p.Run(t, chromedp.Evaluate(`document.querySelector('#paper-stock').open = true`, nil), chromedp.Click("#output-stock .owned + p button"))
	p.Wait(t, `document.querySelectorAll('#output-stock fieldset').length === 1`)
	p.Wait(t, settled)
	assert.Contains(t, browser.Value[string](t, p, `forel.text()`), "[[stock]]")
	p.Run(t, chromedp.Evaluate(`document.querySelector('#output-stock details').open = true`, nil))
	p.Type(t, "#stock-effort", "1h")
	press("stock")
	p.Run(t, chromedp.WaitVisible("#output-stock progress"), chromedp.Click("#begin-stock-stop"))
	p.Wait(t, `document.querySelector('#begin-stock').hidden === false`)
	assert.Contains(t, browser.Value[string](t, p, `document.querySelector('#output-stock').innerText`), "Stopped")
	p.Type(t, "#stock-effort", "0")
	press("stock")
	p.Wait(t, `document.querySelectorAll('#output-stock .drawings img').length > 0`)
	p.Run(t, chromedp.Click(`//*[@id='output-stock']//button[text()='stock.pdf']`))
	assert.Equal(t, "%PDF", string(p.Saved(t, "stock.pdf")[:4]))
	p.Run(t, chromedp.Click(`//*[@id='output-stock']//button[text()='take it out']`))
	p.Wait(t, `document.querySelectorAll('#output-stock fieldset').length === 0`)

	// Every setting of every command has its blank, with a name and what it does.
	missing := browser.Value[[]string](t, p, `forel.ask({do: 'outputs'}).then(({outputs}) => outputs.flatMap((o) => o.settings.filter((s) => {
		const blank = document.getElementById(o.name + '-' + s.name);
		return !blank || !(blank.labels?.[0] ?? document.getElementById(blank.getAttribute('aria-labelledby'))).textContent || !document.getElementById(blank.getAttribute('aria-describedby').split(' ')[0]).textContent;
	}).map((s) => o.name + ' ' + s.name)))`)
	assert.Empty(t, missing)
	// No name is made of nothing, and headings come in order.
	assert.Zero(t, browser.Value[int](t, p, `document.querySelectorAll('[aria-label*="undefined"], [aria-label=""], .output:not([aria-label])').length`))
	assert.Empty(t, browser.Value[[]string](t, p, `[...document.querySelectorAll('h1, h2, h3, h4')].filter((h, i, all) => i > 0 && h.tagName[1] - all[i - 1].tagName[1] > 1).map((h) => h.textContent)`))
	// So has every key of the job file that is of the sheets.
	assert.Empty(t, browser.Value[[]string](t, p, `forel.ask({do: 'fields'}).then(({sections}) => sections.flatMap((s) => s.fields).filter((f) => f.place === 'sheets' && !f.list && !document.getElementById('blank-' + f.key.replace(/[^a-z0-9]+/g, '-'))).map((f) => f.key))`))
	assert.Empty(t, p.Errors())
}
