package page_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/page"
	"forel/cmd/page/assets"
	"forel/cmd/page/browser"
	"forel/geometry/kinds"
)

// opened opens the page and waits for its first verdict and picture.
func opened(t *testing.T) *browser.Page {
	t.Helper()
	browser.Find(t)
	p := browser.Start(t)
	p.Run(t, emulation.SetEmulatedMedia().WithFeatures([]*emulation.MediaFeature{{Name: "prefers-reduced-motion", Value: "reduce"}}), // faults are seen at once
		chromedp.Navigate("file://"+browser.Build(t)))
	p.Wait(t, settled)
	t.Cleanup(func() { assert.Empty(t, p.Errors()) })
	return p
}

// told returns what an element says.
func told(t *testing.T, p *browser.Page, selector string) string {
	t.Helper()
	return browser.Value[string](t, p, fmt.Sprintf("document.querySelector(%q).innerText", selector))
}

// press clicks what a selector finds, or the button with some words in it.
func press(t *testing.T, p *browser.Page, selector, words string) {
	t.Helper()
	require.True(t, browser.Value[bool](t, p, fmt.Sprintf(
		`(() => { const b = [...document.querySelectorAll(%q)].find((b) => b.textContent.includes(%q)); b?.click(); return !!b })()`, selector, words)), "%s %q", selector, words)
	p.Wait(t, settled)
}

// choose picks a word in a list.
func choose(t *testing.T, p *browser.Page, key, word string) {
	t.Helper()
	p.Run(t, chromedp.SetValue(blank(key), word), chromedp.Evaluate(fmt.Sprintf(`void document.querySelector(%q).dispatchEvent(new Event('change', { bubbles: true }))`, blank(key)), nil))
	p.Wait(t, settled)
}

// blank is the selector of a key's blank.
func blank(key string) string {
	return "#blank-" + strings.NewReplacer(".", "-", "_", "-", "[", "-", "]", "").Replace(key)
}

// typed types into a blank, and waits for what comes of it.
func typed(t *testing.T, p *browser.Page, selector, text string) {
	t.Helper()
	p.Type(t, selector, text)
	p.Wait(t, settled)
}

// The job is what a maker sees: a book in inches with several readings, a likely slip, a
// fault with its mend, layers measured together.
func TestMeasuring(t *testing.T) {
	t.Parallel()
	p := opened(t)
	p.Run(t, chromedp.Focus("#height"), chromedp.Evaluate(`document.querySelector('#height').select()`, nil), chromedp.SendKeys("#height", "9 1/4 in"+kb.Enter))
	p.Run(t, chromedp.KeyEvent("234.5"+kb.Enter), chromedp.KeyEvent("23,4 cm"))
	p.Wait(t, settled)
	text := browser.Value[string](t, p, "forel.text()")
	assert.Contains(t, text, `height = ["9 1/4 in", 234.5, "23,4 cm"] `, "Enter goes on to the next reading")
	assert.NotContains(t, text, "invented", "it is the maker's own book now")
	assert.Equal(t, "9 1/4 in", browser.Value[string](t, p, `document.querySelector('.dimension.height .largest').value`))

	p.Run(t, chromedp.KeyEvent(kb.Backspace+kb.Backspace+kb.Backspace+kb.Backspace+kb.Backspace+kb.Backspace+kb.Backspace+"243.5"))
	p.Wait(t, settled)
	assert.Contains(t, told(t, p, "#height-faults"), "likely", "readings far apart are told at their blank")

	typed(t, p, "#thickness", "3175")
	assert.Contains(t, told(t, p, "#thickness-faults"), "3175 mm is too large; give 1 mm to 300 mm")
	assert.True(t, browser.Value[bool](t, p, `document.querySelector('#fit').classList.contains('stale') && !!document.querySelector('#case svg')`), "the last good picture stays, greyed")
	assert.Equal(t, "true", browser.Value[string](t, p, `document.querySelector('#thickness').getAttribute('aria-invalid')`))
	press(t, p, "#thickness-faults button", "use 300 mm")
	assert.Equal(t, "300 mm", browser.Value[string](t, p, `document.querySelector('#thickness').value`))
	assert.NotContains(t, told(t, p, "#thickness-faults"), "too large")

	typed(t, p, "#thickness", "32")
	typed(t, p, blank("board.thickness"), "4 layers 8.1")
	assert.Contains(t, told(t, p, "#tightest"), "board 2.03 mm", "8.1 / 4 = 2.025")
	for key, c := range map[string][2]string{
		"board.thickness": {"thin", "begin with a number"}, "clearance.height": {"99", "too large"}, "cloth.stretch": {"12", "12 % is too large"}, "cloth.overlap": {"1,234", "two ways"},
	} {
		was := browser.Value[string](t, p, fmt.Sprintf(`document.querySelector(%q).value`, blank(key)))
		p.Run(t, chromedp.Evaluate(fmt.Sprintf(`(() => { for (let d = document.querySelector(%q).closest('details'); d; d = null) d.open = true })()`, blank(key)), nil))
		typed(t, p, blank(key), c[0])
		assert.Contains(t, told(t, p, blank(key)+"-faults"), c[1], key)
		typed(t, p, blank(key), was+" ")
		assert.Empty(t, told(t, p, blank(key)+"-faults"), key)
	}
	press(t, p, "#mends .advised button", "use")
	assert.Contains(t, browser.Value[string](t, p, "forel.text()"), `known = "measured"`)
}

