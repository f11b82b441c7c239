package page_test

import (
	"bytes"
	"compress/flate"
	"context"
	"encoding/base64"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/cmd/page"
	"forel/cmd/page/browser"
	"forel/geometry/plan/plantest"
)

// text is the job file of the page.
func text(t *testing.T, p *browser.Page) string { return browser.Value[string](t, p, `forel.text()`) }

// listed waits until the list of cases says something, and returns it.
func listed(t *testing.T, p *browser.Page, wanted string) string {
	t.Helper()
	p.Wait(t, fmt.Sprintf(`document.getElementById('cases').innerText.includes(%q)`, wanted))
	return told(t, p, "#cases")
}

// count returns how many cases there are, when there are as many as wanted.
func count(t *testing.T, p *browser.Page, wanted int) {
	t.Helper()
	p.Wait(t, fmt.Sprintf(`document.querySelectorAll('#cases > li').length === %d`, wanted))
}

// reload opens the page again, as closing and opening it does.
func reload(t *testing.T, p *browser.Page) {
	t.Helper()
	p.Run(t, chromedp.Reload())
	p.Wait(t, settled)
}

// give puts files into an input, as a maker chooses them.
func give(t *testing.T, p *browser.Page, input string, files map[string]string) {
	t.Helper()
	folder := t.TempDir()
	var names []string
	for name, data := range files {
		names = append(names, filepath.Join(folder, name))
		require.NoError(t, os.WriteFile(names[len(names)-1], []byte(data), 0o644))
	}
	p.Run(t, chromedp.SetUploadFiles(input, names))
}

// answered waits until a place tells something, and returns it.
func answered(t *testing.T, p *browser.Page, selector, wanted string) string {
	t.Helper()
	p.Wait(t, fmt.Sprintf(`document.querySelector(%q).innerText.includes(%q)`, selector, wanted))
	return told(t, p, selector)
}

// What is typed is there again after the page was closed, at fault or not; another case is
// begun, copied, deleted and brought back; a file keeps its comments.
func TestKept(t *testing.T) {
	t.Parallel()
	p := opened(t)
	answered(t, p, "#keep-last", "begins with")
	typed(t, p, "#height", "230.5")
	typed(t, p, blank("board.thickness"), "two")
	listed(t, p, "230.5")
	assert.Contains(t, told(t, p, "#keep-lost"), "may clear")
	press(t, p, "#keep-lost button", "I know")
	before := text(t, p)
	reload(t, p)
	assert.Equal(t, before, text(t, p))
	assert.Equal(t, "two", browser.Value[string](t, p, fmt.Sprintf(`document.querySelector(%q).value`, blank("board.thickness"))), "what is at fault is kept too")
	assert.Empty(t, told(t, p, "#keep-lost"), "it is said once")
	typed(t, p, blank("board.thickness"), "2")

	press(t, p, "#begin-another", "Begin")
	p.Wait(t, `document.getElementById('verdict').dataset.verdict === 'empty'`)
	typed(t, p, blank("title"), "Invented: moth traps")
	listed(t, p, "Invented: moth traps")
	count(t, p, 2)
	press(t, p, "#cases button[aria-label*='moth traps']", "copy")
	count(t, p, 3)
	press(t, p, "#cases button[aria-label*='moth traps']", "delete")
	assert.Equal(t, "delete it", browser.Value[string](t, p, `document.activeElement.textContent`), "it asks, once")
	press(t, p, "#cases button", "keep it")
	count(t, p, 3)
	press(t, p, "#cases button[aria-label*='moth traps']", "delete")
	press(t, p, "#cases button", "delete it")
	count(t, p, 2)
	reload(t, p)
	answered(t, p, "#keep-undo", "is deleted")
	press(t, p, "#keep-undo button", "bring it back")
	count(t, p, 3)

	give(t, p, "#open-job", map[string]string{"mine.toml": "# measured by the window\ntitle = \"Invented: salt roads\" # a note\n[[book]]\nheight = 210\nwidth = 148 # twice\nthickness = 22\n"})
	answered(t, p, "#keep-told", "mine.toml is open")
	count(t, p, 4)
	typed(t, p, "#height", "211")
	assert.Contains(t, text(t, p), "# measured by the window")
	assert.Contains(t, text(t, p), "width = 148 # twice")
	press(t, p, "#save-job", "Save")
	assert.Equal(t, text(t, p), string(p.Saved(t, "invented-salt-roads.toml")))
	answered(t, p, "#keep-last", "Saved as a file")
	p.Wait(t, `document.querySelector('#cases [aria-current]')?.textContent === 'Invented: salt roads' && document.querySelectorAll('#cases img').length >= 2`)
}

