package page_test

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"

	"forel/cmd/page/browser"
)

// The steps are those of this very case: they change with the book, are gone through with
// keys, and a tick stays when the page is closed. It is lost where its check has another
// figure in it, and only there.
func TestStepsInTheBrowser(t *testing.T) {
	t.Parallel()
	browser.Find(t)
	p := browser.Open(t, browser.Build(t))
	see := func() {
		p.Wait(t, settled)
		p.Run(t, chromedp.ScrollIntoView("#steps"))
		p.Wait(t, `document.querySelector('#steps').getAttribute('aria-busy') === 'false'`)
	}
	see()
	shown := func() string { return browser.Value[string](t, p, `document.querySelector('#step').innerText`) }
	assert.Contains(t, shown(), "1 of ")
	assert.Contains(t, shown(), "before any board is cut")
	p.Run(t, chromedp.Focus("#step-0"), chromedp.KeyEvent(kb.ArrowRight))
	assert.Contains(t, shown(), "2 of ")
	assert.Contains(t, shown(), "227.8 mm high")
	assert.Contains(t, shown(), "Knives cut people")
	assert.Equal(t, "step-1", browser.Value[string](t, p, `document.activeElement.id`))
	figures := `[...document.querySelectorAll('#step figure svg')].map((s) => s.querySelector('title').textContent + s.querySelectorAll('path').length)`
	assert.NotEmpty(t, browser.Value[[]string](t, p, figures))

	tick := `document.querySelector('#step .check input')`
	p.Run(t, chromedp.Focus("#step .check input"), chromedp.KeyEvent(" ")) // of the cut pieces: figures of the book
	p.Run(t, chromedp.Focus("#step-1"), chromedp.KeyEvent(kb.Home))
	p.Run(t, chromedp.Click("#check-0-1")) // of the board: none of the book
	p.Run(t, chromedp.Reload())
	see()
	assert.True(t, browser.Value[bool](t, p, `document.querySelector('#check-0-1').checked`), "a tick stays")
	p.Run(t, chromedp.Click("#step-1"))
	assert.True(t, browser.Value[bool](t, p, tick+`.checked`))

	p.Type(t, "#height", "230.5")
	see()
	assert.NotContains(t, shown(), "227.8 mm high")
	assert.False(t, browser.Value[bool](t, p, tick+`.checked`), "the check has another figure now")
	p.Run(t, chromedp.Click("#step-0"))
	assert.True(t, browser.Value[bool](t, p, `document.querySelector('#check-0-1').checked`))

	// What can't be made leaves the last pictures, and says so.
	p.Run(t, chromedp.Evaluate(`forel.set({key: 'board.thickness', value: '99'})`, nil))
	p.Wait(t, settled)
	assert.Contains(t, browser.Value[string](t, p, `document.querySelector('#steps').innerText`), "Of the case as it was before")
	assert.NotEmpty(t, browser.Value[[]string](t, p, figures))
	assert.Empty(t, p.Errors())
}