// Units change figures, not the book; a kind that is tried out loses nothing; volumes
// are added, change places, go and come back.
func TestChanging(t *testing.T) {
	t.Parallel()
	p := opened(t)
	before := told(t, p, "#numbers dd")
	assert.Contains(t, before, "221.5 mm high")
	press(t, p, "#blank-units-in", "")
	assert.Contains(t, told(t, p, "#numbers dd"), "8 23/32 in high") // 221.5 / 25.4 = 8.7205, to the nearest 32nd
	text := browser.Value[string](t, p, "forel.text()")
	assert.Contains(t, text, `height = ["221 mm", "221.5 mm"] `)
	press(t, p, "#blank-units-mm", "")
	assert.Equal(t, before, told(t, p, "#numbers dd"))

	typed(t, p, blank("board.thickness"), "2.4")
	made := browser.Value[string](t, p, "forel.text()")
	for _, kind := range browser.Value[[]string](t, p, `[...document.querySelector('#blank-kind').options].map((o) => o.value)`) {
		choose(t, p, "kind", kind)
		assert.Contains(t, browser.Value[string](t, p, "forel.text()"), "thickness = 2.4 ", kind)
		assert.NotEqual(t, "refused", browser.Value[string](t, p, `document.querySelector('#verdict').dataset.verdict`), kind)
	}
	choose(t, p, "kind", "slipcase")
	assert.Equal(t, strings.Fields(made), strings.Fields(browser.Value[string](t, p, "forel.text()")))

	press(t, p, "#another-volume", "")
	typed(t, p, blank("book[2].height"), "210")
	typed(t, p, blank("book[2].width"), "140")
	typed(t, p, blank("book[2].thickness"), "20")
	choose(t, p, "compartments", "each")
	books := `JSON.stringify([...document.querySelectorAll('.dimension.height input')].map((i) => i.value).filter(Boolean))`
	assert.Equal(t, `["221 mm","221.5 mm","210"]`, browser.Value[string](t, p, books))
	assert.Equal(t, 2, browser.Value[int](t, p, `document.querySelectorAll('#shelf path').length`))
	press(t, p, ".moves button", "to the right")
	assert.Equal(t, `["210","221 mm","221.5 mm"]`, browser.Value[string](t, p, books))
	two := browser.Value[string](t, p, "forel.text()")
	press(t, p, ".moves button", "take it out")
	assert.Equal(t, `["221 mm","221.5 mm"]`, browser.Value[string](t, p, books))
	press(t, p, "#volume-told button", "put it back")
	p.Wait(t, fmt.Sprintf(`document.querySelector('#volume-told').textContent.includes('is back') && %s === '["210","221 mm","221.5 mm"]'`, books))
	assert.ElementsMatch(t, strings.Fields(two), strings.Fields(browser.Value[string](t, p, "forel.text()")))
}

// Every key is reached and set: the page is walked by the table that it is made from.
func TestEveryKey(t *testing.T) {
	t.Parallel()
	p := opened(t)
	sections, err := json.Marshal(ask(t, page.Request{Do: "fields"}).Sections)
	require.NoError(t, err)
	reached := map[string]bool{}
	for _, kind := range [][2]string{{"slipcase", "boards"}, {"slipcase", "card"}, {"chemise and drop-spine box", "boards"}} {
		choose(t, p, "kind", kind[0])
		if kind[0] == "slipcase" {
			choose(t, p, "construction", kind[1])
		}
		set := browser.Value[[]string](t, p, `(() => {
			const set = [];
			for (const f of `+string(sections)+`.flatMap((s) => s.fields)) {
				if (['kind', 'construction', 'units'].includes(f.key) || f.place === 'sheets') continue;
				const row = document.querySelector('[data-row="' + f.key + '"]');
				if (!row || row.hidden) continue;
				const control = row.querySelector('input, select');
				if (!document.querySelector('label[for="' + control.id + '"]') && !control.ariaLabel) continue;
				control.value = f.kind === 'choice' ? f.words.at(-1) : f.kind === 'text' ? 'name' : f.kind === 'weight' ? '600 g' : String(f.max || 1);
				control.dispatchEvent(new Event(f.kind === 'choice' ? 'change' : 'input', { bubbles: true }));
				set.push(f.key + '=' + control.value);
			}
			return set;
		})()`)
		p.Wait(t, settled)
		values := ask(t, page.Request{Do: "open", Text: browser.Value[string](t, p, "forel.text()")}).State.Values
		for _, s := range set {
			key, value, _ := strings.Cut(s, "=")
			first, _, _ := strings.Cut(values[key], ";")
			assert.Equal(t, value, first, key)
			reached[key] = true
		}
	}
	for _, s := range ask(t, page.Request{Do: "fields"}).Sections {
		for _, f := range s.Fields {
			if f.Place == page.InSheets || f.Key == "kind" || f.Key == "construction" || f.Key == "units" {
				continue // the sheets have a test of their own, the others are chosen above
			}
			assert.True(t, reached[f.Key], "%s is not to be found", f.Key)
		}
	}
}