// Two windows of one case show the same; where both are typed in before one hears of the
// other, there are two cases and nothing is lost.
func TestTwoWindows(t *testing.T) {
	t.Parallel()
	p := opened(t)
	typed(t, p, "#height", "230.5")
	listed(t, p, "230.5")
	q := p.Beside(t, browser.Build(t))
	q.Wait(t, settled)
	assert.Equal(t, text(t, p), text(t, q))
	typed(t, q, "#height", "233.5")
	p.Run(t, cdppage.BringToFront())
	p.Wait(t, `forel.text().includes('233.5') && forel.settled()`)
	count(t, p, 1)

	q.Run(t, cdppage.BringToFront(), chromedp.Evaluate(`for (const name of Object.keys(localStorage).filter((k) => k.startsWith('forel.case '))) {
		localStorage.setItem(name, JSON.stringify({ ...JSON.parse(localStorage.getItem(name)), mark: 'written by another' }));
	}`, nil))
	typed(t, q, "#height", "244.5")
	count(t, q, 2)
	assert.Contains(t, told(t, q, "#keep-told"), "another window")
	assert.Contains(t, listed(t, q, "244.5"), "233.5")
}

// Storage may be forbidden: it is told, and all works on.
func TestStorageForbidden(t *testing.T) {
	t.Parallel()
	browser.Find(t)
	p := browser.Start(t)
	p.Run(t, before(`Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError') }`), chromedp.Navigate("file://"+browser.Build(t)))
	p.Wait(t, settled)
	typed(t, p, blank("title"), "Invented: fog signals")
	typed(t, p, "#height", "230.5")
	answered(t, p, "#keep-lost", "full or forbidden")
	listed(t, p, "230.5")
	press(t, p, "#keep-lost button", "save the job file")
	assert.Contains(t, string(p.Saved(t, "invented-fog-signals.toml")), "230.5")
	assert.Empty(t, p.Errors())
}

// What others have written where the browser keeps the page's cases does no harm.
func TestForeignStorage(t *testing.T) {
	t.Parallel()
	browser.Find(t)
	p := browser.Start(t)
	p.Run(t, before(`globalThis.ran = 0; globalThis.alert = () => ran++; for (const [k, v] of Object.entries({
		'at hand': '"b"', 'case a': '{', 'case b': '{"id":"b","text":"<script>alert(1)</scr' + 'ipt>","untaken":[1,null,{"key":"x[y","value":{}}]}', 'case c': '[]', 'case d': '"d"',
		'case e': '{"id":"e","text":"","untaken":[],"title":{"a":1},"changed":"never","saved":1e99,"gone":"x"}', 'picture b': '"<svg onload=alert(1) xmlns=\\"http://www.w3.org/2000/svg\\"/>"', 'picture e': '5',
		'roster': '{"text":5}', 'warned': 'x', 'look': '"<b>"', 'ticks b': '7',
	})) localStorage.getItem('forel.' + k) === null && localStorage.setItem('forel.' + k, v)`), chromedp.Navigate("file://"+browser.Build(t)))
	p.Wait(t, settled)
	count(t, p, 2)
	press(t, p, "#begin-another", "Begin")
	typed(t, p, "#height", "230.5")
	count(t, p, 3)
	assert.Zero(t, browser.Value[int](t, p, `ran`))
	assert.Empty(t, p.Errors())
}

// Files are dropped anywhere on the page: a job becomes a case, a table a class.
func TestDropped(t *testing.T) {
	t.Parallel()
	p := opened(t)
	drop := func(name, data string) {
		p.Run(t, chromedp.Evaluate(fmt.Sprintf(`{ const held = new DataTransfer(); held.items.add(new File([%q], %q));
			document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: held, bubbles: true, cancelable: true })); }`, data, name), nil))
	}
	drop("dropped.toml", "title = \"Invented: rope sampler\"\n[[book]]\nheight = 210\nwidth = 148\nthickness = 22\n")
	answered(t, p, "#keep-told", "dropped.toml is open")
	listed(t, p, "rope sampler")
	drop("dropped.csv", few)
	p.Wait(t, `document.querySelectorAll('#students li').length === 3`)
	drop("wrong.csv", "name,hight\nA,1\n")
	assert.Contains(t, answered(t, p, "#class-faults", "hight"), "line 1")
}