// A kind that is added to the table of kinds is on the page by itself: no part of the page
// names one.
func TestNoKindIsNamed(t *testing.T) {
	parts, err := fs.Glob(assets.Files, "*")
	require.NoError(t, err)
	require.NotEmpty(t, parts)
	for _, part := range parts {
		data, err := assets.Files.ReadFile(part)
		require.NoError(t, err)
		for _, k := range kinds.All {
			assert.NotContains(t, strings.ToLower(string(data)), k.Name, part)
		}
	}
}

// widths are those of a phone, of a screen at 200 %, and of a laptop.
var widths = []int64{360, 640, 1280}

// Controls have names, text can be told from its ground in both looks (WCAG 2.2, 1.4.3),
// nothing sticks out sideways (1.4.10), with faults and two volumes on the page.
func TestForEveryone(t *testing.T) {
	t.Parallel()
	p := opened(t)
	press(t, p, "#another-volume", "")
	typed(t, p, "#width", "15 cm and a bit")
	p.Run(t, chromedp.Evaluate(`for (const d of document.querySelectorAll('details')) d.open = true`, nil))
	type value struct {
		Value any `json:"value"`
	}
	var tree struct {
		Nodes []struct {
			Ignored bool  `json:"ignored"`
			Role    value `json:"role"`
			Name    value `json:"name"`
		} `json:"nodes"`
	}
	p.Run(t, chromedp.ActionFunc(func(ctx context.Context) error {
		return cdp.Execute(ctx, "Accessibility.getFullAXTree", nil, &tree)
	}))
	controls := 0
	for _, n := range tree.Nodes {
		role, _ := n.Role.Value.(string)
		if n.Ignored || !strings.Contains(" button textbox combobox radio checkbox link spinbutton searchbox figure img image ", " "+role+" ") || role == "figure" {
			continue
		}
		controls++
		assert.NotEmpty(t, n.Name.Value, "a %s has no name", role)
	}
	assert.Greater(t, controls, 60)
	for _, look := range []string{"light", "dark"} {
		p.Run(t, chromedp.Evaluate(fmt.Sprintf(`document.documentElement.dataset.look = %q`, look), nil))
		for _, low := range browser.Value[[]string](t, p, contrasts) {
			t.Errorf("%s: %s", look, low)
		}
	}
	for _, wide := range widths {
		p.Run(t, emulation.SetDeviceMetricsOverride(wide, 800, 1, false))
		assert.LessOrEqual(t, browser.Value[int64](t, p, `document.documentElement.scrollWidth`), wide)
	}
}

// contrasts lists texts that are too near to their ground: the formulas of WCAG 2.2,
// "relative luminance" and "contrast ratio"; at least 4.5, of large text 3.
const contrasts = `(() => {
	const canvas = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true });
	const rgb = (colour) => { canvas.clearRect(0, 0, 1, 1); canvas.fillStyle = colour; canvas.fillRect(0, 0, 1, 1); return [...canvas.getImageData(0, 0, 1, 1).data]; };
	const light = ([r, g, b]) => { const [x, y, z] = [r, g, b].map((c) => (c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4); return 0.2126 * x + 0.7152 * y + 0.0722 * z; };
	const ground = (e) => { for (; e; e = e.parentElement) { const c = rgb(getComputedStyle(e).backgroundColor); if (c[3] === 255) return c; } return [255, 255, 255, 255]; };
	const low = [];
	for (const e of document.querySelectorAll('body *')) {
		const own = [...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim());
		if (!own && !e.matches('input, select') || e.closest('svg, script, noscript') || !e.checkVisibility() || e.disabled) continue;
		for (const style of [getComputedStyle(e), ...(e.placeholder ? [getComputedStyle(e, '::placeholder')] : [])]) {
			const [a, b] = [light(rgb(style.color)), light(ground(e))].sort((x, y) => y - x);
			const size = parseFloat(style.fontSize), large = size >= 24 || size >= 18.66 && style.fontWeight >= 700;
			const ratio = (a + 0.05) / (b + 0.05);
			if (ratio < (large ? 3 : 4.5)) low.push(ratio.toFixed(2) + ' ' + e.tagName + '.' + e.className + ' ' + (e.textContent || e.value).slice(0, 40));
		}
	}
	return low;
})()`

// From the first blank to the saved PDF by the keyboard alone.
func TestKeyboard(t *testing.T) {
	t.Parallel()
	p := opened(t)
	p.Run(t, chromedp.Focus("#height"))
	var seen []string
	for range 150 {
		at := browser.Value[string](t, p, `document.activeElement.id || document.activeElement.textContent`)
		require.True(t, browser.Value[bool](t, p, `(() => { const s = getComputedStyle(document.activeElement); return s.outlineStyle !== 'none' && parseFloat(s.outlineWidth) >= 2 })()`), "no focus to be seen at %s", at)
		seen = append(seen, at)
		if at == "templates" {
			p.Run(t, chromedp.KeyEvent(kb.Enter))
			assert.True(t, bytes.HasPrefix(p.Saved(t, "templates.pdf"), []byte("%PDF-")))
			return
		}
		p.Run(t, chromedp.KeyEvent(kb.Tab))
	}
	t.Fatal("the templates are not reached: ", seen)
}

// TestPictures makes the pictures of the README again, in the folder that FOREL_PICTURES
// names.
func TestPictures(t *testing.T) {
	folder := os.Getenv("FOREL_PICTURES")
	if folder == "" {
		t.Skip("FOREL_PICTURES names no folder")
	}
	p := opened(t)
	p.Wait(t, `document.querySelector('#paper-prove') && document.fonts.size >= 2 && [...document.fonts].every((f) => f.status === 'loaded')`)
	for _, c := range []struct {
		name, look, before string
		wide, tall         int64
	}{
		{"light", "light", ``, 1180, 900},
		{"dark", "dark", `document.querySelector('#steps').scrollIntoView()`, 1180, 900},
		{"narrow", "light", ``, 360, 760},
	} {
		p.Run(t, emulation.SetDeviceMetricsOverride(c.wide, c.tall, 1, false),
			chromedp.Evaluate(fmt.Sprintf(`document.documentElement.dataset.look = %q; scrollTo(0, 0); %s; document.activeElement.blur()`, c.look, c.before), nil))
		if c.before != "" {
			p.Wait(t, `document.querySelectorAll('.strip svg').length > 5 && document.querySelector('#step svg') && !document.querySelector('#steps.stale')`)
		}
		var data []byte
		p.Run(t, chromedp.ActionFunc(func(ctx context.Context) (err error) {
			data, err = cdppage.CaptureScreenshot().WithFormat(cdppage.CaptureScreenshotFormatWebp).WithQuality(80).Do(ctx)
			return err
		}))
		require.NoError(t, os.WriteFile(filepath.Join(folder, c.name+".webp"), data, 0o600))
	}
}

// Printed, the page is the filled worksheet: what was typed is on it, what is for the
// screen alone is not.
func TestPrintedWorksheet(t *testing.T) {
	t.Parallel()
	read, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("no pdftotext here to read what is printed")
	}
	p := opened(t)
	typed(t, p, "#height", "233.25")
	p.Run(t, chromedp.Evaluate(fmt.Sprintf(`void (document.querySelector(%q).closest('details').open = true)`, blank("clearance.height")), nil))
	typed(t, p, blank("clearance.height"), "2.75")
	p.Run(t, chromedp.Evaluate(`for (const d of document.querySelectorAll('details')) d.open = false`, nil))
	var data []byte
	p.Run(t, chromedp.ActionFunc(func(ctx context.Context) (err error) {
		data, _, err = cdppage.PrintToPDF().Do(ctx)
		return err
	}))
	file := filepath.Join(t.TempDir(), "worksheet.pdf")
	require.NoError(t, os.WriteFile(file, data, 0o600))
	out, err := exec.Command(read, "-layout", file, "-").Output()
	require.NoError(t, err)
	for _, want := range []string{"Harbour log", "233.25", "148.5", "1 1/4 in", "2.75", "Will it fit", "board", "Knives cut people"} {
		assert.Contains(t, string(out), want)
	}
	for _, not := range []string{"another", "go there", "as this machine", "take it out"} {
		assert.NotContains(t, string(out), not)
	}
}