// A link holds the job; opened, it is another case, and the one at hand stays.
func TestLink(t *testing.T) {
	t.Parallel()
	p := opened(t)
	typed(t, p, "#height", "230.5")
	made := text(t, p)
	press(t, p, "#make-link", "link")
	p.Wait(t, `document.getElementById('link-of')?.value.includes('#job=')`)
	link := browser.Value[string](t, p, `document.getElementById('link-of').value`)
	typed(t, p, "#height", "244.5")
	count(t, p, 1)
	p.Run(t, chromedp.Evaluate(fmt.Sprintf(`location.hash = %q`, link[strings.Index(link, "#"):]), nil))
	answered(t, p, "#keep-told", "came with a link")
	assert.Equal(t, made, text(t, p))
	count(t, p, 2)
	assert.Contains(t, listed(t, p, "244.5"), "230.5")
	assert.Empty(t, browser.Value[string](t, p, `location.hash`))
	for _, hash := range []string{"#job=", "#job=AAAA", "#job=%3Cscript%3E", "#job=" + strings.Repeat("A", 100_000), "#job=S0hV\u00e9", link[strings.Index(link, "#") : len(link)-9], bomb(t)} {
		p.Run(t, chromedp.Evaluate(`document.getElementById('keep-told').textContent = ''`, nil), chromedp.Evaluate(fmt.Sprintf(`location.hash = %q`, hash), nil))
		answered(t, p, "#keep-told", "can’t be read")
		assert.Equal(t, made, text(t, p), "%.40s", hash)
		count(t, p, 2)
	}
	reload(t, p)
	assert.Equal(t, made, text(t, p))
}

// Everything that strangers send is told as a fault, runs nothing and loses nothing.
func TestStrangersInThePage(t *testing.T) {
	t.Parallel()
	browser.Find(t)
	p := browser.Start(t)
	file := browser.Build(t)
	p.Run(t, before(`globalThis.ran = 0; globalThis.alert = () => ran++`), chromedp.Navigate("file://"+file))
	p.Wait(t, settled)
	typed(t, p, "#height", "230.5")
	was := text(t, p)
	for i, data := range []string{ // the others are asked of the program itself
		"<script>alert(1)</script>", "\xff\xfen\x00a\x00m\x00e\x00", strings.Repeat("a", 1_000_000), "name,height,width,thickness\n\"A,210\nB,1,2,3\n", "\x00",
	} {
		p.Run(t, chromedp.Evaluate(`document.getElementById('keep-told').textContent = ''`, nil))
		give(t, p, "#open-job", map[string]string{fmt.Sprintf("<img src=x onerror=alert(%d)>.toml", i): data})
		answered(t, p, "#keep-told", "can’t be read")
		assert.Equal(t, was, text(t, p), "%.30q", data)
		p.Run(t, chromedp.Evaluate(`document.getElementById('class-faults').textContent = ''`, nil))
		give(t, p, "#open-roster", map[string]string{"roster.csv": data})
		p.Wait(t, `document.querySelector('#class-faults .fault') !== null`)
	}
	const bad = `<img src=x onerror=alert(1)><script>alert(1)</script><svg onload=alert(1)>`
	give(t, p, "#open-job", map[string]string{"bad.toml": "title = '" + bad + "'\n[[book]]\ntitle = '" + bad + "'\nheight = '" + bad + "'\nwidth = 148\nthickness = 20\n[board]\nname = '" + bad + "'\n"})
	answered(t, p, "#keep-told", "bad.toml is open")
	listed(t, p, "<img src=x")
	give(t, p, "#open-roster", map[string]string{"roster.csv": "name,title,height,width,thickness\n\"" + bad + "\",\"" + bad + "\",210,148,12\n" + strings.Repeat("x", 100) + ",y,2,3,4\n"})
	p.Wait(t, `document.querySelectorAll('#students li').length === 2`)
	assert.Contains(t, told(t, p, "#students"), "<script>")
	p.Wait(t, settled)
	long := "title = \"Invented\"\n# " + strings.Repeat("a", 900_000) + "\n[[book]]\nheight = 210\nwidth = 148\nthickness = 20\n"
	give(t, p, "#open-job", map[string]string{"long.toml": long})
	answered(t, p, "#keep-told", "long.toml is open")
	typed(t, p, "#height", "212")
	assert.Contains(t, text(t, p), "212")

	assert.Zero(t, browser.Value[int](t, p, `ran`), "nothing ran")
	assert.Zero(t, browser.Value[int](t, p, `document.querySelectorAll('img[src="x"], script:not([type]), svg[onload]').length`))
	for _, address := range p.Requests() {
		assert.True(t, strings.HasPrefix(address, "file://"+file) || strings.HasPrefix(address, "blob:"), "%.80s", address)
	}
	assert.Empty(t, p.Errors())
}

// A class from a pasted table: its cases to look at, and the zip and the PDF that the
// program makes; what is typed meanwhile is answered before it is done.
func TestClassInThePage(t *testing.T) {
	t.Parallel()
	p := opened(t)
	p.Run(t, chromedp.SendKeys("#roster", few))
	press(t, p, "#look-at-class", "Look")
	p.Wait(t, `document.querySelectorAll('#students li').length === 3`)
	assert.Contains(t, told(t, p, "#look-at-class-told"), "3 students")
	assert.Contains(t, told(t, p, "#students"), "Invented: Net ledger")
	press(t, p, "#class-zip", "zip")
	typed(t, p, "#height", "230.5")
	assert.True(t, browser.Value[bool](t, p, `document.getElementById('class-zip').hidden`), "it is answered while the class is made")
	want := new(page.Desk).Answer(ctx, page.Request{Do: "class", Data: []byte(few)}, nil)
	assert.True(t, bytes.Equal(want.Files[0].Data, p.Saved(t, "class.zip")))
	press(t, p, "#class-pdf", "PDF")
	assert.True(t, bytes.Equal(want.Files[1].Data, p.Saved(t, "print.pdf")))

	p.Run(t, chromedp.SendKeys("#roster", "Di,,200,140,20\n"))
	press(t, p, "#look-at-class", "Look")
	p.Wait(t, `document.querySelectorAll('#students li').length === 4`)
	press(t, p, "#class-zip", "zip")
	press(t, p, "#class-zip-stop", "stop")
	answered(t, p, "#class-zip-told", "Stopped")
	reload(t, p)
	assert.Contains(t, browser.Value[string](t, p, `document.getElementById('roster').value`), "Di,,200", "the table is kept")
}

// A roster of twenty is dropped on the page and looked at. In a soak its files are those of
// the program; else those of three students are, above.
func TestTwentyStudentsInThePage(t *testing.T) {
	t.Parallel()
	p := opened(t)
	dropRoster(t, p)
	p.Wait(t, `!document.getElementById('class-zip').disabled`)
	assert.EqualValues(t, 20, browser.Value[int](t, p, `document.querySelectorAll('#students li').length`))
	if !plantest.Soak() {
		return
	}
	press(t, p, "#class-zip", "zip")
	want := new(page.Desk).Answer(ctx, page.Request{Do: "class", Data: roster(t)}, nil)
	assert.True(t, bytes.Equal(want.Files[0].Data, p.Saved(t, "class.zip")))
	press(t, p, "#class-pdf", "PDF")
	assert.True(t, bytes.Equal(want.Files[1].Data, p.Saved(t, "print.pdf")))
}

// dropRoster drops the worked roster on the page.
func dropRoster(t testing.TB, p *browser.Page) {
	t.Helper()
	p.Run(t, chromedp.Evaluate(`{ const held = new DataTransfer(); held.items.add(new File([`+"`"+string(roster(t))+"`"+`], 'roster.csv'));
		document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: held, bubbles: true })) }`, nil))
}

// Everything is one zip, the one that the program makes.
func TestEverythingInThePage(t *testing.T) {
	t.Parallel()
	p := opened(t)
	typed(t, p, blank("title"), "Invented: fog signals")
	press(t, p, "#everything", "zip")
	want := new(page.Desk).Answer(ctx, page.Request{Do: "everything", Text: text(t, p)}, nil)
	assert.True(t, bytes.Equal(want.Files[0].Data, p.Saved(t, "invented-fog-signals.zip")))
}

// before runs a script in a page before its own.
func before(script string) chromedp.Action {
	return chromedp.ActionFunc(func(ctx context.Context) error {
		_, err := cdppage.AddScriptToEvaluateOnNewDocument(script).Do(ctx)
		return err
	})
}

// bomb is a short link to a text that is much longer than any job file.
func bomb(t *testing.T) string {
	var out bytes.Buffer
	w, err := flate.NewWriter(&out, flate.BestCompression)
	require.NoError(t, err)
	_, err = w.Write(make([]byte, 10<<20))
	require.NoError(t, err)
	require.NoError(t, w.Close())
	return "#job=" + base64.RawURLEncoding.EncodeToString(out.Bytes())
}
